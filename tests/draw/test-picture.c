/* Pictures: something is drawn, nothing outside, kinds look different, files are whole. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include <gio/gio.h>
#include <glib/gstdio.h>

#include "draw/block.h"
#include "draw/sheet.h"
#include "sample.h"

typedef void (*Drawing) (cairo_t *cr,
                         double   width,
                         double   height,
                         gpointer data);

/* Nothing reaches beyond 0,0..width,height. */
static void
assert_inside (Drawing  drawing,
               double   width,
               double   height,
               gpointer data)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, w, h;

  drawing (cr, width, height, data);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &x, &y, &w, &h);
  g_assert_cmpfloat (x, >=, -0.01);
  g_assert_cmpfloat (y, >=, -0.01);
  g_assert_cmpfloat (x + w, <=, width + 0.01);
  g_assert_cmpfloat (y + h, <=, height + 0.01);
  g_assert_cmpfloat (w * h, >, width * height / 2);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Pixels that differ from the first one, per thousand. */
static double
drawn_share (Drawing  drawing,
             int      width,
             int      height,
             gpointer data)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);
  const guint32 *pixels;
  guint n = 0;

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  drawing (cr, width, height, data);
  cairo_surface_flush (surface);
  pixels = (const guint32 *) (gpointer) cairo_image_surface_get_data (surface);
  for (int i = 0; i < width * height; i++)
    n += pixels[i] != 0xffffffff;
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  return 1000.0 * n / (width * height);
}

static void
draw_block (cairo_t *cr,
            double   width,
            double   height,
            gpointer data)
{
  LwLetter letter = { .base_px = 13 };

  lw_block_draw (cr, width, height, data, &letter, lw_palette (FALSE));
}

static void
test_blocks (void)
{
  static const double widths[] = { 64, 90, 200, 400 };
  LwLetter letter = { .base_px = 13 };

  for (guint kind = 0; kind < LW_N_KINDS; kind++)
    for (guint i = 0; i < 4 * G_N_ELEMENTS (widths); i++)
      {
        LwStep step = lw_step_new (kind);
        LwBlockLook look = {
          .step = &step,
          .leading = lw_step_get (&step, lw_kind_row (kind)->leading),
          .rtl = i % 2,
          .chosen = i % 4 > 1,
          .on_weather = i % 4 > 1,
          .before = i % 4 > 1 ? "25 → 35 min" : NULL,
          .led = i % 4 > 2 ? "200 → 230 °C" : NULL,
        };
        double height = lw_block_height (&letter);

        assert_inside (draw_block, widths[i / 4], height, &look);
        g_assert_cmpfloat (drawn_share (draw_block, (int) widths[i / 4], (int) height, &look),
                           >, 50);
        lw_step_clear (&step);
      }
}

static void
test_block_line (void)
{
  LwLetter letter = { .base_px = 13 };
  double height = lw_block_height (&letter);

  for (guint kind = 0; kind < LW_N_KINDS; kind++)
    {
      const LwKindRow *row = lw_kind_row (kind);

      for (double share = 0; share <= 1; share += 0.125)
        {
          double value = row->line_low + share * (row->line_high - row->line_low);
          double y = lw_block_line_y (kind, height, &letter, value);

          g_assert_cmpfloat_with_epsilon (lw_block_value (kind, height, &letter, y), value,
                                          1e-9 * row->line_high);
          g_assert_true (y > 0 && y < height);
        }
      g_assert_cmpfloat (lw_block_value (kind, height, &letter, -99), ==, row->line_high);
      g_assert_cmpfloat (lw_block_value (kind, height, &letter, 999), ==, row->line_low);
    }
}

/* Small as they are, two kinds differ in many pixels. */
static void
test_kinds_differ (void)
{
  enum { SIZE = 36 };
  LwInk ink = { 0, 0, 0, 1 };

  for (int hatch = 0; hatch < 2; hatch++)
    {
      cairo_surface_t *surfaces[LW_N_KINDS];

      for (guint kind = 0; kind < LW_N_KINDS; kind++)
        {
          cairo_t *cr;

          surfaces[kind] = cairo_image_surface_create (CAIRO_FORMAT_A8, SIZE, SIZE);
          cr = cairo_create (surfaces[kind]);
          if (hatch)
            lw_hatch_draw (cr, kind, 0, 0, SIZE, SIZE, ink);
          else
            lw_pictogram_draw (cr, kind, 0, 0, SIZE, ink);
          cairo_destroy (cr);
          cairo_surface_flush (surfaces[kind]);
        }

      for (guint a = 0; a < LW_N_KINDS; a++)
        for (guint b = a + 1; b < LW_N_KINDS; b++)
          {
            guint differ = 0;

            for (int i = 0; i < SIZE * SIZE; i++)
              differ += abs (cairo_image_surface_get_data (surfaces[a])[i]
                             - cairo_image_surface_get_data (surfaces[b])[i]) > 100;
            g_assert_cmpuint (differ, >, 60);
          }

      for (guint kind = 0; kind < LW_N_KINDS; kind++)
        cairo_surface_destroy (surfaces[kind]);
    }
}

static void
draw_panel (cairo_t *cr,
            double   width,
            double   height,
            gpointer data)
{
  LwPanelLook *look = data;
  LwLetter letter = { .base_px = 13 };
  LwAxis axis = lw_panel_axis (look);
  LwScale scale;
  double minutes[LW_SCALE_MAX_STEPS];

  for (guint i = 0; i < look->batch->n_steps; i++)
    minutes[i] = lw_step_get (&look->batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill (&scale, minutes, look->batch->n_steps, 0, width, !look->quick);
  look->scale = &scale;
  lw_panel_draw (cr, width, height, look, &axis, &letter, lw_palette (FALSE));
}

static void
test_panels (void)
{
  static const char *const names[] = { "sheltered", "surface", "torn", "stem", NULL };
  static const double times[] = { 600, 20, 10, 300, 20 };
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 60);

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    for (guint i = 0; i < 16; i++)
      {
        g_autoptr (LwCurves) curves = lw_curves_new (track, q);
        static const int columns[] = { 0, -1, 1, 3, 99 };
        LwPanelOverlay overlay = {
          .curves = curves, .minutes = times, .n = 5, .columns = columns, .tag = "A", .name = "13 short wither",
          .ink = { 0, 0, 0, 1 }, .dash = 2,
        };
        LwPanelLook look = {
          .quantity = q,
          .curves = curves,
          .ghost = i & 1 ? curves : NULL,
          .ghost_minutes = times,
          .ghost_n = 5,
          .batch = season->batches[0],
          .fresh_moisture_pct = 77,
          .part_names = names,
          .parts = (i & 2) != 0,
          .quick = (i & 4) != 0,
          .overlays = &overlay,
          .n_overlays = i & 8 ? 1 : 0,
        };

        assert_inside (draw_panel, 900, 190, &look);
        assert_inside (draw_panel, 330, 60, &look);
        g_assert_cmpfloat (drawn_share (draw_panel, 900, 190, &look), >, 20);
      }
}

/* A batch that has not been computed still shows its aims and weigh-ins. */
static void
test_panel_without_curves (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  LwPanelLook look = {
    .quantity = LW_MOISTURE, .batch = season->batches[0], .fresh_moisture_pct = 77,
  };
  LwAxis axis = lw_panel_axis (&look);

  assert_inside (draw_panel, 900, 190, &look);
  g_assert_cmpfloat (axis.low, ==, 0);
  g_assert_cmpfloat (axis.high, ==, 80);
}

/* By hand: 10 kg fresh at 75 % hold 2.5 kg dry; at 5 kg it is 2.5 kg water, 50 %. */
static void
test_weigh_in (void)
{
  LwBatch batch = { .fresh_kg = 10 };
  LwPanelLook look = { .quantity = LW_MOISTURE, .batch = &batch, .fresh_moisture_pct = 75 };
  LwWeighIn weigh_in = { 0, LW_WEIGHED_KG, 6.2, 0.5, 1.2, NULL };
  double value;

  g_assert_true (lw_panel_measured (&look, &weigh_in, 0, &value));
  g_assert_cmpfloat_with_epsilon (value, 50, 1e-9);
  g_assert_true (lw_panel_measured (&look, &weigh_in, 1, &value));
  g_assert_cmpfloat_with_epsilon (value, 100 * 3 / 5.5, 1e-9);
  look.quantity = LW_WEIGHT;
  g_assert_true (lw_panel_measured (&look, &weigh_in, 0, &value));
  g_assert_cmpfloat_with_epsilon (value, 0.5, 1e-9);
  look.quantity = LW_OXIDATION;
  g_assert_false (lw_panel_measured (&look, &weigh_in, 0, &value));
}

static char *
saved (const char *name,
       gsize      *length)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 40);
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("draw-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *bytes = NULL;

  g_assert_true (lw_sheet_save (path, 842, 595, season, 0, track, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &bytes, length, &error));
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);

  return bytes;
}

static void
test_formats (void)
{
  static const struct { const char *name, *magic; } files[] = {
    { "sheet.png", "\x89PNG\r\n\x1a\n" }, { "sheet.svg", "<?xml" }, { "sheet.PDF", "%PDF-" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      gsize length;
      g_autofree char *bytes = saved (files[i].name, &length);

      g_assert_cmpuint (length, >, 5000);
      g_assert_cmpmem (bytes, strlen (files[i].magic), files[i].magic, strlen (files[i].magic));
      if (i == 2)
        g_assert_nonnull (memmem (bytes, length, "/ToUnicode", strlen ("/ToUnicode")));
    }
}

static void
test_pdf_text (void)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  g_autoptr (GSubprocess) process = NULL;
  g_autoptr (GBytes) in = NULL;
  g_autoptr (GBytes) out = NULL;
  char *bytes;
  gsize length;

  if (program == NULL)
    {
      g_test_skip ("pdftotext is not installed");
      return;
    }

  bytes = saved ("sheet.pdf", &length);
  in = g_bytes_new_take (bytes, length);
  process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDOUT_PIPE, NULL,
                              program, "-", "-", NULL);
  g_assert_true (g_subprocess_communicate (process, in, NULL, &out, NULL, NULL));
  g_assert_nonnull (g_strstr_len (g_bytes_get_data (out, NULL), (gssize) g_bytes_get_size (out),
                                  SAMPLE_NAME));
}

static void
test_refused (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 10);
  static const struct { const char *path; double width; } bad[] = {
    { "sheet.bmp", 800 }, { "/nowhere at all/sheet.png", 800 }, { "sheet-of-a-mile.png", 1e6 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (lw_sheet_save (bad[i].path, bad[i].width, 600, season, 0, track, &error));
      g_assert_nonnull (error);
      g_assert_false (g_file_test (bad[i].path, G_FILE_TEST_EXISTS));
    }
}

typedef struct
{
  const LwSeason *season;
  const LwTrack *track;
} Subject;

static void
draw_sheet (cairo_t *cr,
            double   width,
            double   height,
            gpointer data)
{
  Subject *subject = data;

  lw_sheet_draw (cr, width, height, subject->season, 0, subject->track, lw_palette_print ());
}

/* All sizes of paper, a track that stopped in its third step, and one with nothing in it. */
static void
test_sheets (void)
{
  static const double papers[][2] = {
    { 595, 842 }, { 842, 595 }, { 1191, 842 }, { 1280, 720 }, { 300, 200 },
  };
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 40);
  LwTrack stopped = *track;

  for (guint n = 0; n < 3; n++)
    {
      Subject subject = { season, n == 0 ? track : &stopped };

      stopped.n_steps = n == 1 ? 2 : 0;
      stopped.failure = (LwFailure) { .failed = TRUE, .step = stopped.n_steps, .time_s = 60 };
      for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
        assert_inside (draw_sheet, papers[i][0], papers[i][1], &subject);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/picture/blocks", test_blocks);
  g_test_add_func ("/draw/picture/block-line", test_block_line);
  g_test_add_func ("/draw/picture/kinds-differ", test_kinds_differ);
  g_test_add_func ("/draw/picture/panels", test_panels);
  g_test_add_func ("/draw/picture/panel-without-curves", test_panel_without_curves);
  g_test_add_func ("/draw/picture/weigh-in", test_weigh_in);
  g_test_add_func ("/draw/picture/formats", test_formats);
  g_test_add_func ("/draw/picture/pdf-text", test_pdf_text);
  g_test_add_func ("/draw/picture/refused", test_refused);
  g_test_add_func ("/draw/picture/sheets", test_sheets);

  return g_test_run ();
}
