/* A season: what it holds, and sharing it between its versions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/season.h"

#include <string.h>

#include "season/lesson.h"

LwSeason *
lw_season_new (const char *name)
{
  LwSeason *season = g_atomic_rc_box_new0 (LwSeason);

  season->name = g_strdup (name);

  return season;
}

LwSeason *
lw_season_copy (const LwSeason *season)
{
  LwSeason *copy = g_atomic_rc_box_dup (sizeof *season, (LwSeason *) season);

  copy->name = g_strdup (season->name);
  copy->place = g_strdup (season->place);
  copy->note = g_strdup (season->note);
  copy->profiles = g_memdup2 (season->profiles, season->n_profiles * sizeof *season->profiles);
  copy->weathers = g_memdup2 (season->weathers, season->n_weathers * sizeof *season->weathers);
  copy->batches = g_memdup2 (season->batches, season->n_batches * sizeof *season->batches);
  copy->lessons = g_memdup2 (season->lessons, season->n_lessons * sizeof *season->lessons);

  for (guint i = 0; i < copy->n_profiles; i++)
    lw_profile_ref (copy->profiles[i]);
  for (guint i = 0; i < copy->n_weathers; i++)
    lw_weather_ref (copy->weathers[i]);
  for (guint i = 0; i < copy->n_batches; i++)
    lw_batch_ref (copy->batches[i]);
  for (guint i = 0; i < copy->n_lessons; i++)
    lw_lesson_ref (copy->lessons[i]);

  return copy;
}

LwSeason *
lw_season_ref (LwSeason *season)
{
  return g_atomic_rc_box_acquire (season);
}

static void
season_clear (LwSeason *season)
{
  for (guint i = 0; i < season->n_profiles; i++)
    lw_profile_unref (season->profiles[i]);
  for (guint i = 0; i < season->n_weathers; i++)
    lw_weather_unref (season->weathers[i]);
  for (guint i = 0; i < season->n_batches; i++)
    lw_batch_unref (season->batches[i]);
  for (guint i = 0; i < season->n_lessons; i++)
    lw_lesson_unref (season->lessons[i]);

  g_free (season->profiles);
  g_free (season->weathers);
  g_free (season->batches);
  g_free (season->lessons);
  g_free (season->name);
  g_free (season->place);
  g_free (season->note);
}

void
lw_season_unref (LwSeason *season)
{
  g_atomic_rc_box_release_full (season, (GDestroyNotify) season_clear);
}

void
lw_season_insert_batch (LwSeason *season,
                        guint     at,
                        LwBatch  *batch)
{
  g_return_if_fail (at <= season->n_batches);

  season->batches = g_renew (LwBatch *, season->batches, season->n_batches + 1);
  memmove (&season->batches[at + 1], &season->batches[at], (season->n_batches - at) * sizeof batch);
  season->batches[at] = batch;
  season->n_batches++;
}

void
lw_season_put_batch (LwSeason *season,
                     guint     at,
                     LwBatch  *batch)
{
  g_return_if_fail (at < season->n_batches);

  lw_batch_unref (season->batches[at]);
  season->batches[at] = batch;
}

LwSeason *
lw_season_own_batch (const LwSeason *season,
                     guint           at,
                     LwBatch       **batch)
{
  LwSeason *next = lw_season_copy (season);

  *batch = lw_batch_copy (season->batches[at]);
  lw_season_put_batch (next, at, *batch);

  return next;
}

void
lw_season_remove_batch (LwSeason *season,
                        guint     at)
{
  g_return_if_fail (at < season->n_batches);

  lw_batch_unref (season->batches[at]);
  season->n_batches--;
  memmove (&season->batches[at], &season->batches[at + 1],
           (season->n_batches - at) * sizeof *season->batches);
}

void
lw_season_add_profile (LwSeason  *season,
                       LwProfile *profile)
{
  season->profiles = g_renew (LwProfile *, season->profiles, season->n_profiles + 1);
  season->profiles[season->n_profiles++] = profile;
}

void
lw_season_add_weather (LwSeason  *season,
                       LwWeather *weather)
{
  season->weathers = g_renew (LwWeather *, season->weathers, season->n_weathers + 1);
  season->weathers[season->n_weathers++] = weather;
}

void
lw_season_put_profile (LwSeason  *season,
                       LwProfile *profile)
{
  for (guint i = 0; i < season->n_profiles; i++)
    if (g_strcmp0 (season->profiles[i]->id, profile->id) == 0)
      {
        lw_profile_unref (season->profiles[i]);
        season->profiles[i] = profile;
        return;
      }

  lw_season_add_profile (season, profile);
}

void
lw_season_put_weather (LwSeason  *season,
                       LwWeather *weather)
{
  for (guint i = 0; i < season->n_weathers; i++)
    if (g_strcmp0 (season->weathers[i]->id, weather->id) == 0)
      {
        lw_weather_unref (season->weathers[i]);
        season->weathers[i] = weather;
        return;
      }

  lw_season_add_weather (season, weather);
}

LwProfile *
lw_season_profile (const LwSeason *season,
                   const char     *id)
{
  for (guint i = 0; i < season->n_profiles; i++)
    if (g_strcmp0 (season->profiles[i]->id, id) == 0)
      return season->profiles[i];

  return NULL;
}

LwWeather *
lw_season_weather (const LwSeason *season,
                   const char     *id)
{
  for (guint i = 0; i < season->n_weathers; i++)
    if (g_strcmp0 (season->weathers[i]->id, id) == 0)
      return season->weathers[i];

  return NULL;
}

int
lw_season_batch (const LwSeason *season,
                 const char     *name)
{
  for (guint i = 0; i < season->n_batches; i++)
    if (g_strcmp0 (season->batches[i]->name, name) == 0)
      return (int) i;

  return -1;
}
