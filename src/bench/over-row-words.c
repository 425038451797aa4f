/* What a row of a batch laid over says. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-row-words.h"

#include "draw/block.h"
#include "draw/slim.h"
#include "season/text.h"
#include "season/wording.h"

char *
lw_over_say_step (const LwLaid *laid,
                  guint         step)
{
  const LwBatch *batch = lw_laid_batch (laid);
  LwSlimLook look = { .step = &batch->steps[step] };
  g_autofree char *words = NULL;
  gboolean on_weather;

  look.leading = lw_block_leading (laid->season, batch, step, &on_weather);
  words = lw_slim_words (&look);

  /* Translators: a kind of step, then its time and leading setting */
  return g_strdup_printf (_ ("%s, %s"), _ (lw_kind_row (look.step->kind)->label), words);
}

static void
add (GString    *to,
     const char *words)
{
  g_string_append_printf (to, "%s%s", to->len > 0 ? "; " : "", words);
}

char *
lw_over_say_steps (const LwLaid *laid)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < lw_laid_batch (laid)->n_steps; i++)
    {
      g_autofree char *words = lw_over_say_step (laid, i);

      add (all, words);
    }

  return g_string_free (all, FALSE);
}

char *
lw_over_say_gap (const LwLaid *laid,
                 guint         first)
{
  g_autoptr (GString) all = g_string_new (NULL);

  for (guint i = first; i < lw_laid_batch (laid)->n_steps && laid->columns[i] < 0; i++)
    {
      g_autofree char *words = lw_over_say_step (laid, i);

      add (all, words);
    }

  /* Translators: steps of a batch laid over */
  return all->len > 0 ? g_strdup_printf (_ ("Without a match in the batch in hand: %s."), all->str) : g_strdup ("");
}

char *
lw_over_say_missing (const LwLaid  *laid,
                     const LwBatch *in_hand,
                     guint          step)
{
  /* Translators: a batch, and a kind of step of the batch in hand */
  return g_strdup_printf (_ ("%s has no match for step %u, %s."), lw_laid_batch (laid)->name, step + 1,
                          _ (lw_kind_row (in_hand->steps[step].kind)->label));
}

char *
lw_over_say_beyond (const LwLaid *laid,
                    double        begins,
                    double        shown)
{
  double end = begins;
  g_autofree char *before = lw_say_minutes (MAX (-begins, 0)), *after = NULL, *gap = NULL;

  for (guint i = 0; i < lw_laid_batch (laid)->n_steps; i++)
    end += laid->minutes[i];
  after = lw_say_minutes (MAX (end - shown, 0));
  gap = lw_say_minutes (MAX (MAX (-end, begins - shown), 0));

  if (end == 0)
    return g_strdup (_ ("By the clock it is over when the batch in hand begins."));
  if (begins == shown)
    return g_strdup (_ ("By the clock it begins when the batch in hand ends."));
  if (end < 0)
    /* Translators: a time */
    return g_strdup_printf (_ ("By the clock it is over %s before the batch in hand begins."), gap);
  if (begins > shown)
    /* Translators: a time */
    return g_strdup_printf (_ ("By the clock it begins %s after the batch in hand ends."), gap);
  if (begins < 0 && end > shown)
    /* Translators: two times */
    return g_strdup_printf (_ ("By the clock it begins %s before the batch in hand and ends %s after it."), before, after);
  if (begins < 0)
    /* Translators: a time */
    return g_strdup_printf (_ ("By the clock it begins %s before the batch in hand."), before);

  /* Translators: a time */
  return end > shown ? g_strdup_printf (_ ("By the clock it ends %s after the batch in hand."), after) : g_strdup ("");
}

gboolean
lw_over_has_column (const LwLaid *laid,
                    guint         column)
{
  for (guint i = 0; i < lw_laid_batch (laid)->n_steps; i++)
    if (laid->columns[i] == (int) column)
      return TRUE;

  return FALSE;
}

char *
lw_over_say_gaps (const LwLaid  *laid,
                  const LwBatch *in_hand)
{
  GString *all = g_string_new (NULL);
  const LwBatch *batch = lw_laid_batch (laid);

  for (guint i = 0; i < batch->n_steps; i++)
    if (laid->columns[i] < 0 && (i == 0 || laid->columns[i - 1] >= 0))
      {
        g_autofree char *words = lw_over_say_gap (laid, i);

        g_string_append_printf (all, "%s%s", all->len > 0 ? " " : "", words);
      }
  for (guint i = 0; i < in_hand->n_steps; i++)
    if (!lw_over_has_column (laid, i))
      {
        g_autofree char *words = lw_over_say_missing (laid, in_hand, i);

        g_string_append_printf (all, "%s%s", all->len > 0 ? " " : "", words);
      }

  return g_string_free (all, FALSE);
}
