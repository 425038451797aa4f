/* A batch in the list of those found: its head, its file, and what it comes to once that is computed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "season/head.h"

#define LW_TYPE_FOUND (lw_found_get_type ())
G_DECLARE_FINAL_TYPE (LwFound, lw_found, LW, FOUND, GObject)

typedef enum
{
  LW_FOUND_LATER,   /* not computed yet */
  LW_FOUND_ASKED,   /* being computed */
  LW_FOUND_KNOWN,
  LW_FOUND_FAILED,  /* cannot be computed */
} LwFoundState;

/* Signal "known": its outcome is now known, or known to be none. `path` NULL: a batch of the open season. */
LwFound         *lw_found_new     (LwHead          *head,
                                   const char      *path);
const LwHead    *lw_found_head    (LwFound         *self);
const char      *lw_found_path    (LwFound         *self);
LwFoundState     lw_found_state   (LwFound         *self);
/* NULL unless it is known. */
const LwOutcome *lw_found_outcome (LwFound         *self);
/* `outcome` (nullable) is copied. */
void             lw_found_tell    (LwFound         *self,
                                   LwFoundState     state,
                                   const LwOutcome *outcome);
