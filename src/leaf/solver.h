/* The one place that knows CVODE: integrates all parts of a leaf together through one step. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/rates.h"
#include "leaf/turning.h"

typedef struct _LwSolver LwSolver;

/* NULL if memory cannot be had. */
LwSolver *lw_solver_new           (void);
void      lw_solver_free          (LwSolver         *solver);
void      lw_solver_set_tolerance (LwSolver         *solver,
                                   double            relative);

/* Whether turning points are looked for, from the next start on. Default FALSE. */
void      lw_solver_seek          (LwSolver         *solver,
                                   gboolean          turns);

/* What lw_solver_turns looks for besides. */
void      lw_solver_set_aimed     (LwSolver         *solver,
                                   LwAimed           aimed);

/* Starts at t = 0 with `n` states under as many boundaries (borrowed until the next start).
 * Returns 0, or CVODE's negative code. */
int       lw_solver_start         (LwSolver         *solver,
                                   const LwBoundary *boundaries,
                                   const LwState    *states,
                                   guint             n);

/* Goes on to `t_s`, not past the boundaries' duration; `states` are then those there.
 * Returns 0, or CVODE's negative code. */
int       lw_solver_advance       (LwSolver         *solver,
                                   double            t_s,
                                   LwState          *states);

/* From `t_s`, where it has come to, goes on with other `states` as from a new start, not past `end_s`. Turning points
 * that lie between the states as they were (`before`) and as they are then stand at `t_s`. Returns 0, or CVODE's
 * negative code. */
int       lw_solver_jump          (LwSolver         *solver,
                                   double            t_s,
                                   double            end_s,
                                   const LwState    *before,
                                   const LwState    *states);

/* Stops short of the boundaries' duration, at `end_s`, where a jump is to come. */
int       lw_solver_stop_at       (LwSolver         *solver,
                                   double            end_s);

/* (transfer none) the turning points met since the start, in the order of time. */
const LwTurn *lw_solver_turns     (LwSolver         *solver,
                                   guint            *n);

/* How far the solver has come, s. */
double    lw_solver_time_s        (LwSolver         *solver);

/* Work since lw_solver_start: steps, and evaluations of one part's rates. */
void      lw_solver_work          (LwSolver         *solver,
                                   gulong           *steps,
                                   gulong           *rate_calls);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSolver, lw_solver_free)
