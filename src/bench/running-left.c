/* A running batch is taken up from its journal: at once where the season's file lags behind it, and otherwise as people say. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

#include <errno.h>
#include <sys/stat.h>

#include "season/text.h"

static void
left_free (LwRunningLeft *left)
{
  lw_journal_entry_clear (&left->entry);
  g_free (left->told.batch);
  g_free (left->told.season);
  g_free (left->told.file);
  g_free (left);
}

void
lw_running_drop_left (LwRunning *self)
{
  g_clear_pointer (&self->left, left_free);
}

const LwRunLeft *
lw_running_left (LwRunning *self)
{
  return self->left != NULL ? &self->left->told : NULL;
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
          gboolean       no_weather)
{
  g_autofree char *entries = say_entries (batch, n_entries, changed);
  const char *weather = no_weather ? _ ("Its weather was not in the file: choose it again.") : "";

  return g_strconcat (entries, *weather != '\0' ? " " : "", weather, NULL);
}

static void
tell_back (LwRunning  *self,
           const char *back,
           gboolean    set_back,
           guint       damaged)
{
  const char *clock = set_back       ? _ ("It is still running. The computer's clock was set back: the step's time goes on "
                                          "from the last entry, and what passed since is not counted.")
                      : self->run.on ? _ ("It is still running; its clock went on.")
                                     : "";
  const char *lost = damaged > 0 ? _ ("What was being written at the very end is lost, nothing before it.") : "";
  g_autofree char *words = g_strconcat (back, *clock != '\0' ? " " : "", clock, *lost != '\0' ? " " : "", lost, NULL);

  lw_running_tell (self, words);
}

/* (transfer full) (nullable) what there is to tell of it. `set_back`: whether the computer's clock was. */
static char *
put_back (LwRunning            *self,
          const LwJournalEntry *entry,
          gboolean             *set_back)
{
  guint batch, n_entries;
  gboolean no_weather, changed;
  g_autoptr (LwSeason) next = lw_journal_put_back (lw_session_base (self->session), entry, &batch, &n_entries, &no_weather,
                                                   &changed);
  g_autofree char *words = say_back (next->batches[batch], n_entries, changed, no_weather);

  self->run = entry->run;
  *set_back = lw_running_catch_clock (self, entry->written_s);
  lw_running_follow_clock (self);
  self->run.step = MIN (self->run.step, MAX (next->batches[batch]->n_steps, 1) - 1);
  self->name = g_strdup (next->batches[batch]->name);
  self->file_name = g_strdup (entry->name);
  self->batch = lw_batch_ref (next->batches[batch]);
  if (changed)
    lw_session_edit_batch (self->session, g_steal_pointer (&next), _ ("Put back what was entered"), batch);
  else
    lw_session_choose (self->session, batch);
  lw_running_mark (self);
  if (*set_back)
    lw_running_keep (self);
  if (changed || self->run.on)
    return g_steal_pointer (&words);

  lw_running_saved (self);

  return NULL;
}

/* Where it is to be joined with the file's that is a second edit, so that one undo leads to the run's and the next to the
 * file's. */
static void
carry_out (LwRunning            *self,
           const LwJournalEntry *entry,
           guint                 damaged,
           LwTake                take)
{
  guint batch, n_entries;
  gboolean set_back;
  g_autoptr (LwSeason) joined = take == LW_TAKE_BOTH
                                    ? lw_journal_join (lw_session_base (self->session), entry, &batch, &n_entries)
                                    : NULL;
  g_autofree char *words = put_back (self, entry, &set_back);

  if (joined != NULL)
    {
      g_free (words);
      words = say_entries (joined->batches[batch], n_entries, TRUE);
      lw_session_edit_batch (self->session, g_steal_pointer (&joined), _ ("Take the file's batch with what was entered"), batch);
      lw_running_mark (self);
    }
  if (words != NULL)
    tell_back (self, words, set_back, damaged);
}

static void
ask (LwRunning      *self,
     LwJournalEntry *entry,
     guint           damaged,
     gboolean        moved,
     LwLeftWhy       why)
{
  LwRunningLeft *left = g_new0 (LwRunningLeft, 1);
  const LwSeason *base = lw_session_base (self->session);
  g_autoptr (LwSeason) back = NULL, joined = NULL;
  gboolean no_weather, changed;
  guint batch, n;

  left->entry = *entry;
  *entry = (LwJournalEntry) { 0 };
  left->damaged = damaged;
  left->moved = moved;
  back = lw_journal_put_back (base, &left->entry, &batch, &left->told.n_entries, &no_weather, &changed);
  joined = lw_journal_join (base, &left->entry, &batch, &n);
  left->told.why = why;
  left->told.batch = g_strdup (left->entry.name);
  left->told.season = g_strdup (left->entry.kept->name);
  left->told.file = g_strdup (left->entry.file);
  left->told.joins = joined != NULL;
  lw_running_drop_left (self);
  self->left = left;
  lw_running_ask (self);
}

/* Takes the contents of `entry` over where it has to be asked about. */
static void
settle (LwRunning      *self,
        LwJournalEntry *entry,
        guint           damaged,
        gboolean        moved)
{
  switch (lw_journal_stand (lw_session_base (self->session), entry))
    {
    case LW_JOURNAL_APART:
      ask (self, entry, damaged, moved, LW_LEFT_APART);
      break;
    case LW_JOURNAL_NO_BATCH:
      ask (self, entry, damaged, moved, LW_LEFT_NO_BATCH);
      break;
    case LW_JOURNAL_SAME:
    case LW_JOURNAL_AHEAD:
    default:
      carry_out (self, entry, damaged, LW_TAKE_RUN);
      break;
    }
}

static void
set_aside (LwRunning  *self,
           const char *words)
{
  g_autofree char *aside = lw_journal_file_set_aside (g_steal_pointer (&self->file));
  g_autofree char *shown = aside != NULL ? g_filename_display_name (aside) : NULL;
  /* Translators: a path */
  g_autofree char *kept = shown != NULL ? g_strdup_printf (_ ("The journal is kept as %s."), shown)
                                        : g_strdup (_ ("The journal could not be put aside: it stays where it is."));
  g_autofree char *all = g_strconcat (words, " ", kept, NULL);

  self->put_off = aside == NULL;
  lw_running_tell (self, all);
}

/* Whether the run was of the season in hand, which had another path then: its file is gone from there, and the season has
 * the same name, or the batch that the file had. */
static gboolean
is_moved (LwRunning            *self,
          const LwJournalEntry *entry)
{
  const LwSeason *base = lw_session_base (self->session);
  int at = lw_season_batch (base, entry->name);
  g_autofree char *digest = at >= 0 ? lw_journal_digest (base->batches[at]) : NULL;
  struct stat about;

  if (stat (entry->file, &about) == 0 || (errno != ENOENT && errno != ENOTDIR))
    return FALSE;

  return g_str_equal (entry->kept->name, base->name) || (digest != NULL && g_strcmp0 (digest, entry->base) == 0);
}

/* The journal of a season that was moved or renamed while the program was not there. */
static void
look_elsewhere (LwRunning  *self,
                const char *journal)
{
  g_auto (GStrv) others = lw_journal_file_others (journal);

  for (guint i = 0; others[i] != NULL && self->left == NULL; i++)
    {
      g_autoptr (LwJournalFile) file = lw_journal_file_open (others[i], NULL);
      gsize length;
      g_autofree char *text = file != NULL ? lw_journal_file_load (file, &length, NULL) : NULL;
      g_auto (LwJournalEntry) entry = { 0 };
      guint damaged;

      if (text == NULL || !lw_journal_read (text, length, &entry, &damaged) || !is_moved (self, &entry))
        continue;

      self->file = g_steal_pointer (&file);
      ask (self, &entry, damaged, TRUE, LW_LEFT_MOVED);
    }
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

  lw_running_forget (self);
  lw_running_drop_left (self);
  g_clear_pointer (&self->file, lw_journal_file_close);
  g_free (self->path);
  self->path = g_strdup (path);
  self->fresh = FALSE;
  self->put_off = FALSE;
  if (journal == NULL)
    return;
  if (!g_file_test (journal, G_FILE_TEST_EXISTS))
    {
      look_elsewhere (self, journal);
      return;
    }

  self->file = lw_journal_file_open (journal, &error);
  if (self->file != NULL)
    text = lw_journal_file_load (self->file, &length, &error);
  if (text == NULL)
    lw_running_tell (self, error->message);
  else if (lw_journal_read (text, length, &entry, &damaged))
    settle (self, &entry, damaged, FALSE);
  else if (length == 0)
    g_clear_pointer (&self->file, lw_journal_file_remove);
  else
    set_aside (self, _ ("The journal of this season's running batch cannot be read; nothing was put back."));
}

/* A journal of another path goes where the season in hand has its own: the new one is written before the old one goes. */
static void
take (LwRunning     *self,
      LwRunningLeft *left,
      LwTake         how)
{
  LwJournalFile *old = left->moved ? g_steal_pointer (&self->file) : NULL;

  if (left->told.why == LW_LEFT_MOVED)
    settle (self, &left->entry, left->damaged, TRUE);
  else
    carry_out (self, &left->entry, left->damaged, how);
  if (self->left != NULL)
    self->file = old;
  else if (old != NULL && lw_running_keep (self))
    lw_journal_file_remove (old);
  else
    g_clear_pointer (&old, lw_journal_file_close);
}

void
lw_running_take_left (LwRunning *self,
                      LwTake     how)
{
  LwRunningLeft *left = g_steal_pointer (&self->left);

  if (left == NULL)
    return;

  if (how == LW_TAKE_RUN || how == LW_TAKE_BOTH)
    {
      take (self, left, how);
    }
  else if (how == LW_TAKE_FILE)
    {
      set_aside (self, _ ("Nothing was put back."));
    }
  else
    {
      self->put_off = TRUE;
      g_clear_pointer (&self->file, lw_journal_file_close);
      lw_running_tell (self, _ ("Nothing was put back. You are asked again when the season is opened again, "
                                  "unless another batch was started."));
    }

  left_free (left);
  lw_running_moved (self);
}
