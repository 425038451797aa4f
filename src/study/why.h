/* Why here: a rate at one moment of a batch as a product of named factors, and one plain sentence that the
 * numbers bear out. SI; trade units only in what is said. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/factors.h"
#include "season/surround.h"

/* The kinds of sentence. */
typedef enum
{
  LW_WHY_OX_STOPPED_HERE,     /* no enzyme since this step was hot */
  LW_WHY_OX_STOPPED_EARLIER,  /* since an earlier one was */
  LW_WHY_OX_STOPPED,
  LW_WHY_OX_WARMTH_HERE,      /* more without enzyme than by it, since this step was hot */
  LW_WHY_OX_WARMTH_EARLIER,
  LW_WHY_OX_WARMTH,
  LW_WHY_OX_FREE,
  LW_WHY_OX_ENZYME,
  LW_WHY_OX_WHOLE,
  LW_WHY_OX_DRY,
  LW_WHY_OX_DONE,
  LW_WHY_OX_COLD,
  LW_WHY_WATER_STEAM,
  LW_WHY_WATER_GAINED,
  LW_WHY_WATER_FREE,
  LW_WHY_WATER_DRY,
  LW_WHY_WATER_PULL,
  LW_WHY_WATER_FILM,
  LW_WHY_WATER_SURFACE,
  LW_WHY_RUPTURE_DONE,
  LW_WHY_RUPTURE_STILL,
  LW_WHY_RUPTURE_DRY,
  LW_WHY_RUPTURE_ROLL,
  LW_WHY_RUPTURE_HEAT,
  LW_WHY_RUPTURE_WILT,
  LW_WHY_ENZYME_GONE,
  LW_WHY_ENZYME_KEEPS,
  LW_WHY_ENZYME_HEAT,
  LW_WHY_ENZYME_AGE,
  LW_WHY_ROAST_COLD,
  LW_WHY_ROAST_WET,
  LW_WHY_ROAST_WALL,
  LW_WHY_ROAST_COOL,
  LW_WHY_ROAST_LEAF,
} LwWhyKind;

#define LW_N_WHY_KINDS (LW_WHY_ROAST_LEAF + 1)

/* One way in which the rate comes about; means over the parts by share. */
typedef struct
{
  double per_s;
  LwFactors mean;   /* of each factor */
  double apart;     /* what it means that parts differ: per_s over the product of `mean`; 1 where it has none */
  int holds;        /* the factor in `mean` that holds it back most, -1: none does */
} LwWhyWay;

typedef struct
{
  LwRate rate;
  guint step;
  double minute;
  double per_s;     /* sum of the ways */
  LwOutcome here;
  guint n_ways;
  LwWhyWay ways[LW_WAYS_MOST]; /* the strongest first */
  guint n_parts;
  LwFactors *parts; /* n_parts for each way, in the ways' order */
  LwWhyKind kind;
  char *sentence;
} LwWhy;

/* `track` is `plan` marched and holds `step`. */
LwWhy      *lw_why_new        (const LwPlan  *plan,
                               const LwTrack *track,
                               guint          step,
                               double         minute,
                               LwRate         rate);
void        lw_why_free       (LwWhy         *why);

/* A rate in trade units an hour: percent points, or minutes at 120 C. Water counts as moisture, wet basis. */
double      lw_why_per_h      (const LwWhy   *why,
                               double         per_s);

/* So little of the rate that a maker would call it nothing, in the same unit. */
double      lw_why_still_per_h (LwRate        rate);

/* (transfer none, translated) */
const char *lw_rate_label     (LwRate         rate);
const char *lw_way_label      (LwWay          way);
const char *lw_factor_label   (LwFactorName   name);

/* (transfer full) "12.3 % points an hour"; a minute where that is much. */
char       *lw_why_say_rate   (const LwWhy   *why,
                               double         per_s);

/* (transfer full) "0.31", "× 1.4". */
char       *lw_why_say_factor (double         value,
                               gboolean       times);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwWhy, lw_why_free)
