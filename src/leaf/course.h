/* A temperature that was logged, as straight lines between points, and the thinning of
 * such lines. Immutable, reference-counted. Time is seconds from the course's own begin. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef struct _LwCourse LwCourse;

/* Through `n` >= 1 points (copied), their times rising. Before the first and after the last the
 * course keeps their values. */
LwCourse *lw_course_new   (const double   *time_s,
                           const double   *value,
                           guint           n);
LwCourse *lw_course_ref   (LwCourse       *course);
void      lw_course_unref (LwCourse       *course);

double    lw_course_at    (const LwCourse *course,
                           double          t_s);

/* When it bends next, after `t_s`; INFINITY if it does not. */
double    lw_course_bend  (const LwCourse *course,
                           double          t_s);

/* How many of its points are not after `t_s`. */
guint     lw_course_until (const LwCourse *course,
                           double          t_s);

/* (transfer none) its points. */
const double *lw_course_times  (const LwCourse *course,
                                guint          *n);
const double *lw_course_values (const LwCourse *course);

/* Which of `n` points, their times rising, are enough for lines from one to the next that pass all others
 * within `off`. `kept` has room for n; returns how many. The first and the last are kept. */
guint     lw_course_thin  (const double   *time_s,
                           const double   *value,
                           guint           n,
                           double          off,
                           guint          *kept);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwCourse, lw_course_unref)
