/* Claims, checked by other means than those that chose the sentence. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "claims.h"

#include <math.h>
#include <string.h>

static double
factor (const LwWhyWay *way,
        LwFactorName    name)
{
  for (guint i = 0; i < way->mean.n; i++)
    if (way->mean.factors[i].name == name)
      return way->mean.factors[i].value;

  g_error ("way %u has no factor %u", way->mean.way, name);
}

static const LwWhyWay *
way_of (const LwWhy *why,
        LwWay        way)
{
  for (guint i = 0; i < why->n_ways; i++)
    if (why->ways[i].mean.way == way)
      return &why->ways[i];

  g_error ("no way %u", way);
}

/* No share of the way's, nor its warmth or pull, is less than that of `name`. */
static void
assert_least (const LwWhyWay *way,
              LwFactorName    name)
{
  static const LwFactorName counted[] = {
    LW_FACTOR_WARMTH, LW_FACTOR_ENZYME, LW_FACTOR_MIXED, LW_FACTOR_WATER, LW_FACTOR_LEFT, LW_FACTOR_FILM,
    LW_FACTOR_SURFACE, LW_FACTOR_PULL, LW_FACTOR_STRESS, LW_FACTOR_COOL, LW_FACTOR_HOT, LW_FACTOR_WHOLE, LW_FACTOR_DRY,
  };
  double least = factor (way, name);

  g_assert_cmpfloat (least, <, 1);
  for (guint i = 0; i < way->mean.n; i++)
    for (guint k = 0; k < G_N_ELEMENTS (counted); k++)
      if (way->mean.factors[i].name == counted[k])
        g_assert_cmpfloat (least, <=, way->mean.factors[i].value);
}

static void
assert_free (const LwWhyWay *way)
{
  static const LwFactorName counted[] = { LW_FACTOR_WARMTH, LW_FACTOR_ENZYME, LW_FACTOR_MIXED, LW_FACTOR_WATER,
                                          LW_FACTOR_LEFT, LW_FACTOR_FILM, LW_FACTOR_SURFACE, LW_FACTOR_PULL };

  for (guint i = 0; i < way->mean.n; i++)
    for (guint k = 0; k < G_N_ELEMENTS (counted); k++)
      if (way->mean.factors[i].name == counted[k])
        g_assert_cmpfloat (way->mean.factors[i].value, >, 0.6);
}

/* The leaf's mean was over 80 C at a sample of `step` up to `minute`. */
static gboolean
was_hot (const LwTrack *track,
         guint          step,
         double         minute)
{
  for (guint i = 0; i < track->steps[step]->n && track->steps[step]->time_s[i] <= minute * 60; i++)
    if (lw_track_outcome (track, step, -1, i).leaf_temp_c > 80)
      return TRUE;

  return FALSE;
}

static void
assert_oxidation (const Made  *made,
                  const LwWhy *why,
                  double       per_h)
{
  const LwWhyWay *ox = way_of (why, LW_WAY_OXIDISED);

  switch ((int) why->kind)
    {
    case LW_WHY_OX_STOPPED_HERE:
      g_assert_true (was_hot (made->track, why->step, why->minute));
      G_GNUC_FALLTHROUGH;
    case LW_WHY_OX_STOPPED_EARLIER:
    case LW_WHY_OX_STOPPED:
      g_assert_cmpfloat (per_h, <, 1);
      g_assert_cmpfloat (why->here.enzyme_left_pct, <, 5);
      if (why->kind == LW_WHY_OX_STOPPED_EARLIER)
        g_assert_true (was_hot (made->track, why->step - 1, INFINITY)
                       || (why->step > 1 && was_hot (made->track, why->step - 2, INFINITY)));
      break;
    case LW_WHY_OX_WARMTH_HERE:
    case LW_WHY_OX_WARMTH_EARLIER:
      g_assert_true (was_hot (made->track, why->kind == LW_WHY_OX_WARMTH_HERE ? why->step : why->step - 1,
                              why->kind == LW_WHY_OX_WARMTH_HERE ? why->minute : INFINITY));
      g_assert_cmpfloat (why->here.enzyme_left_pct, <, 5);
      G_GNUC_FALLTHROUGH;
    case LW_WHY_OX_WARMTH:
      g_assert_cmpfloat (way_of (why, LW_WAY_YELLOWED)->per_s, >, ox->per_s);
      break;
    case LW_WHY_OX_FREE:
      assert_free (&why->ways[0]);
      break;
    case LW_WHY_OX_ENZYME:
      assert_least (ox, LW_FACTOR_ENZYME);
      break;
    case LW_WHY_OX_WHOLE:
      assert_least (ox, LW_FACTOR_MIXED);
      break;
    case LW_WHY_OX_DRY:
      assert_least (ox, LW_FACTOR_WATER);
      break;
    case LW_WHY_OX_DONE:
      assert_least (ox, LW_FACTOR_LEFT);
      g_assert_cmpfloat (why->here.oxidation_pct, >, 40);
      break;
    case LW_WHY_OX_COLD:
      assert_least (ox, LW_FACTOR_WARMTH);
      g_assert_cmpfloat (why->here.leaf_temp_c, <, 27);
      break;
    default:
      g_error ("\"%s\" is not of oxidation", why->sentence);
    }
}

static void
assert_water (const Made  *made,
              const LwWhy *why,
              double       per_h)
{
  const LwWhyWay *air = way_of (why, LW_WAY_EVAPORATED);

  switch ((int) why->kind)
    {
    case LW_WHY_WATER_STEAM:
      g_assert_cmpfloat (made->plan->steps[why->step].steam_w_m2k, >, 0);
      G_GNUC_FALLTHROUGH;
    case LW_WHY_WATER_GAINED:
      g_assert_cmpfloat (per_h, <, 0);
      break;
    case LW_WHY_WATER_FREE:
      assert_free (air);
      break;
    case LW_WHY_WATER_DRY:
      assert_least (air, LW_FACTOR_WATER);
      break;
    case LW_WHY_WATER_PULL:
      assert_least (air, LW_FACTOR_PULL);
      break;
    case LW_WHY_WATER_FILM:
      assert_least (air, LW_FACTOR_FILM);
      break;
    case LW_WHY_WATER_SURFACE:
      assert_least (air, LW_FACTOR_SURFACE);
      break;
    default:
      g_error ("\"%s\" is not of water", why->sentence);
    }
}

static void
assert_strongest (const LwWhy *why,
                  LwWay        way)
{
  for (guint i = 0; i < why->n_ways; i++)
    g_assert_cmpfloat (fabs (way_of (why, way)->per_s), >=, fabs (why->ways[i].per_s));
}

static void
assert_rupture (const Made  *made,
                const LwWhy *why,
                double       per_h)
{
  switch ((int) why->kind)
    {
    case LW_WHY_RUPTURE_DONE:
      g_assert_cmpfloat (why->here.rupture_pct, >, 70);
      break;
    case LW_WHY_RUPTURE_STILL:
      g_assert_cmpfloat (per_h, <, 0.1);
      g_assert_cmpfloat (made->plan->steps[why->step].press_kpa, ==, 0);
      break;
    case LW_WHY_RUPTURE_DRY:
      assert_least (way_of (why, LW_WAY_ROLLED), LW_FACTOR_WATER);
      G_GNUC_FALLTHROUGH;
    case LW_WHY_RUPTURE_ROLL:
      assert_strongest (why, LW_WAY_ROLLED);
      break;
    case LW_WHY_RUPTURE_HEAT:
      assert_strongest (why, LW_WAY_HEATED);
      break;
    case LW_WHY_RUPTURE_WILT:
      assert_strongest (why, LW_WAY_WILTED);
      break;
    default:
      g_error ("\"%s\" is not of rupture", why->sentence);
    }
}

static void
assert_rest (const Made  *made,
             const LwWhy *why,
             double       per_h)
{
  switch ((int) why->kind)
    {
    case LW_WHY_ENZYME_GONE:
      g_assert_cmpfloat (why->here.enzyme_left_pct, <, 5);
      break;
    case LW_WHY_ENZYME_KEEPS:
      g_assert_cmpfloat (per_h, <, 0.2);
      break;
    case LW_WHY_ENZYME_HEAT:
      assert_strongest (why, LW_WAY_DENATURED);
      break;
    case LW_WHY_ENZYME_AGE:
      assert_strongest (why, LW_WAY_AGED);
      break;
    case LW_WHY_ROAST_COLD:
      g_assert_cmpfloat (per_h, <, 0.05);
      G_GNUC_FALLTHROUGH;
    case LW_WHY_ROAST_COOL:
      assert_least (&why->ways[0], LW_FACTOR_WARMTH);
      break;
    case LW_WHY_ROAST_WET:
      assert_least (&why->ways[0], LW_FACTOR_DRY);
      break;
    case LW_WHY_ROAST_WALL:
      assert_strongest (why, LW_WAY_TOUCHED);
      break;
    case LW_WHY_ROAST_LEAF:
      assert_strongest (why, LW_WAY_ROASTED);
      g_assert_cmpfloat (per_h, >, 10);
      break;
    default:
      g_error ("\"%s\" is of nothing asked", why->sentence);
    }
}

void
claims_assert (const Made  *made,
               const LwWhy *why,
               double       per_h)
{
  static void (*const checks[LW_N_RATES]) (const Made *, const LwWhy *, double) = {
    assert_oxidation, assert_water, assert_rupture, assert_rest, assert_rest,
  };

  g_assert_null (strpbrk (why->sentence, "{}"));
  checks[why->rate] (made, why, per_h);
}
