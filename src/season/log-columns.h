/* What a column of a log's table seems to hold, by its heading and its first cell. Words and
 * units are those of docs/document.md, "Temperature logs". */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/log.h"

typedef enum
{
  LW_USE_NONE,
  LW_USE_TIME,
  LW_USE_DATE,
  LW_USE_LEAF,
  LW_USE_WALL,
  LW_USE_AIR,
} LwLogUse;

#define LW_N_LOG_USES (LW_USE_AIR + 1)

typedef enum
{
  LW_TIME_CLOCK,    /* with a date or without, passing midnight */
  LW_TIME_SECONDS,
  LW_TIME_MINUTES,
  LW_TIME_HOURS,
  LW_TIME_STOPWATCH, /* minutes:seconds or hours:minutes:seconds, as many as there are */
} LwLogTime;

#define LW_N_LOG_TIMES (LW_TIME_STOPWATCH + 1)

typedef struct
{
  char *name;         /* the heading, or "column 2" */
  gboolean named;
  LwLogUse use;
  LwLogTime time;     /* where it is one */
  const char *unit;   /* of its temperatures: "°C", "°F" or "K" */
  double factor;      /* °C = factor * cell + offset */
  double offset;
} LwLogColumn;

/* `first` is its cell in the first row. `n` columns; at most one is then the time. */
void     lw_log_columns_guess (LwLogColumn       *columns,
                               const char *const *first,
                               guint              n);

/* Which curve a use makes; FALSE if none. */
gboolean lw_log_use_of        (LwLogUse           use,
                               LwLogOf           *of);
