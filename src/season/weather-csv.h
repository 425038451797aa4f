/* A table of hours, as weather stations and spreadsheets write it, into a weather. What
 * it may look like: docs/document.md, "Tables of hours". */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/problem.h"
#include "season/season.h"

/* (transfer full) the weather, or NULL with at least one problem added to `problems`. */
LwWeather *lw_weather_csv_read (const char *data,
                                gsize       length,
                                const char *id,
                                const char *name,
                                GPtrArray  *problems);

/* Reads the file; one that cannot be read at all is one problem with line 0. */
LwWeather *lw_weather_csv_load (const char *path,
                                const char *id,
                                const char *name,
                                GPtrArray  *problems);
