/* Night and rain, step by step. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/spell.h"

#include <math.h>

#include "leaf/sun.h"
#include "season/surround.h"

#define DAY_S 86400.0
#define HOUR_S 3600.0

/* A step on the clock, and where its spells go. */
typedef struct
{
  GArray *spells;
  guint step;
  double begin_s;
  double end_s;
} Span;

/* What of it falls into the step; goes on with the last spell where it left off. */
static void
add_spell (Span       *span,
           LwSpellKind kind,
           double      from_s,
           double      to_s)
{
  LwSpell spell = {
    span->step, kind,
    (MAX (from_s, span->begin_s) - span->begin_s) / 60,
    (MIN (to_s, span->end_s) - span->begin_s) / 60,
  };
  LwSpell *last = span->spells->len > 0
                    ? &g_array_index (span->spells, LwSpell, span->spells->len - 1) : NULL;

  if (!(spell.from_minute < spell.to_minute))
    return;

  if (last != NULL && last->step == spell.step && last->kind == kind
      && spell.from_minute - last->to_minute < 1e-6)
    last->to_minute = spell.to_minute;
  else
    g_array_append_val (span->spells, spell);
}

static void
add_nights (Span  *span,
            double latitude_deg)
{
  for (double day = floor (span->begin_s / DAY_S) - 1; day * DAY_S <= span->end_s; day++)
    {
      double rise_s, set_s, next_rise_s, next_set_s;

      lw_sun_day (day * DAY_S, latitude_deg, &rise_s, &set_s);
      lw_sun_day ((day + 1) * DAY_S, latitude_deg, &next_rise_s, &next_set_s);
      add_spell (span, LW_SPELL_NIGHT, set_s, next_rise_s);
    }
}

static void
add_rain (Span            *span,
          const LwWeather *weather)
{
  double first = MAX (floor ((span->begin_s - (double) weather->start_s) / HOUR_S), 0);

  for (double i = first; i < weather->n_hours; i++)
    {
      double from_s = (double) weather->start_s + i * HOUR_S;

      if (from_s >= span->end_s)
        break;
      if (weather->hours[(guint) i].rain_mm > 0)
        add_spell (span, LW_SPELL_RAIN, from_s, from_s + HOUR_S);
    }
}

static GArray *
spells_of (const LwSeason *season,
           const LwBatch  *batch,
           gboolean        all_nights)
{
  GArray *spells = g_array_new (FALSE, FALSE, sizeof (LwSpell));
  const LwWeather *weather = batch->weather != NULL ? lw_season_weather (season, batch->weather) : NULL;
  double clock_s = (double) batch->when_s;

  for (guint i = 0; i < batch->n_steps; i++)
    {
      Span span = { spells, i, clock_s, clock_s + 60 * lw_step_get (&batch->steps[i], LW_SET_MINUTES) };

      gboolean follows = lw_step_follows (season, &batch->steps[i], weather);

      clock_s = span.end_s;
      if (follows || all_nights)
        add_nights (&span, season->latitude_deg);
      if (follows && weather != NULL && weather->form == LW_WEATHER_HOURS)
        add_rain (&span, weather);
    }

  return spells;
}

GArray *
lw_spells_new (const LwSeason *season,
               const LwBatch  *batch)
{
  return spells_of (season, batch, FALSE);
}

GArray *
lw_spells_clock (const LwSeason *season,
                 const LwBatch  *batch)
{
  return spells_of (season, batch, TRUE);
}

double
lw_spells_minutes (const GArray *spells,
                   guint         step,
                   LwSpellKind   kind)
{
  double minutes = 0;

  for (guint i = 0; i < spells->len; i++)
    {
      const LwSpell *spell = &g_array_index (spells, LwSpell, i);

      if (spell->step == step && spell->kind == kind)
        minutes += spell->to_minute - spell->from_minute;
    }

  return minutes;
}
