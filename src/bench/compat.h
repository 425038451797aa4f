/* The few calls that differ between GTK 4.8 and later: file dialogs, the viewer of a file and a widget's colour. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Called with (transfer none) the file chosen, or NULL if none was. */
typedef void (*LwFileChosen) (GFile   *file,
                              gpointer data);

/* Asks for a season's file to open, for a table of numbers, or where to save under a proposed name. */
void    lw_compat_ask_open (GtkWindow   *parent,
                            LwFileChosen chosen,
                            gpointer     data);
void    lw_compat_ask_table (GtkWindow  *parent,
                             const char *title,
                             LwFileChosen chosen,
                             gpointer    data);
void    lw_compat_ask_save (GtkWindow   *parent,
                            GFile       *folder,
                            const char  *name,
                            LwFileChosen chosen,
                            gpointer     data);

/* Asks for a folder to search; `folder` (nullable) is the first proposal. */
void    lw_compat_ask_folder (GtkWindow *parent,
                              GFile     *folder,
                              LwFileChosen chosen,
                              gpointer   data);

/* Where to save a picture or table under a proposed name. */
void    lw_compat_ask_export (GtkWindow   *parent,
                              const char  *title,
                              const char  *name,
                              LwFileChosen chosen,
                              gpointer     data);

/* Called with (transfer none) the file and, if no viewer was started, why. */
typedef void (*LwFileShown) (GFile        *file,
                             const GError *error,
                             gpointer      data);

/* Opens the file in what the desktop opens files of its kind with. */
void    lw_compat_show_file  (GtkWindow   *parent,
                              GFile       *file,
                              LwFileShown  shown,
                              gpointer     data);

/* The colour of the widget's text. */
GdkRGBA lw_compat_color    (GtkWidget   *widget);
