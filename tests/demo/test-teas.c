/* The demo's finished teas beside the kinds that ship: which batch falls within the aims of its
 * kind, and by how much the others miss. Windows were not drawn around the demo. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-test.h"

#include <math.h>

#include "season/shipped.h"

/* What ends outside its window, of all 34 batches: bare mats roasted in the pan and broke few cells (2025: 4, 7,
 * 10, 13, 16), long rolls, and tea a little too moist or too dry. */
static const struct
{
  int year;
  int batch; /* the number its name begins with */
  LwQuantity of;
  double by; /* above the window, or below it where negative */
} misses[] = {
  { 2025, 4, LW_ROAST, 66.5 },
  { 2025, 5, LW_OXIDATION, 0.75 },
  { 2025, 6, LW_RUPTURE, 3.7 },
  { 2025, 7, LW_RUPTURE, -0.65 },
  { 2025, 7, LW_ROAST, 60.5 },
  { 2025, 8, LW_MOISTURE, 0.08 },
  { 2025, 10, LW_RUPTURE, -2.85 },
  { 2025, 10, LW_ROAST, 126 },
  { 2025, 13, LW_ROAST, 49.8 },
  { 2025, 14, LW_MOISTURE, 0.33 },
  { 2025, 16, LW_RUPTURE, -1.8 },
  { 2025, 16, LW_ROAST, 77.2 },
  { 2026, 4, LW_MOISTURE, -0.05 },
  { 2026, 8, LW_RUPTURE, 4.9 },
  { 2026, 14, LW_ROAST, 5.5 },
  { 2026, 15, LW_MOISTURE, 0.26 },
};

static double
outside (const LwAim *aim,
         double       value)
{
  return value > aim->high ? value - aim->high : value < aim->low ? value - aim->low : 0;
}

static double
told (int        year,
      int        batch,
      LwQuantity of)
{
  for (guint i = 0; i < G_N_ELEMENTS (misses); i++)
    if (misses[i].year == year && misses[i].batch == batch && misses[i].of == of)
      return misses[i].by;

  return 0;
}

/* Returns how many of the kind's aims the batch meets. */
static guint
judge (LwSeason      *season,
       int            year,
       guint          at,
       const LwBatch *kind)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (LwTrack) track = demo_march (season, at);
  LwOutcome end = lw_track_end (track, track->n_steps - 1, -1);
  guint met = 0;

  for (guint i = 0; i < kind->n_aims; i++)
    {
      const LwAim *aim = &kind->aims[i];
      double value = lw_quantity_of (aim->of, &end), by = outside (aim, value);
      double expected = told (year, atoi (batch->name), aim->of);

      g_test_message ("%d %s (%s): %s %.3g, %.3g outside", year, batch->name, kind->name,
                      lw_quantity_row (aim->of)->id, value, by);
      g_assert_cmpfloat (fabs (by - expected), <=, 0.1 * MAX (fabs (expected), 1));
      met += by == 0;
    }

  return met;
}

static void
test_within (void)
{
  static const int years[] = { 2025, 2026 };
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *path = lw_shipped_path (LW_SHIPPED_TEAS);
  g_autoptr (LwSeason) teas = lw_document_load (path, problems);
  guint batches = 0, whole = 0, aims = 0, met = 0;

  g_assert_nonnull (teas);
  for (guint y = 0; y < G_N_ELEMENTS (years); y++)
    {
      g_autoptr (LwSeason) season = demo_load (years[y]);

      for (guint i = 0; i < season->n_batches; i++)
        {
          int kind = lw_season_batch (teas, season->batches[i]->tea);
          guint n;

          g_assert_cmpint (kind, >=, 0);
          n = judge (season, years[y], i, teas->batches[kind]);
          batches++;
          whole += n == teas->batches[kind]->n_aims;
          met += n;
          aims += teas->batches[kind]->n_aims;
        }
    }

  g_test_message ("%u of %u batches meet all aims of their kind; %u of %u aims are met", whole, batches, met, aims);
  g_assert_cmpuint (2 * whole, >, batches);
  g_assert_cmpuint (10 * met, >, 9 * aims);
}

void
demo_add_teas (void)
{
  g_test_add_func ("/demo/teas/within", test_within);
}
