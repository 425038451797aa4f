/* Rows, words and strengths. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-list.h"

#include <math.h>

#include "draw/words.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/knock-csv.h"
#include "study/reach.h"

#define PALEST 0.15  /* of a shade: what is noticed is seen to be shaded */

LwKnockList *
lw_knock_list_new (LwSeason *season,
                   guint     batch,
                   int       at,
                   GArray   *knocks)
{
  LwKnockList *list = g_new0 (LwKnockList, 1);

  list->season = lw_season_ref (season);
  list->batch = batch;
  list->at = at;
  list->by = -1;
  list->knocks = knocks;
  list->rows = g_array_copy (knocks);
  for (guint i = 0; i < knocks->len; i++)
    for (guint q = 0; q < LW_N_QUANTITIES; q++)
      list->largest[q] = fmax (list->largest[q], fabs (g_array_index (knocks, LwKnock, i).effect[q]));

  return list;
}

void
lw_knock_list_free (LwKnockList *list)
{
  lw_season_unref (list->season);
  g_array_unref (list->knocks);
  g_array_unref (list->rows);
  g_free (list);
}

/* What cannot be computed comes last. */
static int
larger (const void *a,
        const void *b,
        void       *data)
{
  const LwKnockList *list = data;
  double one = ((const LwKnock *) a)->effect[list->by], two = ((const LwKnock *) b)->effect[list->by];

  one = isnan (one) ? -1 : fabs (one);
  two = isnan (two) ? -1 : fabs (two);

  return (one < two) - (one > two);
}

void
lw_knock_list_sort (LwKnockList *list,
                    int          by)
{
  list->by = by;
  g_array_set_size (list->rows, 0);
  g_array_append_vals (list->rows, list->knocks->data, list->knocks->len);
  /* Stable: equal ones stay as in the batch. */
  if (by >= 0)
    g_array_sort_with_data (list->rows, larger, list);
}

const LwKnock *
lw_knock_list_row (const LwKnockList *list,
                   guint              row)
{
  return &g_array_index (list->rows, LwKnock, row);
}

int
lw_knock_list_find (const LwKnockList *list,
                    const LwHandle    *handle)
{
  for (guint i = 0; i < list->rows->len; i++)
    {
      const LwHandle *here = &lw_knock_list_row (list, i)->handle;

      if (here->step == handle->step && here->setting == handle->setting)
        return (int) i;
    }

  return -1;
}

static const LwKindRow *
kind_of (const LwKnockList *list,
         guint              step)
{
  return lw_kind_row (list->season->batches[list->batch]->steps[step].kind);
}

char *
lw_knock_list_step (const LwKnockList *list,
                    guint              row)
{
  guint step = lw_knock_list_row (list, row)->handle.step;

  /* Translators: a step's number, then its kind: "2 fix in pan" */
  return g_strdup_printf (_ ("%u %s"), step + 1, _ (kind_of (list, step)->label));
}

const char *
lw_knock_list_setting (const LwKnockList *list,
                       guint              row)
{
  return _ (lw_setting_row (lw_knock_list_row (list, row)->handle.setting)->label);
}

char *
lw_knock_list_notch (const LwKnockList *list,
                     guint              row)
{
  const LwKnock *knock = lw_knock_list_row (list, row);
  g_autofree char *size = lw_say_setting (knock->handle.setting, fabs (knock->notch));

  return g_strconcat (knock->notch < 0 ? "−" : "+", size, NULL);
}

/* (transfer full) "plus 0.4 % points". */
static char *
tell_change (LwQuantity quantity,
             double     change)
{
  int digits = lw_quantity_row (quantity)->digits;
  g_autofree char *number = NULL;

  if (isnan (change))
    return g_strdup (_ ("cannot be computed"));
  if (change == 0)
    return g_strdup (_ ("no change"));

  if (lw_words_change_rounds_off (quantity, change))
    return g_strdup (_ ("next to no change"));

  number = g_strdup_printf ("%.*f %s", digits, fabs (change), lw_words_change_unit (quantity));
  g_strchomp (number);

  /* Translators: spoken, a number with its unit */
  return g_strdup_printf (change < 0 ? _ ("minus %s") : _ ("plus %s"), number);
}

char *
lw_knock_list_tell (const LwKnockList *list,
                    guint              row,
                    LwQuantity         quantity)
{
  const LwKnock *knock = lw_knock_list_row (list, row);
  g_autofree char *size = lw_say_setting (knock->handle.setting, fabs (knock->notch));
  g_autofree char *notch = g_strdup_printf (knock->notch < 0 ? _ ("minus %s") : _ ("plus %s"), size);
  g_autofree char *change = tell_change (quantity, knock->effect[quantity]);
  /* Translators: a setting, its step's number, by how much it is moved, an outcome and how that changes:
   * "wall of step 2, plus 5 °C: Oxidation plus 0.4 % points" */
  g_autofree char *all = g_strdup_printf (_ ("%s of step %u, %s: %s %s"),
                                          lw_knock_list_setting (list, row), knock->handle.step + 1, notch,
                                          _ (lw_quantity_row (quantity)->label), change);

  if (!lw_knock_list_is_faint (list, row, quantity) || lw_words_change_rounds_off (quantity, knock->effect[quantity]))
    return g_steal_pointer (&all);

  /* Translators: said of an effect, after it */
  return g_strdup_printf (_ ("%s, hardly noticed"), all);
}

char *
lw_knock_list_heading (const LwKnockList *list)
{
  if (list->at < 0)
    return g_strdup (_ ("Knock-on at the batch's end"));

  /* Translators: a step's number and its kind */
  return g_strdup_printf (_ ("Knock-on at the end of step %d, %s"), list->at + 1,
                          _ (kind_of (list, (guint) list->at)->label));
}

gboolean
lw_knock_list_is_faint (const LwKnockList *list,
                        guint              row,
                        LwQuantity         quantity)
{
  return fabs (lw_knock_list_row (list, row)->effect[quantity]) < lw_want_tolerance (quantity);
}

/* By the root, so that one great effect does not make all others look like nothing. */
double
lw_knock_list_share (const LwKnockList *list,
                     guint              row,
                     LwQuantity         quantity)
{
  double effect = lw_knock_list_row (list, row)->effect[quantity];

  if (isnan (effect) || lw_knock_list_is_faint (list, row, quantity))
    return 0;

  return copysign (fmax (sqrt (fabs (effect) / list->largest[quantity]), PALEST), effect);
}

char *
lw_knock_list_csv (const LwKnockList *list)
{
  return lw_knock_csv (list->season->batches[list->batch], list->rows);
}
