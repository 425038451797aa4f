/* Watches the files of other seasons while batches of them lie over: what somebody changes there lies over as it is
 * then. Nothing is ever written to them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/overlays.h"

#define LW_TYPE_OVER_WATCH (lw_over_watch_get_type ())
G_DECLARE_FINAL_TYPE (LwOverWatch, lw_over_watch, LW, OVER_WATCH, GObject)

/* Signal "said" (words): what came of a change, for people to know. */
LwOverWatch *lw_over_watch_new  (LwOverlays  *overlays);

/* Watches the file from now on; to be called before it is read. */
void         lw_over_watch_file (LwOverWatch *self,
                                 const char  *path);
