/* What to do when the leaf weighs more or less than planned at the end of a step: which setting of this or the next
 * step, and by how much, brings the moisture of the finished tea back. Pure; thread-safe; can be cancelled. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/knock.h"

typedef enum
{
  LW_ADVICE_FINE,    /* the finished tea comes out as planned anyway */
  LW_ADVICE_LONGER,  /* go on with this step for `to` minutes more */
  LW_ADVICE_CHANGE,  /* set `handle`, of the next step, to `to` */
  LW_ADVICE_NONE,    /* no setting of this or the next step helps */
} LwAdviceKind;

typedef struct
{
  LwAdviceKind kind;
  double off;        /* what the leaf weighs more (+) or less (-), kg per kg fresh */
  double missed;     /* by how much the finished moisture is then off if nothing is changed, % points */
  double left;       /* and after the advice; within LW_ADVICE_TOLERANCE unless LW_ADVICE_NONE */
  LwHandle handle;   /* its step is the one that ends, unless LW_ADVICE_CHANGE */
  double from;       /* where the setting stands; 0 for LW_ADVICE_LONGER */
  double to;
} LwAdvice;

/* The end of a step. */
typedef struct
{
  double kg_per_kg_fresh;
  double moisture_pct; /* wet basis */
  LwAdvice more;
  LwAdvice less;
} LwCheckpoint;

/* Moisture of the finished tea counts as brought back within this, % points: what reach takes for met. */
#define LW_ADVICE_TOLERANCE 0.3

/* A setting is not advised with which oxidation, rupture or broken leaf of the finished tea would be off by more than
 * this, % points; or roast by as many minutes at 120 °C and more than that share of itself. Choices: half the width of
 * usual aims at rupture, and a quarter. */
#define LW_ADVICE_SPOILS 8.0
#define LW_ADVICE_SPOILS_SHARE 0.25
gboolean lw_advice_spoils (const LwOutcome     *then,
                           const LwOutcome     *planned);

/* Nor one that goes further than this many times what stands, or that part of it, nor a step that goes on for longer than
 * it was planned: that would be another recipe. Temperatures in °C go less far. Choices. */
#define LW_ADVICE_FAR 2.0
#define LW_ADVICE_FAR_HEAT 1.25
double   lw_advice_far   (LwSetting setting);

/* (transfer full) array of LwCheckpoint, one for each step. The leaf that weighs more or less is the planned leaf at
 * the step's end, each part of which has dried slower or faster by the same share; about 3 % of what `load_kg` of fresh
 * leaf weigh there, a round number. Settings are tried in the order of how many notches each would need by its knock-on effect;
 * how far one must go is found by computing the steps that follow. NULL if cancelled, if the batch has no steps, or if
 * it cannot be computed. */
GArray *lw_advise      (LwSeason           *season,
                        guint               batch,
                        double              load_kg,
                        GCancellable       *cancellable);

/* The finished tea if the leaf weighs `off` kg per kg fresh more at the end of `step` and the advice (nullable: none) is
 * followed. FALSE if it cannot be computed. */
gboolean lw_advice_try (LwSeason           *season,
                        guint               batch,
                        guint               step,
                        double              off,
                        const LwAdvice     *advice,
                        LwOutcome          *end);

/* (transfer full) plain sentences about both, translated; nothing of what no scale of the trade tells, under 10 g. */
char   *lw_advice_say  (const LwBatch      *batch,
                        const LwCheckpoint *checkpoint,
                        double              load_kg);
