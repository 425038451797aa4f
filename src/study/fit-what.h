/* What may differ when a leaf is fitted: names, meaning, how far it is expected to be off before anything
 * was weighed, and how it changes a leaf or a batch. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef enum
{
  LW_FIT_SKIN,
  LW_FIT_OXIDATION,
  LW_FIT_SOFTENING,
  LW_FIT_ROLLING,
  LW_FIT_MOISTURE,
  LW_FIT_TORN,
  LW_FIT_SOFT,
  LW_FIT_WILTING,
  LW_FIT_ENZYME,
  LW_FIT_BREAKING,
  LW_FIT_FALLING,
  LW_FIT_SUN,
  LW_FIT_CONTACT,
  LW_FIT_BATCH_MOISTURE,
  LW_FIT_BATCH_WEIGHT,   /* always free, never asked for: the fresh leaf was weighed on the same scale */
} LwFitWhat;

#define LW_N_FIT_WHAT (LW_FIT_BATCH_WEIGHT + 1)
#define LW_FIT_BIT(what) (1u << (what))

typedef enum
{
  LW_FIT_OF_ALL,         /* one change for every leaf that is fitted */
  LW_FIT_OF_LEAF,        /* one for each leaf */
  LW_FIT_OF_BATCH,       /* one for each batch; no leaf keeps it */
  LW_FIT_OF_VESSEL,      /* one for all pans and drums; no leaf keeps it */
} LwFitScope;

typedef struct
{
  const char *id;        /* on the command line: of the law's row where it has one */
  const char *label;     /* N_() */
  const char *meaning;   /* N_() what more of it means to a maker */
  const char *unit;      /* N_() of the change; "" for a factor */
  int field;             /* row of lw_law_fields (), -1: none */
  LwFitScope scope;
  gboolean factor;       /* the change is the natural logarithm of a factor, else it is added */
  gboolean usual;        /* free where nobody says otherwise */
  double spread;         /* one standard deviation of the change, before anything was weighed */
  const char *source;    /* of the spread */
} LwFitRow;

const LwFitRow *lw_fit_row       (LwFitWhat        what);

/* By id; -1 if there is none that can be asked for. */
int             lw_fit_find      (const char      *id);

/* Bits of those that are free where nobody says otherwise. */
guint           lw_fit_usual     (void);

/* Makes `change` to what of the two it concerns; the other may be NULL. */
void            lw_fit_apply     (LwFitWhat        what,
                                  double           change,
                                  LwProfile       *profile,
                                  LwBatch         *batch);

/* What of the leaf it changes, in the unit of lw_fit_unit; NAN where the leaf has no such thing. */
double          lw_fit_value     (LwFitWhat        what,
                                  const LwProfile *profile);

/* (transfer none) "m/s", untranslated, "" where it has none: that of the leaf's value, not of the change. */
const char     *lw_fit_unit      (LwFitWhat        what);

/* Narrows `low` and `high` to changes after which the leaf can stand in a document. */
void            lw_fit_narrow    (LwFitWhat        what,
                                  const LwProfile *profile,
                                  double          *low,
                                  double          *high);
