/* How one part's rates change with its own states, by differences. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/rates.h"

/* Fills `columns` (LW_N_STATE of LW_N_STATE, zero before) at the inner state `s`, where the rates are `r`
 * (inner.h). Returns how often the rates were computed. */
guint lw_jacobian (const LwBoundary *boundary,
                   const LwAround   *around,
                   const LwState    *s,
                   const LwState    *r,
                   double          **columns);
