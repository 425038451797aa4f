/* A field for each step of the batch in hand: what the maker looks for in it. Each change is one edit. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_CARD_SIGNS (lw_card_signs_get_type ())
G_DECLARE_FINAL_TYPE (LwCardSigns, lw_card_signs, LW, CARD_SIGNS, GtkWidget)

/* Signal "editing": a sign is about to be edited, so that nothing but words will change. */
GtkWidget *lw_card_signs_new    (LwSession   *session);

/* Takes up what is typed and not yet done. */
void       lw_card_signs_commit (LwCardSigns *self);
