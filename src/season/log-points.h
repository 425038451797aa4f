/* The points of a log as the document holds them: "seconds temperature seconds temperature ...",
 * parted by blanks and ends of lines, numbers as anywhere in the document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/course.h"

typedef enum
{
  LW_POINTS_RIGHT,
  LW_POINTS_NONE,
  LW_POINTS_MANY,    /* more than a log holds */
  LW_POINTS_ODD,     /* a time without a temperature */
  LW_POINTS_WORD,    /* something that is no number */
  LW_POINTS_RANGE,   /* a number that cannot be */
  LW_POINTS_ORDER,   /* a time not after the one before it */
} LwPointsFault;

void          lw_points_append (GString        *to,
                                const LwCourse *course);

/* Appends to `time_s` and `temp_c`, arrays of double. Where something is wrong, `point` is which it is at, from 1. */
LwPointsFault lw_points_parse  (const char     *text,
                                GArray         *time_s,
                                GArray         *temp_c,
                                guint          *point);
