/* The value at which a block's line is drawn. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/block.h"

#define MOMENTS 48

static double
mean_air_c (const LwSky *sky,
            double       from_s,
            double       duration_s)
{
  double sum = 0;

  for (guint i = 0; i < MOMENTS; i++)
    sum += lw_sky_at (sky, from_s + (i + 0.5) / MOMENTS * duration_s).temp_c;

  return sum / MOMENTS;
}

static double
mean_log_c (const LwCourse *course,
            double          from_s,
            double          duration_s)
{
  double sum = 0;

  for (guint i = 0; i < MOMENTS; i++)
    sum += lw_course_at (course, from_s + (i + 0.5) / MOMENTS * duration_s);

  return sum / MOMENTS;
}

double
lw_block_leading (const LwSeason *season,
                  const LwBatch  *batch,
                  guint           step,
                  gboolean       *on_weather)
{
  const LwStep *at = &batch->steps[step];
  LwSetting leading = lw_kind_row (at->kind)->leading;
  const LwKindSetting *row = lw_kind_setting (at->kind, leading);
  const LwWeather *weather = NULL;
  const LwFollowed *followed;
  double from_s;

  if (batch->weather != NULL)
    weather = lw_season_weather (season, batch->weather);
  followed = lw_batch_followed (batch, step, leading, &from_s);
  *on_weather = followed == NULL && leading == LW_SET_AIR_C && row->weather && weather != NULL
                && !lw_step_is_given (at, leading);
  if (followed != NULL)
    return mean_log_c (followed->course, from_s, 60 * lw_step_get (at, LW_SET_MINUTES));
  if (!*on_weather)
    return lw_step_get (at, leading);

  return mean_air_c (weather->sky, (double) batch->when_s + 60 * lw_batch_begin_minute (batch, step), 60 * lw_step_get (at, LW_SET_MINUTES));
}
