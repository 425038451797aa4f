/* The side column's page of weigh-ins: all of the batch in hand, what each means and what the model says there. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_WEIGH_CARD (lw_weigh_card_get_type ())
G_DECLARE_FINAL_TYPE (LwWeighCard, lw_weigh_card, LW, WEIGH_CARD, GtkWidget)

/* Return on a row changes it, Delete removes it, by the window's actions. */
GtkWidget *lw_weigh_card_new (LwSession *session);
