/* The table of what may differ. Its spreads are wide enough to let the weigh-ins speak and narrow enough to hold
 * what they say nothing of. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/fit-what.h"

#include <math.h>
#include <string.h>

#include "season/leaf-field.h"
#include "season/text.h"

#define ASSUMED "assumed"
#define LAW(member) (offsetof (LwLaw, member) / sizeof (double))
#define OF_LAW(symbol, label, meaning, member, usual, spread) \
  { symbol, label, meaning, "", LAW (member), LW_FIT_OF_ALL, TRUE, usual, spread, ASSUMED }
#define MOST_TORN 0.6 /* share of the leaf; assumed */

static const LwFitRow rows[LW_N_FIT_WHAT] = {
  [LW_FIT_SKIN] = OF_LAW ("g-cut", N_ ("openness of the skin"), N_ ("It withers and dries faster."), cut_m_s, TRUE, 0.3),
  [LW_FIT_OXIDATION] = OF_LAW ("k-ox", N_ ("oxidation speed"), N_ ("It reddens faster."), oxidise_s, TRUE, 0.3),
  [LW_FIT_SOFTENING] = OF_LAW ("k-heat", N_ ("softening by heat"), N_ ("It softens sooner in the pan."),
                               heat_s, TRUE, 0.3),
  [LW_FIT_ROLLING] = OF_LAW ("k-roll", N_ ("answer to rolling"), N_ ("It yields more to the same rolling."),
                             roll_s_kpa, TRUE, 0.3),
  [LW_FIT_MOISTURE] = { "fresh-moisture", N_ ("fresh moisture"), N_ ("It comes wetter from the bush."),
                        N_ ("% points"), -1, LW_FIT_OF_LEAF, FALSE, TRUE, 1.5, ASSUMED },
  [LW_FIT_TORN] = { "torn", N_ ("torn share"), N_ ("More of it is torn when it is plucked."), "", -1, LW_FIT_OF_ALL,
                    TRUE, TRUE, 0.3, ASSUMED },
  [LW_FIT_SOFT] = OF_LAW ("soft", N_ ("rolling after heat"), N_ ("Softened leaf yields more to rolling."),
                          soft, FALSE, 0.3),
  [LW_FIT_WILTING] = OF_LAW ("k-wilt", N_ ("rupture by wilting"), N_ ("A long wither mixes more of its juices."),
                             wilt_s, FALSE, 0.3),
  [LW_FIT_ENZYME] = OF_LAW ("k-inact", N_ ("loss of enzyme in heat"), N_ ("It is fixed sooner."),
                            inactivate_s, FALSE, 0.3),
  [LW_FIT_BREAKING] = OF_LAW ("k-break", N_ ("breaking"), N_ ("It crumbles more where it is worked dry."),
                              break_s_kpa, FALSE, 0.4),
  [LW_FIT_FALLING] = OF_LAW ("x-fall", N_ ("slow end of drying"), N_ ("The last water goes more slowly."),
                             falling_water, FALSE, 0.2),
  [LW_FIT_SUN] = OF_LAW ("sun-absorbed", N_ ("sunlight taken up"), N_ ("The sun warms and dries it more."),
                         sun_absorbed, FALSE, 0.15),
  [LW_FIT_CONTACT] = { "pan-contact", N_ ("pan contact"), N_ ("Pan and drum pass on more heat."), "", -1,
                       LW_FIT_OF_VESSEL, TRUE, FALSE, 0.2, ASSUMED },
  [LW_FIT_BATCH_MOISTURE] = { "batch-moisture", N_ ("fresh moisture of the batch"),
                              N_ ("The batch was wetter than its leaf usually is."), N_ ("% points"), -1,
                              LW_FIT_OF_BATCH, FALSE, FALSE, 1, ASSUMED },
  [LW_FIT_BATCH_WEIGHT] = { "batch-weight", N_ ("fresh weight of the batch"),
                            N_ ("The batch was heavier than was noted."), N_ ("kg"), -1, LW_FIT_OF_BATCH, FALSE, FALSE,
                            0.02, "the scale's usual uncertainty (season/quantity.c)" },
};

const LwFitRow *
lw_fit_row (LwFitWhat what)
{
  return &rows[what];
}

int
lw_fit_find (const char *id)
{
  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    if (strcmp (rows[i].id, id) == 0)
      return (int) i;

  return -1;
}

guint
lw_fit_usual (void)
{
  guint bits = 0;

  for (guint i = 0; i < LW_N_FIT_WHAT; i++)
    bits |= rows[i].usual ? LW_FIT_BIT (i) : 0;

  return bits;
}

/* The part with the most torn cells; -1 where no part stands apart. */
static int
torn_part (const LwProfile *profile)
{
  int torn = 0;
  guint as_much = 0;

  if (profile->n_parts < 2)
    return -1;

  for (guint i = 1; i < profile->n_parts; i++)
    if (profile->parts[i].ruptured > profile->parts[torn].ruptured)
      torn = (int) i;
  for (guint i = 0; i < profile->n_parts; i++)
    as_much += profile->parts[i].ruptured >= profile->parts[torn].ruptured ? 1 : 0;

  return as_much == 1 ? torn : -1;
}

static void
tear (LwProfile *profile,
      double     change)
{
  int torn = torn_part (profile);
  double was, rest;

  if (torn < 0)
    return;

  was = profile->parts[torn].share;
  rest = (1 - was * exp (change)) / (1 - was);
  for (guint i = 0; i < profile->n_parts; i++)
    profile->parts[i].share *= (int) i == torn ? exp (change) : rest;
}

static void
press_on_wall (LwBatch *batch,
               double   change)
{
  for (guint i = 0; i < batch->n_steps; i++)
    if (lw_kind_setting (batch->steps[i].kind, LW_SET_WALL_W_M2K) != NULL)
      lw_step_set (&batch->steps[i], LW_SET_WALL_W_M2K,
                   exp (change) * lw_step_get (&batch->steps[i], LW_SET_WALL_W_M2K));
}

void
lw_fit_apply (LwFitWhat  what,
              double     change,
              LwProfile *profile,
              LwBatch   *batch)
{
  const LwFitRow *row = &rows[what];

  if (row->field >= 0 && profile != NULL)
    lw_profile_set_law (profile, (guint) row->field,
                        exp (change) * lw_law_get (&profile->law, (guint) row->field));
  if (what == LW_FIT_MOISTURE && profile != NULL)
    profile->fresh_moisture_pct += change;
  if (what == LW_FIT_TORN && profile != NULL)
    tear (profile, change);

  /* A batch whose own moisture was noted differs from its leaf's as much as before. */
  if (batch == NULL)
    return;
  if (what == LW_FIT_MOISTURE || what == LW_FIT_BATCH_MOISTURE)
    batch->fresh_moisture_pct += change;
  if (what == LW_FIT_CONTACT)
    press_on_wall (batch, change);
  if (what == LW_FIT_BATCH_WEIGHT)
    batch->fresh_kg += change;
}

double
lw_fit_value (LwFitWhat        what,
              const LwProfile *profile)
{
  const LwFitRow *row = &rows[what];
  int torn;

  if (row->field >= 0)
    return lw_law_get (&profile->law, (guint) row->field);
  if (what == LW_FIT_MOISTURE)
    return profile->fresh_moisture_pct;

  torn = what == LW_FIT_TORN ? torn_part (profile) : -1;

  return torn >= 0 ? profile->parts[torn].share : NAN;
}

const char *
lw_fit_unit (LwFitWhat what)
{
  if (rows[what].field >= 0)
    return strcmp (lw_law_fields ()[rows[what].field].unit, "1") != 0 ? lw_law_fields ()[rows[what].field].unit : "";
  if (what == LW_FIT_MOISTURE)
    return lw_leaf_field_row (LW_LEAF_MOISTURE)->unit;

  return rows[what].unit;
}

void
lw_fit_narrow (LwFitWhat        what,
               const LwProfile *profile,
               double          *low,
               double          *high)
{
  double least = 0, most = INFINITY, value = lw_fit_value (what, profile);

  if (!(value > 0))
    return;

  if (rows[what].field >= 0)
    {
      least = lw_law_fields ()[rows[what].field].low;
      most = lw_law_fields ()[rows[what].field].high;
    }
  else if (what == LW_FIT_MOISTURE)
    {
      lw_leaf_field_range (LW_LEAF_MOISTURE, &least, &most);
    }
  else
    {
      most = fmax (MOST_TORN, value);
    }

  *low = fmax (*low, rows[what].factor ? log (least / value) : least - value);
  *high = fmin (*high, rows[what].factor ? log (most / value) : most - value);
}
