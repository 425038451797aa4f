/* The wall card: on every paper, with any number of steps and words of any length, words stay in their places, no two
 * meet, and large ones are as large as the rule says. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include <gio/gio.h>
#include <glib/gstdio.h>

#include "draw/card.h"
#include "draw/paragraph.h"
#include "season/edit.h"
#include "season/text.h"

#include "sample.h"

#define SLACK 0.06  /* points; Pango counts in 1/1024 */

static const LwKind order[] = {
  LW_KIND_WITHER, LW_KIND_TUMBLE, LW_KIND_REST, LW_KIND_FIX_DRUM, LW_KIND_ROLL, LW_KIND_DRY_AIR,
  LW_KIND_TUMBLE, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_SUN, LW_KIND_DRY_AIR, LW_KIND_ROAST,
};

#define WORD "Donaudampfschifffahrtsgesellschaftskapitaen"
#define SENTENCE "soft as a glove; smells of apples; the stem bends and does not break. "

/* A batch of `n` steps. `words` 0: none; 1: a sign for each step; 2: long ones, and long names; 3: as long as they may
 * be. */
static LwSeason *
season_of (guint n,
           guint words)
{
  static const char *const signs[] = { NULL, SENTENCE, SENTENCE WORD WORD WORD " " SENTENCE, NULL };
  g_autofree char *longest = g_strnfill (4000, 'w');
  LwSeason *season = lw_season_new (words < 2 ? "Ondry Ridge" : WORD WORD WORD WORD WORD);
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new (words == 3 ? longest : words == 2 ? WORD WORD " " WORD WORD WORD WORD : "12");

  for (char *at = longest + 50; words == 3 && at < longest + 3900; at += 9)
    *at = ' ';
  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->tea = g_strdup (words == 3 ? longest : "reddened sun-dried");
  batch->note = g_strdup (longest);
  for (guint i = 0; i < n; i++)
    {
      LwStep step = lw_step_new (order[i % G_N_ELEMENTS (order)]);

      lw_step_set (&step, LW_SET_MINUTES, words > 0 && i % 4 == 1 ? 75.5 : lw_step_get (&step, LW_SET_MINUTES));
      step.sign = g_strdup (words == 3 ? longest : signs[words]);
      lw_batch_insert_step (batch, i, step);
    }
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  return season;
}

/* Advice of every kind, as long as it gets. */
static GArray *
advice_for (guint n)
{
  GArray *checkpoints = g_array_new (FALSE, TRUE, sizeof (LwCheckpoint));

  for (guint i = 0; i < n; i++)
    {
      LwCheckpoint at = {
        .more = { .kind = LW_ADVICE_NONE, .off = 0.02, .missed = 1.3 },
        .less = { .kind = LW_ADVICE_CHANGE, .off = -0.02, .handle = { i, LW_SET_MINUTES }, .from = 75.5, .to = 80.25 },
      };

      g_array_append_val (checkpoints, at);
    }

  return checkpoints;
}

static LwCard *
card_of (LwSeason *season,
         LwPaper   paper,
         gboolean  landscape,
         gboolean  sheet)
{
  const LwCardWish wish = { paper, landscape, season->batches[0]->fresh_kg, sheet };
  g_autoptr (LwTrack) track = sample_track (season, 20);
  g_autoptr (GArray) checkpoints = advice_for (season->batches[0]->n_steps);

  return lw_card_new (season, 0, track, checkpoints, &wish);
}

static const LwPiece *
piece (const LwPages *pages,
       guint          i)
{
  return &g_array_index (pages->pieces, LwPiece, i);
}

static gboolean
apart (const LwPlace *a,
       const LwPlace *b)
{
  return a->x + a->width <= b->x + SLACK || b->x + b->width <= a->x + SLACK || a->y + a->height <= b->y + SLACK
         || b->y + b->height <= a->y + SLACK;
}

/* What is drawn of the words does not leave their place: by the ink itself, for words of many parts. */
static void
assert_ink_inside (const LwPages *pages,
                   const LwPiece *words)
{
  const LwParagraph paragraph = {
    .text = words->text, .width = words->place.width, .size = words->size, .bold = words->bold,
    .at_end = words->at_end, .rtl = pages->rtl,
  };
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, width, height;

  lw_paragraph_draw (cr, &paragraph, words->place.x, words->place.y);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  /* A letter may lean out of its own box by a hair, as every printed one does; extents are told in whole points. */
  g_assert_cmpfloat (x, >=, floor (words->place.x - 0.1 * words->size));
  g_assert_cmpfloat (x + width, <=, ceil (words->place.x + words->place.width + 0.1 * words->size));
  g_assert_cmpfloat (y, >=, floor (words->place.y - 0.1 * words->size));
  g_assert_cmpfloat (y + height, <=, ceil (words->place.y + words->place.height + 0.1 * words->size));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
assert_sound (const LwCard *card)
{
  const LwPages *pages = lw_card_pages (card);
  double least = lw_card_figure (LW_CARD_NEAR_METRES);

  for (guint i = 0; i < pages->pieces->len; i++)
    {
      const LwPiece *one = piece (pages, i);

      g_assert_cmpuint (one->page, <, pages->n);
      g_assert_true (one->place.x >= 20 && one->place.y >= 20 && one->place.width > 0 && one->place.height > 0);
      g_assert_cmpfloat (one->place.x + one->place.width, <=, pages->width - 20);
      g_assert_cmpfloat (one->place.y + one->place.height, <=, pages->height - 20);

      if (one->kind == LW_PIECE_RULE || one->kind == LW_PIECE_FRAME)
        g_assert_cmpfloat (one->line, >=, 0.25);
      if (one->kind == LW_PIECE_WORDS)
        {
          const LwParagraph paragraph = { .text = one->text, .width = one->place.width, .size = one->size, .bold = one->bold };
          double width, height;

          lw_paragraph_size (&paragraph, &width, &height);
          /* Pango breaks lines by widths without kerning. */
          g_assert_cmpfloat (width, <=, one->place.width + 0.1 * one->size);
          g_assert_cmpfloat (height, <=, one->place.height + SLACK);
          g_assert_cmpfloat (one->size * lw_paragraph_figure (one->bold), >=, least * 0.98);
          assert_ink_inside (pages, one);
        }

      /* A frame is round things, all else is beside each other. */
      for (guint k = 0; k < i && one->kind != LW_PIECE_FRAME; k++)
        {
          const LwPiece *other = piece (pages, k);

          if (other->page == one->page && other->kind != LW_PIECE_FRAME && !apart (&one->place, &other->place))
            g_error ("“%s” meets “%s”", one->text, other->text);
        }
    }
}

/* Each step's time and leading setting stand in figures that are read at two metres, further apart than words are. */
static void
assert_large (const LwCard *card,
              guint         n)
{
  const LwPages *pages = lw_card_pages (card);
  double high = lw_card_figure (LW_CARD_METRES);
  const LwPiece *before = NULL;
  guint pictograms = 0, large = 0;

  for (guint i = 0; i < pages->pieces->len; i++)
    {
      const LwPiece *one = piece (pages, i);

      if (one->page >= lw_card_n_own (card))
        continue;
      pictograms += one->kind == LW_PIECE_PICTOGRAM;
      if (one->kind != LW_PIECE_WORDS || one->size * lw_paragraph_figure (one->bold) < high * 0.999
          || !g_ascii_isdigit (one->text[one->text[0] == '~']))
        continue;
      large++;
      if (before != NULL && before->page == one->page && before->place.y == one->place.y && before->size == one->size)
        g_assert_cmpfloat (one->place.x - before->place.x - before->place.width, >=, 0.55 * one->size);
      before = one;
    }
  g_assert_cmpuint (pictograms, ==, n);
  g_assert_cmpuint (large, >=, 2 * n);
}

static void
test_rule (void)
{
  /* By hand: 2 m times the tangent of 5/60 of a degree, 0.00145444, is 2.90888 mm; twice that; 72 / 25.4 points a mm. */
  g_assert_cmpfloat_with_epsilon (lw_card_figure (2), 2 * 2.90888 * 72 / 25.4, 1e-3);
  g_assert_cmpfloat (lw_paragraph_figure (TRUE), >, 0.6);
  g_assert_cmpfloat (lw_paragraph_figure (TRUE), <, 0.85);
}

/* All papers, 1 to 12 steps, and words of every length. */
static void
test_layouts (void)
{
  for (guint n = 1; n <= 12; n++)
    for (guint words = 0; words < 3; words++)
      {
        g_autoptr (LwSeason) season = season_of (n, words);

        for (guint i = 0; i < 2 * LW_N_PAPERS; i++)
          {
            /* Every paper for the shortest and longest chains, in turns for the others. */
            if (n > 1 && n < 12 && (n + words) % (2 * LW_N_PAPERS) != i)
              continue;

            g_autoptr (LwCard) card = card_of (season, (LwPaper) (i / 2), i % 2, words == 1);

            assert_sound (card);
            assert_large (card, n);
            if (words == 0 && (n <= 6 || (i % 2 == 0 && n <= 12)))
              g_assert_cmpuint (lw_card_n_own (card), ==, 1);
          }
      }
}

/* Forty steps, none, and words as long as a document allows: more pages, and nothing is lost but the tail of names. */
static void
test_extremes (void)
{
  g_autoptr (LwSeason) forty = season_of (40, 1), none = season_of (0, 0), longest = season_of (3, 3);
  g_autoptr (LwCard) many = card_of (forty, LW_PAPER_A4, TRUE, TRUE);
  g_autoptr (LwCard) empty = card_of (none, LW_PAPER_LETTER, FALSE, TRUE);
  g_autoptr (LwCard) wordy = card_of (longest, LW_PAPER_A4, TRUE, TRUE);
  g_autofree char *text = lw_pages_text (lw_card_pages (wordy)), *later = lw_pages_text (lw_card_pages (many));

  assert_sound (many);
  g_assert_nonnull (strstr (later, "Cautions: page 1. Follow local codes"));
  assert_large (many, 40);
  g_assert_cmpuint (lw_card_n_own (many), >, 2);
  assert_sound (empty);
  assert_sound (wordy);
  g_assert_nonnull (strstr (text, longest->batches[0]->steps[2].sign));
}

/* What hangs on the wall says what the maker needs. */
static void
test_words (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) signed_one = lw_edit_set_sign (season, 0, 1, "the stem bends");
  g_autoptr (LwTrack) track = sample_track (signed_one, 40);
  g_autoptr (GArray) checkpoints = lw_advise (signed_one, 0, 10, NULL);
  g_autoptr (LwCard) card = lw_card_new (signed_one, 0, track, checkpoints, &(LwCardWish) { LW_PAPER_A4, FALSE, 10, TRUE });
  g_autofree char *text = lw_pages_text (lw_card_pages (card));
  static const char *const said[] = {
    SAMPLE_NAME, "Ondry Ridge, spring 2026", "19 h\n", "35 min\n", "260 °C\n", "3.0 kPa\n", "2. Fix in pan", "wall",
    "10 kg fresh leaf should now weigh ", "Look for: the stem bends", "If it weighs ", "Caution", "carbon monoxide",
    "Hot walls", "guards stay on", "Damp tea moulds", "Follow local codes and licensed practice.", "Leafwend " LW_VERSION,
    "1 / 2", "2 / 2", "measured", "7.10 kg", "seen, smelt",
  };

  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    if (strstr (text, said[i]) == NULL)
      g_error ("the card does not say “%s”:\n%s", said[i], text);
  g_assert_null (strstr (text, "A warm heap"));
}

/* The weights are those of the track, for the card's own load, which is told as exactly as they are, and for 10 kg. */
static void
test_weights (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 40);
  g_autoptr (LwCard) card = lw_card_new (season, 0, track, NULL, &(LwCardWish) { LW_PAPER_A4, FALSE, 4.5, FALSE });
  g_autoptr (LwCard) other = lw_card_new (season, 0, track, NULL, &(LwCardWish) { LW_PAPER_A4, FALSE, 10.04, FALSE });
  g_autofree char *text = lw_pages_text (lw_card_pages (card)), *more = lw_pages_text (lw_card_pages (other));

  g_assert_nonnull (strstr (more, "10.04 kg fresh leaf"));

  for (guint i = 0; i < track->n_steps; i++)
    {
      double share = lw_track_end (track, i, -1).kg_per_kg_fresh;
      g_autofree char *own = 4.5 * share < 1 ? g_strdup_printf ("%.0f g\n", 4500 * share)
                                             : g_strdup_printf ("%.2f kg\n", 4.5 * share);
      g_autofree char *ten = g_strdup_printf ("weigh %.2f kg", 10 * share);

      g_assert_nonnull (strstr (text, own));
      g_assert_nonnull (strstr (text, ten));
    }
}

/* A batch that stops in its third step has a card for what is known. */
static void
test_failed (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 40);
  LwTrack *stopped = g_atomic_rc_box_dup (sizeof *track, track);
  guint whole = stopped->n_steps;
  LwCard *card;
  g_autofree char *text = NULL;

  stopped->n_steps = 2;
  stopped->failure = (LwFailure) { .failed = TRUE, .step = 2, .time_s = 60 };
  card = lw_card_new (season, 0, stopped, NULL, &(LwCardWish) { LW_PAPER_A4, FALSE, 10, TRUE });
  assert_sound (card);
  text = lw_pages_text (lw_card_pages (card));
  g_assert_nonnull (strstr (text, "not computed"));
  lw_card_free (card);
  g_assert_cmpuint (whole, ==, 5);
  g_atomic_rc_box_release (stopped);
}

/* Black on white: every pixel is a grey, most of what is drawn is black, and the paper is white. */
static void
test_mono (void)
{
  g_autoptr (LwSeason) season = season_of (7, 1);
  g_autoptr (LwCard) card = card_of (season, LW_PAPER_A4, FALSE, TRUE);
  const LwPages *pages = lw_card_pages (card);

  for (guint page = 0; page < pages->n; page++)
    {
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 595, 842);
      cairo_t *cr = cairo_create (surface);
      const guint32 *pixels;
      guint drawn = 0;

      lw_card_draw (cr, card, page);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      cairo_surface_flush (surface);
      pixels = (const guint32 *) (gpointer) cairo_image_surface_get_data (surface);
      for (guint i = 0; i < 595 * 842; i++)
        {
          guint r = pixels[i] >> 16 & 0xff, g = pixels[i] >> 8 & 0xff, b = pixels[i] & 0xff;

          g_assert_true (r == g && g == b);
          drawn += r < 0x80;
        }
      g_assert_cmpuint (pixels[0] & 0xffffff, ==, 0xffffff);
      g_assert_cmpuint (drawn, >, 4000);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
    }
}

/* A PDF holds all pages, other pictures are a file for each. */
static void
test_files (void)
{
  g_autoptr (LwSeason) season = season_of (4, 1);
  g_autoptr (LwCard) card = card_of (season, LW_PAPER_A4, FALSE, TRUE);
  g_autofree char *folder = g_dir_make_tmp ("card-XXXXXX", NULL);
  static const char *const names[] = { "c.pdf", "c.svg", "c.png" }, *const all[] = { "c.pdf", "c.svg", "c-2.svg", "c.png", "c-2.png" };
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (lw_card_pages (card)->n, ==, 2);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);

      g_assert_true (lw_card_save (card, path, &error));
      g_assert_no_error (error);
    }
  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      g_autofree char *path = g_build_filename (folder, all[i], NULL);

      g_assert_cmpint (g_unlink (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);

  g_assert_false (lw_card_save (card, "card.bmp", &error));
  g_assert_nonnull (strstr (error->message, ".pdf, .svg or .png"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/card/rule", test_rule);
  g_test_add_func ("/draw/card/layouts", test_layouts);
  g_test_add_func ("/draw/card/extremes", test_extremes);
  g_test_add_func ("/draw/card/words", test_words);
  g_test_add_func ("/draw/card/weights", test_weights);
  g_test_add_func ("/draw/card/failed", test_failed);
  g_test_add_func ("/draw/card/mono", test_mono);
  g_test_add_func ("/draw/card/files", test_files);

  return g_test_run ();
}
