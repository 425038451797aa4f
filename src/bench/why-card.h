/* The card "Why here": the factors of a rate at the reading line, and a sentence made from them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_WHY_CARD (lw_why_card_get_type ())
G_DECLARE_FINAL_TYPE (LwWhyCard, lw_why_card, LW, WHY_CARD, GtkWidget)

/* Shows the reading line's moment; without one the end of the step in hand, or of the batch. */
GtkWidget *lw_why_card_new (LwSession *session);
