/* Night and rain over a batch's steps, for those who draw or tell them. Only steps that
 * follow the weather or the sun have any, but for nights on a clock. Minutes from the step's start. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef enum
{
  LW_SPELL_NIGHT, /* from sunset to sunrise at the season's latitude */
  LW_SPELL_RAIN,  /* hours of a record that tell of rain */
} LwSpellKind;

typedef struct
{
  guint step;
  LwSpellKind kind;
  double from_minute;
  double to_minute;
} LwSpell;

/* (transfer full) an array of LwSpell, step by step, nights first, each kind in the order of time. */
GArray *lw_spells_new     (const LwSeason *season,
                           const LwBatch  *batch);

/* (transfer full) the same with the nights over every step. */
GArray *lw_spells_clock   (const LwSeason *season,
                           const LwBatch  *batch);

/* How much of the step is of that kind. */
double  lw_spells_minutes (const GArray   *spells,
                           guint           step,
                           LwSpellKind     kind);
