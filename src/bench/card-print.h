/* Printing a wall card, on a printer or into a file by the same way. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/card.h"

/* Asks which printer over `parent`; or, `path` not NULL, prints into that file as PDF and asks nothing. FALSE and an
 * error if that failed; what a person calls off is none. The card must live until then: the call returns afterwards. */
gboolean lw_card_print (const LwCard     *card,
                        const LwCardWish *wish,
                        GtkWindow        *parent,
                        const char       *path,
                        GError          **error);
