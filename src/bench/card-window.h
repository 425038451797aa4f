/* The window of the wall card: its preview, paper, load, signs, and the ways to print and save it. It follows the batch
 * in hand. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_CARD_WINDOW (lw_card_window_get_type ())
G_DECLARE_FINAL_TYPE (LwCardWindow, lw_card_window, LW, CARD_WINDOW, GtkWindow)

GtkWidget *lw_card_window_new   (GtkWindow    *parent,
                                 LwSession    *session);

/* Saves by the name's suffix, or prints into a PDF; tells what went wrong in a window. */
void       lw_card_window_save  (LwCardWindow *self,
                                 const char   *path);
void       lw_card_window_print (LwCardWindow *self,
                                 const char   *path); /* (nullable) asks for a printer */
