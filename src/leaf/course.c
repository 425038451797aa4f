/* The course, and thinning in one pass: from a kept point goes a cone of slopes that pass
 * near enough to all since; the first point outside it ends the line at the one before. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/course.h"

#include <math.h>

struct _LwCourse
{
  guint n;
  double *time_s;
  double *value;
};

LwCourse *
lw_course_new (const double *time_s,
               const double *value,
               guint         n)
{
  LwCourse *course;

  g_return_val_if_fail (n >= 1, NULL);

  course = g_atomic_rc_box_new0 (LwCourse);
  course->n = n;
  course->time_s = g_memdup2 (time_s, n * sizeof *time_s);
  course->value = g_memdup2 (value, n * sizeof *value);

  return course;
}

LwCourse *
lw_course_ref (LwCourse *course)
{
  return g_atomic_rc_box_acquire (course);
}

static void
course_clear (LwCourse *course)
{
  g_free (course->time_s);
  g_free (course->value);
}

void
lw_course_unref (LwCourse *course)
{
  g_atomic_rc_box_release_full (course, (GDestroyNotify) course_clear);
}

guint
lw_course_until (const LwCourse *course,
                 double          t_s)
{
  guint low = 0, high = course->n;

  while (low < high)
    {
      guint middle = (low + high) / 2;

      if (course->time_s[middle] <= t_s)
        low = middle + 1;
      else
        high = middle;
    }

  return low;
}

double
lw_course_at (const LwCourse *course,
              double          t_s)
{
  guint next = lw_course_until (course, t_s);
  double on;

  if (next == 0)
    return course->value[0];
  if (next == course->n)
    return course->value[course->n - 1];

  on = (t_s - course->time_s[next - 1]) / (course->time_s[next] - course->time_s[next - 1]);

  return course->value[next - 1] + on * (course->value[next] - course->value[next - 1]);
}

double
lw_course_bend (const LwCourse *course,
                double          t_s)
{
  guint next = lw_course_until (course, t_s);

  return next < course->n ? course->time_s[next] : INFINITY;
}

const double *
lw_course_times (const LwCourse *course,
                 guint          *n)
{
  *n = course->n;

  return course->time_s;
}

const double *
lw_course_values (const LwCourse *course)
{
  return course->value;
}

guint
lw_course_thin (const double *time_s,
                const double *value,
                guint         n,
                double        off,
                guint        *kept)
{
  double low = -INFINITY, high = INFINITY;
  guint from = 0, many = 0;

  if (n == 0)
    return 0;

  kept[many++] = 0;
  for (guint i = 1; i < n; i++)
    {
      double run = time_s[i] - time_s[from], slope = (value[i] - value[from]) / run;

      if (slope < low || slope > high)
        {
          from = i - 1;
          kept[many++] = from;
          run = time_s[i] - time_s[from];
          slope = (value[i] - value[from]) / run;
          low = -INFINITY;
          high = INFINITY;
        }
      low = fmax (low, slope - off / run);
      high = fmin (high, slope + off / run);
    }
  if (n > 1)
    kept[many++] = n - 1;

  return many;
}
