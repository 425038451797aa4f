/* A temperature log: what thermocouples said while a batch was made. Immutable once in a
 * batch's hands, shared by atomic reference counts. Its time is seconds from its own begin. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/course.h"
#include "season/kind.h"

/* Where the thermocouple was. */
typedef enum
{
  LW_LOG_LEAF,
  LW_LOG_WALL,
  LW_LOG_AIR,
} LwLogOf;

#define LW_N_LOG_OF (LW_LOG_AIR + 1)

/* What leaf is reckoned with: means over 20 s, in as few lines as pass them within 0.25 C, or within more where these
 * would be too many. */
typedef struct
{
  LwCourse *course;
  double waves_c;       /* how far off the means the lines may be */
  double off_c;         /* how far off the log's own points they are at most */
} LwFollowed;

#define LW_LOG_LEVELS 4

typedef struct
{
  LwLogOf of;
  char *heading;        /* (nullable) of its column */
  double within_c;      /* lines through the points pass all that was read as near as this */
  LwCourse *course;     /* the points */
  guint n_followed;     /* >= 1 */
  LwFollowed followed[LW_LOG_LEVELS]; /* from fine to coarse: of the last no step meets too many points */
  double low_c, high_c;
} LwLogCurve;

typedef struct
{
  char *id;             /* unique in its batch */
  char *name;
  guint rows;           /* read of the file; of these `left_out` could not be used */
  guint left_out;
  guint first_line;     /* of the file */
  guint last_line;
  guint n_curves;
  LwLogCurve *curves;
} LwLog;

/* Most curves of a log, and points of each. */
#define LW_MAX_CURVES 8
#define LW_MAX_POINTS 10000

/* Temperatures that a log can hold, C: outside of them a thermocouple is broken. */
#define LW_LOG_LOW_C (-50)
#define LW_LOG_HIGH_C 600

/* And times, s: thirty days. */
#define LW_LOG_MOST_S 2592000
#define LW_LOG_MOST_MINUTES 43200

/* Most rows of the file it came from. */
#define LW_LOG_MOST_ROWS 1000000

/* One of one's own to add curves to, before a batch takes it. */
LwLog *lw_log_new       (const char  *id,
                         const char  *name);
/* `n` >= 1 points, their times rising. */
void   lw_log_add_curve (LwLog       *log,
                         LwLogOf      of,
                         const char  *heading,
                         double       within_c,
                         const double *time_s,
                         const double *temp_c,
                         guint        n);
/* As lw_log_add_curve, of at most LW_MAX_POINTS of the points: within 0.05 C of all, or else as near as can be. */
void   lw_log_add_rows  (LwLog       *log,
                         LwLogOf      of,
                         const char  *heading,
                         const double *time_s,
                         const double *temp_c,
                         guint        n);
LwLog *lw_log_ref       (LwLog       *log);
void   lw_log_unref     (LwLog       *log);

/* The first curve of that, NULL if there is none. */
const LwLogCurve *lw_log_curve (const LwLog *log,
                                LwLogOf      of);

/* The finest of which a step of that duration, so long after the log's begin, meets no more points than can be reckoned
 * with while it is dragged. */
const LwFollowed *lw_log_followed (const LwLogCurve *curve,
                                   double            from_s,
                                   double            duration_s);
/* For a step as long as the log, whatever its length. */
const LwFollowed *lw_log_coarsest (const LwLogCurve *curve);

/* From the log's begin to its last point, s. */
double lw_log_duration_s (const LwLog *log);

/* "leaf" as the document has it, and translated. */
const char *lw_log_of_id    (LwLogOf of);
const char *lw_log_of_label (LwLogOf of);

/* What of a log a setting can follow; FALSE if nothing. */
gboolean lw_log_of_setting (LwSetting setting,
                            LwLogOf  *of);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLog, lw_log_unref)
