/* A drawn bar for a factor: from nothing for a share, from the middle for a number of times. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#define LW_TYPE_FACTOR_BAR (lw_factor_bar_get_type ())
G_DECLARE_FINAL_TYPE (LwFactorBar, lw_factor_bar, LW, FACTOR_BAR, GtkWidget)

GtkWidget *lw_factor_bar_new (void);

/* `strong`: the one that holds back most. */
void       lw_factor_bar_set (LwFactorBar *self,
                              double       value,
                              gboolean     times,
                              gboolean     strong);

/* What a screen reader hears; apart from the drawing, so that a drag need not do it. */
void       lw_factor_bar_tell (LwFactorBar *self,
                               const char  *name,
                               const char  *value);
