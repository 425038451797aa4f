/* What is never quite the same from one batch to the next, and by how much: a table of
 * sources of variation, and the notation in which its amounts are changed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

typedef enum
{
  LW_VARY_MOISTURE,
  LW_VARY_SKIN,
  LW_VARY_OXIDATION,
  LW_VARY_ENZYME,
  LW_VARY_AIR,
  LW_VARY_HUMIDITY,
  LW_VARY_SUN,
  LW_VARY_WALL,
  LW_VARY_HOT_AIR,
  LW_VARY_TIME,
  LW_VARY_LOAD,
  LW_VARY_LAYER,
  LW_VARY_PRESSURE,
} LwVarySource;

#define LW_N_VARY (LW_VARY_PRESSURE + 1)

/* How far a source strays: one standard deviation, 0 where it does not. */
typedef struct
{
  double sd;
  gboolean percent;    /* of the value, else in the source's unit */
  gboolean each_step;  /* every step strays by itself, else all by the same amount of luck */
  guint only;          /* counted from 1: that step alone strays; 0: all that can */
} LwVary;

typedef struct
{
  const char *id;      /* in the notation: "wall" */
  const char *label;   /* N_() */
  const char *unit;    /* N_(); "" where the amount can only be percent */
  const char *from;    /* N_() leaf, weather or hand */
  LwVary usual;
  double most;         /* of an amount in the unit; 0: only percent */
  gboolean percent;    /* may be percent */
  gboolean steps;      /* may stray by step */
  const char *source;  /* N_() of the usual amount */
} LwVaryRow;

#define LW_VARY_MOST_PCT 100.0

const LwVaryRow *lw_vary_row   (LwVarySource source);

/* The usual amounts. */
void             lw_vary_usual (LwVary       varies[LW_N_VARY]);

/* Changes what `text` says: NAME=AMOUNT[%][/step|/stepN|/batch], or all=0. FALSE, `error` and nothing changed where
 * it cannot be read. Numbers in the C locale. */
gboolean         lw_vary_parse (const char  *text,
                                LwVary       varies[LW_N_VARY],
                                GError     **error);

/* (transfer full) the same notation: "5/step", "8/step2", "10%/batch"; lw_vary_parse reads it after the name and "=". */
char            *lw_vary_text  (LwVary       vary);
