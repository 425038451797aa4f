/* The wall card as it will be printed, page under page, always on white. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/card.h"

#define LW_TYPE_CARD_PREVIEW (lw_card_preview_get_type ())
G_DECLARE_FINAL_TYPE (LwCardPreview, lw_card_preview, LW, CARD_PREVIEW, GtkWidget)

GtkWidget    *lw_card_preview_new  (void);

/* Takes the card (transfer full); NULL: there is none. */
void          lw_card_preview_show (LwCardPreview *self,
                                    LwCard        *card);

/* (transfer none) (nullable) */
const LwCard *lw_card_preview_card (LwCardPreview *self);
