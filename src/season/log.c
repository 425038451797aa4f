/* Logs: their memory, and how much of a log is kept. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/log.h"

#include <math.h>

#include "season/text.h"

/* A thermocouple is good to a degree or two (from memory); a twentieth is lost on nobody. */
#define KEPT_C 0.05

/* What leaf is reckoned with: means over a time in which no leaf changes much (it takes minutes to follow a pan, and
 * one to follow hot air), and of these a quarter of a degree. Every bend costs the solver some twenty steps, so that
 * a thermocouple's flicker would cost far more than it is worth. */
#define MEAN_S 20.0
#define FOLLOWED_C 0.25
#define MOST_FOLLOWED 300  /* in a step */

/* Most points of a whole log at each level: a step that is short beside its log is reckoned with a finer one. */
static const guint most_points[LW_LOG_LEVELS] = { LW_MAX_POINTS, 9 * MOST_FOLLOWED, 3 * MOST_FOLLOWED, MOST_FOLLOWED };

static const struct
{
  const char *id;
  const char *label;
} ofs[LW_N_LOG_OF] = {
  [LW_LOG_LEAF] = { "leaf", N_ ("leaf") },
  [LW_LOG_WALL] = { "wall", N_ ("wall") },
  [LW_LOG_AIR] = { "air", N_ ("air") },
};

const char *
lw_log_of_id (LwLogOf of)
{
  return of < LW_N_LOG_OF ? ofs[of].id : NULL;
}

const char *
lw_log_of_label (LwLogOf of)
{
  return _ (ofs[of].label);
}

gboolean
lw_log_of_setting (LwSetting setting,
                   LwLogOf  *of)
{
  *of = setting == LW_SET_WALL_C ? LW_LOG_WALL : LW_LOG_AIR;

  return setting == LW_SET_WALL_C || setting == LW_SET_AIR_C;
}

LwLog *
lw_log_new (const char *id,
            const char *name)
{
  LwLog *log = g_atomic_rc_box_new0 (LwLog);

  log->id = g_strdup (id);
  log->name = g_strdup (name);

  return log;
}

/* (transfer full) as few of the points as pass all within `*off`, which is widened until there are no more than `most`. */
static LwCourse *
thinned (const double *time_s,
         const double *temp_c,
         guint         n,
         guint         most,
         double       *off)
{
  g_autofree guint *kept = g_new (guint, n);
  g_autofree double *few_s = NULL, *few_c = NULL;
  guint many = lw_course_thin (time_s, temp_c, n, *off, kept);

  while (many > most)
    {
      *off = ceil (150 * *off) / 100; /* a number that can be told */
      many = lw_course_thin (time_s, temp_c, n, *off, kept);
    }

  few_s = g_new (double, many);
  few_c = g_new (double, many);
  for (guint i = 0; i < many; i++)
    {
      few_s[i] = time_s[kept[i]];
      few_c[i] = temp_c[kept[i]];
    }

  return lw_course_new (few_s, few_c, many);
}

/* Heat that has gone by at each point: the integral of the course. */
static double *
integral_new (const double *time_s,
              const double *temp_c,
              guint         n)
{
  double *sum = g_new0 (double, n);

  for (guint i = 1; i < n; i++)
    sum[i] = sum[i - 1] + (temp_c[i] + temp_c[i - 1]) / 2 * (time_s[i] - time_s[i - 1]);

  return sum;
}

static double
integral_at (const LwCourse *course,
             const double   *sum,
             double          t_s)
{
  guint n, at = lw_course_until (course, t_s);
  const double *time_s = lw_course_times (course, &n);

  at = MAX (at, 1) - 1;

  return sum[at] + (lw_course_values (course)[at] + lw_course_at (course, t_s)) / 2 * (t_s - time_s[at]);
}

/* (transfer full) means over MEAN_S, at the ends over less, every half of it. */
static LwCourse *
means_new (const LwCourse *course)
{
  guint n, many;
  const double *time_s = lw_course_times (course, &n), *temp_c = lw_course_values (course);
  double first_s = time_s[0], last_s = time_s[n - 1];
  g_autofree double *sum = integral_new (time_s, temp_c, n), *mean_s = NULL, *mean_c = NULL;

  many = (guint) ceil ((last_s - first_s) / (MEAN_S / 2)) + 1;
  mean_s = g_new (double, many);
  mean_c = g_new (double, many);
  for (guint i = 0; i < many; i++)
    {
      double t_s = MIN (first_s + i * MEAN_S / 2, last_s), half_s = MIN (MIN (MEAN_S / 2, t_s - first_s), last_s - t_s);

      mean_s[i] = t_s;
      mean_c[i] = half_s > 0 ? (integral_at (course, sum, t_s + half_s) - integral_at (course, sum, t_s - half_s)) / (2 * half_s)
                             : lw_course_at (course, t_s);
    }

  return lw_course_new (mean_s, mean_c, many);
}

/* How far the lines lie apart at most: that is at a point of one of them. */
static double
apart_c (const LwCourse *a,
         const LwCourse *b)
{
  const LwCourse *both[] = { a, b };
  double apart = 0;

  for (guint k = 0; k < G_N_ELEMENTS (both); k++)
    {
      guint n;
      const double *time_s = lw_course_times (both[k], &n);

      for (guint i = 0; i < n; i++)
        apart = MAX (apart, fabs (lw_course_at (a, time_s[i]) - lw_course_at (b, time_s[i])));
    }

  return apart;
}

/* Every level that has fewer points than the one before it. */
static void
follow (LwLogCurve *curve)
{
  g_autoptr (LwCourse) means = means_new (curve->course);
  const double *mean_c = lw_course_values (means);
  guint n, many = G_MAXUINT;
  const double *mean_s = lw_course_times (means, &n);

  for (guint level = 0; level < LW_LOG_LEVELS; level++)
    {
      LwFollowed *followed = &curve->followed[curve->n_followed];

      if (many <= most_points[level])
        continue;

      followed->waves_c = FOLLOWED_C;
      followed->course = thinned (mean_s, mean_c, n, most_points[level], &followed->waves_c);
      followed->off_c = apart_c (followed->course, curve->course);
      lw_course_times (followed->course, &many);
      curve->n_followed++;
    }
}

static void
add_course (LwLog      *log,
            LwLogOf     of,
            const char *heading,
            double      within_c,
            LwCourse   *course)
{
  LwLogCurve curve = {
    .of = of, .heading = g_strdup (heading), .within_c = within_c, .course = course,
  };
  const double *temp_c = lw_course_values (course);
  guint n;

  lw_course_times (course, &n);
  follow (&curve);
  curve.low_c = curve.high_c = temp_c[0];
  for (guint i = 1; i < n; i++)
    {
      curve.low_c = MIN (curve.low_c, temp_c[i]);
      curve.high_c = MAX (curve.high_c, temp_c[i]);
    }

  log->curves = g_renew (LwLogCurve, log->curves, log->n_curves + 1);
  log->curves[log->n_curves++] = curve;
}

void
lw_log_add_curve (LwLog        *log,
                  LwLogOf       of,
                  const char   *heading,
                  double        within_c,
                  const double *time_s,
                  const double *temp_c,
                  guint         n)
{
  add_course (log, of, heading, within_c, lw_course_new (time_s, temp_c, n));
}

void
lw_log_add_rows (LwLog        *log,
                 LwLogOf       of,
                 const char   *heading,
                 const double *time_s,
                 const double *temp_c,
                 guint         n)
{
  double off = KEPT_C;
  LwCourse *course = thinned (time_s, temp_c, n, LW_MAX_POINTS, &off);

  add_course (log, of, heading, off, course);
}

LwLog *
lw_log_ref (LwLog *log)
{
  return g_atomic_rc_box_acquire (log);
}

static void
log_clear (LwLog *log)
{
  for (guint i = 0; i < log->n_curves; i++)
    {
      g_free (log->curves[i].heading);
      lw_course_unref (log->curves[i].course);
      for (guint level = 0; level < log->curves[i].n_followed; level++)
        lw_course_unref (log->curves[i].followed[level].course);
    }
  g_free (log->curves);
  g_free (log->id);
  g_free (log->name);
}

void
lw_log_unref (LwLog *log)
{
  g_atomic_rc_box_release_full (log, (GDestroyNotify) log_clear);
}

const LwLogCurve *
lw_log_curve (const LwLog *log,
              LwLogOf      of)
{
  for (guint i = 0; i < log->n_curves; i++)
    if (log->curves[i].of == of)
      return &log->curves[i];

  return NULL;
}

const LwFollowed *
lw_log_followed (const LwLogCurve *curve,
                 double            from_s,
                 double            duration_s)
{
  for (guint level = 0; level + 1 < curve->n_followed; level++)
    {
      const LwCourse *course = curve->followed[level].course;

      if (lw_course_until (course, from_s + duration_s) - lw_course_until (course, from_s) <= MOST_FOLLOWED)
        return &curve->followed[level];
    }

  return lw_log_coarsest (curve);
}

const LwFollowed *
lw_log_coarsest (const LwLogCurve *curve)
{
  return &curve->followed[curve->n_followed - 1];
}

double
lw_log_duration_s (const LwLog *log)
{
  double last = 0;

  for (guint i = 0; i < log->n_curves; i++)
    {
      guint n;
      const double *time_s = lw_course_times (log->curves[i].course, &n);

      last = MAX (last, time_s[n - 1]);
    }

  return last;
}
