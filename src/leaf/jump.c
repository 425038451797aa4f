/* Jumps: memory, and the sum. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/jump.h"

LwJump *
lw_jump_new (double         time_s,
             const LwState *shifts,
             guint          n_parts)
{
  LwJump *jump = g_atomic_rc_box_new0 (LwJump);

  jump->time_s = time_s;
  jump->n_parts = n_parts;
  jump->shifts = g_memdup2 (shifts, n_parts * sizeof *shifts);

  return jump;
}

LwJump *
lw_jump_ref (LwJump *jump)
{
  return g_atomic_rc_box_acquire (jump);
}

static void
jump_clear (LwJump *jump)
{
  g_free (jump->shifts);
}

void
lw_jump_unref (LwJump *jump)
{
  g_atomic_rc_box_release_full (jump, (GDestroyNotify) jump_clear);
}

double
lw_jump_at_s (const LwJump *jump,
              double        duration_s)
{
  return CLAMP (jump->time_s, 0, duration_s);
}

void
lw_jump_apply (const LwJump *jump,
               LwState      *states,
               guint         n)
{
  for (guint i = 0; i < MIN (n, jump->n_parts); i++)
    {
      for (gsize k = 0; k < LW_N_STATE; k++)
        ((double *) &states[i])[k] += ((const double *) &jump->shifts[i])[k];
      lw_state_bound (&states[i]);
    }
}
