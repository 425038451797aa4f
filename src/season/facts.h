/* What a maker writes down of a batch and of a season besides the steps: name, date, weight, place, notes, a
 * weather made up. What may stand there, and the edits. */
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

/* A weather that a maker makes up: every day like the other. */
typedef struct
{
  const char *name;
  LwDay day;                     /* of `humidity_pct` and `dew_point_c` one is NAN */
  const char *note;              /* "": none */
} LwDayFacts;

/* Whether they may stand in the document; else `error` says why not. */
gboolean  lw_batch_facts_check      (const LwSeason      *season,
                                     guint                batch,
                                     const LwBatchFacts  *facts,
                                     GError             **error);
gboolean  lw_season_facts_check     (const LwSeasonFacts *facts,
                                     GError             **error);

gboolean  lw_day_facts_check        (const LwDayFacts    *facts,
                                     GError             **error);

/* (transfer full) a weather of that `id`; one that is the same all day where low and high are. */
LwWeather *lw_day_facts_weather     (const LwDayFacts    *facts,
                                     const char          *id);
/* The facts of a weather that was made up; its texts are borrowed. FALSE for a record of hours. */
gboolean  lw_day_facts_of           (const LwWeather     *weather,
                                     LwDayFacts          *facts);

/* Each returns (transfer full) a new season; lessons follow a batch's new name. */
LwSeason *lw_edit_set_batch_facts   (const LwSeason      *season,
                                     guint                batch,
                                     const LwBatchFacts  *facts);
LwSeason *lw_edit_set_season_facts  (const LwSeason      *season,
                                     const LwSeasonFacts *facts);
