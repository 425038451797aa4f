/* The running batch on the disk: every change at once, until the season's file has it all. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

#include <math.h>
#include <string.h>

#include "bench/clock.h"
#include "season/text.h"

#define AGAIN_MS 5000

static gboolean
again_cb (gpointer data)
{
  LwRunning *self = data;

  self->again = 0;
  g_clear_pointer (&self->file, lw_journal_file_close);
  if (lw_running_keep (self) && self->trouble == NULL)
    lw_running_tell (self, _ ("What was entered is on the disk now."));
  lw_running_moved (self);

  return G_SOURCE_REMOVE;
}

/* Always FALSE, to be returned. */
static gboolean
fail (LwRunning    *self,
      const GError *error)
{
  g_free (self->trouble);
  /* Translators: what went wrong */
  self->trouble = g_strdup_printf (_ ("%s What you enter is kept in this window and written as soon as that can be done: "
                                      "do not close it."), error->message);
  if (self->again == 0)
    self->again = g_timeout_add (AGAIN_MS, again_cb, self);

  return FALSE;
}

static gboolean
open_file (LwRunning *self,
           GError   **error)
{
  g_autofree char *path = lw_journal_file_path (NULL, self->path);

  if (self->file == NULL)
    self->file = lw_journal_file_open (path, error);
  /* Left by a run of which nobody has said what is to become: not to be lost behind this one. */
  if (self->file != NULL && self->fresh && !lw_journal_file_is_empty (self->file))
    {
      g_autofree char *aside = lw_journal_file_set_aside (g_steal_pointer (&self->file));
      g_autofree char *shown = g_filename_display_name (path);

      if (aside != NULL)
        self->file = lw_journal_file_open (path, error);
      else
        g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED,
                     _ ("The journal of an earlier run, %s, could not be put aside: rename it."), shown);
    }
  self->fresh = self->fresh && self->file == NULL;

  return self->file != NULL;
}

gboolean
lw_running_is_elsewhere (LwRunning *self,
                         GError   **error)
{
  g_autofree char *path = lw_journal_file_path (NULL, lw_session_path (self->session));
  g_autoptr (GError) why = NULL;
  gboolean asked = self->file == NULL && g_file_test (path, G_FILE_TEST_EXISTS);
  g_autoptr (LwJournalFile) file = asked ? lw_journal_file_open (path, &why) : NULL;
  gboolean elsewhere = g_error_matches (why, G_FILE_ERROR, G_FILE_ERROR_AGAIN);

  if (elsewhere)
    g_propagate_error (error, g_steal_pointer (&why));

  return elsewhere;
}

/* What cannot be read again, as of a step with more weigh-ins than a document holds, is not on the disk. */
static gboolean
check_readable (const char *line,
                GError    **error)
{
  g_auto (LwJournalEntry) entry = { 0 };
  guint damaged;

  if (lw_journal_read (line, strlen (line), &entry, &damaged))
    return TRUE;

  g_set_error_literal (error, G_FILE_ERROR, G_FILE_ERROR_INVAL,
                       _ ("The running batch has something that no file can hold. Save the season: that tells what it is."));

  return FALSE;
}

gboolean
lw_running_take_over (LwRunning *self)
{
  const char *path = lw_session_path (self->session);
  g_autofree char *journal = path != NULL ? lw_journal_file_path (NULL, path) : NULL;
  LwJournalFile *file;

  /* Its own, or there is none, or it was said to stay, or another window has it. */
  if (self->name != NULL || self->left != NULL || self->put_off || lw_session_is_dragging (self->session) || journal == NULL
      || !g_file_test (journal, G_FILE_TEST_EXISTS) || (file = lw_journal_file_open (journal, NULL)) == NULL)
    return FALSE;

  lw_journal_file_close (file);
  lw_running_take_up (self);
  lw_running_moved (self);

  return self->name != NULL || self->left != NULL;
}

gboolean
lw_running_keep (LwRunning *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *line = NULL;
  LwSeason *filed = lw_session_filed (self->session);
  int at = lw_running_batch (self);

  if (self->name == NULL || at < 0)
    return TRUE;

  line = lw_journal_line (&self->run, lw_clock_now_s (), self->path, filed, self->file_name,
                          lw_session_base (self->session), (guint) at);
  if (!check_readable (line, &error) || !open_file (self, &error) || !lw_journal_file_add (self->file, line, &error))
    return fail (self, error);

  g_clear_pointer (&self->filed, lw_season_unref);
  if (filed != NULL)
    self->filed = lw_season_ref (filed);
  g_clear_pointer (&self->trouble, g_free);
  g_clear_handle_id (&self->again, g_source_remove);

  return TRUE;
}

void
lw_running_forget (LwRunning *self)
{
  self->run = (LwRun) { .on = FALSE, .paused_s = NAN, .planned = NAN };
  g_clear_pointer (&self->batch, lw_batch_unref);
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->file_name, g_free);
  g_clear_pointer (&self->trouble, g_free);
  g_clear_handle_id (&self->again, g_source_remove);
  g_array_set_size (self->marks, 0);
  self->clock_s = NAN;
}

void
lw_running_saved (LwRunning *self)
{
  const char *path = lw_session_path (self->session);
  g_autofree char *from = lw_journal_file_path (NULL, self->path), *to = lw_journal_file_path (NULL, path);
  gboolean moves = !g_str_equal (from, to);
  LwJournalFile *old = moves ? g_steal_pointer (&self->file) : NULL;

  g_free (self->file_name);
  self->file_name = g_strdup (self->name);
  g_free (self->path);
  self->path = g_strdup (path);
  self->fresh = self->fresh || moves;

  if (!self->run.on)
    {
      lw_running_forget (self);
      g_clear_pointer (&self->file, lw_journal_file_remove);
    }
  /* The new one first: at no moment is there none. */
  else if (!lw_running_keep (self))
    {
      g_clear_pointer (&old, lw_journal_file_close);
    }
  g_clear_pointer (&old, lw_journal_file_remove);
}
