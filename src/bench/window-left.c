/* Asks what is to become of a run that was cut short, where its season's file was changed, replaced or moved meanwhile. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"
#include "bench/run-left.h"
#include "bench/window-private.h"
#include "season/text.h"

static void
moved_cb (int         answer,
          const char *text,
          gpointer    data)
{
  static const LwTake takes[] = { LW_TAKE_FILE, LW_TAKE_NOTHING, LW_TAKE_RUN };
  g_autoptr (LwWindow) self = data;

  lw_running_take_left (self->running, answer >= 0 ? takes[answer] : LW_TAKE_NOTHING);
}

static void
ask_moved (LwWindow        *self,
           const LwRunLeft *left)
{
  const char *answers[] = { _ ("Do not ask again"), _ ("No, it is another"), _ ("Yes, go on here"), NULL };
  g_autofree char *shown = g_filename_display_name (left->file);
  /* Translators: a batch, a season, a path */
  g_autofree char *words = g_strdup_printf (_ ("Batch “%s” of the season “%s” was running in %s, and that file is no longer "
                                               "there. If this is the same file, moved or renamed, the run goes on here. Where "
                                               "you are not to be asked again, its journal is kept."),
                                            left->batch, left->season, shown);

  lw_ask (GTK_WINDOW (self), _ ("Is this the season that was running?"), words, answers, NULL, moved_cb,
          g_object_ref (self));
}

static void
no_batch_cb (int         answer,
             const char *text,
             gpointer    data)
{
  static const LwTake takes[] = { LW_TAKE_FILE, LW_TAKE_RUN };
  g_autoptr (LwWindow) self = data;

  lw_running_take_left (self->running, answer >= 0 ? takes[answer] : LW_TAKE_NOTHING);
}

static void
ask_no_batch (LwWindow        *self,
              const LwRunLeft *left)
{
  const char *answers[] = { _ ("Leave it out"), _ ("Add it to this season"), NULL };
  /* Translators: a batch, a season */
  g_autofree char *heading = g_strdup_printf (_ ("“%s” is not in this file"), left->batch);
  g_autofree char *words = g_strdup_printf (_ ("It was running in the season “%s”, whose file this was. Somebody else has taken "
                                               "it out since, or put another season in the file's place. Left out, its "
                                               "journal is kept."), left->season);

  lw_ask (GTK_WINDOW (self), heading, words, answers, NULL, no_batch_cb, g_object_ref (self));
}

static void
apart_cb (int         answer,
          const char *text,
          gpointer    data)
{
  static const LwTake takes[] = { LW_TAKE_FILE, LW_TAKE_RUN, LW_TAKE_BOTH };
  g_autoptr (LwWindow) self = data;

  lw_running_take_left (self->running, answer >= 0 ? takes[answer] : LW_TAKE_NOTHING);
}

static void
ask_apart (LwWindow        *self,
           const LwRunLeft *left)
{
  const char *answers[] = { _ ("The file's alone"), _ ("The run's"), left->joins ? _ ("The file's with the run in it") : NULL,
                            NULL };
  g_autofree char *heading = g_strdup_printf (_ ("“%s” was changed in its file, too"), left->batch);
  /* Translators: a number of weigh-ins */
  g_autofree char *entries = g_strdup_printf (ngettext ("The run has %u entry that the file has not.",
                                                        "The run has %u entries that the file has not.", left->n_entries),
                                              left->n_entries);
  const char *both = left->joins ? _ ("The file's with the run in it: name, note, aims and later steps are the file's, start, "
                                      "times, entries and logs the run's.")
                                 : _ ("The file has other steps: what was measured has no place in them.");
  g_autofree char *words = g_strdup_printf ("%s %s\n%s\n%s", _ ("While this batch was running here, somebody else changed it in the "
                                                                "season's file. Which is to count?"),
                                            entries, both,
                                            _ ("Undo takes out again what is put in. The file itself changes only when you save; the "
                                               "journal of a run that does not count is kept."));

  lw_ask (GTK_WINDOW (self), heading, words, answers, NULL, apart_cb, g_object_ref (self));
}

static void
asks_cb (LwWindow *self)
{
  const LwRunLeft *left = lw_running_left (self->running);

  switch (left->why)
    {
    case LW_LEFT_MOVED:
      ask_moved (self, left);
      break;
    case LW_LEFT_NO_BATCH:
      ask_no_batch (self, left);
      break;
    case LW_LEFT_APART:
    default:
      ask_apart (self, left);
      break;
    }
}

void
lw_window_add_left (LwWindow *self)
{
  g_signal_connect_object (self->running, "asks", G_CALLBACK (asks_cb), self, G_CONNECT_SWAPPED);
}
