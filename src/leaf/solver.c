/* CVODE, variable-order BDF, for all parts together. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/solver.h"

#include <cvode/cvode.h>
#include <math.h>
#include <string.h>

#include "leaf/blocks.h"
#include "leaf/inner.h"
#include "leaf/jacobian.h"
#include "leaf/sundials.h"
#include "leaf/vector.h"

#define MAX_STEPS 200000
#define DEFAULT_TOLERANCE 3e-6

struct _LwSolver
{
  SUNContext context;
  double relative;

  /* Made for `n` parts, and anew when their number changes. */
  guint n;
  void *cvode;
  N_Vector state;
  N_Vector absolute;
  N_Vector wanted;        /* its data are the caller's states */
  SUNMatrix matrix;
  SUNLinearSolver linear;

  const LwBoundary *boundaries;
  gboolean seeking;
  LwAimed aimed;
  GArray *turns;          /* LwTurn */
  LwState *seen;          /* room for `n` */
  sunrealtype reached_s;
  double end_s;           /* not past it */
  gulong steps_before;    /* of a jump */
  gulong rate_calls;
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
  LwAround around = lw_boundary_at (solver->boundaries, t_s);
  double sum = 0;

  lw_rates_meet (solver->boundaries, s, solver->n, &around);
  for (guint i = 0; i < solver->n; i++)
    {
      lw_inner_rates (&solver->boundaries[i], &around, &s[i], &r[i]);
      sum += r[i].water + r[i].temp_c + r[i].roast_min;
    }
  solver->rate_calls += solver->n;

  /* A trial step into nonsense is taken back and tried smaller. */
  return isfinite (sum) ? 0 : 1;
}

static int
turning_cb (sunrealtype  t_s,
            N_Vector     state,
            sunrealtype *values,
            void        *data)
{
  LwSolver *solver = data;

  for (guint i = 0; i < solver->n; i++)
    solver->seen[i] = lw_inner_outside ((const LwState *) N_VGetArrayPointer (state) + i);
  lw_turning_values (solver->boundaries, solver->seen, solver->n, &solver->aimed, values);

  return 0;
}

static int
jacobian_cb (sunrealtype t_s,
             N_Vector    state,
             N_Vector    rate,
             SUNMatrix   matrix,
             void       *data,
             N_Vector    tmp1,
             N_Vector    tmp2,
             N_Vector    tmp3)
{
  LwSolver *solver = data;
  const LwState *s = (const LwState *) N_VGetArrayPointer (state);
  const LwState *r = (const LwState *) N_VGetArrayPointer (rate);
  LwAround around = lw_boundary_at (solver->boundaries, t_s);

  /* What parts share is slow: leaving it out of the Jacobian keeps its blocks apart. */
  lw_rates_meet (solver->boundaries, s, solver->n, &around);
  for (guint i = 0; i < solver->n; i++)
    solver->rate_calls += lw_jacobian (&solver->boundaries[i], &around, &s[i], &r[i], lw_blocks_columns (matrix, i));

  return 0;
}

static void
drop_parts (LwSolver *solver)
{
  CVodeFree (&solver->cvode);
  g_clear_pointer (&solver->linear, SUNLinSolFree);
  g_clear_pointer (&solver->matrix, SUNMatDestroy);
  g_clear_pointer (&solver->state, N_VDestroy);
  g_clear_pointer (&solver->absolute, N_VDestroy);
  g_clear_pointer (&solver->wanted, N_VDestroy);
  solver->n = 0;
}

static int
apply_tolerance (LwSolver *solver)
{
  double *absolute = N_VGetArrayPointer (solver->absolute);

  for (gsize i = 0; i < solver->n * LW_N_STATE; i++)
    absolute[i] = solver->relative * ((const double *) &lw_inner_size)[i % LW_N_STATE];

  return CVodeSVtolerances (solver->cvode, solver->relative, solver->absolute);
}

/* Roots are looked for in the steps the solver takes anyway: they do not move the result. */
static int
seek_turns (LwSolver *solver)
{
  int ways[LW_N_TURNS];

  if (!solver->seeking)
    return CVodeRootInit (solver->cvode, 0, NULL);

  for (LwTurnKind kind = 0; kind < LW_N_TURNS; kind++)
    ways[kind] = lw_turning_way (kind);

  if (CVodeRootInit (solver->cvode, LW_N_TURNS, turning_cb) < 0
      || CVodeSetRootDirection (solver->cvode, ways) < 0)
    return CV_MEM_FAIL;

  return CVodeSetNoInactiveRootWarn (solver->cvode);
}

static void
note_turns (LwSolver *solver)
{
  int met[LW_N_TURNS] = { 0 };

  CVodeGetRootInfo (solver->cvode, met);
  for (LwTurnKind kind = 0; kind < LW_N_TURNS; kind++)
    if (met[kind] != 0)
      {
        LwTurn turn = { kind, solver->reached_s };

        g_array_append_val (solver->turns, turn);
      }
}

static int
make_parts (LwSolver *solver,
            guint     n)
{
  sunindextype length = (sunindextype) (n * LW_N_STATE);

  drop_parts (solver);
  solver->state = lw_vector_new (length, solver->context);
  solver->absolute = lw_vector_new (length, solver->context);
  solver->wanted = lw_vector_empty (length, solver->context);
  solver->matrix = lw_blocks_new (n, solver->context);
  solver->linear = lw_blocks_solver (solver->context);
  solver->cvode = CVodeCreate (CV_BDF, solver->context);
  if (solver->state == NULL || solver->absolute == NULL || solver->wanted == NULL
      || solver->matrix == NULL || solver->linear == NULL || solver->cvode == NULL)
    return CV_MEM_FAIL;

  solver->n = n;
  solver->seen = g_renew (LwState, solver->seen, n);
  lw_sundials_silence (solver->context, solver->cvode);
  N_VConst (0, solver->state);

  if (CVodeInit (solver->cvode, rates_cb, 0, solver->state) < 0
      || CVodeSetUserData (solver->cvode, solver) < 0
      || apply_tolerance (solver) < 0
      || CVodeSetLinearSolver (solver->cvode, solver->linear, solver->matrix) < 0
      || CVodeSetJacFn (solver->cvode, jacobian_cb) < 0
      || CVodeSetMaxNumSteps (solver->cvode, MAX_STEPS) < 0)
    return CV_MEM_FAIL;

  return 0;
}

LwSolver *
lw_solver_new (void)
{
  LwSolver *solver = g_new0 (LwSolver, 1);

  solver->relative = DEFAULT_TOLERANCE;
  solver->aimed = (LwAimed) { NAN, NAN };
  solver->turns = g_array_new (FALSE, FALSE, sizeof (LwTurn));
  solver->context = lw_sundials_new ();
  if (solver->context != NULL)
    return solver;

  g_array_unref (solver->turns);
  g_free (solver);

  return NULL;
}

void
lw_solver_free (LwSolver *solver)
{
  drop_parts (solver);
  SUNContext_Free (&solver->context);
  g_array_unref (solver->turns);
  g_free (solver->seen);
  g_free (solver);
}

void
lw_solver_set_tolerance (LwSolver *solver,
                         double    relative)
{
  solver->relative = relative;
  if (solver->n > 0)
    apply_tolerance (solver);
}

void
lw_solver_seek (LwSolver *solver,
                gboolean  turns)
{
  solver->seeking = turns;
}

void
lw_solver_set_aimed (LwSolver *solver,
                     LwAimed   aimed)
{
  solver->aimed = aimed;
}

/* At the end it was given or where a log bends before: so no step can pass over a short peak unseen, and the history
 * goes on. */
static int
stop_next (LwSolver *solver)
{
  double bend_s = lw_conditions_bend_s (&solver->boundaries->at, solver->reached_s);

  return CVodeSetStopTime (solver->cvode, fmin (solver->end_s, bend_s));
}

/* A new start of the integration, not of what was noted on the way. */
static int
begin (LwSolver      *solver,
       double         t_s,
       double         end_s,
       const LwState *states)
{
  int code;

  solver->reached_s = t_s;
  memcpy (N_VGetArrayPointer (solver->state), states, solver->n * sizeof *states);
  for (guint i = 0; i < solver->n; i++)
    lw_inner_take ((LwState *) N_VGetArrayPointer (solver->state) + i);
  code = CVodeReInit (solver->cvode, t_s, solver->state);
  if (code >= 0)
    code = seek_turns (solver);

  return code < 0 ? code : lw_solver_stop_at (solver, end_s);
}

int
lw_solver_start (LwSolver         *solver,
                 const LwBoundary *boundaries,
                 const LwState    *states,
                 guint             n)
{
  int code = n == solver->n ? 0 : make_parts (solver, n);

  if (code < 0)
    {
      drop_parts (solver);
      return code;
    }

  solver->boundaries = boundaries;
  solver->steps_before = 0;
  solver->rate_calls = 0;
  g_array_set_size (solver->turns, 0);

  return begin (solver, 0, boundaries->at.duration_s, states);
}

int
lw_solver_stop_at (LwSolver *solver,
                   double    end_s)
{
  solver->end_s = end_s;

  return end_s > solver->reached_s ? stop_next (solver) : 0;
}

int
lw_solver_jump (LwSolver      *solver,
                double         t_s,
                double         end_s,
                const LwState *before,
                const LwState *states)
{
  gulong rate_calls;

  lw_solver_work (solver, &solver->steps_before, &rate_calls);
  if (solver->seeking)
    lw_turning_jumped (solver->boundaries, before, states, solver->n, &solver->aimed, t_s, solver->turns);

  return begin (solver, t_s, end_s, states);
}

int
lw_solver_advance (LwSolver *solver,
                   double    t_s,
                   LwState  *states)
{
  int code = 0;

  /* The solver takes its own steps whatever is asked of it, so that sampling never moves the result. */
  while (code >= 0 && solver->reached_s < t_s)
    {
      code = CVode (solver->cvode, solver->end_s, solver->state, &solver->reached_s, CV_ONE_STEP);
      if (code == CV_ROOT_RETURN)
        note_turns (solver);
      else if (code == CV_TSTOP_RETURN && solver->reached_s < solver->end_s)
        code = stop_next (solver);
    }

  if (code < 0)
    return code;

  N_VSetArrayPointer ((double *) states, solver->wanted);
  code = CVodeGetDky (solver->cvode, t_s, 0, solver->wanted);
  for (guint i = 0; i < solver->n; i++)
    {
      states[i] = lw_inner_outside (&states[i]);
      lw_state_bound (&states[i]);
    }

  return MIN (code, 0);
}

const LwTurn *
lw_solver_turns (LwSolver *solver,
                 guint    *n)
{
  *n = solver->turns->len;

  return (const LwTurn *) (gpointer) solver->turns->data;
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
  long n_steps = 0;

  CVodeGetNumSteps (solver->cvode, &n_steps);
  *steps = solver->steps_before + (gulong) n_steps;
  *rate_calls = solver->rate_calls;
}
