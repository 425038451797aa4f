/* A weather that is a little warmer or damper than the one written down. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef struct
{
  double temp_k;
  double humidity_points;  /* percent points; of a day told by its dew point, at the middle of its temperatures */
  double from_s;           /* of the place's clock: only what is read between these need be kept */
  double to_s;
} LwWeatherMove;

/* (transfer full) the weather, moved all along and kept within the document's ranges; its relative humidity, or its
 * dew point where that is told, stays when it gets warmer. Reads the same as the whole record between the two times. */
LwWeather *lw_weather_moved (const LwWeather     *weather,
                             const LwWeatherMove *by);
