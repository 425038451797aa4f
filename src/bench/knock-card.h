/* The card "Knock-on": what one notch of every setting does to every outcome. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_KNOCK_CARD (lw_knock_card_get_type ())
G_DECLARE_FINAL_TYPE (LwKnockCard, lw_knock_card, LW, KNOCK_CARD, GtkWidget)

/* Outcomes are those at the session's place; a step that is taken in hand by a cell of the table leaves that as it was. Computes in a thread, while it is mapped and nothing is dragged. Signal
 * "chosen" (guint step, guint setting, guint quantity): a cell was chosen; the step is in hand already. */
GtkWidget *lw_knock_card_new (LwSession *session);
