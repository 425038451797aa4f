/* How long knock-on, reaching and spreads take: batches of four and of six steps. Prints medians; asserts nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <stdio.h>
#include <stdlib.h>

#include "season/edit.h"
#include "study/spread.h"

#include "../plain-season.h"

#define MOST_TIMES 21
#define SPREAD_AIM_MS 3000.0

typedef void (*Work) (LwSeason *season);

static const LwKind six[] = {
  LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_REST, LW_KIND_DRY_SUN, LW_KIND_ROAST,
};

static const LwKind four[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };

static void
knock (LwSeason *season)
{
  g_autoptr (GArray) knocks = lw_knock_on (season, 0, -1, NULL);
}

/* Four outcomes held while the wither is three hours longer, or as near as may be. */
static void
reach (LwSeason *season)
{
  g_autoptr (GArray) wants = g_array_new (FALSE, FALSE, sizeof (LwWant)), free = lw_reach_free (season, 0, 0);
  g_autoptr (LwSeason) longer = lw_edit_set (season, 0, 0, LW_SET_MINUTES, 1260);
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  g_autoptr (LwReached) reached = NULL;
  static const struct { guint step; LwQuantity of; } held[] = {
    { 1, LW_MOISTURE }, { 2, LW_RUPTURE }, { 3, LW_MOISTURE }, { 3, LW_OXIDATION },
  };

  for (guint i = 0; i < G_N_ELEMENTS (held); i++)
    {
      LwOutcome end = lw_track_end (track, held[i].step, -1);
      double value = lw_quantity_of (held[i].of, &end);
      LwWant want = { held[i].step, held[i].of, value, value, 1 };

      g_array_append_val (wants, want);
    }
  g_array_set_size (free, MIN (free->len, 8));
  reached = lw_reach (longer, 0, wants, free, NULL, NULL);
}

static void
spread_by (LwSeason *season,
           guint     rows,
           guint     points,
           guint     threads)
{
  g_autoptr (LwSpread) spread = NULL;
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  ask.rows = rows;
  ask.points = points;
  ask.threads = threads;
  spread = lw_spread_new (season, 0, &ask, NULL);
}

static void
spread (LwSeason *season)
{
  spread_by (season, 0, 0, 0);
}

static void
spread_alone (LwSeason *season)
{
  spread_by (season, 0, 0, 1);
}

static void
spread_all (LwSeason *season)
{
  spread_by (season, 128, 24, 0);
}

static int
by_size (const void *a,
         const void *b)
{
  gint64 x = *(const gint64 *) a, y = *(const gint64 *) b;

  return x < y ? -1 : x > y;
}

/* The median, ms. */
static double
tell (const char *what,
      Work        work,
      LwSeason   *season,
      guint       times)
{
  gint64 us[MOST_TIMES];

  for (guint i = 0; i < times; i++)
    {
      gint64 begin = g_get_monotonic_time ();

      work (season);
      us[i] = g_get_monotonic_time () - begin;
    }
  qsort (us, times, sizeof *us, by_size);
  printf ("%-48s median %6.1f ms, least %6.1f ms\n", what, us[times / 2] / 1e3, us[0] / 1e3);

  return us[times / 2] / 1e3;
}

int
main (void)
{
  g_autoptr (LwSeason) long_batch = plain_season (six, G_N_ELEMENTS (six));
  g_autoptr (LwSeason) short_batch = plain_season (four, G_N_ELEMENTS (four));
  double all, one;

  gsl_set_error_handler_off ();
  tell ("knock-on, six steps, all settings", knock, long_batch, 21);
  tell ("reach, four wants, eight free settings", reach, short_batch, 21);
  all = tell ("spread, four steps, 2000 samples", spread, short_batch, 5);
  one = tell ("the same by one thread", spread_alone, short_batch, 3);
  tell ("the same with bands and sources (128 rows)", spread_all, short_batch, 3);
  printf ("spread: %.2f of the %.0f s it may take; %.2f times as fast as one thread, on %u processors\n",
          all / SPREAD_AIM_MS, SPREAD_AIM_MS / 1e3, one / all, g_get_num_processors ());

  return 0;
}
