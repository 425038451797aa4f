/* Knock-on: the numbers are those of the batch with the notch, to the last bit; they agree with tangents found in
 * other ways; and nothing runs backwards in time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>

#include "leaf/rates.h"
#include "made.h"

static const LwKind six[] = {
  LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_REST, LW_KIND_DRY_SUN, LW_KIND_ROAST,
};

static LwKnock *
find (GArray   *knocks,
      guint     step,
      LwSetting setting)
{
  for (guint i = 0; i < knocks->len; i++)
    {
      LwKnock *knock = &g_array_index (knocks, LwKnock, i);

      if (knock->handle.step == step && knock->handle.setting == setting)
        return knock;
    }

  g_assert_not_reached ();
}

/* One effect of one setting's notch at the end of the last step. */
static double
effect (LwSeason  *season,
        guint      step,
        LwSetting  setting,
        LwQuantity of)
{
  g_autoptr (GArray) knocks = lw_knock_on (season, 0, -1, NULL);

  return find (knocks, step, setting)->effect[of];
}

static void
test_exact (void)
{
  g_autoptr (LwSeason) season = made_season (six, G_N_ELEMENTS (six));
  g_autoptr (GArray) knocks = lw_knock_on (season, 0, -1, NULL);
  g_autoptr (GArray) again = lw_knock_on (season, 0, -1, NULL);
  LwOutcome base = made_end (season, 5, LW_KNOCK_TOLERANCE);
  guint settings = 0;

  for (guint i = 0; i < G_N_ELEMENTS (six); i++)
    settings += lw_kind_row (six[i])->n_settings;
  g_assert_cmpuint (knocks->len, ==, settings);

  for (guint i = 0; i < knocks->len; i++)
    {
      const LwKnock *knock = &g_array_index (knocks, LwKnock, i);
      g_autoptr (LwSeason) moved = lw_season_ref (season);
      LwOutcome end;

      made_set (&moved, knock->handle.step, knock->handle.setting,
                made_get (season, knock->handle.step, knock->handle.setting) + knock->notch);
      end = made_end (moved, 5, LW_KNOCK_TOLERANCE);
      for (guint q = 0; q < LW_N_QUANTITIES; q++)
        {
          g_assert_cmpfloat (knock->effect[q], ==, lw_quantity_of (q, &end) - lw_quantity_of (q, &base));
          g_assert_cmpfloat (knock->effect[q], ==, g_array_index (again, LwKnock, i).effect[q]);
        }
    }
}

static void
test_forward_only (void)
{
  g_autoptr (LwSeason) season = made_season (six, G_N_ELEMENTS (six));

  for (guint at = 0; at < G_N_ELEMENTS (six); at++)
    {
      g_autoptr (GArray) knocks = lw_knock_on (season, 0, (int) at, NULL);
      double own = 0;

      for (guint i = 0; i < knocks->len; i++)
        {
          const LwKnock *knock = &g_array_index (knocks, LwKnock, i);

          for (guint q = 0; q < LW_N_QUANTITIES; q++)
            {
              if (knock->handle.step > at)
                g_assert_cmpfloat (knock->effect[q], ==, 0);
              if (knock->handle.step == at)
                own = fmax (own, fabs (knock->effect[q]));
            }
        }
      g_assert_cmpfloat (own, >, 0);
    }
}

static void
test_notches (void)
{
  g_autoptr (LwSeason) season = made_season (six, G_N_ELEMENTS (six));
  g_autoptr (GArray) knocks = NULL;

  made_set (&season, 0, LW_SET_COVER_PCT, 95);
  made_set (&season, 2, LW_SET_PRESS_KPA, 15);
  made_set (&season, 4, LW_SET_MINUTES, 480);
  knocks = lw_knock_on (season, 0, -1, NULL);

  g_assert_cmpfloat (find (knocks, 0, LW_SET_COVER_PCT)->notch, ==, -5);
  g_assert_cmpfloat (find (knocks, 2, LW_SET_PRESS_KPA)->notch, ==, -0.5);
  g_assert_cmpfloat (find (knocks, 4, LW_SET_MINUTES)->notch, ==, 15);
  g_assert_cmpfloat (find (knocks, 2, LW_SET_MINUTES)->notch, ==, 0.5);
  g_assert_cmpfloat (find (knocks, 1, LW_SET_WALL_C)->notch, ==, 5);
}

/* What the weather says cannot be turned, unless it is given. */
static void
test_weather (void)
{
  g_autoptr (LwSeason) season = made_season (six, G_N_ELEMENTS (six));
  g_autoptr (GArray) before = lw_handles_of (season, 0), after = NULL, given = NULL;
  const LwHour hour = { 24, 60, NAN, 0.5, 20, 0 };

  lw_season_add_weather (season, lw_weather_new_constant ("hall", "Hall", &hour));
  season->batches[0]->weather = g_strdup ("hall");
  after = lw_handles_of (season, 0);
  g_assert_cmpuint (after->len, <, before->len);

  made_set (&season, 0, LW_SET_AIR_C, 24);
  given = lw_handles_of (season, 0);
  g_assert_cmpuint (given->len, ==, after->len + 1);
}

static void
test_cancel (void)
{
  g_autoptr (LwSeason) season = made_season (six, G_N_ELEMENTS (six)), empty = made_season (six, 0);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_assert_null (lw_knock_on (empty, 0, -1, NULL));
  g_cancellable_cancel (cancellable);
  g_assert_null (lw_knock_on (season, 0, -1, cancellable));
}

static const struct
{
  LwKind kind;
  guint step;
  LwSetting setting;
  LwQuantity of;
} tangents[] = {
  { LW_KIND_FIX_PAN, 1, LW_SET_WALL_C, LW_MOISTURE },
  { LW_KIND_FIX_PAN, 1, LW_SET_HOT_AIR_PCT, LW_MOISTURE },
  { LW_KIND_WITHER, 0, LW_SET_AIR_C, LW_MOISTURE },
  { LW_KIND_WITHER, 0, LW_SET_SPREAD_KG_M2, LW_MOISTURE },
  { LW_KIND_ROLL, 2, LW_SET_PRESS_KPA, LW_RUPTURE },
  { LW_KIND_REST, 3, LW_SET_AIR_C, LW_OXIDATION },
};

/* The outcome as a function of one setting, away from where it is by `by`; at a tight tolerance. */
static double
outcome_by (LwSeason *season,
            guint     row,
            double    by)
{
  g_autoptr (LwSeason) moved = lw_season_ref (season);
  LwOutcome end;

  made_set (&moved, tangents[row].step, tangents[row].setting,
            made_get (season, tangents[row].step, tangents[row].setting) + by);
  end = made_end (moved, 3, 1e-9);

  return lw_quantity_of (tangents[row].of, &end);
}

/* A notch's effect is its tangent and its bend, and what is left is smaller than the bend. A black batch: unfixed
 * leaf keeps its oxidation alive. */
static void
test_tangents (void)
{
  for (guint row = 0; row < G_N_ELEMENTS (tangents); row++)
    {
      const LwKind kinds[] = { LW_KIND_WITHER, row < 2 ? LW_KIND_FIX_PAN : LW_KIND_TUMBLE, LW_KIND_ROLL, LW_KIND_REST };
      g_autoptr (LwSeason) season = made_season (kinds, G_N_ELEMENTS (kinds));
      double notch = lw_setting_row (tangents[row].setting)->notch, h = notch / 20;
      double here = outcome_by (season, row, 0);
      double up = outcome_by (season, row, h), down = outcome_by (season, row, -h);
      double tangent = (up - down) / (2 * h), bend = (up - 2 * here + down) / (h * h);
      double got = effect (season, tangents[row].step, tangents[row].setting, tangents[row].of);
      double first = tangent * notch, second = bend * notch * notch / 2;

      g_test_message ("%s, %s: a notch %.5g, tangent %.5g, bend %.3g, left %.2g",
                      lw_setting_row (tangents[row].setting)->id, lw_quantity_row (tangents[row].of)->id,
                      got, first, second, got - first - second);
      g_assert_cmpfloat (fabs (first), >, 1e-3);
      g_assert_cmpfloat (fabs (got - first - second), <=, 0.3 * fabs (second) + 2e-3 * fabs (first) + 1e-4);
    }
}

/* The variational equations of one step, by the classical fourth-order Runge-Kutta method with a short fixed step:
 * no solver of ours, no differences between solved batches. `sense` is the state's derivative by the setting. */
typedef struct
{
  const LwLeaf *leaf;
  LwBoundary *here;   /* a part each */
  LwBoundary *up;     /* with the setting a little higher, and lower */
  LwBoundary *down;
  double by;
} Vary;

static LwBoundary *
boundaries_at (LwSeason  *season,
               LwSetting  setting,
               double     by,
               LwPlan   **plan)
{
  g_autoptr (LwSeason) moved = lw_season_ref (season);
  LwBoundary *boundaries;

  made_set (&moved, 0, setting, made_get (season, 0, setting) + by);
  *plan = lw_plan_new (moved, 0);
  boundaries = g_new (LwBoundary, (*plan)->leaf.n_parts);
  for (guint i = 0; i < (*plan)->leaf.n_parts; i++)
    boundaries[i] = lw_boundary_new (&(*plan)->steps[0], &(*plan)->leaf, &(*plan)->leaf.parts[i]);

  return boundaries;
}

static void
rates_of (const LwBoundary *boundaries,
          const LwState    *states,
          guint             n,
          LwState          *rates)
{
  LwAround around = lw_boundary_at (boundaries, 0);

  lw_rates_meet (boundaries, states, n, &around);
  for (guint i = 0; i < n; i++)
    lw_rates (&boundaries[i], &around, &states[i], &rates[i]);
}

static void
add (double       *to,
     const double *from,
     double        by,
     const double *what,
     gsize         n)
{
  for (gsize k = 0; k < n; k++)
    to[k] = from[k] + by * what[k];
}

/* Rates of the states, and of `sense`: the rates' slope along it and along the setting together. */
static void
vary_rates (const Vary   *vary,
            const double *both,
            double       *rates)
{
  guint parts = vary->leaf->n_parts;
  gsize n = parts * LW_N_STATE;
  g_autofree double *up = g_new (double, n), *down = g_new (double, n), *at = g_new (double, n);

  rates_of (vary->here, (const LwState *) both, parts, (LwState *) rates);
  add (at, both, vary->by, both + n, n);
  rates_of (vary->up, (const LwState *) at, parts, (LwState *) up);
  add (at, both, -vary->by, both + n, n);
  rates_of (vary->down, (const LwState *) at, parts, (LwState *) down);
  for (gsize k = 0; k < n; k++)
    rates[n + k] = (up[k] - down[k]) / (2 * vary->by);
}

static void
vary_step (const Vary *vary,
           double     *both,
           double      dt)
{
  gsize n = 2 * vary->leaf->n_parts * LW_N_STATE;
  g_autofree double *k = g_new (double, 4 * n), *at = g_new (double, n);

  vary_rates (vary, both, k);
  add (at, both, dt / 2, k, n);
  vary_rates (vary, at, k + n);
  add (at, both, dt / 2, k + n, n);
  vary_rates (vary, at, k + 2 * n);
  add (at, both, dt, k + 2 * n, n);
  vary_rates (vary, at, k + 3 * n);
  for (gsize i = 0; i < n; i++)
    both[i] += dt / 6 * (k[i] + 2 * k[n + i] + 2 * k[2 * n + i] + k[3 * n + i]);
}

/* d outcome / d setting at the end of the first step. */
static double
sensitivity (LwSeason  *season,
             LwSetting  setting,
             double     by,
             double     dt,
             LwQuantity of)
{
  g_autoptr (LwPlan) plan = NULL, plan_up = NULL, plan_down = NULL;
  g_autofree LwBoundary *here = boundaries_at (season, setting, 0, &plan);
  g_autofree LwBoundary *up = boundaries_at (season, setting, by, &plan_up);
  g_autofree LwBoundary *down = boundaries_at (season, setting, -by, &plan_down);
  Vary vary = { &plan->leaf, here, up, down, by };
  gsize n = plan->leaf.n_parts * LW_N_STATE;
  g_autofree double *both = g_new0 (double, 2 * n), *at = g_new (double, n);
  LwOutcome high, low;

  for (guint i = 0; i < plan->leaf.n_parts; i++)
    ((LwState *) both)[i] = lw_state_fresh (&plan->leaf);
  for (guint i = 0; i < (guint) round (plan->steps[0].duration_s / dt); i++)
    vary_step (&vary, both, dt);

  add (at, both, by, both + n, n);
  high = lw_outcome_mean (&plan->leaf, (const LwState *) at);
  add (at, both, -by, both + n, n);
  low = lw_outcome_mean (&plan->leaf, (const LwState *) at);

  return (lw_quantity_of (of, &high) - lw_quantity_of (of, &low)) / (2 * by);
}

/* The notch up from here and the notch up to here, from two knock-ons, make a central difference. */
static double
central_knock (LwSeason  *season,
               LwSetting  setting,
               LwQuantity of)
{
  g_autoptr (LwSeason) lower = lw_season_ref (season);
  double notch = lw_setting_row (setting)->notch;

  made_set (&lower, 0, setting, made_get (season, 0, setting) - notch);

  return (effect (season, 0, setting, of) + effect (lower, 0, setting, of)) / (2 * notch);
}

static void
test_variational (void)
{
  static const struct
  {
    LwKind kind;
    double minutes;
    LwSetting setting;
    double by;
    double dt;
    LwQuantity of;
  } rows[] = {
    { LW_KIND_FIX_PAN, 20, LW_SET_WALL_C, 1e-3, 0.1, LW_MOISTURE },
    { LW_KIND_FIX_PAN, 20, LW_SET_WALL_C, 1e-3, 0.1, LW_RUPTURE },
    { LW_KIND_FIX_PAN, 20, LW_SET_AIR_M_S, 1e-5, 0.1, LW_LEAF_TEMP },
    { LW_KIND_WITHER, 240, LW_SET_AIR_C, 1e-4, 2, LW_MOISTURE },
    { LW_KIND_WITHER, 240, LW_SET_HUMIDITY_PCT, 1e-4, 2, LW_UNEVEN },
    { LW_KIND_REST, 60, LW_SET_AIR_C, 1e-4, 2, LW_OXIDATION },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (LwSeason) season = made_season (&rows[i].kind, 1);
      double exact, coarse, knock;

      made_set (&season, 0, LW_SET_MINUTES, rows[i].minutes);
      exact = sensitivity (season, rows[i].setting, rows[i].by, rows[i].dt, rows[i].of);
      coarse = sensitivity (season, rows[i].setting, rows[i].by, 2 * rows[i].dt, rows[i].of);
      knock = central_knock (season, rows[i].setting, rows[i].of);
      g_test_message ("%s, %s: %.6g by the variational equations, %.6g by knock-on",
                      lw_setting_row (rows[i].setting)->id, lw_quantity_row (rows[i].of)->id, exact, knock);

      /* Halving the steps shows the reference to be good; the rest is the notch's third order. */
      g_assert_cmpfloat (fabs (exact - coarse), <=, 1e-3 * fabs (exact));
      g_assert_cmpfloat (fabs (knock - exact), <=, 0.01 * fabs (exact));
    }
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/knock/exact", test_exact);
  g_test_add_func ("/knock/forward-only", test_forward_only);
  g_test_add_func ("/knock/notches", test_notches);
  g_test_add_func ("/knock/weather", test_weather);
  g_test_add_func ("/knock/cancel", test_cancel);
  g_test_add_func ("/knock/tangents", test_tangents);
  g_test_add_func ("/knock/variational", test_variational);

  return g_test_run ();
}
