/* The batch sheet: what was planned and what was made, the weigh-ins beside the model, notes, and lines to write the
 * next batch on. Blocks of rows that flow from page to page. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/card-private.h"
#include "draw/paragraph.h"
#include "draw/words.h"
#include "season/measured.h"
#include "season/text.h"
#include "season/wording.h"

#define BETWEEN 8.0
#define LINE 20.0        /* from line to line, to write on */
#define LABEL 0.30       /* of the width: the first column */
#define N_CELLS 4

static double
size_of (void)
{
  return 1.15 * lw_card_figure (LW_CARD_NEAR_METRES) / lw_paragraph_figure (FALSE);
}

/* Cells of one row: the first wide, the others share the rest. */
static void
cell (const LwCard *card,
      guint         i,
      double       *x,
      double       *width)
{
  double whole = lw_card_width (card), first = LABEL * whole;
  double other = (whole - first) / (N_CELLS - 1) - BETWEEN;

  *x = LW_CARD_MARGIN + (i == 0 ? 0 : first + BETWEEN + (i - 1) * (other + BETWEEN));
  *width = i == 0 ? first : other;
}

/* Lays out a row of words; `pages` NULL: measures. */
static double
put_cells (const LwCard      *card,
           LwPages           *pages,
           double             y,
           gboolean           bold,
           const char *const *words)
{
  double height = 0;

  for (guint i = 0; i < N_CELLS; i++)
    {
      g_autofree char *bound = lw_card_bind_figures (g_strdup (words[i]), FALSE);
      double x, width, here;

      cell (card, i, &x, &width);
      here = lw_pages_words (pages, x, y, width, size_of (), bold, bound);
      height = MAX (height, here);
    }

  return height;
}

/* A place for `height` at y or on the next page. */
static double
make_room (LwCard *card,
           double  y,
           double  height)
{
  return y + height <= lw_card_bottom (card) ? y : lw_card_turn_page (card);
}

static double
put_row (LwCard            *card,
         double             y,
         gboolean           bold,
         const char *const *words)
{
  y = make_room (card, y, put_cells (card, NULL, 0, bold, words) + 3);

  return y + put_cells (card, card->pages, y, bold, words) + 3;
}

/* A text of any length, a paragraph or a line at a time. */
static double
put_text (LwCard     *card,
          double      y,
          const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      double height = lw_pages_words (NULL, 0, 0, lw_card_width (card), size_of (), FALSE, lines[i]);

      y = make_room (card, y, height);
      y += lw_pages_words (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), size_of (), FALSE, lines[i]);
    }

  return y + 3;
}

/* The windows at a step's end, or of the finished tea; "" if there is none. */
static char *
say_aims (const LwAim *aims,
          guint        n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      const LwAim *aim = &aims[i];
      const char *name = _ (lw_quantity_row (aim->of)->label);
      g_autofree char *low = isfinite (aim->low) ? lw_words_value (aim->of, aim->low) : NULL;
      g_autofree char *high = isfinite (aim->high) ? lw_words_value (aim->of, aim->high) : NULL;

      if (text->len > 0)
        g_string_append (text, ", ");
      if (low != NULL && high != NULL)
        /* Translators: an aim: "Moisture 58 % to 66 %" */
        g_string_append_printf (text, _ ("%s %s to %s"), name, low, high);
      else if (low != NULL)
        g_string_append_printf (text, _ ("%s at least %s"), name, low);
      else
        g_string_append_printf (text, _ ("%s at most %s"), name, high);
    }

  return g_string_free (text, FALSE);
}

/* The model's value for the weigh-in, in the weigh-in's own unit, or where the wall is set; NAN where there is none. */
static double
model_of (const LwCard    *card,
          guint            step,
          const LwWeighIn *weigh_in)
{
  const LwStep *at = &card->batch->steps[step];
  int quantity = lw_measure_row (weigh_in->of)->quantity;
  LwOutcome outcome;
  double value;

  if (weigh_in->of == LW_WALL_C)
    return lw_kind_setting (at->kind, LW_SET_WALL_C) != NULL ? lw_step_get (at, LW_SET_WALL_C) : NAN;

  if (quantity < 0 || step >= card->track->n_steps
      || weigh_in->minute > lw_step_get (at, LW_SET_MINUTES) + 1e-6
      || !lw_measured (weigh_in, (LwQuantity) quantity, card->batch->fresh_kg, lw_card_moisture (card), 0, &value))
    return NAN;

  outcome = lw_track_outcome_at (card->track, step, -1, 60 * weigh_in->minute);
  value = lw_quantity_of ((LwQuantity) quantity, &outcome);

  return weigh_in->of == LW_WEIGHED_KG ? value * card->batch->fresh_kg + weigh_in->tare_kg : value;
}

static char *
say_measured (const LwWeighIn *weigh_in,
              double           value,
              gboolean         with_sign)
{
  const LwMeasureRow *row = lw_measure_row (weigh_in->of);
  int digits = weigh_in->of == LW_WEIGHED_KG ? 2 : 1;
  gboolean none = fabs (value) < 0.5 * pow (10, -digits);
  const char *sign = !with_sign || none ? "" : value < 0 ? "−" : "+";

  if (isnan (value))
    return g_strdup ("–");

  return g_strdup_printf ("%s%.*f %s", sign, digits, with_sign ? fabs (value) : value, lw_unit_words (row->unit));
}

static double
put_weigh_in (LwCard          *card,
              double           y,
              guint            step,
              const LwWeighIn *weigh_in)
{
  double model = model_of (card, step, weigh_in);
  g_autofree char *when = lw_say_minutes (weigh_in->minute);
  g_autofree char *what = g_strdup_printf ("%s, %s", _ (lw_measure_row (weigh_in->of)->label), when);
  g_autofree char *measured = say_measured (weigh_in, weigh_in->value, FALSE);
  g_autofree char *computed = say_measured (weigh_in, model, FALSE);
  g_autofree char *off = say_measured (weigh_in, weigh_in->value - model, TRUE);
  const char *words[] = { what, measured, computed, off };

  y = put_row (card, y, FALSE, words);

  return weigh_in->note != NULL ? put_text (card, y, weigh_in->note) : y;
}

/* A line under each cell, to write on, each with what belongs there. */
static double
put_lines (LwCard            *card,
           double             y,
           const char *const *words)
{
  double height = put_cells (card, NULL, 0, FALSE, words);

  y = make_room (card, y, LINE + height + 3);
  for (guint i = 0; i < N_CELLS; i++)
    {
      double x, width;

      cell (card, i, &x, &width);
      lw_pages_rule (card->pages, x, y + LINE - 2, width, LW_HAIRLINE);
    }

  return y + LINE + put_cells (card, card->pages, y + LINE, FALSE, words) + 3;
}

static void
say_lines (gboolean     made,
           const char **lines)
{
  lines[0] = made ? _ ("next: time") : _ ("made: time");
  lines[1] = _ ("heat or pressure");
  lines[2] = _ ("weight");
  lines[3] = _ ("seen, smelt");
}

/* A step that was made, or is to be: its row of words, what was noted and weighed, and lines for the next time. */
static double
put_step (LwCard            *card,
          double             y,
          guint              i,
          gboolean           with_aims,
          const char *const *words)
{
  const LwStep *step = &card->batch->steps[i];
  g_autofree char *aims = say_aims (step->aims, step->n_aims);
  const char *lines[N_CELLS];

  say_lines (card->batch->made, lines);
  y = make_room (card, y, put_cells (card, NULL, 0, FALSE, words) + LINE + 30);
  lw_pages_rule (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), LW_HAIRLINE);
  y = put_row (card, y + 3, FALSE, words);
  if (with_aims && aims[0] != '\0')
    {
      /* Translators: %s lists windows: "Moisture 58 % to 66 %" */
      g_autofree char *told = g_strdup_printf (_ ("Aimed at: %s"), aims);

      y = put_text (card, y, told);
    }
  if (step->note != NULL)
    y = put_text (card, y, step->note);
  for (guint k = 0; k < step->n_weigh_ins; k++)
    y = put_weigh_in (card, y, i, &step->weigh_ins[k]);

  return put_lines (card, y, lines);
}

/* Without a plan: beside what was made stands what was aimed at. */
static double
put_alone (LwCard *card,
           double  y,
           guint   i)
{
  const LwCardRow *row = &g_array_index (card->rows, LwCardRow, i);
  g_autofree char *set = g_strdup_printf ("%s · %s\n%s", row->time, row->leading, row->settings);
  const LwStep *step = &card->batch->steps[i];
  g_autofree char *aims = say_aims (step->aims, step->n_aims), *end = NULL;
  gboolean made = card->batch->made;
  const char *words[] = { row->name, made ? aims : set, made ? set : "", "" };

  if (i < card->track->n_steps)
    {
      LwOutcome outcome = lw_track_end (card->track, i, -1);
      g_autofree char *moisture = lw_words_value (LW_MOISTURE, outcome.moisture_wb_pct);

      end = g_strdup_printf ("%s\n%s", row->weight, moisture);
      words[3] = end;
    }

  return put_step (card, y, i, !made, words);
}

/* A step that was planned and not made. */
static double
put_left_out (LwCard             *card,
              const LwRecordPlan *plan,
              double              y,
              guint               step)
{
  g_autofree char *set = lw_record_say_step (&plan->side, step);
  LwKind kind = plan->side.batch->steps[step].kind;
  const char *words[] = { _ (lw_kind_row (kind)->label), set, _ ("left out"), "" };

  y = make_room (card, y, put_cells (card, NULL, 0, FALSE, words) + 6);
  lw_pages_rule (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), LW_HAIRLINE);

  return put_row (card, y + 3, FALSE, words);
}

static double
put_pair (LwCard             *card,
          const LwRecordPlan *plan,
          double              y,
          const LwPair       *pair)
{
  g_autofree char *was = NULL, *is = NULL, *change = NULL;

  if (pair->of[1] < 0)
    return put_left_out (card, plan, y, (guint) pair->of[0]);

  is = lw_record_say_step (card, (guint) pair->of[1]);
  if (pair->of[0] >= 0)
    {
      was = lw_record_say_step (&plan->side, (guint) pair->of[0]);
      change = lw_record_say_change (plan, card, pair);
    }

  return put_step (card, y, (guint) pair->of[1], TRUE, (const char *const[]) {
    g_array_index (card->rows, LwCardRow, pair->of[1]).name, was != NULL ? was : _ ("not planned"), is,
    change != NULL ? change : "",
  });
}

/* The finished tea: what it was to be, what it comes to, and as planned. */
static double
put_finished (LwCard             *card,
              const LwRecordPlan *plan,
              double              y)
{
  g_autofree char *aims = say_aims (card->batch->aims, card->batch->n_aims), *told = NULL, *is = NULL, *was = NULL;
  const char *words[] = { _ ("Finished tea"), "", "", "" };

  if (aims[0] == '\0')
    return y;

  is = lw_record_say_finished (card, card->batch);
  was = plan != NULL ? lw_record_say_finished (&plan->side, card->batch) : NULL;
  words[plan != NULL ? 2 : 3] = is;
  if (plan != NULL)
    words[1] = was;
  else if (card->batch->made)
    words[1] = aims;
  told = g_strdup_printf (_ ("Aimed at: %s"), aims);

  y = make_room (card, y + 6, put_cells (card, NULL, 0, FALSE, words) + LINE);
  lw_pages_rule (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), LW_HAIRLINE);

  y = put_row (card, y + 3, FALSE, words);

  return words[1] == aims ? y : put_text (card, y, told);
}

static double
put_heads (LwCard             *card,
           const LwRecordPlan *plan,
           double              y)
{
  gboolean made = card->batch->made;
  const char *heads[] = { _ ("Step"), made ? _ ("Aimed at") : _ ("Planned"), _ ("Made"), _ ("Computed at its end") };
  const char *weigh_heads[] = { _ ("Weigh-in"), _ ("measured"), _ ("computed"), _ ("difference") };

  if (plan != NULL)
    {
      heads[1] = _ ("Planned");
      heads[3] = _ ("Made less planned");
    }
  y = put_row (card, y, TRUE, heads);
  if (plan != NULL)
    y = put_text (card, y, _ ("then: weight and moisture at the step's end, computed"));

  return made || plan != NULL ? put_row (card, y, FALSE, weigh_heads) : y;
}

void
lw_card_record (LwCard *card)
{
  g_autoptr (LwRecordPlan) plan = lw_record_plan_new (card);
  double y;

  card->small = size_of ();
  y = lw_card_turn_page (card);
  y += lw_pages_words (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), size_of (), FALSE, card->about) + 6;
  y = put_heads (card, plan, y);

  for (guint i = 0; plan == NULL && i < card->batch->n_steps; i++)
    y = put_alone (card, y, i);
  for (guint i = 0; plan != NULL && i < plan->pairs->len; i++)
    y = put_pair (card, plan, y, &g_array_index (plan->pairs, LwPair, i));
  y = put_finished (card, plan, y);

  if (card->batch->note != NULL)
    y = put_text (card, y + 6, card->batch->note);

  /* The rest of the page is for notes. */
  for (y += LINE; y < lw_card_bottom (card) - 2; y += LINE)
    lw_pages_rule (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), LW_HAIRLINE);
}
