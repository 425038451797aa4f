/* A drawn bar for a share of a whole: filled up to it, hatched on to a larger one, with its error as a whisker. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#define LW_TYPE_SHARE_BAR (lw_share_bar_get_type ())
G_DECLARE_FINAL_TYPE (LwShareBar, lw_share_bar, LW, SHARE_BAR, GtkWidget)

/* `share` and `more` from 0 to 1, `more` NAN where there is none; `error` of the one that reaches further.
 * `name` and `words` are for a screen reader. */
GtkWidget *lw_share_bar_new (double      share,
                             double      more,
                             double      error,
                             const char *name,
                             const char *words);
