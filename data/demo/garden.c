/* The plots of the demo garden. All invented: neither the plots nor the hidden leaf
 * were measured anywhere; their values keep to the ranges of the law's table. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/garden.h"

#include <math.h>

#define LAWS_MAX 5
#define PARTS_MAX 5

typedef struct
{
  const char *symbol; /* NULL: no more */
  double value;
} Law;

typedef struct
{
  const char *name; /* NULL: no more */
  LwPart part;
} Part;

typedef struct
{
  const char *id;
  const char *name;
  const char *note;
  double moisture_pct;
  double green;
  Law laws[LAWS_MAX + 1];
  Part parts[PARTS_MAX + 1]; /* share, exposure, area, cuticle, ruptured */
} Plot;

static const Plot plots[DEMO_N_PLOTS] = {
  {
    "upper-terrace", "Upper Terrace",
    "Invented plot. Old bushes with large, strong leaf; plucked first.", 76.5, 0.25,
    { { "g-cut", 1.7e-4 }, { "k-roll", 0.7e-4 } },
    {
      { "sheltered", { 0.55, 0.80, 1, 1, 0.005 } },
      { "surface", { 0.25, 1.55, 1, 1, 0.006 } },
      { "torn", { 0.08, 1.10, 1, 1.8, 0.05 } },
      { "stem", { 0.12, 0.75, 0.4, 1, 0.005 } },
    },
  },
  {
    "brook-side", "Brook Side",
    "Invented plot. Young, tender, wet leaf that tears easily.", 78.5, 0.3,
    { { "sla", 16 }, { "g-cut", 1.9e-4 }, { "k-ox", 4.1e-4 }, { "soft", 6.5 },
      { "leaf-length", 0.05 } },
    {
      { "sheltered", { 0.56, 0.82, 1, 1, 0.006 } },
      { "surface", { 0.25, 1.50, 1, 1, 0.008 } },
      { "torn", { 0.10, 1.10, 1, 1.8, 0.06 } },
      { "stem", { 0.09, 0.75, 0.45, 1, 0.006 } },
    },
  },
  {
    "east-wall", "East Wall",
    "Invented plot. Small leaf under the wall, plucked late; little stem.", 75.5, 0.22,
    { { "sla", 13 }, { "k-ox", 4e-4 }, { "leaf-length", 0.035 }, { "x-wilt", 2.5 } },
    {
      { "sheltered", { 0.60, 0.82, 1, 1, 0.005 } },
      { "surface", { 0.26, 1.50, 1, 1, 0.006 } },
      { "torn", { 0.06, 1.10, 1, 1.9, 0.05 } },
      { "stem", { 0.08, 0.75, 0.5, 1, 0.005 } },
    },
  },
};

/* What the leaf behind the weigh-ins does otherwise than every shipped plot. */
static const struct
{
  const char *symbol;
  double factor;
} hidden_laws[] = {
  { "g-cut", 1.20 },  /* a thinner skin: withers and dries faster */
  { "k-ox", 0.85 },   /* reddens more slowly */
  { "k-heat", 1.15 }, /* softens sooner in the heat */
  { "k-roll", 0.90 }, /* yields less to rolling */
};

/* And how many points wetter it is when plucked, by plot. */
static const double hidden_points[DEMO_N_PLOTS] = { 0.8, -0.9, 0.6 };

LwProfile *
demo_plot (guint i)
{
  const Plot *plot = &plots[i];
  LwProfile *profile = lw_profile_new (plot->id, plot->name);

  profile->note = g_strdup (plot->note);
  profile->fresh_moisture_pct = plot->moisture_pct;
  profile->fresh_green = plot->green;
  for (guint k = 0; plot->laws[k].symbol != NULL; k++)
    lw_profile_set_law (profile, (guint) lw_law_find (plot->laws[k].symbol), plot->laws[k].value);
  for (guint k = 0; plot->parts[k].name != NULL; k++)
    lw_profile_add_part (profile, plot->parts[k].name, plot->parts[k].part);

  return profile;
}

static LwProfile *
hidden_plot (guint i)
{
  LwProfile *profile = demo_plot (i);

  profile->fresh_moisture_pct += hidden_points[i];
  for (guint k = 0; k < G_N_ELEMENTS (hidden_laws); k++)
    {
      guint field = (guint) lw_law_find (hidden_laws[k].symbol);

      lw_profile_set_law (profile, field,
                          hidden_laws[k].factor * lw_law_get (&profile->law, field));
    }

  return profile;
}

LwSeason *
demo_hidden_season (const LwSeason *season,
                    const LwBatch  *batch)
{
  LwSeason *hidden = lw_season_new (season->name);
  LwBatch *copy = lw_batch_copy (batch);

  hidden->altitude_m = season->altitude_m;
  hidden->latitude_deg = season->latitude_deg;
  for (guint i = 0; i < DEMO_N_PLOTS; i++)
    {
      lw_season_add_profile (hidden, hidden_plot (i));
      if (g_str_equal (plots[i].id, batch->leaf) && !isnan (copy->fresh_moisture_pct))
        copy->fresh_moisture_pct += hidden_points[i];
    }
  for (guint i = 0; i < season->n_weathers; i++)
    lw_season_add_weather (hidden, lw_weather_ref (season->weathers[i]));
  lw_season_insert_batch (hidden, 0, copy);

  return hidden;
}
