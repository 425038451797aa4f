/* Sentences and numbers of a spread. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-words.h"

#include <math.h>

#include "bench/telling.h"
#include "season/text.h"

#define LEAST_TOLD 0.01     /* of an influence */
#define SURE 2.0            /* standard errors */
#define APART 1.0         /* the same, between two: of points as even as these the true error is half the stated one */
#define TOGETHER_TOLD 0.1   /* what sources do only together, to be told */
#define SECOND_LEAST 1    /* percent: a smaller second source is not named */

char *
lw_steady_say_share (double share,
                     double error)
{
  /* An error is never told as none. */
  int digits = error < 0.00095 ? 2 : 1;

  /* Translators: a share in percent and its standard error */
  return g_strdup_printf (_ ("%.*f ± %.*f %%"), digits, 100 * share, digits, 100 * error);
}

char *
lw_steady_say_amount (LwVarySource source,
                      LwVary       vary)
{
  const char *unit = vary.percent ? "%" : lw_unit_words (lw_vary_row (source)->unit);

  if (!lw_vary_row (source)->steps)
    return g_strdup_printf ("%g %s", vary.sd, unit);

  if (vary.only > 0)
    /* Translators: an amount and its unit; number of a step */
    return g_strdup_printf (_ ("%g %s, in step %u alone"), vary.sd, unit, vary.only);

  /* Translators: an amount and its unit */
  return g_strdup_printf (vary.each_step ? _ ("%g %s, in each step anew") : _ ("%g %s, in all steps alike"), vary.sd, unit);
}

char *
lw_steady_say_aim (const LwWant *want)
{
  g_autofree char *window = lw_outcome_window (want->of, want->low, want->high);

  /* Translators: an outcome and its aim: "Moisture 3.0 to 5.0" */
  return g_strdup_printf (_ ("%s %s"), _ (lw_quantity_row (want->of)->label), window);
}

/* Where it misleads that is said with the number that shows it. */
static char *
say_index (const LwSpreadAim *aim)
{
  double low, high;

  if (!lw_want_limits (&aim->want, &low, &high))
    return g_strdup (_ ("no Ppk: there is no limit to pass"));
  if (isnan (aim->ppk))
    return g_strdup (_ ("no Ppk: it does not vary"));
  if (lw_spread_misleads (aim))
    /* Translators: an index; the share in percent that would be inside of a window if it did not mislead */
    return g_strdup_printf (_ ("Ppk %.2f misleads: not normally distributed, else %.1f %% would be inside"), aim->ppk,
                            100 * aim->normal);

  return g_strdup_printf ("Ppk %.2f", aim->ppk);
}

char *
lw_steady_say_ppk (const LwBatch     *batch,
                   const LwSpreadAim *aim)
{
  g_autofree char *ppk = say_index (aim);
  guint step = aim->want.step;

  if (step + 1 >= batch->n_steps)
    return g_steal_pointer (&ppk);

  /* Translators: number and kind of a step; then an index */
  return g_strdup_printf (_ ("after step %u, %s; %s"), step + 1, _ (lw_kind_row (batch->steps[step].kind)->label), ppk);
}

static int
by_place (const void *a,
          const void *b,
          void       *data)
{
  const LwSpreadAim *aims = data;
  const LwWant *x = &aims[*(const guint *) a].want, *y = &aims[*(const guint *) b].want;

  return x->step != y->step ? (int) x->step - (int) y->step : (int) x->of - (int) y->of;
}

void
lw_steady_order_aims (const LwSpread *spread,
                      guint          *order)
{
  for (guint i = 0; i < spread->n_aims; i++)
    order[i] = i;
  g_qsort_with_data (order, (int) spread->n_aims, sizeof *order, by_place, spread->aims);
}

static int
by_total (const void *a,
          const void *b,
          void       *data)
{
  const LwIndex *indices = data;
  double x = indices[*(const guint *) a].total, y = indices[*(const guint *) b].total;

  return x > y ? -1 : x < y;
}

guint
lw_steady_order_sources (const LwSpread *spread,
                         guint           end,
                         LwQuantity      of,
                         guint          *order)
{
  guint n = 0;

  for (guint s = 0; spread->indices != NULL && s < spread->n_sources; s++)
    if (lw_spread_index (spread, end, of, s)->total >= LEAST_TOLD)
      order[n++] = s;
  g_qsort_with_data (order, (int) n, sizeof *order, by_total, (void *) lw_spread_index (spread, end, of, 0));

  return n;
}

/* What is left over when every source has its own share, where that is more than chance. */
static double
together (const LwSpread *spread,
          guint           end,
          LwQuantity      of)
{
  double sum = 0, variance = 0;

  for (guint s = 0; s < spread->n_sources; s++)
    {
      const LwIndex *index = lw_spread_index (spread, end, of, s);

      sum += MAX (index->first, 0);
      variance += index->first_se * index->first_se;
    }

  return 1 - sum > MAX (TOGETHER_TOLD, SURE * sqrt (variance)) ? 1 - sum : 0;
}

/* The place of the source with the largest share by itself, but for one that is left out; -1: none is left. */
static int
largest (const LwSpread *spread,
         const LwIndex  *indices,
         int             but)
{
  int found = -1;

  for (int s = 0; s < (int) spread->n_sources; s++)
    if (s != but && indices[s].total >= LEAST_TOLD && (found < 0 || indices[s].first > indices[found].first))
      found = s;

  return found;
}

/* Of two that chance could have put in the other order none is called the larger. */
static char *
say_largest (const char     *outcome,
             const LwSpread *spread,
             const LwIndex  *indices,
             int             most)
{
  int second = largest (spread, indices, most);
  const LwIndex *first = &indices[most], *next = second >= 0 ? &indices[second] : NULL;
  const char *label = _ (lw_vary_row (spread->sources[most])->label), *other;

  if (next == NULL || 100 * next->first < SECOND_LEAST)
    /* Translators: an outcome; a source of variation and its share of the outcome's variation */
    return g_strdup_printf (first->first > 0.5 ? _ ("%s: most of the difference comes from %s, %.0f %%.")
                                               : _ ("%s: the largest part of the difference comes from %s, %.0f %%."),
                            outcome, label, 100 * first->first);

  other = _ (lw_vary_row (spread->sources[second])->label);
  if (first->first - next->first < APART * hypot (first->first_se, next->first_se))
    /* Translators: an outcome; two sources of variation, each with its share of the outcome's variation */
    return g_strdup_printf (_ ("%s: the largest parts of the difference come from %s, %.0f %%, and from %s, %.0f %%: too near "
                               "to each other to tell which is larger."),
                            outcome, label, 100 * first->first, other, 100 * next->first);

  /* Translators: an outcome; two sources of variation, each with its share of the outcome's variation */
  return g_strdup_printf (first->first > 0.5
                            ? _ ("%s: most of the difference comes from %s, %.0f %%; then from %s, %.0f %%.")
                            : _ ("%s: the largest part of the difference comes from %s, %.0f %%; then from %s, %.0f %%."),
                          outcome, label, 100 * first->first, other, 100 * next->first);
}

char *
lw_steady_say_sources (const LwSpread *spread,
                       guint           end,
                       LwQuantity      of)
{
  const char *outcome = _ (lw_quantity_row (of)->label);
  const LwIndex *indices = spread->indices != NULL ? lw_spread_index (spread, end, of, 0) : NULL;
  int most = indices != NULL ? largest (spread, indices, -1) : -1;
  g_autofree char *words = NULL;
  double rest;

  if (most < 0)
    /* Translators: an outcome */
    return g_strdup_printf (_ ("%s: it does not vary."), outcome);
  if (indices[most].first < SURE * indices[most].first_se)
    return g_strdup_printf (_ ("%s: no source by itself stands out of what chance does."), outcome);

  words = say_largest (outcome, spread, indices, most);
  rest = together (spread, end, of);
  if (rest == 0)
    return g_steal_pointer (&words);

  /* Translators: a whole sentence, and the share of the variation that several sources bring only together */
  return g_strdup_printf (_ ("%s %.0f %% comes about only where several meet."), words, 100 * rest);
}

char *
lw_steady_say_bands (const LwSpread *spread,
                     LwQuantity      of)
{
  const LwSpan *span = &spread->ends[spread->n_ends - 1].of[of];
  int digits = lw_quantity_row (of)->digits;

  /* Translators: number of samples; where nine in ten of them end, where half of them do, the median */
  return g_strdup_printf (_ ("Of %u samples, nine in ten end between %.*f and %.*f, half between %.*f and %.*f; the median is "
                             "%.*f."),
                          spread->samples, digits, span->q05, digits, span->q95, digits, span->q25, digits, span->q75,
                          digits, span->q50);
}

char *
lw_steady_say_changes (const LwBatch *batch,
                       const GArray  *changes)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < changes->len; i++)
    {
      const LwChange *change = &g_array_index (changes, LwChange, i);
      const LwStep *was = &batch->steps[change->step];
      LwStep is = lw_step_copy (was);
      g_autofree char *told = NULL;

      lw_step_set (&is, change->setting, change->value);
      told = lw_tell_change (was, &is, change->setting);
      lw_step_clear (&is);
      if (words->len > 0)
        g_string_append_c (words, '\n');
      /* Translators: number and kind of a step; a setting before and after: "Step 2, fix in pan: 25 → 24 min" */
      g_string_append_printf (words, _ ("Step %u, %s: %s"), change->step + 1, _ (lw_kind_row (was->kind)->label), told);
    }

  return g_string_free (g_steal_pointer (&words), FALSE);
}

char *
lw_steady_say_found (const LwSteadier *steadier)
{
  if (!steadier->better)
    /* Translators: number of choices of settings that were tried, then shares in percent and a standard error */
    return g_strdup_printf (_ ("Nothing steadier was found among %u choices of settings: %.1f %% inside every aim as it is, "
                               "%.1f %% at best, the difference ± %.1f."),
                            steadier->looked, 100 * steadier->before, 100 * steadier->after, 100 * steadier->gain_se);

  /* Translators: shares in percent and a standard error; the number of samples */
  return g_strdup_printf (_ ("Inside every aim: %.1f → %.1f %%, the difference ± %.1f, by %u samples that were not used to "
                             "choose."),
                          100 * steadier->before, 100 * steadier->after, 100 * steadier->gain_se, steadier->samples);
}
