/* What a maker writes down of a batch and of a season besides the steps: name, date, weight, place, notes. What may stand
 * there, and the edits. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef struct
{
  const char *name;
  const char *tea;               /* "": none */
  gint64 when_s;                 /* as LwBatch.when_s */
  double fresh_kg;
  gboolean made;
  const char *note;              /* "": none */
  const char *const *step_notes; /* as many as the batch has steps; "": none */
} LwBatchFacts;

typedef struct
{
  const char *name;
  const char *place;             /* "": none */
  double altitude_m;
  double latitude_deg;           /* north is positive */
  const char *note;              /* "": none */
} LwSeasonFacts;

typedef enum
{
  LW_FACT_FRESH_KG,
  LW_FACT_ALTITUDE_M,
  LW_FACT_LATITUDE_DEG,
} LwFact;

void      lw_fact_range             (LwFact               fact,
                                     double              *low,
                                     double              *high);

/* Whether they may stand in the document; else `error` says why not. */
gboolean  lw_batch_facts_check      (const LwSeason      *season,
                                     guint                batch,
                                     const LwBatchFacts  *facts,
                                     GError             **error);
gboolean  lw_season_facts_check     (const LwSeasonFacts *facts,
                                     GError             **error);

/* Each returns (transfer full) a new season; lessons follow a batch's new name. */
LwSeason *lw_edit_set_batch_facts   (const LwSeason      *season,
                                     guint                batch,
                                     const LwBatchFacts  *facts);
LwSeason *lw_edit_set_season_facts  (const LwSeason      *season,
                                     const LwSeasonFacts *facts);
