/* The words over a column of the knock-on table, turned to be read from below: a column is then no wider than
 * its numbers, in every language. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#define LW_TYPE_KNOCK_HEAD (lw_knock_head_get_type ())
G_DECLARE_FINAL_TYPE (LwKnockHead, lw_knock_head, LW, KNOCK_HEAD, GtkWidget)

GtkWidget *lw_knock_head_new (const char *words,
                              const char *unit);
