/* Fit the leaf: what of a leaf must differ for the model to say what was weighed, measured and judged in batches
 * that were made, and how sure that is. Pure; thread-safe; can be cancelled. The method: docs/study.md */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "study/fit-what.h"

/* From the thread that fits. `share` of the work done, 0 to 1, never falls. */
typedef void (*LwFitProgress) (double   share,
                               gpointer data);

typedef struct
{
  const GArray *batches;     /* (nullable) of guint; NULL: all of the season */
  const char *leaf;          /* (nullable) only batches of this leaf */
  guint free;                /* LW_FIT_BIT of what may differ; at least one */
  gboolean leave_one_out;
  guint threads;             /* 0: one for each core */
  LwFitProgress progress;    /* (nullable) */
  gpointer progress_data;
} LwFitAsk;

/* One weigh-in that counts. Values in its measure's unit. */
typedef struct
{
  guint batch;
  guint step;
  guint weigh_in;
  double before;             /* what the model says with the leaf as it was */
  double after;
} LwFitPoint;

/* One change. Where the row is a factor `change` and `error` are of its natural logarithm. */
typedef struct
{
  LwFitWhat what;
  char *leaf;                /* (nullable) id of the only leaf it is of */
  int batch;                 /* -1; else the only batch it is of */
  double change;             /* it started at 0 */
  double error;              /* standard error */
  double decided;            /* share of the prior's variance that the weigh-ins took away, 0..1 */
  gboolean at_bound;         /* it would go further, but may not; error and decided are then NAN */
} LwFitParam;

typedef struct
{
  guint batch;
  guint n_points;
  guint n_late;              /* weigh-ins after their step's end: left out */
  guint n_silent;            /* weigh-ins that say nothing of leaf: of walls, and notes */
  double before;             /* chi-square of its points */
  double after;
  double unseen_rms;         /* foretold from the other batches: root mean square miss in the instruments' errors; NAN */
  double unseen_sd;          /* the same in the errors that were foretold, 1 is as expected; NAN */
} LwFitBatch;

typedef enum
{
  LW_FIT_FEW_POINTS,         /* no more points than changes: nothing left to check the answer by */
  LW_FIT_NOTHING_TOLD,       /* no change is told by the weigh-ins */
  LW_FIT_NOT_TOLD,           /* change `a` is not */
  LW_FIT_TWINS,              /* changes `a` and `b` cannot be told apart; `number` is their correlation */
  LW_FIT_AT_BOUND,           /* change `a` ended at the end of its range */
  LW_FIT_MISFIT,             /* even so the model misses by more than the errors; `number` is the chance of that, and the
                              * weigh-ins of the fit's batch `a` are missed most */
  LW_FIT_UNFINISHED,         /* rounds used up */
  LW_FIT_LATE,               /* batch `a` has `number` weigh-ins after their step's end, left out */
  LW_FIT_PLANNED,            /* batch `a` was not made */
  LW_FIT_BARE,               /* batch `a` has no weigh-in that tells of its leaf */
} LwFitWarningKind;

typedef struct
{
  LwFitWarningKind kind;
  guint a;
  guint b;
  double number;
} LwFitWarning;

/* What counts as told and as twins; assumed. */
#define LW_FIT_TOLD 0.5
#define LW_FIT_TWIN 0.95
#define LW_FIT_CHANCE 0.001

typedef struct
{
  LwSeason *season;          /* as it was */
  gboolean enough;           /* not FEW_POINTS, NOTHING_TOLD or UNFINISHED */
  guint n_points;
  LwFitPoint *points;
  guint n_params;            /* those asked for; n_all - n_params fresh weights stand after them */
  guint n_all;
  LwFitParam *params;
  double *correlations;      /* n_params * n_params */
  guint n_batches;
  LwFitBatch *batches;
  double before;             /* chi-square of all points */
  double after;
  double unseen_rms;         /* over all batches; NAN where it was not asked for */
  double unseen_sd;
  guint n_warnings;
  LwFitWarning *warnings;
} LwFit;

/* NULL with `error`: G_IO_ERROR_CANCELLED; G_IO_ERROR_NOT_FOUND, no batch has anything to tell; or
 * G_IO_ERROR_FAILED, a batch, which is named, cannot be computed with its leaf as it was. */
LwFit    *lw_fit_new          (LwSeason        *season,
                               const LwFitAsk  *ask,
                               GCancellable    *cancellable,
                               GError         **error);
void      lw_fit_free         (LwFit           *fit);

/* (transfer full) the season with `batch` and its leaf as fitted, to march and draw beside what was. */
LwSeason *lw_fit_season       (const LwFit     *fit,
                               guint            batch);

/* Whether the batches it was fitted to, their leaves and what surrounds them are the same ones in `season`. */
gboolean  lw_fit_is_of        (const LwFit     *fit,
                               const LwSeason  *season);

/* (transfer full) array of profiles' ids, of the leaves that were fitted, in the season's order. */
GPtrArray *lw_fit_leaves      (const LwFit     *fit);

/* Value of a change in a leaf before and after, and its standard error, in lw_fit_unit; NAN where no leaf keeps it. */
void      lw_fit_param_value  (const LwFitParam *param,
                               const LwProfile  *profile,
                               double           *start,
                               double           *value,
                               double           *error);

/* Whether the change is one of this leaf's. */
gboolean  lw_fit_param_is_of  (const LwFitParam *param,
                               const char       *leaf);

/* One row of the table of values: a change in one of the leaves, or one that no leaf keeps. */
typedef struct
{
  const LwFitParam *param;
  const LwProfile *leaf;     /* (nullable) as it was */
} LwFitLine;

/* (transfer full) array of LwFitLine, which live as long as the fit: all changes that were asked for. */
GArray   *lw_fit_lines        (const LwFit     *fit);

typedef struct
{
  const char *const *names;  /* (nullable) of the new profiles, in the order of lw_fit_leaves; NULL: "NAME, fitted" */
  gint64 when_s;             /* of the fit, for the note: as LwBatch.when_s; 0: not told */
} LwFitSaveAs;

/* (transfer full) `season` with a new profile after all for each fitted leaf, in the order of lw_fit_leaves, its note
 * telling where it comes from. Batches stay with the leaf they had. NULL where there was not enough data. */
LwSeason *lw_fit_save         (const LwFit       *fit,
                               const LwSeason    *season,
                               const LwFitSaveAs *as);     /* (nullable) */

/* (transfer full) the name of the new profile of `from` where nobody says otherwise. */
char     *lw_fit_new_name     (const LwSeason    *season,
                               const LwProfile   *from);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwFit, lw_fit_free)
