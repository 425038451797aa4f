/* A lesson's panel: what has been is drawn up to the head, what comes is faint or hidden; a dot and a name for each
 * batch where it is now. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/lesson-private.h"

#include <math.h>

#include "draw/labels.h"
#include "draw/words.h"
#include "season/text.h"

#define FAINT 0.38
#define DOT 6.0
#define AWAY 14.0
#define MOST_NAME 0.3  /* of the width */
#define PLATE 0.85
#define PLATE_PAD 4.0

static const LwCurves *
curves_of (const LwLessonLook *look,
           guint               shown,
           guint               curve)
{
  return look->curves[shown * LW_LESSON_CURVES + curve];
}

/* The panel as a whole, with room for the minutes of the batches beside the first. */
typedef struct
{
  LwPanelLook look;
  LwPanelOverlay over[LW_LESSON_MOST_SHOWN];
  double minutes[LW_LESSON_MOST_SHOWN][LW_SCALE_MAX_STEPS];
} Panel;

static LwInk
ink_of (const LwLessonLook *look,
        guint               shown,
        guint               curve,
        const LwPalette    *palette)
{
  return shown == 0 ? palette->curve[look->of[curve]] : palette->over[(shown - 1) % LW_N_OVER];
}

static void
fill (Panel              *panel,
      const LwLessonLook *look,
      const LwScale      *scale,
      guint               curve,
      const LwPalette    *palette)
{
  *panel = (Panel) { 0 };
  panel->look = (LwPanelLook) {
    .quantity = look->of[curve], .scale = scale, .curves = curves_of (look, 0, curve), .overlays = panel->over,
    .n_overlays = look->n - 1,
  };
  for (guint i = 1; i < look->n; i++)
    {
      const LwBatch *batch = look->shown[i].batch;

      for (guint k = 0; k < batch->n_steps; k++)
        panel->minutes[i - 1][k] = lw_step_get (&batch->steps[k], LW_SET_MINUTES);
      panel->over[i - 1] = (LwPanelOverlay) {
        .curves = curves_of (look, i, curve), .minutes = panel->minutes[i - 1], .n = batch->n_steps,
        .columns = look->shown[i].columns, .ink = ink_of (look, i, curve, palette), .dash = i,
      };
    }
}

LwAxis
lw_lesson_axis (const LwLessonLook *look,
                const LwScale      *scale,
                guint               curve)
{
  Panel panel;

  fill (&panel, look, scale, curve, lw_palette (FALSE));

  return lw_panel_axis (&panel.look);
}

/* One side of the head, as far as it is to be seen. */
static void
draw_side (cairo_t         *cr,
           double           width,
           double           height,
           const Panel     *panel,
           gboolean         after,
           double           x,
           const LwAxis    *axis,
           const LwLetter  *letter,
           const LwPalette *palette)
{
  gboolean right = after != panel->look.scale->rtl;

  cairo_save (cr);
  if (right)
    cairo_rectangle (cr, x, 0, width - x, height);
  else
    cairo_rectangle (cr, 0, 0, x, height);
  cairo_clip (cr);
  if (after)
    cairo_push_group (cr);
  lw_panel_draw (cr, width, height, &panel->look, axis, letter, palette);
  if (after)
    {
      cairo_pop_group_to_source (cr);
      cairo_paint_with_alpha (cr, FAINT);
    }
  cairo_restore (cr);
}

/* (transfer full) (nullable) a batch's value and, beside others, its name; NULL where it is not in this step. */
static char *
words_of (const LwLessonLook *look,
          guint               shown,
          guint               curve,
          double             *at)
{
  g_autofree char *value = NULL;
  LwOutcome now;

  if (!lw_lesson_is (look->shown, shown, look->by_clock, look->head, &now))
    return NULL;

  *at = lw_quantity_of (look->of[curve], &now);
  value = lw_words_value (look->of[curve], *at);

  return look->n > 1 ? g_strdup_printf ("%s  %s", value, look->shown[shown].batch->name) : g_steal_pointer (&value);
}

/* How far the names and values of the batches reach from the head; to the left: negative. */
static double
reach_of (cairo_t            *cr,
          double              width,
          const LwLessonLook *look,
          guint               curve,
          double              x,
          const LwLetter     *letter)
{
  double widest = 0;

  for (guint i = 0; i < look->n; i++)
    {
      double at, taken;
      g_autofree char *words = words_of (look, i, curve, &at);

      if (words == NULL)
        continue;
      lw_letter_size (cr, letter, 1, TRUE, words, &taken, NULL);
      widest = MAX (widest, MIN (taken, MOST_NAME * width));
    }
  widest += AWAY;

  return (look->rtl ? x - widest > 0 : x + widest > width) ? -widest : widest;
}

/* Names and values of the batches where they are now. */
static void
draw_names (cairo_t            *cr,
            double              width,
            const LwLessonLook *look,
            guint               curve,
            double              x,
            double              reach,
            double              top,
            double              bottom,
            const LwAxis       *axis,
            const LwLetter     *letter,
            const LwPalette    *palette)
{
  double line = lw_letter_line (letter), widest = fabs (reach) - AWAY;
  double dot = DOT * lw_letter_scale (letter) / 1.4;
  LwLabel labels[LW_LESSON_MOST_SHOWN];
  char *words[LW_LESSON_MOST_SHOWN];
  guint of[LW_LESSON_MOST_SHOWN], n = 0;

  for (guint i = 0; i < look->n; i++)
    {
      double at;

      words[n] = words_of (look, i, curve, &at);
      if (words[n] == NULL)
        continue;
      labels[n] = (LwLabel) { .want = lw_axis_y (axis, top, bottom, at) };
      of[n++] = i;

      cairo_arc (cr, x, labels[n - 1].want, dot, 0, 2 * G_PI);
      lw_ink_use (cr, ink_of (look, i, curve, palette));
      cairo_fill_preserve (cr);
      cairo_set_line_width (cr, 1.5);
      lw_ink_use (cr, palette->card);
      cairo_stroke (cr);
    }

  lw_labels_place (labels, n, top - line / 2, bottom + line / 3, line);
  for (guint i = 0; i < n; i++)
    {
      double begin = reach < 0 ? x + reach : x + AWAY, y = labels[i].y - line / 2;

      cairo_rectangle (cr, begin - PLATE_PAD, y, widest + 2 * PLATE_PAD, line);
      lw_ink_use (cr, lw_ink_thin (palette->card, PLATE));
      cairo_fill (cr);
      lw_ink_use (cr, lw_ink_mix (ink_of (look, of[i], curve, palette), palette->ink, 0.45));
      lw_letter_draw (cr, letter, letter->rtl ? begin + widest : begin, y, LW_TEXT_START, 1, TRUE, MOST_NAME * width,
                      words[i]);
      g_free (words[i]);
    }
}

/* Of the steps that are over, and of the turning points that were: the rest tells nothing yet. */
static void
keep_silent (Panel              *panel,
             const LwLessonLook *look,
             const GArray       *turns)
{
  const LwBatch *batch = look->shown[0].batch;
  gboolean over = look->head.minute >= lw_step_get (&batch->steps[look->head.step], LW_SET_MINUTES);

  panel->look.untold = batch->n_steps - look->head.step - (over ? 1 : 0);
  panel->look.n_turns = 0;
  while (panel->look.n_turns < turns->len
         && lw_head_compare ((LwHead) { panel->look.turns[panel->look.n_turns].step,
                                        panel->look.turns[panel->look.n_turns].minute }, look->head) <= 0)
    panel->look.n_turns++;
}

/* Words that the head and its names would cut are left out while it passes: the caption tells them. */
static void
drop_cut (cairo_t        *cr,
          GArray         *turns,
          const LwScale  *scale,
          double          head_x,
          double          reach,
          const LwLetter *letter)
{
  double from = MIN (head_x, head_x + reach), to = MAX (head_x, head_x + reach);

  for (guint i = turns->len; i > 0; i--)
    {
      const LwPanelTurn *turn = &g_array_index (turns, LwPanelTurn, i - 1);
      double width, x = lw_scale_x (scale, turn->step, turn->minute);

      lw_letter_size (cr, letter, 1, FALSE, turn->word, &width, NULL);
      if (x + width > from && x - width < to)
        g_array_remove_index (turns, i - 1);
    }
}

void
lw_lesson_curves (cairo_t            *cr,
                  double              width,
                  double              height,
                  const LwLessonLook *look,
                  const LwScale      *scale,
                  guint               curve,
                  const LwLetter     *letter,
                  const LwPalette    *palette)
{
  double x = lw_scale_x (scale, look->head.step, look->head.minute), top, bottom;
  double reach = reach_of (cr, width, look, curve, x, letter);
  g_autoptr (GArray) turns = lw_panel_turns (look->shown[0].track, look->of[curve]);
  Panel panel;
  LwPanelLook empty;
  LwAxis axis;

  fill (&panel, look, scale, curve, palette);
  axis = lw_panel_axis (&panel.look);
  drop_cut (cr, turns, scale, x, reach, letter);
  panel.look.turns = (const LwPanelTurn *) (void *) turns->data;
  panel.look.n_turns = turns->len;
  panel.look.quiet_from = MIN (x, x + reach) - PLATE_PAD;
  panel.look.quiet_to = MAX (x, x + reach) + PLATE_PAD;

  empty = (LwPanelLook) { .quantity = look->of[curve], .scale = scale };
  lw_panel_draw (cr, width, height, &empty, &axis, letter, palette);
  if (!look->hides)
    draw_side (cr, width, height, &panel, TRUE, x, &axis, letter, palette);
  panel.look.quiet_from = panel.look.quiet_to = 0;
  keep_silent (&panel, look, turns);
  draw_side (cr, width, height, &panel, FALSE, x, &axis, letter, palette);

  lw_panel_plot (height, letter, &top, &bottom);
  /* The answer is not to be struck through by the lines to the marks. */
  if (look->ask == (int) curve && look->answered)
    lw_lesson_guesses (cr, width, look, scale, &axis, top, bottom, letter, palette);
  draw_names (cr, width, look, curve, x, reach, top, bottom, &axis, letter, palette);
  if (look->ask == (int) curve && !look->answered)
    lw_lesson_guesses (cr, width, look, scale, &axis, top, bottom, letter, palette);
}
