/* What the weigh-ins of a batch tell of its leaf, before anything is fitted. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef enum
{
  LW_TELLS_LEAF,
  LW_TELLS_LATE,    /* taken after its step's end */
  LW_TELLS_NOTHING, /* of walls */
} LwTells;

LwTells  lw_fit_tells       (const LwStep    *step,
                             const LwWeighIn *weigh_in);

/* Whether a fit can go by the batch: it was made and something in it tells of its leaf. */
gboolean lw_fit_can_use     (const LwBatch   *batch);

/* (transfer full) "weight × 4, leaf temperature × 1", of those that tell of the leaf; and what else there is. */
char    *lw_fit_say_told    (const LwBatch   *batch);

/* (transfer full) why a fit cannot go by the batch; NULL where it can. */
char    *lw_fit_say_useless (const LwBatch   *batch);

/* Bits of the quantities that a weigh-in of the batch tells of: 1 << LW_MOISTURE and so on. */
guint    lw_fit_quantities  (const LwBatch   *batch);
