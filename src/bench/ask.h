/* Small windows that ask or tell: a heading, some words, a row of answers. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* `answer` counts from 0; -1 where the window was closed without one. `text` is the entry's, or NULL. */
typedef void (*LwAnswered) (int         answer,
                            const char *text,
                            gpointer    data);

/* Asks over `parent`. `answers` ends with NULL; the last is the one meant by Return. `entry` (nullable) puts a
 * text field with this text. `answered` is called once; it may be NULL. */
void lw_ask (GtkWindow         *parent,
             const char        *heading,
             const char        *words,
             const char *const *answers,
             const char        *entry,
             LwAnswered         answered,
             gpointer           data);

/* Shows a list of lines that scrolls, with one answer to close it. */
void lw_tell_list (GtkWindow  *parent,
                   const char *heading,
                   const char *words,
                   GStrv       lines);

/* Shows what is wrong with a file, each with its line; `file_name` is how the file is called there. */
void lw_tell_problems (GtkWindow  *parent,
                       const char *heading,
                       const char *words,
                       GPtrArray  *problems,
                       const char *file_name);
