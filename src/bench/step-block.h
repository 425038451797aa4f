/* A step's block: one focusable widget, told to screen readers in words. It shows;
 * the lane it stands in does the dragging and the keys. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "season/season.h"

#define LW_TYPE_STEP_BLOCK (lw_step_block_get_type ())
G_DECLARE_FINAL_TYPE (LwStepBlock, lw_step_block, LW, STEP_BLOCK, GtkWidget)

GtkWidget *lw_step_block_new     (void);

/* Shows `step` of `batch`. `before` (nullable) says the change under way, `led` (nullable) one of the leading setting
 * beside it. */
void       lw_step_block_show    (LwStepBlock    *self,
                                  const LwSeason *season,
                                  const LwBatch  *batch,
                                  guint           step,
                                  gboolean        chosen,
                                  const char     *before,
                                  const char     *led);

/* What a screen reader says. */
void       lw_step_block_tell    (LwStepBlock    *self,
                                  const char     *words);
