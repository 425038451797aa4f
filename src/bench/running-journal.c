/* The running batch on the disk: every change at once, and what was left there by a program that did not end well. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

#include <math.h>

#include "season/journal.h"
#include "season/text.h"

#define AGAIN_MS 5000

static gboolean
again_cb (gpointer data)
{
  LwRunning *self = data;

  self->again = 0;
  g_clear_pointer (&self->file, lw_journal_file_close);
  if (lw_running_keep (self))
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

gboolean
lw_running_keep (LwRunning *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *line = NULL;
  int at = lw_running_batch (self);

  if (self->name == NULL || at < 0)
    return TRUE;

  line = lw_journal_line (&self->run, self->file_name, lw_session_base (self->session), (guint) at);
  if (!open_file (self, &error) || !lw_journal_file_add (self->file, line, &error))
    return fail (self, error);

  g_clear_pointer (&self->trouble, g_free);
  g_clear_handle_id (&self->again, g_source_remove);

  return TRUE;
}

/* Nothing runs, and nothing is left to be saved. */
static void
forget (LwRunning *self)
{
  self->run = (LwRun) { .on = FALSE, .paused_s = NAN, .planned = NAN };
  g_clear_pointer (&self->batch, lw_batch_unref);
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->file_name, g_free);
  g_clear_pointer (&self->trouble, g_free);
  g_clear_handle_id (&self->again, g_source_remove);
  g_array_set_size (self->marks, 0);
}

void
lw_running_saved (LwRunning *self)
{
  const char *path = lw_session_path (self->session);
  gboolean moves = g_strcmp0 (path, self->path) != 0;
  LwJournalFile *old = moves ? g_steal_pointer (&self->file) : NULL;

  g_free (self->file_name);
  self->file_name = g_strdup (self->name);
  if (moves)
    {
      g_free (self->path);
      self->path = g_strdup (path);
    }

  if (!self->run.on)
    {
      forget (self);
      g_clear_pointer (&self->file, lw_journal_file_remove);
    }
  /* The new one first: at no moment is there none. */
  else if (!lw_running_keep (self))
    {
      g_clear_pointer (&old, lw_journal_file_close);
    }
  g_clear_pointer (&old, lw_journal_file_remove);
}

static char *
say_entries (const LwBatch *batch,
             guint          n_entries,
             gboolean       changed)
{
  if (!changed)
    return g_strdup_printf (_ ("Batch “%s” is in hand."), batch->name);
  if (n_entries == 0)
    return g_strdup_printf (_ ("What was done in batch “%s” was put back."), batch->name);

  /* Translators: a number of weigh-ins, a batch */
  return g_strdup_printf (ngettext ("%u entry of batch “%s” was put back.", "%u entries of batch “%s” were put back.",
                                    n_entries), n_entries, batch->name);
}

/* (transfer full) what was put back. */
static char *
say_back (const LwBatch *batch,
          guint          n_entries,
          gboolean       changed,
          guint          damaged,
          gboolean       runs)
{
  g_autofree char *entries = say_entries (batch, n_entries, changed);
  const char *clock = runs ? _ ("It is still running; its clock went on.") : "";
  const char *lost = damaged > 0 ? _ ("What was being written at the very end is lost, nothing before it.") : "";

  return g_strconcat (entries, *clock != '\0' ? " " : "", clock, *lost != '\0' ? " " : "", lost, NULL);
}

static void
put_back (LwRunning            *self,
          const LwJournalEntry *entry,
          guint                 damaged)
{
  guint batch, n_entries;
  gboolean changed;
  g_autoptr (LwSeason) next = lw_journal_put_back (lw_session_base (self->session), entry, &batch, &n_entries, &changed);
  g_autofree char *words = say_back (next->batches[batch], n_entries, changed, damaged, entry->run.on);

  self->run = entry->run;
  self->run.step = MIN (self->run.step, MAX (next->batches[batch]->n_steps, 1) - 1);
  self->name = g_strdup (next->batches[batch]->name);
  self->file_name = g_strdup (entry->name);
  self->batch = lw_batch_ref (next->batches[batch]);
  if (changed)
    lw_session_edit_batch (self->session, g_steal_pointer (&next), _ ("Put back what was entered"), batch);
  else
    lw_session_choose (self->session, batch);
  lw_running_mark (self);
  if (changed || self->run.on)
    lw_running_tell (self, words);
  else
    lw_running_saved (self);
}

void
lw_running_take_up (LwRunning *self)
{
  const char *path = lw_session_path (self->session);
  g_autofree char *journal = path != NULL ? lw_journal_file_path (NULL, path) : NULL, *text = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  g_autoptr (GError) error = NULL;
  guint damaged;
  gsize length;

  forget (self);
  g_clear_pointer (&self->file, lw_journal_file_close);
  g_free (self->path);
  self->path = g_strdup (path);
  if (journal == NULL || !g_file_test (journal, G_FILE_TEST_EXISTS))
    return;

  if (open_file (self, &error))
    text = lw_journal_file_load (self->file, &length, &error);
  if (text == NULL)
    lw_running_tell (self, error->message);
  else if (lw_journal_read (text, length, &entry, &damaged))
    put_back (self, &entry, damaged);
  else if (length == 0)
    g_clear_pointer (&self->file, lw_journal_file_remove);
  else
    lw_running_tell (self, _ ("The journal of this season's running batch cannot be read; nothing was put back."));
}
