/* Menus whose items come from the season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

/* Adds an item that gives the string `target` to the window's action; no letter of the label is a key. */
void lw_menu_add_choice (GMenu      *menu,
                         const char *label,
                         const char *action,
                         const char *target);

/* Gives `menu` the items of `fresh`, if they are others: an open menu whose items go loses the keyboard. */
void lw_menu_refill     (GMenu      *menu,
                         GMenu      *fresh);
