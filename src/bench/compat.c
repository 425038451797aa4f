/* Built without the cap on GTK's version: newer calls where there are, older ones else. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/compat.h"

#include "season/document.h"
#include "season/text.h"

typedef struct
{
  LwFileChosen chosen;
  gpointer data;
  gboolean save;
} Ask;

/* Files with these endings, parted by blanks. */
static GtkFileFilter *
filter_new (const char *name,
            const char *endings)
{
  g_auto (GStrv) each = g_strsplit (endings, " ", -1);
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, name);
  for (guint i = 0; each[i] != NULL; i++)
    gtk_file_filter_add_suffix (filter, each[i]);

  return filter;
}

static GtkFileFilter *
season_filter (void)
{
  return filter_new (_ ("Seasons"), LW_SEASON_SUFFIX + 1);
}

static GtkFileFilter *
table_filter (void)
{
  return filter_new (_ ("Tables (CSV)"), "csv tsv tab txt");
}

static GtkFileFilter *
picture_filter (void)
{
  return filter_new (_ ("Pictures and tables"), "pdf svg png csv");
}

#if GTK_CHECK_VERSION (4, 10, 0)

static void
answered_cb (GObject      *dialog,
             GAsyncResult *result,
             gpointer      data)
{
  g_autofree Ask *ask = data;
  g_autoptr (GFile) file = ask->save ? gtk_file_dialog_save_finish (GTK_FILE_DIALOG (dialog), result, NULL)
                                     : gtk_file_dialog_open_finish (GTK_FILE_DIALOG (dialog), result, NULL);

  ask->chosen (file, ask->data);
}

static GtkFileDialog *
dialog_new (const char    *title,
            GtkFileFilter *of)
{
  GtkFileDialog *dialog = gtk_file_dialog_new ();
  g_autoptr (GListStore) filters = g_list_store_new (GTK_TYPE_FILE_FILTER);
  g_autoptr (GtkFileFilter) filter = of;

  g_list_store_append (filters, filter);
  gtk_file_dialog_set_title (dialog, title);
  gtk_file_dialog_set_filters (dialog, G_LIST_MODEL (filters));

  return dialog;
}

void
lw_compat_ask_open (GtkWindow   *parent,
                    LwFileChosen chosen,
                    gpointer     data)
{
  g_autoptr (GtkFileDialog) dialog = dialog_new (_ ("Open a season"), season_filter ());
  Ask ask = { chosen, data, FALSE };

  gtk_file_dialog_open (dialog, parent, NULL, answered_cb, g_memdup2 (&ask, sizeof ask));
}

void
lw_compat_ask_table (GtkWindow   *parent,
                     const char  *title,
                     LwFileChosen chosen,
                     gpointer     data)
{
  g_autoptr (GtkFileDialog) dialog = dialog_new (title, table_filter ());
  Ask ask = { chosen, data, FALSE };

  gtk_file_dialog_open (dialog, parent, NULL, answered_cb, g_memdup2 (&ask, sizeof ask));
}

void
lw_compat_ask_save (GtkWindow   *parent,
                    GFile       *folder,
                    const char  *name,
                    LwFileChosen chosen,
                    gpointer     data)
{
  g_autoptr (GtkFileDialog) dialog = dialog_new (_ ("Save the season"), season_filter ());
  Ask ask = { chosen, data, TRUE };

  gtk_file_dialog_set_initial_folder (dialog, folder);
  gtk_file_dialog_set_initial_name (dialog, name);
  gtk_file_dialog_save (dialog, parent, NULL, answered_cb, g_memdup2 (&ask, sizeof ask));
}

void
lw_compat_ask_export (GtkWindow   *parent,
                      const char  *title,
                      const char  *name,
                      LwFileChosen chosen,
                      gpointer     data)
{
  g_autoptr (GtkFileDialog) dialog = dialog_new (title, picture_filter ());
  Ask ask = { chosen, data, TRUE };

  gtk_file_dialog_set_initial_name (dialog, name);
  gtk_file_dialog_save (dialog, parent, NULL, answered_cb, g_memdup2 (&ask, sizeof ask));
}

static void
folder_cb (GObject      *dialog,
           GAsyncResult *result,
           gpointer      data)
{
  g_autofree Ask *ask = data;
  g_autoptr (GFile) folder = gtk_file_dialog_select_folder_finish (GTK_FILE_DIALOG (dialog), result, NULL);

  ask->chosen (folder, ask->data);
}

void
lw_compat_ask_folder (GtkWindow   *parent,
                      GFile       *folder,
                      LwFileChosen chosen,
                      gpointer     data)
{
  g_autoptr (GtkFileDialog) dialog = gtk_file_dialog_new ();
  Ask ask = { chosen, data, FALSE };

  gtk_file_dialog_set_title (dialog, _ ("Folder to search"));
  gtk_file_dialog_set_initial_folder (dialog, folder);
  gtk_file_dialog_select_folder (dialog, parent, NULL, folder_cb, g_memdup2 (&ask, sizeof ask));
}

#else

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             gpointer         data)
{
  g_autofree Ask *ask = data;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  ask->chosen (file, ask->data);
  g_object_unref (dialog);
}

static void
show_dialog (GtkFileChooserNative *dialog,
             GtkFileFilter        *of,
             const Ask            *ask)
{
  g_autoptr (GtkFileFilter) filter = of;

  if (filter != NULL)
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), g_memdup2 (ask, sizeof *ask));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
lw_compat_ask_open (GtkWindow   *parent,
                    LwFileChosen chosen,
                    gpointer     data)
{
  const Ask ask = { chosen, data, FALSE };

  show_dialog (gtk_file_chooser_native_new (_ ("Open a season"), parent, GTK_FILE_CHOOSER_ACTION_OPEN,
                                            _ ("_Open"), _ ("_Cancel")), season_filter (), &ask);
}

void
lw_compat_ask_table (GtkWindow   *parent,
                     const char  *title,
                     LwFileChosen chosen,
                     gpointer     data)
{
  const Ask ask = { chosen, data, FALSE };

  show_dialog (gtk_file_chooser_native_new (title, parent, GTK_FILE_CHOOSER_ACTION_OPEN,
                                            _ ("_Import"), _ ("_Cancel")), table_filter (), &ask);
}

void
lw_compat_ask_save (GtkWindow   *parent,
                    GFile       *folder,
                    const char  *name,
                    LwFileChosen chosen,
                    gpointer     data)
{
  const Ask ask = { chosen, data, TRUE };
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Save the season"), parent,
                                                              GTK_FILE_CHOOSER_ACTION_SAVE,
                                                              _ ("_Save"), _ ("_Cancel"));

  if (folder != NULL)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (dialog), folder, NULL);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  show_dialog (dialog, season_filter (), &ask);
}

void
lw_compat_ask_export (GtkWindow   *parent,
                      const char  *title,
                      const char  *name,
                      LwFileChosen chosen,
                      gpointer     data)
{
  const Ask ask = { chosen, data, TRUE };
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (title, parent, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"),
                                                              _ ("_Cancel"));

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  show_dialog (dialog, picture_filter (), &ask);
}

void
lw_compat_ask_folder (GtkWindow   *parent,
                      GFile       *folder,
                      LwFileChosen chosen,
                      gpointer     data)
{
  const Ask ask = { chosen, data, FALSE };
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Folder to search"), parent,
                                                              GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER,
                                                              _ ("_Choose"), _ ("_Cancel"));

  if (folder != NULL)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (dialog), folder, NULL);
  show_dialog (dialog, NULL, &ask);
}

#endif

GdkRGBA
lw_compat_color (GtkWidget *widget)
{
  GdkRGBA color;

#if GTK_CHECK_VERSION (4, 10, 0)
  gtk_widget_get_color (widget, &color);
#else
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
#endif

  return color;
}

typedef struct
{
  GFile *file;
  LwFileShown shown;
  gpointer data;
} Show;

static void
opened_cb (GObject      *opener,
           GAsyncResult *result,
           gpointer      data)
{
  g_autofree Show *show = data;
  g_autoptr (GFile) file = show->file;
  g_autoptr (GError) error = NULL;

#if GTK_CHECK_VERSION (4, 10, 0)
  gtk_uri_launcher_launch_finish (GTK_URI_LAUNCHER (opener), result, &error);
#else
  gtk_show_uri_full_finish (GTK_WINDOW (opener), result, &error);
#endif
  show->shown (file, error, show->data);
}

void
lw_compat_show_file (GtkWindow  *parent,
                     GFile      *file,
                     LwFileShown shown,
                     gpointer    data)
{
  const Show show = { g_object_ref (file), shown, data };
  g_autofree char *uri = g_file_get_uri (file);
#if GTK_CHECK_VERSION (4, 10, 0)
  g_autoptr (GtkUriLauncher) launcher = gtk_uri_launcher_new (uri);

  gtk_uri_launcher_launch (launcher, parent, NULL, opened_cb, g_memdup2 (&show, sizeof show));
#else
  gtk_show_uri_full (parent, uri, GDK_CURRENT_TIME, NULL, opened_cb, g_memdup2 (&show, sizeof show));
#endif
}
