/* Invented weather: a table of days becomes a record of hours. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "demo/script.h"

/* Southern slope of an invented garden. */
#define DEMO_LATITUDE_DEG 24.5

/* (transfer full) the record, rounded as a weather station prints it. */
LwWeather *demo_weather (const DemoRecord *record,
                         guint32           seed);
