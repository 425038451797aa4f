/* CVODE, variable-order BDF with a dense Jacobian, for the eleven states of a leaf part. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/solver.h"

#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_config.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#if SUNDIALS_VERSION_MAJOR >= 7
#define NO_COMM SUN_COMM_NULL
#else
#define NO_COMM NULL
#endif

#define MAX_STEPS 200000
#define DEFAULT_TOLERANCE 1e-5

struct _LwSolver
{
  SUNContext context;
  void *cvode;
  N_Vector state;
  N_Vector absolute;
  SUNMatrix matrix;
  SUNLinearSolver linear;
  const LwBoundary *boundary;
};

/* Absolute tolerance at relative 1: the size at which a state starts to matter. */
static const LwState scale = {
  .water = 0.05,
  .temp_c = 10,
  .enzyme = 0.02,
  .oxidation = 0.05,
  .wilt = 0.05,
  .heat = 0.05,
  .roll = 0.05,
  .roast_min = 0.2,
  .green = 0.05,
  .broken = 0.05,
  .twist = 0.05,
};

static int
rates_cb (sunrealtype t_s,
          N_Vector    state,
          N_Vector    rate,
          void       *data)
{
  LwSolver *solver = data;
  const LwState *s = (const LwState *) N_VGetArrayPointer (state);
  LwState *r = (LwState *) N_VGetArrayPointer (rate);

  lw_rates (solver->boundary, t_s, s, r);

  /* A trial step into nonsense is taken back and tried smaller. */
  return isfinite (r->water) && isfinite (r->temp_c) && isfinite (r->roast_min) ? 0 : 1;
}

#if SUNDIALS_VERSION_MAJOR >= 7
static void
quiet_cb (int line, const char *func, const char *file, const char *msg,
          SUNErrCode code, void *data, SUNContext context)
{
}
#else
static void
quiet_cb (int code, const char *module, const char *function, char *msg, void *data)
{
}
#endif

static gboolean
solver_set_up (LwSolver *solver)
{
  static const LwState zero = { 0 };
  LwState *first;

  if (SUNContext_Create (NO_COMM, &solver->context) != 0)
    return FALSE;

  solver->state = N_VNew_Serial (LW_N_STATE, solver->context);
  solver->absolute = N_VNew_Serial (LW_N_STATE, solver->context);
  solver->matrix = SUNDenseMatrix (LW_N_STATE, LW_N_STATE, solver->context);
  solver->cvode = CVodeCreate (CV_BDF, solver->context);
  if (solver->state == NULL || solver->absolute == NULL || solver->matrix == NULL || solver->cvode == NULL)
    return FALSE;

  solver->linear = SUNLinSol_Dense (solver->state, solver->matrix, solver->context);
  first = (LwState *) N_VGetArrayPointer (solver->state);
  *first = zero;

#if SUNDIALS_VERSION_MAJOR >= 7
  SUNContext_ClearErrHandlers (solver->context);
  SUNContext_PushErrHandler (solver->context, quiet_cb, NULL);
#else
  CVodeSetErrHandlerFn (solver->cvode, quiet_cb, NULL);
#endif

  if (solver->linear == NULL
      || CVodeInit (solver->cvode, rates_cb, 0, solver->state) < 0
      || CVodeSetUserData (solver->cvode, solver) < 0)
    return FALSE;

  lw_solver_set_tolerance (solver, DEFAULT_TOLERANCE);

  return CVodeSetLinearSolver (solver->cvode, solver->linear, solver->matrix) >= 0
         && CVodeSetMaxNumSteps (solver->cvode, MAX_STEPS) >= 0;
}

LwSolver *
lw_solver_new (void)
{
  LwSolver *solver = g_new0 (LwSolver, 1);

  if (!solver_set_up (solver))
    g_clear_pointer (&solver, lw_solver_free);

  return solver;
}

void
lw_solver_free (LwSolver *solver)
{
  CVodeFree (&solver->cvode);
  if (solver->linear != NULL)
    SUNLinSolFree (solver->linear);
  if (solver->matrix != NULL)
    SUNMatDestroy (solver->matrix);
  if (solver->state != NULL)
    N_VDestroy (solver->state);
  if (solver->absolute != NULL)
    N_VDestroy (solver->absolute);
  if (solver->context != NULL)
    SUNContext_Free (&solver->context);
  g_free (solver);
}

void
lw_solver_set_tolerance (LwSolver *solver,
                         double    relative)
{
  double *absolute = N_VGetArrayPointer (solver->absolute);
  const double *size = (const double *) &scale;

  for (gsize i = 0; i < LW_N_STATE; i++)
    absolute[i] = relative * size[i];

  CVodeSVtolerances (solver->cvode, relative, solver->absolute);
}

int
lw_solver_start (LwSolver         *solver,
                 const LwBoundary *boundary,
                 const LwState    *state)
{
  LwState *first = (LwState *) N_VGetArrayPointer (solver->state);
  int code;

  solver->boundary = boundary;
  *first = *state;
  code = CVodeReInit (solver->cvode, 0, solver->state);

  return code < 0 ? code : CVodeSetStopTime (solver->cvode, boundary->at.duration_s);
}

/* Interpolation may leave the bounds by less than the tolerance. */
static void
keep_in_bounds (LwState *s)
{
  s->water = fmax (s->water, 0);
  s->enzyme = CLAMP (s->enzyme, 0, 1);
  s->oxidation = CLAMP (s->oxidation, 0, 1);
  s->broken = CLAMP (s->broken, 0, 1);
  s->twist = CLAMP (s->twist, 0, 1);
  s->wilt = fmax (s->wilt, 0);
  s->heat = fmax (s->heat, 0);
  s->roll = fmax (s->roll, 0);
  s->roast_min = fmax (s->roast_min, 0);
  s->green = fmax (s->green, 0);
}

int
lw_solver_advance (LwSolver *solver,
                   double    t_s,
                   LwState  *state)
{
  sunrealtype reached;
  int code = CVode (solver->cvode, t_s, solver->state, &reached, CV_NORMAL);

  *state = *(LwState *) N_VGetArrayPointer (solver->state);
  keep_in_bounds (state);

  return MIN (code, 0);
}

double
lw_solver_time_s (LwSolver *solver)
{
  sunrealtype t_s = 0;

  CVodeGetCurrentTime (solver->cvode, &t_s);

  return t_s;
}

void
lw_solver_work (LwSolver *solver,
                gulong   *steps,
                gulong   *rate_calls)
{
  long n_steps = 0, calls = 0, for_jacobian = 0;

  CVodeGetNumSteps (solver->cvode, &n_steps);
  CVodeGetNumRhsEvals (solver->cvode, &calls);
  CVodeGetNumLinRhsEvals (solver->cvode, &for_jacobian);
  *steps = (gulong) n_steps;
  *rate_calls = (gulong) (calls + for_jacobian);
}
