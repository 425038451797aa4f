/* The one place that knows which SUNDIALS is installed (6.4 or 7.x), and wraps
 * CVODE for one small system of leaf states. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/rates.h"

typedef struct _LwSolver LwSolver;

LwSolver *lw_solver_new           (void);
void      lw_solver_free          (LwSolver         *solver);
void      lw_solver_set_tolerance (LwSolver         *solver,
                                   double            relative);

/* Starts at t = 0 with `state`, under `boundary` (borrowed until the next start). */
int       lw_solver_start         (LwSolver         *solver,
                                   const LwBoundary *boundary,
                                   const LwState    *state);

/* Goes on to `t_s`, not past the boundary's duration; `state` is then the state there.
 * Returns 0, or CVODE's negative code. */
int       lw_solver_advance       (LwSolver         *solver,
                                   double            t_s,
                                   LwState          *state);

/* How far the solver has come, s. */
double    lw_solver_time_s        (LwSolver         *solver);

/* Work since lw_solver_start. */
void      lw_solver_work          (LwSolver         *solver,
                                   gulong           *steps,
                                   gulong           *rate_calls);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSolver, lw_solver_free)
