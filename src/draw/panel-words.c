/* Words in a panel: its name, the axis, the value at each step's end and the
 * names of lines. Each takes its place so that none lies on another. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"
#include "draw/verdict.h"
#include "draw/words.h"
#include "season/text.h"

#define SMALL 0.85
#define HEAD_IN 12.0
#define WORD_IN 6.0      /* from a column's edge */
#define PAST_AIM 9.0     /* and past a bracket */
#define VERDICT 5.0      /* between the value and its verdict */
#define APART 0.7        /* of the letters' height: more between a value and the axis, so as not to read "within 40" */
#define APART_FROM 9.0   /* where the column is as many times as wide */
#define SAMPLE 20.0      /* length of a line shown before its name */

static double
text_height (const LwSpace *space)
{
  return ceil (lw_letter_line (space->letter) * SMALL * 0.94);
}

static gboolean
has_aims (const LwSpace *space,
          guint          step)
{
  const LwAim *aims[1];

  return lw_space_aims (space, step, aims, G_N_ELEMENTS (aims)) > 0;
}

/* The last column leaves room for a bracket always, so that panels' axes line up. */
double
lw_space_words_in (const LwSpace *space,
                   guint          step)
{
  if (has_aims (space, step))
    return WORD_IN + PAST_AIM + lw_space_edge_in (space, step);

  return step + 1 == space->look->scale->n ? WORD_IN + PAST_AIM : WORD_IN;
}

/* x from which a box's text is drawn when it is anchored at its begin. */
static double
begin_of (const LwSpace *space,
          const LwBox   *box)
{
  return space->letter->rtl ? box->x + box->width : box->x;
}

/* Draws small words from x on. */
static void
draw_small (LwSpace    *space,
            double      x,
            double      y,
            gboolean    bold,
            double      room,
            LwInk       ink,
            const char *text)
{
  lw_ink_use (space->cr, ink);
  lw_letter_draw (space->cr, space->letter, x, y, LW_TEXT_START, SMALL, bold, room, text);
}

double
lw_panel_head_baseline (const LwLetter *letter)
{
  return round (7 + lw_letter_line (letter) * 0.76);
}

void
lw_space_head (LwSpace *space)
{
  const LwQuantityRow *row = lw_quantity_row (space->look->quantity);
  const LwLetter *letter = space->letter;
  double baseline = lw_panel_head_baseline (letter);
  double way = letter->rtl ? -1 : 1;
  double x = letter->rtl ? space->width - HEAD_IN : HEAD_IN;
  double room = space->width - 2 * HEAD_IN;
  double used;

  lw_ink_use (space->cr, space->palette->ink);
  used = lw_letter_draw_on (space->cr, letter, x, baseline, LW_TEXT_START, 1.05, TRUE, room,
                            _ (row->label)) + 8;

  if (row->unit[0] != '\0' && room - used > 30)
    {
      lw_ink_use (space->cr, space->palette->faint);
      used += lw_letter_draw_on (space->cr, letter, x + way * used, baseline, LW_TEXT_START, SMALL,
                                 FALSE, room - used, lw_unit_words (row->unit)) + 14;
    }
  if (space->look->reading != NULL && room - used > 30)
    {
      lw_ink_use (space->cr, lw_ink_of_words (space->palette, space->look->quantity));
      lw_letter_draw_on (space->cr, letter, x + way * used, baseline, LW_TEXT_START, 1.15, TRUE,
                         room - used, space->look->reading);
    }
}

/* Whether the mean goes through a word of the axis, which then gives way to the value itself. */
static gboolean
mean_meets (const LwSpace *space,
            guint          step,
            const LwBox   *box)
{
  double high_y, low_y;

  if (space->look->curves == NULL || step >= lw_curves_n_steps (space->look->curves))
    return FALSE;

  lw_space_over (space, step, LW_ROW_MEAN, box, &high_y, &low_y);

  /* Its plate would cut the line. */
  return low_y > box->y - 2 && high_y < box->y + box->height + 2;
}

static void
draw_axis_word (LwSpace *space,
                guint    step,
                double   value,
                int      digits)
{
  g_autofree char *text = g_strdup_printf ("%.*f", digits, value);
  double height = text_height (space);
  LwBox box = { .y = lw_space_y (space, value) - height / 2, .height = height };

  lw_letter_size (space->cr, space->letter, SMALL, FALSE, text, &box.width, NULL);
  box.x = lw_space_end_x (space, step, lw_space_words_in (space, step), box.width);
  if (mean_meets (space, step, &box))
    return;

  lw_space_plate (space, step, &box);
  draw_small (space, begin_of (space, &box), box.y, FALSE, 0, space->palette->faint, text);
  lw_space_take (space, (LwBox) { box.x - 3, box.y, box.width + 6, box.height });
}

/* All but the lowest, which stands at the panel's foot where there is no room. */
double
lw_panel_head_width (LwQuantity      quantity,
                     const LwLetter *letter)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double name, unit = 0;

  lw_letter_size (cr, letter, 1.05, TRUE, _ (row->label), &name, NULL);
  if (row->unit[0] != '\0')
    lw_letter_size (cr, letter, SMALL, FALSE, lw_unit_words (row->unit), &unit, NULL);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  return HEAD_IN + name + 8 + (unit > 0 ? unit + 14 : 4);
}

void
lw_space_axis_words (LwSpace *space)
{
  const LwAxis *axis = space->axis;
  int digits = (int) MAX (0, -floor (log10 (axis->gap) + 1e-9));
  guint ticks = (guint) lround ((axis->high - axis->low) / axis->gap);

  for (guint i = 1; i <= ticks && space->look->scale->n > 0; i++)
    if (lw_space_tick_told (space, i))
      draw_axis_word (space, space->look->scale->n - 1, axis->low + i * axis->gap, digits);
}

static const char *
verdict_word (const LwSpace *space,
              guint          step,
              double         value)
{
  const LwAim *aim;

  if (lw_space_aims (space, step, &aim, 1) == 0)
    return NULL;

  return lw_verdict_word (lw_verdict (aim->low, aim->high, value));
}

/* Finds the value's place: beside the line with its verdict, else without, else, for what the
 * batch ends with, anywhere. */
static gboolean
find_value_place (LwSpace *space,
                  guint    step,
                  double   in,
                  double   number,
                  double   words,
                  LwBox   *box)
{
  double room = space->look->scale->width[step] - in - WORD_IN;
  gboolean last = step + 1 == space->look->scale->n;
  const struct { double width, far; } tries[] = {
    { number + VERDICT + words, words > 0 ? box->height : -1 },
    { number, box->height },
    { number, last ? space->height : 3 * box->height },
  };

  for (guint i = 0; i < G_N_ELEMENTS (tries); i++)
    {
      double high_y, low_y;

      box->width = tries[i].width;
      box->x = lw_space_end_x (space, step, in, box->width);
      lw_space_over (space, step, LW_ROW_MEAN, box, &high_y, &low_y);
      if (box->width <= room && lw_space_find (space, box, high_y, low_y, tries[i].far))
        return TRUE;
    }

  return FALSE;
}

/* The value and, where there is room, how it stands to the aim. */
static void
draw_end_value (LwSpace *space,
                guint    step,
                double   in)
{
  double value = lw_space_end_value (space, step);
  g_autofree char *text = lw_words_value (space->look->quantity, value);
  const char *verdict = verdict_word (space, step, value);
  double way = space->letter->rtl ? -1 : 1;
  double number, words = 0, x;
  LwBox box = { .height = text_height (space) };

  lw_letter_size (space->cr, space->letter, SMALL, TRUE, text, &number, NULL);
  if (verdict != NULL)
    lw_letter_size (space->cr, space->letter, SMALL, FALSE, verdict, &words, NULL);
  if (!find_value_place (space, step, in, number, words, &box)
      || (box.x < space->look->quiet_to && box.x + box.width > space->look->quiet_from))
    return;

  lw_space_plate (space, step, &box);
  lw_space_take (space, (LwBox) { box.x - 3, box.y, box.width + 6, box.height });
  x = begin_of (space, &box);
  draw_small (space, x, box.y, TRUE, 0,
              lw_ink_of_words (space->palette, space->look->quantity), text);
  if (box.width > number)
    draw_small (space, x + way * (number + VERDICT), box.y, FALSE, 0, space->palette->ink, verdict);
}

/* A line's name near its end, after a piece of the line itself. */
static void
draw_line_name (LwSpace    *space,
                guint       step,
                double      in,
                double      end_y,
                guint       dash,
                LwInk       ink,
                const char *name)
{
  double room = space->look->scale->width[step] - in - WORD_IN - SAMPLE - 4;
  double way = space->letter->rtl ? -1 : 1;
  LwBox box = { .height = text_height (space) };
  double words, x;

  lw_letter_size (space->cr, space->letter, SMALL, FALSE, name, &words, NULL);
  words = MIN (words, room);
  if (words < 12)
    return;

  box.width = SAMPLE + 4 + words;
  box.x = lw_space_end_x (space, step, in, box.width);
  if (!lw_space_find (space, &box, end_y, end_y, space->height))
    return;

  lw_space_plate (space, step, &box);
  lw_space_take (space, box);
  x = begin_of (space, &box);
  cairo_move_to (space->cr, x, floor (box.y + box.height / 2) + 0.5);
  cairo_rel_line_to (space->cr, way * SAMPLE, 0);
  cairo_set_line_width (space->cr, 1.4);
  lw_space_dash (space, dash);
  lw_ink_use (space->cr, ink);
  cairo_stroke (space->cr);
  lw_space_dash (space, 0);

  draw_small (space, x + way * (SAMPLE + 4), box.y, FALSE, room, space->palette->ink, name);
}

void
lw_space_name_line (LwSpace    *space,
                    guint       step,
                    double      end_y,
                    guint       dash,
                    LwInk       ink,
                    const char *name)
{
  gboolean last = step + 1 == space->look->scale->n;

  draw_line_name (space, step, lw_space_words_in (space, step) + (last ? space->axis_words : 0), end_y, dash, ink, name);
}

static void
draw_line_names (LwSpace *space,
                 guint    step,
                 double   in)
{
  const LwPanelLook *look = space->look;
  guint n_parts = look->parts && look->part_names != NULL ? lw_curves_n_parts (look->curves) : 0;
  LwBox mean = { .width = n_parts > 0 ? space->look->scale->width[step] / 2 : 0 };
  double high_y, low_y;
  guint n;

  /* Names may stand on a part's line, but not on the mean. */
  mean.x = lw_space_end_x (space, step, 0, mean.width);
  lw_space_over (space, step, LW_ROW_MEAN, &mean, &high_y, &low_y);
  if (low_y - high_y < space->bottom - space->top - 4 * text_height (space))
    lw_space_take (space, (LwBox) { mean.x, high_y - 1, mean.width, low_y - high_y + 2 });

  lw_curves_minutes (look->curves, step, &n);
  for (guint part = 0; part < n_parts && look->part_names[part] != NULL; part++)
    {
      double end = lw_curves_values (look->curves, step, (int) part)[n - 1];

      draw_line_name (space, step, in, lw_space_y (space, end), part + 1, space->ink,
                      look->part_names[part]);
    }
}

void
lw_space_end_words (LwSpace *space)
{
  const LwCurves *curves = space->look->curves;
  guint columns = space->look->scale->n;
  guint n = curves != NULL ? MIN (lw_curves_n_steps (curves), columns) : 0;
  double axis_words = 0;

  /* Only the axis has taken places so far, besides marks, which are narrow. */
  for (guint i = 0; i < space->n_taken; i++)
    axis_words = MAX (axis_words, space->taken[i].width);
  if (axis_words > 0 && columns > 0 && space->look->scale->width[columns - 1] > APART_FROM * text_height (space))
    axis_words += text_height (space) * APART;
  space->axis_words = axis_words;

  for (guint step = 0; step + space->look->untold < n; step++)
    draw_end_value (space, step, lw_space_words_in (space, step) + (step + 1 == columns ? axis_words : 0));
  if (n > 0)
    draw_line_names (space, n - 1, lw_space_words_in (space, n - 1) + (n == columns ? axis_words : 0));
  lw_space_labels (space, axis_words);
}
