/* How a widget draws: palette and lettering, read off the widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/letter.h"

/* Whether the widget's text is light on dark. */
gboolean         lw_look_is_dark (GtkWidget *widget);

const LwPalette *lw_look_palette (GtkWidget *widget);

/* Valid while the widget keeps its font. */
LwLetter         lw_look_letter  (GtkWidget *widget);

gboolean         lw_look_is_rtl  (GtkWidget *widget);

/* (transfer full) "7.2 ± 0.1" in its order where people read from the right, too. */
char            *lw_look_numbers (const char *text);
GdkRGBA          lw_look_rgba    (LwInk      ink);
