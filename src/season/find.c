/* Searching and sorting. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/find.h"

#include <math.h>
#include <string.h>

void
lw_find_init (LwFind *find)
{
  *find = (LwFind) {
    .from_s = G_MININT64, .until_s = G_MAXINT64, .made = -1, .outcome = -1, .low = -INFINITY, .high = INFINITY,
  };
}

void
lw_find_clear (LwFind *find)
{
  g_strfreev (find->words);
  g_free (find->leaf);
  g_free (find->tea);
  lw_find_init (find);
}

void
lw_find_set (LwFind     *find,
             const char *words,
             const char *leaf,
             const char *tea)
{
  g_autofree char *folded = lw_head_fold (words);

  g_strfreev (find->words);
  g_free (find->leaf);
  g_free (find->tea);
  find->words = g_strsplit_set (folded, " \t", -1);
  find->leaf = g_strstrip (lw_head_fold (leaf));
  find->tea = g_strstrip (lw_head_fold (tea));
}

double
lw_find_number (int              outcome,
                const LwHead    *head,
                const LwOutcome *of)
{
  return outcome == LW_FINISHED_KG ? of->kg_per_kg_fresh * head->fresh_kg
                                   : lw_quantity_of ((LwQuantity) outcome, of);
}

static gboolean
has_words (const LwFind *find,
           const LwHead *head)
{
  for (guint i = 0; find->words != NULL && find->words[i] != NULL; i++)
    if (strstr (head->folded, find->words[i]) == NULL)
      return FALSE;

  return TRUE;
}

LwFindAnswer
lw_find_match (const LwFind    *find,
               const LwHead    *head,
               const LwOutcome *outcome)
{
  double number;

  if (head->when_s < find->from_s || head->when_s >= find->until_s
      || (find->made >= 0 && find->made != head->made)
      || (find->leaf != NULL && strstr (head->leaf_folded, find->leaf) == NULL)
      || (find->tea != NULL && strstr (head->tea_folded, find->tea) == NULL)
      || !has_words (find, head))
    return LW_FIND_NO;

  if (find->outcome < 0 || (isinf (find->low) && isinf (find->high)))
    return LW_FIND_YES;
  if (outcome == NULL)
    return LW_FIND_LATER;

  number = lw_find_number (find->outcome, head, outcome);

  return number >= find->low && number <= find->high ? LW_FIND_YES : LW_FIND_NO;
}

/* -1, 0 or 1; NAN after all numbers, whichever way they go. */
static int
compare_numbers (double   a,
                 double   b,
                 gboolean downwards)
{
  if (isnan (a) || isnan (b))
    return isnan (a) - isnan (b);

  return downwards ? (a < b) - (a > b) : (a > b) - (a < b);
}

int
lw_find_compare (const LwSort    *sort,
                 const LwHead    *a,
                 const LwOutcome *outcome_a,
                 const LwHead    *b,
                 const LwOutcome *outcome_b)
{
  int way = 0;

  switch (sort->by)
    {
    case LW_SORT_OUTCOME:
      return compare_numbers (outcome_a != NULL ? lw_find_number (sort->outcome, a, outcome_a) : NAN,
                              outcome_b != NULL ? lw_find_number (sort->outcome, b, outcome_b) : NAN, sort->downwards);
    case LW_SORT_NAME:
      way = strcmp (a->name_key, b->name_key);
      break;
    case LW_SORT_LEAF:
      way = strcmp (a->leaf_key, b->leaf_key);
      break;
    case LW_SORT_TEA:
      way = strcmp (a->tea_key, b->tea_key);
      break;
    case LW_SORT_MADE:
      way = a->made - b->made;
      break;
    case LW_SORT_DATE:
    default:
      way = (a->when_s > b->when_s) - (a->when_s < b->when_s);
      break;
    }

  return sort->downwards ? -way : way;
}

static gint64
second_of (int year,
           int month,
           int day)
{
  g_autoptr (GDateTime) date = g_date_time_new_utc (year, month, day, 0, 0, 0);

  return g_date_time_to_unix (date);
}

gboolean
lw_find_date (const char *text,
              gint64     *from_s,
              gint64     *until_s)
{
  g_autofree char *plain = g_strstrip (g_strdup (text));
  g_auto (GStrv) parts = g_strsplit (plain, "-", 4);
  guint n = g_strv_length (parts);
  guint64 number[3] = { 0, 1, 1 };

  if (n < 1 || n > 3 || strlen (parts[0]) != 4)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (strlen (parts[i]) > 4 || !g_ascii_string_to_unsigned (parts[i], 10, 1, i == 0 ? 9998 : 31, &number[i], NULL))
      return FALSE;
  if (!g_date_valid_dmy ((GDateDay) number[2], (GDateMonth) number[1], (GDateYear) number[0]))
    return FALSE;

  *from_s = second_of ((int) number[0], (int) number[1], (int) number[2]);
  if (n == 3)
    *until_s = *from_s + 86400;
  else if (n == 2 && number[1] < 12)
    *until_s = second_of ((int) number[0], (int) number[1] + 1, 1);
  else
    *until_s = second_of ((int) number[0] + 1, 1, 1);

  return TRUE;
}
