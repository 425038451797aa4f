/* The page "Steady through the weather" beside the board: how the batch comes out when leaf, weather and hand vary. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_STEADY_CARD (lw_steady_card_get_type ())
G_DECLARE_FINAL_TYPE (LwSteadyCard, lw_steady_card, LW, STEADY_CARD, GtkWidget)

GtkWidget *lw_steady_card_new (LwSession *session);
