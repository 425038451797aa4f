/* What rates, ways and factors are called, and their numbers. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "season/text.h"
#include "study/why.h"

#define A_MINUTE_FROM 60.0  /* an hour; above it, rates are told a minute */

const char *
lw_rate_label (LwRate rate)
{
  static const char *const labels[LW_N_RATES] = {
    [LW_RATE_OXIDATION] = N_ ("Oxidation"),
    [LW_RATE_WATER] = N_ ("Water loss"),
    [LW_RATE_RUPTURE] = N_ ("Cell rupture"),
    [LW_RATE_ENZYME] = N_ ("Enzyme loss"),
    [LW_RATE_ROAST] = N_ ("Roast"),
  };

  return _ (labels[rate]);
}

const char *
lw_way_label (LwWay way)
{
  static const char *const labels[LW_N_WAYS] = {
    [LW_WAY_OXIDISED] = N_ ("by enzyme"),
    [LW_WAY_YELLOWED] = N_ ("by warmth alone"),
    [LW_WAY_EVAPORATED] = N_ ("into the air"),
    [LW_WAY_CONDENSED] = N_ ("steam on the leaf"),
    [LW_WAY_SHARED] = N_ ("between leaf parts"),
    [LW_WAY_WILTED] = N_ ("by wilting"),
    [LW_WAY_HEATED] = N_ ("by heat"),
    [LW_WAY_ROLLED] = N_ ("by pressure"),
    [LW_WAY_AGED] = N_ ("by wilting"),
    [LW_WAY_DENATURED] = N_ ("by heat"),
    [LW_WAY_ROASTED] = N_ ("by the leaf's own heat"),
    [LW_WAY_TOUCHED] = N_ ("on the hot wall"),
  };

  return _ (labels[way]);
}

const char *
lw_factor_label (LwFactorName name)
{
  static const char *const labels[LW_N_FACTORS] = {
    [LW_FACTOR_WARMTH] = N_ ("Warmth"),
    [LW_FACTOR_ENZYME] = N_ ("Enzyme left"),
    [LW_FACTOR_MIXED] = N_ ("Cell contents mixed"),
    [LW_FACTOR_WATER] = N_ ("Water in the leaf"),
    [LW_FACTOR_LEFT] = N_ ("Left to oxidise"),
    [LW_FACTOR_SKIN] = N_ ("Skin of the part"),
    [LW_FACTOR_OPENED] = N_ ("Skin opened by rupture"),
    [LW_FACTOR_FILM] = N_ ("Air movement"),
    [LW_FACTOR_SURFACE] = N_ ("Surface in the air"),
    [LW_FACTOR_PULL] = N_ ("Pull of the air"),
    [LW_FACTOR_COLDER] = N_ ("Colder than steam"),
    [LW_FACTOR_COVER] = N_ ("Cover"),
    [LW_FACTOR_DAMPER] = N_ ("Other parts damper"),
    [LW_FACTOR_STRESS] = N_ ("Wilting stress"),
    [LW_FACTOR_COOL] = N_ ("Cool enough to wilt"),
    [LW_FACTOR_HOT] = N_ ("Hot enough to rupture"),
    [LW_FACTOR_WHOLE] = N_ ("Cells still whole"),
    [LW_FACTOR_PRESS] = N_ ("Pressure"),
    [LW_FACTOR_SOFT] = N_ ("Softened by heat"),
    [LW_FACTOR_TIME] = N_ ("Share of the time"),
    [LW_FACTOR_DRY] = N_ ("Dryness"),
  };

  return _ (labels[name]);
}

/* Three digits, and never more than are worth it. */
static int
digits_of (double value)
{
  double size = fabs (value);

  return size >= 99.5 ? 0 : size >= 9.95 ? 1 : 2;
}

char *
lw_why_say_rate (const LwWhy *why,
                 double       per_s)
{
  double per_h = lw_why_per_h (why, per_s), value = fabs (per_h) < A_MINUTE_FROM ? per_h : per_h / 60;
  gboolean hourly = value == per_h;
  int digits = digits_of (value);

  /* No minus before a nothing. */
  if (fabs (value) < 0.005)
    value = 0;

  if (why->rate == LW_RATE_ROAST)
    /* Translators: minutes of roasting as if at 120 °C */
    return hourly ? g_strdup_printf (_ ("%.*f min at 120 °C an hour"), digits, value)
                  : g_strdup_printf (_ ("%.*f min at 120 °C a minute"), digits, value);

  return hourly ? g_strdup_printf (_ ("%.*f %% points an hour"), digits, value)
                : g_strdup_printf (_ ("%.*f %% points a minute"), digits, value);
}

char *
lw_why_say_factor (double   value,
                   gboolean times)
{
  g_autofree char *number = NULL;

  if (value > 0 && value < 0.005)
    /* Translators: less than a hundredth */
    number = g_strdup (_ ("< 0.01"));
  else
    number = g_strdup_printf ("%.*f", digits_of (value), value);

  /* Translators: a factor, as in "× 1.4" */
  return times ? g_strdup_printf (_ ("× %s"), number) : g_steal_pointer (&number);
}
