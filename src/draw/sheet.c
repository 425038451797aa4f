/* The sheet: title, blocks, ruler, three panels and the outcomes at the end. It
 * is laid out at one size of type and then scaled to the paper. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/sheet.h"

#include <math.h>

#include "draw/block.h"
#include "draw/picture.h"
#include "draw/words.h"
#include "season/correction.h"
#include "season/surround.h"
#include "season/text.h"
#include "season/wording.h"

#define BASE_PX 13.0
#define AREA (1180.0 * 760.0)  /* of the layout, whatever the paper's shape */
#define LEAST_HEIGHT 620.0
#define MARGIN 32.0
#define GAP 10.0
#define RULER 22.0
#define BLOCK_IN 2.0           /* between a block and its column's edge */
#define CELL 104.0
#define CELL_HEIGHT 58.0

typedef struct
{
  cairo_t *cr;
  double width;   /* inside the margins */
  double height;
  const LwSeason *season;
  const LwBatch *batch;
  const LwTrack *track;
  const LwPalette *palette;
  LwLetter letter;
  LwScale scale;
} Sheet;

static const LwQuantity panels[] = { LW_MOISTURE, LW_OXIDATION, LW_RUPTURE };

static const LwQuantity outcomes[] = {
  LW_MOISTURE, LW_OXIDATION, LW_RUPTURE, LW_UNEVEN, LW_ENZYME,
  LW_ROAST, LW_GREEN, LW_BROKEN, LW_WEIGHT,
};

static double
start_x (const Sheet *sheet)
{
  return sheet->scale.rtl ? sheet->width : 0;
}

/* One line from x on, in the ink and size given. */
static void
write_line (Sheet      *sheet,
            double      x,
            double      baseline,
            double      size,
            gboolean    bold,
            double      room,
            LwInk       ink,
            const char *text)
{
  lw_ink_use (sheet->cr, ink);
  lw_letter_draw_on (sheet->cr, &sheet->letter, x, baseline, LW_TEXT_START, size, bold, room, text);
}

static double
whole_minutes (const LwBatch *batch)
{
  double minutes = 0;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes += lw_step_get (&batch->steps[i], LW_SET_MINUTES);

  return minutes;
}

/* (transfer full) tea, season, date, leaf, whether made, and the time it takes. */
static char *
about (const Sheet *sheet)
{
  const LwBatch *batch = sheet->batch;
  const LwProfile *leaf = lw_season_profile (sheet->season, batch->leaf);
  g_autofree char *date = lw_say_date (batch->when_s);
  g_autofree char *time = lw_say_minutes (whole_minutes (batch));
  const char *words[] = {
    batch->tea, sheet->season->name, date, leaf != NULL ? leaf->name : NULL,
    batch->made ? _ ("made") : _ ("planned"), time,
  };
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (words[i] != NULL && words[i][0] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? "  ·  " : "", words[i]);

  return g_string_free (text, FALSE);
}

static double
draw_title (Sheet *sheet)
{
  g_autofree char *text = about (sheet);

  write_line (sheet, start_x (sheet), 24, 2, TRUE, sheet->width, sheet->palette->ink,
              sheet->batch->name);
  write_line (sheet, start_x (sheet), 46, 1, FALSE, sheet->width, sheet->palette->faint, text);

  return 62;
}

static double
draw_blocks (Sheet  *sheet,
             double  y)
{
  double height = lw_block_height (&sheet->letter);

  for (guint i = 0; i < sheet->scale.n; i++)
    {
      LwBlockLook look = { .step = &sheet->batch->steps[i], .rtl = sheet->scale.rtl };
      double left, right;

      look.leading = lw_block_leading (sheet->season, sheet->batch, i, &look.on_weather);
      lw_scale_column (&sheet->scale, i, &left, &right);
      left = round (left) + (left > 0.5 ? BLOCK_IN : 0);
      right = round (right) - (right < sheet->width - 0.5 ? BLOCK_IN : 0);
      cairo_save (sheet->cr);
      cairo_translate (sheet->cr, left, y);
      lw_block_draw (sheet->cr, right - left, height, &look, &sheet->letter, sheet->palette);
      cairo_restore (sheet->cr);
    }

  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, 0, y + height + 2);
  lw_ruler_draw (sheet->cr, sheet->width, RULER, &sheet->scale, &sheet->letter, sheet->palette);
  cairo_restore (sheet->cr);

  return y + height + 2 + RULER + 4;
}

static void
draw_panels (Sheet  *sheet,
             double  top,
             double  bottom)
{
  guint n = G_N_ELEMENTS (panels);
  double height = floor ((bottom - top - (n - 1) * GAP) / n);
  g_autoptr (GArray) spells = lw_spells_new (sheet->season, sheet->batch);
  const LwProfile *leaf = lw_season_profile (sheet->season, sheet->batch->leaf);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (LwCurves) curves = lw_curves_new (sheet->track, panels[i]);
      g_autoptr (GArray) turns = lw_panel_turns (sheet->track, panels[i]);
      LwPanelLook look = {
        .quantity = panels[i],
        .scale = &sheet->scale,
        .curves = curves,
        .batch = sheet->batch,
        .fresh_moisture_pct = lw_batch_fresh_moisture (sheet->batch, leaf),
        .spells = (const LwSpell *) spells->data,
        .n_spells = spells->len,
        .turns = (const LwPanelTurn *) (gpointer) turns->data,
        .n_turns = turns->len,
      };
      LwAxis axis = lw_panel_axis (&look);

      cairo_save (sheet->cr);
      cairo_translate (sheet->cr, 0, top + i * (height + GAP));
      lw_panel_draw (sheet->cr, sheet->width, height, &look, &axis, &sheet->letter, sheet->palette);
      cairo_restore (sheet->cr);
    }
}

static void
draw_outcome (Sheet           *sheet,
              LwQuantity       quantity,
              const LwOutcome *outcome,
              double           x,
              double           y,
              double           room)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);
  g_autofree char *value = lw_words_value (quantity, lw_quantity_of (quantity, outcome));

  write_line (sheet, x, y + 20, 1.5, TRUE, room, sheet->palette->ink, value);
  write_line (sheet, x, y + 37, 0.85, FALSE, room, sheet->palette->faint, _ (row->label));
  if (!lw_words_say_unit (quantity))
    write_line (sheet, x, y + 51, 0.75, FALSE, room, sheet->palette->faint, lw_unit_words (row->unit));
}

/* (transfer full) where and why the computation stopped. */
static char *
failure_text (const Sheet *sheet,
              guint        batch)
{
  g_autoptr (LwPlan) plan = lw_plan_new ((LwSeason *) sheet->season, batch);

  return plan != NULL ? lw_plan_failure_text (plan, sheet->batch, sheet->track)
                      : g_strdup (_ ("This batch could not be computed to its end."));
}

static guint
end_rows (const Sheet *sheet)
{
  return (guint) ceil (G_N_ELEMENTS (outcomes) * CELL / sheet->width);
}

static void
draw_end (Sheet  *sheet,
          guint   batch,
          double  y)
{
  guint in_row = (guint) ceil ((double) G_N_ELEMENTS (outcomes) / end_rows (sheet));
  double cell = floor (sheet->width / in_row);
  LwOutcome end;

  if (sheet->track->failure.failed)
    {
      g_autofree char *text = failure_text (sheet, batch);

      write_line (sheet, start_x (sheet), y + 20, 1, TRUE, sheet->width, sheet->palette->warning,
                  text);
      return;
    }

  end = lw_track_end (sheet->track, sheet->track->n_steps - 1, -1);
  for (guint i = 0; i < G_N_ELEMENTS (outcomes); i++)
    {
      double x = i % in_row * cell;

      draw_outcome (sheet, outcomes[i], &end, sheet->scale.rtl ? sheet->width - x : x,
                    y + i / in_row * CELL_HEIGHT, cell - 10);
    }
}

static void
fill_scale (Sheet *sheet)
{
  double minutes[LW_SCALE_MAX_STEPS];
  guint n = MIN (sheet->batch->n_steps, LW_SCALE_MAX_STEPS);

  for (guint i = 0; i < n; i++)
    minutes[i] = lw_step_get (&sheet->batch->steps[i], LW_SET_MINUTES);

  sheet->width = MAX (sheet->width, ceil (lw_scale_least_width (minutes, n)));
  lw_scale_fill (&sheet->scale, minutes, n, 0, sheet->width, lw_words_from_right ());
}

/* Sets the layout's size and scales the picture so that it fills the paper. */
static void
lay_out (Sheet  *sheet,
         double  width,
         double  height)
{
  double by = sqrt (width * height / AREA);

  sheet->width = width / MIN (by, height / LEAST_HEIGHT) - 2 * MARGIN;
  fill_scale (sheet);
  by = width / (sheet->width + 2 * MARGIN);
  sheet->height = height / by - 2 * MARGIN;
  cairo_scale (sheet->cr, by, by);
  cairo_translate (sheet->cr, MARGIN, MARGIN);
}

void
lw_sheet_draw (cairo_t         *cr,
               double           width,
               double           height,
               const LwSeason  *season,
               guint            batch,
               const LwTrack   *track,
               const LwPalette *palette)
{
  Sheet sheet = {
    .cr = cr, .season = season, .batch = season->batches[batch], .track = track, .palette = palette,
    .letter = { .base_px = BASE_PX, .rtl = lw_words_from_right () },
  };
  double y, end;

  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip_preserve (cr);
  lw_ink_use (cr, palette->desk);
  cairo_fill (cr);

  lay_out (&sheet, width, height);
  y = draw_title (&sheet);
  if (sheet.scale.n > 0)
    {
      end = sheet.height - end_rows (&sheet) * CELL_HEIGHT + 6;
      y = draw_blocks (&sheet, y);
      draw_panels (&sheet, y, end - GAP);
      draw_end (&sheet, batch, end);
    }
  else
    {
      write_line (&sheet, start_x (&sheet), y + 16, 1, FALSE, sheet.width, palette->faint,
                  _ ("This batch has no steps yet."));
    }
  cairo_restore (cr);
}

typedef struct
{
  const LwSeason *season;
  guint batch;
  const LwTrack *track;
} Subject;

static void
draw_subject (cairo_t *cr,
              double   width,
              double   height,
              gpointer data)
{
  Subject *subject = data;

  lw_sheet_draw (cr, width, height, subject->season, subject->batch, subject->track,
                 lw_palette (FALSE));
}

gboolean
lw_sheet_save (const char      *path,
               double           width,
               double           height,
               const LwSeason  *season,
               guint            batch,
               const LwTrack   *track,
               GError         **error)
{
  Subject subject = { season, batch, track };
  const char *title = season->batches[batch]->name;

  return lw_picture_save (path, width, height, title, draw_subject, &subject, error);
}
