/* A batch's curves before and after a fit over what was weighed. Left and Right, or the functions, go to another of the
 * batches that were fitted to, Up and Down to another quantity. Signal "shown": another is shown. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "study/fit.h"

#define LW_TYPE_FIT_PANEL (lw_fit_panel_get_type ())
G_DECLARE_FINAL_TYPE (LwFitPanel, lw_fit_panel, LW, FIT_PANEL, GtkWidget)

GtkWidget  *lw_fit_panel_new      (void);

/* `fit` (nullable) must live until another is shown. Begins with `batch` of the season where it was fitted to. */
void        lw_fit_panel_show     (LwFitPanel  *self,
                                   const LwFit *fit,
                                   int          batch);

/* Which of the fit's batches is shown. */
guint       lw_fit_panel_at       (LwFitPanel  *self);
void        lw_fit_panel_step     (LwFitPanel  *self,
                                   int          by);

LwQuantity  lw_fit_panel_quantity (LwFitPanel  *self);
/* Bits of what the batch's weigh-ins tell of. */
guint       lw_fit_panel_choice   (LwFitPanel  *self);
void        lw_fit_panel_choose   (LwFitPanel  *self,
                                   LwQuantity   quantity);
