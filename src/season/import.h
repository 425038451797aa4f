/* What something read from a file is called in the season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* (transfer full) the file's name without folder and ending. */
char *lw_import_name (const char *path);

/* (transfer full) `name` as an id that the season's leaves or weathers, or the batch's logs, have not yet: with a number
 * where it is used, and another word where none of its letters can stand in one. */
char *lw_import_leaf_id    (const LwSeason *season,
                            const char     *name);
char *lw_import_weather_id (const LwSeason *season,
                            const char     *name);
char *lw_import_log_id     (const LwBatch  *batch,
                            const char     *name);
