/* A jump: at one moment of a step what is known of the leaf is corrected, and every part's state shifted.
 * Immutable once made, reference-counted. SI. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/state.h"

typedef struct
{
  double time_s;    /* from the step's start; where the step is shorter it comes at its end */
  guint n_parts;
  LwState *shifts;  /* one for each part of the leaf, in its order: added to the state there */
} LwJump;

/* Takes a copy of the shifts. */
LwJump *lw_jump_new   (double         time_s,
                       const LwState *shifts,
                       guint          n_parts);
LwJump *lw_jump_ref   (LwJump        *jump);
void    lw_jump_unref (LwJump        *jump);

/* When it comes in a step of that duration. */
double  lw_jump_at_s  (const LwJump  *jump,
                       double         duration_s);

/* Shifts the states of `n` parts and keeps them within bounds; a part without a shift stays as it is. */
void    lw_jump_apply (const LwJump  *jump,
                       LwState       *states,
                       guint          n);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwJump, lw_jump_unref)
