/* The bar that says that the season's file was changed or taken away by somebody else, and what can be done. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"
#include "bench/disk-watch.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/text.h"

struct _LwWindowDisk
{
  LwDiskWatch *watch;
  GtkWidget *bar;
  GtkWidget *words;
  GtkWidget *again;
  GtkWidget *mine;
};

static void
turned_cb (LwDisk   disk,
           gpointer data)
{
  LwWindow *self = data;
  const char *path = lw_session_path (self->session);
  g_autofree char *name = path != NULL ? g_filename_display_basename (path) : g_strdup ("");
  g_autofree char *words = NULL;

  if (disk == LW_DISK_GONE)
    words = g_strdup_printf (_ ("%s is no longer in its folder: it was removed or renamed, or its disk was taken away. The "
                                "season is whole here, but in no file until it is saved."), name);
  else
    words = g_strdup_printf (_ ("%s was changed by somebody else since it was read or saved here. "
                                "Nothing is overwritten unless you say so."), name);

  gtk_label_set_label (GTK_LABEL (self->disk->words), words);
  gtk_button_set_label (GTK_BUTTON (self->disk->mine), disk == LW_DISK_GONE ? _ ("Save it again")
                                                                           : _ ("Keep mine and save over it"));
  gtk_widget_set_visible (self->disk->again, disk == LW_DISK_CHANGED);
  gtk_widget_set_visible (self->disk->bar, disk != LW_DISK_SAME);
}

static void
reread_cb (int         answer,
           const char *text,
           gpointer    data)
{
  g_autoptr (LwWindow) self = data;

  if (answer == 0)
    lw_window_read_again (self);
}

static void
again_cb (LwWindow *self)
{
  const char *answers[] = { _ ("Discard mine and read it again"), _ ("Cancel"), NULL };

  if (lw_session_is_saved (self->session))
    lw_window_read_again (self);
  else
    lw_ask (GTK_WINDOW (self), _ ("Read the file again?"),
            _ ("What was changed here since the last save will be lost."), answers, NULL, reread_cb,
            g_object_ref (self));
}

static void
active_cb (LwWindow *self)
{
  if (gtk_window_is_active (GTK_WINDOW (self)))
    lw_disk_watch_check (self->disk->watch, FALSE);
}

static GtkWidget *
button_new (LwWindow   *self,
            GtkWidget  *row,
            const char *label,
            GCallback   clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  if (clicked != NULL)
    g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (row), button);

  return button;
}

void
lw_window_add_disk (LwWindow *self)
{
  LwWindowDisk *disk = self->disk = g_new0 (LwWindowDisk, 1);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  disk->watch = lw_disk_watch_new (turned_cb, self);
  disk->words = g_object_new (GTK_TYPE_LABEL, "wrap", TRUE, "xalign", 0.0, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT,
                              NULL);
  disk->again = button_new (self, row, _ ("Read it again"), G_CALLBACK (again_cb));
  disk->mine = button_new (self, row, _ ("Keep mine and save over it"), G_CALLBACK (lw_window_save_over));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button_new (self, row, _ ("Save mine as…"), NULL)), "win.save-as");

  disk->bar = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (disk->bar, "disk-bar");
  gtk_box_append (GTK_BOX (disk->bar), disk->words);
  gtk_box_append (GTK_BOX (disk->bar), row);
  gtk_widget_set_visible (disk->bar, FALSE);
  /* Over the whole window: its buttons would squeeze the list of batches. */
  gtk_box_prepend (GTK_BOX (gtk_widget_get_parent (self->side_paned)), disk->bar);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_cb), NULL);
}

void
lw_window_disk_free (LwWindowDisk *disk)
{
  lw_disk_watch_free (disk->watch);
  g_free (disk);
}

void
lw_window_disk_took (LwWindow *self,
                     LwStamp  *stamp)
{
  lw_disk_watch_set (self->disk->watch, lw_session_path (self->session), stamp);
  gtk_widget_set_visible (self->disk->bar, FALSE);
}

void
lw_window_disk_wrote (LwWindow *self)
{
  gsize length;
  g_autofree char *text = lw_document_write (lw_session_base (self->session), &length);

  /* Of what was written here, not of what is there now: somebody may have come between. */
  lw_window_disk_took (self, lw_stamp_new (text, length));
}

LwDisk
lw_window_disk_check (LwWindow *self,
                      gboolean  thorough)
{
  return lw_disk_watch_check (self->disk->watch, thorough);
}

char *
lw_window_disk_reason (LwWindow   *self,
                       const char *path,
                       gboolean    asked)
{
  gboolean own = g_strcmp0 (path, lw_session_path (self->session)) == 0;
  LwDisk disk = own ? lw_window_disk_check (self, TRUE) : LW_DISK_SAME;
  g_autofree char *name = g_filename_display_basename (path), *folder = g_path_get_dirname (path);

  if (disk == LW_DISK_CHANGED)
    return g_strdup_printf (_ ("%s was changed by somebody else since it was read or saved here. What they wrote would "
                               "be lost."), name);
  /* Without its folder, too, the save fails and says so. */
  if (disk == LW_DISK_GONE && !asked && g_file_test (folder, G_FILE_TEST_IS_DIR))
    return g_strdup_printf (_ ("%s is no longer in its folder: it was removed or renamed, or its disk was taken away. It would "
                               "be a new file there."), name);
  if (!own && !asked && g_file_test (path, G_FILE_TEST_EXISTS))
    return g_strdup_printf (_ ("There is already a file %s here. What it holds would be lost."), name);

  return NULL;
}
