/* The table of sentences: the first row that holds is said. A row may only claim what its conditions
 * ask for; tests provoke each. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/why-sentence.h"

#include <math.h>
#include <string.h>

#include "season/text.h"
#include "season/wording.h"

#define LITTLE_PCT 5.0     /* of the enzyme: hardly any */
#define MOST_PCT 70.0      /* of the cells: few are whole */
#define FREE 0.6           /* above this nothing holds back much */
#define ANY -1

typedef enum { PACE_ANY, PACE_STILL, PACE_GOING, PACE_BACKWARD } Pace;

/* What the rows look at. */
typedef struct
{
  const LwWhy *why;
  const LwPlan *plan;
  const LwTrack *track;
  const LwWhyWay *way;     /* the one spoken of */
  int holds;               /* LwFactorName, ANY: none */
  double held;             /* its value */
  gboolean hot;            /* the leaf was over LW_HOT_C before, and has lost most of its enzyme since */
  guint hot_step;
  double hot_minute;
} Facts;

typedef struct
{
  LwWhyKind kind;
  LwRate rate;
  int way;
  int holds;
  Pace pace;
  gboolean (*holds_too) (const Facts *facts);
  const char *text;
} Row;

static gboolean
without_enzyme (const Facts *f)
{
  const LwFactors *mean = &f->way->mean;
  double with = f->way->apart * mean->base;

  for (guint i = 0; i < mean->n; i++)
    if (mean->factors[i].name != LW_FACTOR_ENZYME)
      with *= mean->factors[i].value;

  /* With all its enzyme it would run. */
  return mean->way == LW_WAY_OXIDISED && f->why->here.enzyme_left_pct < LITTLE_PCT
         && lw_why_per_h (f->why, with) > 5 * lw_why_still_per_h (LW_RATE_OXIDATION);
}

static gboolean
hardly_any_enzyme (const Facts *f)
{
  return f->why->here.enzyme_left_pct < LITTLE_PCT;
}

static gboolean
cooked_here (const Facts *f)
{
  return hardly_any_enzyme (f) && f->hot && f->hot_step == f->why->step;
}

static gboolean
cooked_earlier (const Facts *f)
{
  return hardly_any_enzyme (f) && f->hot && f->hot_step < f->why->step;
}

static gboolean
hot_here (const Facts *f)
{
  return without_enzyme (f) && cooked_here (f);
}

static gboolean
hot_earlier (const Facts *f)
{
  return without_enzyme (f) && cooked_earlier (f);
}

static gboolean
is_free (const Facts *f)
{
  return f->held > FREE;
}

static gboolean
is_held (const Facts *f)
{
  return f->held <= FREE;
}

static gboolean
few_are_whole (const Facts *f)
{
  return f->why->here.rupture_pct > MOST_PCT;
}

static gboolean
not_pressed (const Facts *f)
{
  return f->plan->steps[f->why->step].press_kpa <= 0;
}

/* Translators: words in braces stay as they are; numbers with their units take their place: "2 %", "62 °C". */
static const Row rows[] = {
  { LW_WHY_OX_STOPPED_HERE, LW_RATE_OXIDATION, ANY, ANY, PACE_STILL, hot_here,
    N_ ("Oxidation has all but stopped: {enzyme} of the enzyme is left, since the leaf passed 80 °C at minute {minute}.") },
  { LW_WHY_OX_STOPPED_EARLIER, LW_RATE_OXIDATION, ANY, ANY, PACE_STILL, hot_earlier,
    N_ ("Oxidation has all but stopped: {enzyme} of the enzyme is left, since the leaf passed 80 °C in step {step}.") },
  { LW_WHY_OX_STOPPED, LW_RATE_OXIDATION, ANY, ANY, PACE_STILL, without_enzyme,
    N_ ("Oxidation has all but stopped: {enzyme} of the enzyme is left.") },
  { LW_WHY_OX_WARMTH_HERE, LW_RATE_OXIDATION, LW_WAY_YELLOWED, ANY, PACE_GOING, cooked_here,
    N_ ("Warmth oxidises more than the enzyme does: {enzyme} of it is left, since the leaf passed 80 °C at minute {minute}.") },
  { LW_WHY_OX_WARMTH_EARLIER, LW_RATE_OXIDATION, LW_WAY_YELLOWED, ANY, PACE_GOING, cooked_earlier,
    N_ ("Warmth oxidises more than the enzyme does: {enzyme} of it is left, since the leaf passed 80 °C in step {step}.") },
  { LW_WHY_OX_WARMTH, LW_RATE_OXIDATION, LW_WAY_YELLOWED, ANY, PACE_GOING, NULL,
    N_ ("Warmth oxidises more than the enzyme does: the leaf is at {temperature}.") },
  { LW_WHY_OX_FREE, LW_RATE_OXIDATION, ANY, ANY, PACE_ANY, is_free,
    N_ ("Little holds oxidation back: the leaf is at {temperature}.") },
  { LW_WHY_OX_ENZYME, LW_RATE_OXIDATION, ANY, LW_FACTOR_ENZYME, PACE_ANY, NULL,
    N_ ("Oxidation is held back most by its enzyme: {enzyme} of it is left.") },
  { LW_WHY_OX_WHOLE, LW_RATE_OXIDATION, ANY, LW_FACTOR_MIXED, PACE_ANY, NULL,
    N_ ("Oxidation is held back most by whole cells: only {rupture} of all cells are ruptured.") },
  { LW_WHY_OX_DRY, LW_RATE_OXIDATION, ANY, LW_FACTOR_WATER, PACE_ANY, NULL,
    N_ ("Oxidation is held back most by dryness: the leaf is at {moisture} moisture.") },
  { LW_WHY_OX_DONE, LW_RATE_OXIDATION, ANY, LW_FACTOR_LEFT, PACE_ANY, NULL,
    N_ ("Oxidation slows because so much is done: {oxidation} is oxidised already.") },
  { LW_WHY_OX_COLD, LW_RATE_OXIDATION, ANY, LW_FACTOR_WARMTH, PACE_ANY, NULL,
    N_ ("Oxidation is held back most by coolness: the leaf is at {temperature}.") },

  { LW_WHY_WATER_STEAM, LW_RATE_WATER, LW_WAY_CONDENSED, ANY, PACE_BACKWARD, NULL,
    N_ ("The leaf gains water: it is only at {temperature}, and steam condenses on it.") },
  { LW_WHY_WATER_GAINED, LW_RATE_WATER, ANY, ANY, PACE_BACKWARD, NULL,
    N_ ("The leaf takes water up from the air: it is at {moisture} moisture.") },
  { LW_WHY_WATER_FREE, LW_RATE_WATER, ANY, ANY, PACE_ANY, is_free,
    N_ ("Little holds water back in the leaf: it is at {temperature}.") },
  { LW_WHY_WATER_DRY, LW_RATE_WATER, ANY, LW_FACTOR_WATER, PACE_ANY, NULL,
    N_ ("Water loss is held back most by the leaf: at {moisture} moisture it holds on to what is left.") },
  { LW_WHY_WATER_PULL, LW_RATE_WATER, ANY, LW_FACTOR_PULL, PACE_ANY, NULL,
    /* xgettext:no-c-format */
    N_ ("Water loss is held back most by the air: its pull is {share} of that on wet leaf at 25 °C and 60 % humidity.") },
  { LW_WHY_WATER_FILM, LW_RATE_WATER, ANY, LW_FACTOR_FILM, PACE_ANY, NULL,
    N_ ("Water loss is held back most by still air: it lets pass {share} of what the leaf's skin would.") },
  { LW_WHY_WATER_SURFACE, LW_RATE_WATER, ANY, LW_FACTOR_SURFACE, PACE_ANY, NULL,
    N_ ("Water loss is held back most by how close the leaf lies: {share} of its surface meets the air.") },

  { LW_WHY_RUPTURE_DONE, LW_RATE_RUPTURE, ANY, LW_FACTOR_WHOLE, PACE_ANY, few_are_whole,
    N_ ("Few whole cells are left to rupture: {rupture} are ruptured.") },
  { LW_WHY_RUPTURE_STILL, LW_RATE_RUPTURE, ANY, ANY, PACE_STILL, not_pressed,
    N_ ("Hardly any cells rupture: nothing presses the leaf, and it is at {temperature}.") },
  { LW_WHY_RUPTURE_DRY, LW_RATE_RUPTURE, LW_WAY_ROLLED, LW_FACTOR_WATER, PACE_ANY, is_held,
    N_ ("Pressure ruptures fewer cells than it could: the leaf is dry, at {moisture} moisture.") },
  { LW_WHY_RUPTURE_ROLL, LW_RATE_RUPTURE, LW_WAY_ROLLED, ANY, PACE_ANY, NULL,
    N_ ("Pressure ruptures the most cells now: it is {pressure}.") },
  { LW_WHY_RUPTURE_HEAT, LW_RATE_RUPTURE, LW_WAY_HEATED, ANY, PACE_ANY, NULL,
    N_ ("Heat ruptures the most cells now: the leaf is at {temperature}.") },
  { LW_WHY_RUPTURE_WILT, LW_RATE_RUPTURE, LW_WAY_WILTED, ANY, PACE_ANY, NULL,
    N_ ("Wilting ruptures the most cells now: the leaf is at {moisture} moisture.") },

  { LW_WHY_ENZYME_GONE, LW_RATE_ENZYME, ANY, ANY, PACE_ANY, hardly_any_enzyme,
    N_ ("There is hardly any enzyme to lose: {enzyme} is left.") },
  { LW_WHY_ENZYME_KEEPS, LW_RATE_ENZYME, ANY, ANY, PACE_STILL, NULL,
    N_ ("The enzyme keeps: the leaf is at {temperature}.") },
  { LW_WHY_ENZYME_HEAT, LW_RATE_ENZYME, LW_WAY_DENATURED, ANY, PACE_ANY, NULL,
    N_ ("Heat destroys the enzyme: at this pace half of what is left goes in {half}.") },
  { LW_WHY_ENZYME_AGE, LW_RATE_ENZYME, LW_WAY_AGED, ANY, PACE_ANY, NULL,
    N_ ("Wilting wears the enzyme down: at this pace half of what is left goes in {half}.") },

  { LW_WHY_ROAST_COLD, LW_RATE_ROAST, ANY, LW_FACTOR_WARMTH, PACE_STILL, NULL,
    N_ ("The leaf does not roast: it is only at {temperature}.") },
  { LW_WHY_ROAST_WET, LW_RATE_ROAST, ANY, LW_FACTOR_DRY, PACE_ANY, is_held,
    N_ ("Roasting is held back most by water: the leaf is still at {moisture} moisture.") },
  { LW_WHY_ROAST_WALL, LW_RATE_ROAST, LW_WAY_TOUCHED, ANY, PACE_ANY, NULL,
    N_ ("The hot wall roasts the leaf's skin; the leaf itself is at {temperature}.") },
  { LW_WHY_ROAST_COOL, LW_RATE_ROAST, ANY, LW_FACTOR_WARMTH, PACE_ANY, is_held,
    N_ ("Roasting is held back most by the leaf's temperature: it is at {temperature}.") },
  { LW_WHY_ROAST_LEAF, LW_RATE_ROAST, ANY, ANY, PACE_ANY, NULL,
    N_ ("The leaf roasts all through: it is at {temperature}.") },
};

/* When the leaf last was heated past LW_HOT_C before here. */
static void
find_hot (Facts *f)
{
  for (guint step = 0; step <= f->why->step; step++)
    for (guint i = 0; i < f->track->steps[step]->n_turns; i++)
      {
        const LwTurn *turn = &f->track->steps[step]->turns[i];

        if (turn->kind != LW_TURN_HOT || (step == f->why->step && turn->time_s > f->why->minute * 60))
          continue;
        if (lw_track_outcome_at (f->track, step, -1, turn->time_s).enzyme_left_pct < 2 * f->why->here.enzyme_left_pct)
          continue;

        f->hot = TRUE;
        f->hot_step = step;
        f->hot_minute = turn->time_s / 60;
      }
}

static gboolean
is_still (const LwWhy *why)
{
  return fabs (lw_why_per_h (why, why->per_s)) < lw_why_still_per_h (why->rate);
}

static Facts
facts_of (const LwWhy   *why,
          const LwPlan  *plan,
          const LwTrack *track)
{
  Facts f = { .why = why, .plan = plan, .track = track, .way = &why->ways[0], .holds = ANY, .held = 1 };

  /* Where nothing oxidises, the question is why the enzyme does not. */
  if (why->rate == LW_RATE_OXIDATION && is_still (why) && f.way->mean.way != LW_WAY_OXIDISED)
    f.way = &why->ways[1];
  if (f.way->holds >= 0)
    {
      f.holds = (int) f.way->mean.factors[f.way->holds].name;
      f.held = f.way->mean.factors[f.way->holds].value;
    }
  find_hot (&f);

  return f;
}

static gboolean
at_pace (const LwWhy *why,
         Pace         pace)
{
  switch (pace)
    {
    case PACE_STILL:
      return is_still (why);
    case PACE_GOING:
      return !is_still (why);
    case PACE_BACKWARD:
      return why->per_s < 0;
    case PACE_ANY:
    default:
      return TRUE;
    }
}

static gboolean
row_holds (const Row   *row,
           const Facts *f)
{
  return row->rate == f->why->rate
         && (row->way == ANY || row->way == (int) f->way->mean.way)
         && (row->holds == ANY || row->holds == f->holds)
         && at_pace (f->why, row->pace)
         && (row->holds_too == NULL || row->holds_too (f));
}

static char *
say_percent (double pct)
{
  if (pct < 0.5)
    return g_strdup (_ ("less than 1 %"));
  if (pct > 99.5 && pct < 100)
    return g_strdup (_ ("more than 99 %"));

  return g_strdup_printf (_ ("%.0f %%"), pct);
}

/* (transfer full, nullable) what stands for the words in braces. */
static char *
say_fact (const char  *name,
          const Facts *f)
{
  const LwOutcome *here = &f->why->here;
  const struct { const char *name; double pct; } shares[] = {
    { "enzyme", here->enzyme_left_pct }, { "moisture", here->moisture_wb_pct }, { "rupture", here->rupture_pct },
    { "oxidation", here->oxidation_pct }, { "share", 100 * f->held },
  };

  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    if (strcmp (name, shares[i].name) == 0)
      return say_percent (shares[i].pct);

  if (strcmp (name, "temperature") == 0)
    return lw_say_setting (LW_SET_AIR_C, here->leaf_temp_c);
  if (strcmp (name, "pressure") == 0)
    return lw_say_setting (LW_SET_PRESS_KPA, f->plan->steps[f->why->step].press_kpa);
  if (strcmp (name, "half") == 0)
    return lw_say_minutes (log (2) * here->enzyme_left_pct / 100 / f->why->per_s / 60);
  if (strcmp (name, "step") == 0)
    return g_strdup_printf ("%u", f->hot_step + 1);
  if (strcmp (name, "minute") == 0)
    return g_strdup_printf ("%.*f", f->hot_minute < 10 ? 1 : 0, f->hot_minute);

  return NULL;
}

/* A translation's slip leaves its braces to be seen. */
static char *
fill (const char  *text,
      const Facts *f)
{
  g_auto (GStrv) pieces = g_strsplit (text, "{", -1);
  g_autoptr (GString) said = g_string_new (pieces[0]);

  for (guint i = 1; pieces[i] != NULL; i++)
    {
      const char *end = strchr (pieces[i], '}');
      g_autofree char *name = end != NULL ? g_strndup (pieces[i], (gsize) (end - pieces[i])) : NULL;
      g_autofree char *fact = name != NULL ? say_fact (name, f) : NULL;

      if (fact != NULL)
        g_string_append_printf (said, "%s%s", fact, end + 1);
      else
        g_string_append_printf (said, "{%s", pieces[i]);
    }

  return g_string_free (g_steal_pointer (&said), FALSE);
}

char *
lw_why_sentence (const LwWhy   *why,
                 const LwPlan  *plan,
                 const LwTrack *track,
                 LwWhyKind     *kind)
{
  Facts f = facts_of (why, plan, track);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (row_holds (&rows[i], &f))
      {
        *kind = rows[i].kind;
        return fill (_ (rows[i].text), &f);
      }

  g_return_val_if_reached (g_strdup (""));
}
