/* The card "Result": what a step leaves behind, outcome by outcome, with aims, locks and the change against the
 * ghost; and what it costs in heat and hands. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_RESULT_CARD (lw_result_card_get_type ())
G_DECLARE_FINAL_TYPE (LwResultCard, lw_result_card, LW, RESULT_CARD, GtkWidget)

/* Shows the end of the step in hand, or the finished tea where none is. */
GtkWidget *lw_result_card_new (LwSession *session);
