/* New, open, save, save as, and the question before unsaved changes go. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/text.h"

typedef void (*Then) (LwWindow *self, gpointer data);

/* What is to be done once nothing unsaved would be lost. */
typedef struct
{
  LwWindow *window;
  Then then;
  gpointer data;
  GDestroyNotify free_data;
  char *path; /* (nullable) where it is to be saved */
} Waiting;

static void
waiting_free (Waiting *waiting)
{
  if (waiting->free_data != NULL)
    waiting->free_data (waiting->data);
  g_object_unref (waiting->window);
  g_free (waiting->path);
  g_free (waiting);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Waiting, waiting_free)

static void ask_where (Waiting *waiting);

static void
failed_cb (int         answer,
           const char *text,
           gpointer    data)
{
  g_autoptr (Waiting) waiting = data;

  if (answer == 1)
    ask_where (g_steal_pointer (&waiting));
}

/* Saves at `waiting->path`, and then does what waits. */
static void
save_now (Waiting *waiting)
{
  const char *answers[] = { _ ("Close"), _ ("Save elsewhere…"), NULL };
  g_autoptr (Waiting) done = waiting;
  LwWindow *self = waiting->window;
  g_autoptr (GError) error = NULL;
  g_autofree char *said = g_strdup_printf (_ ("Saved in %s."), waiting->path);

  if (!lw_session_save (self->session, waiting->path, &error))
    {
      lw_ask (GTK_WINDOW (self), _ ("The season was not saved"), error->message, answers, NULL, failed_cb,
              g_steal_pointer (&done));
      return;
    }

  lw_window_disk_wrote (self);
  lw_window_say (self, said);
  lw_window_note_recent (self, waiting->path);
  if (waiting->then != NULL)
    waiting->then (self, waiting->data);
}

static void
overwrite_cb (int         answer,
              const char *text,
              gpointer    data)
{
  g_autoptr (Waiting) waiting = data;

  if (answer == 0)
    save_now (g_steal_pointer (&waiting));
  else if (answer == 2)
    ask_where (g_steal_pointer (&waiting));
}

/* As save_now, but asks before it goes over what others have written, or where the file was taken away; `asked` whether the
 * name was agreed to. */
static void
save_to (Waiting    *waiting,
         const char *path,
         gboolean    asked)
{
  g_autofree char *words = lw_window_disk_reason (waiting->window, path, asked);
  gboolean over = g_file_test (path, G_FILE_TEST_EXISTS);
  const char *answers[] = { over ? _ ("Save over it") : _ ("Save it again"), _ ("Cancel"),
                            _ ("Save under another name…"), NULL };

  g_free (waiting->path);
  waiting->path = g_strdup (path);
  if (words == NULL)
    save_now (waiting);
  else
    lw_ask (GTK_WINDOW (waiting->window), over ? _ ("Save over the file?") : _ ("Save the file again?"), words, answers, NULL,
            overwrite_cb, waiting);
}

static void
save_as_chosen_cb (GFile   *file,
                   gpointer data)
{
  g_autoptr (Waiting) waiting = data;
  g_autofree char *chosen = file != NULL ? g_file_get_path (file) : NULL;
  g_autofree char *path = NULL;

  if (chosen == NULL)
    return;

  path = g_str_has_suffix (chosen, LW_SEASON_SUFFIX) ? g_strdup (chosen) : g_strconcat (chosen, LW_SEASON_SUFFIX, NULL);
  /* The dialog asked about the name that was typed, not about the one with the ending. */
  save_to (g_steal_pointer (&waiting), path, g_str_equal (path, chosen));
}

static void
ask_where (Waiting *waiting)
{
  LwSession *session = waiting->window->session;
  const char *path = lw_session_path (session);
  g_autoptr (GFile) folder = NULL;
  g_autofree char *name = path != NULL ? g_path_get_basename (path)
                                       : g_strconcat (lw_session_season (session)->name, LW_SEASON_SUFFIX, NULL);

  if (path != NULL)
    {
      g_autoptr (GFile) file = g_file_new_for_path (path);

      folder = g_file_get_parent (file);
    }
  lw_compat_ask_save (GTK_WINDOW (waiting->window), folder, g_strdelimit (name, "/", '-'), save_as_chosen_cb, waiting);
}

static Waiting *
waiting_new (LwWindow *self)
{
  Waiting *waiting = g_new0 (Waiting, 1);

  waiting->window = g_object_ref (self);

  return waiting;
}

static void
unsaved_cb (int         answer,
            const char *text,
            gpointer    data)
{
  g_autoptr (Waiting) waiting = data;
  const char *path = lw_session_path (waiting->window->session);

  if (answer == 0)
    waiting->then (waiting->window, waiting->data);
  else if (answer == 2 && path == NULL)
    ask_where (g_steal_pointer (&waiting));
  else if (answer == 2)
    save_to (g_steal_pointer (&waiting), path, TRUE);
}

/* What closing without a save would cost; a running batch has its journal. */
static const char *
say_lost (LwWindow *self)
{
  if (lw_running_batch (self->running) >= 0 && lw_running_trouble (self->running) == NULL)
    return _ ("What was done and entered in the batch that runs, or has just ended, is kept, and is put back when the season "
              "is opened again. What else was changed since the last save will be lost otherwise.");

  return _ ("What was changed since the last save will be lost otherwise.");
}

void
lw_window_when_safe (LwWindow      *self,
                     Then           then,
                     gpointer       data,
                     GDestroyNotify free_data)
{
  const char *answers[] = { _ ("Discard changes"), _ ("Cancel"), _ ("Save"), NULL };
  g_autoptr (Waiting) waiting = waiting_new (self);

  waiting->then = then;
  waiting->data = data;
  waiting->free_data = free_data;
  if (lw_window_disk_check (self, FALSE) == LW_DISK_GONE)
    lw_ask (GTK_WINDOW (self), _ ("Save this season again?"),
            _ ("Its file is no longer there. The season will be lost otherwise."), answers, NULL, unsaved_cb,
            g_steal_pointer (&waiting));
  else if (!lw_session_is_saved (self->session))
    lw_ask (GTK_WINDOW (self), _ ("Save the changes to this season?"),
            say_lost (self), answers, NULL, unsaved_cb, g_steal_pointer (&waiting));
  else
    then (self, data);
}

static void
tell_problems (LwWindow   *self,
               const char *path,
               GPtrArray  *problems)
{
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *heading = g_strdup_printf (_ ("%s cannot be opened"), name);
  g_autofree char *words = g_strdup_printf (ngettext ("It has %u problem. The season in hand stays as it is.",
                                                      "It has %u problems. The season in hand stays as it is.",
                                                      problems->len), problems->len);

  lw_tell_problems (GTK_WINDOW (self), heading, words, problems, name);
}

/* FALSE, and the problems told, if the file cannot be opened. */
static gboolean
read_file (LwWindow   *self,
           const char *path)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  /* Before it is read: what changes from now on is somebody else's change. */
  g_autoptr (LwStamp) stamp = lw_stamp_take (path);
  g_autoptr (LwSeason) season = lw_document_load (path, problems);

  if (season == NULL)
    {
      tell_problems (self, path, problems);
      return FALSE;
    }

  lw_session_open (self->session, season, path);
  lw_window_disk_took (self, g_steal_pointer (&stamp));

  return TRUE;
}

gboolean
lw_window_choose_batch (LwWindow   *self,
                        const char *name)
{
  int batch = lw_season_batch (lw_session_season (self->session), name);

  if (batch >= 0)
    lw_session_choose (self->session, (guint) batch);

  return batch >= 0;
}

void
lw_window_read_again (LwWindow *self)
{
  g_autofree char *path = g_strdup (lw_session_path (self->session));
  const LwBatch *batch = lw_session_batch (self->session);
  g_autofree char *name = batch != NULL ? g_strdup (batch->name) : NULL;

  if (path == NULL)
    return;

  /* Before it is: what is put back of a running batch is told after. */
  lw_window_say (self, _ ("The file was read again."));
  if (!read_file (self, path))
    lw_window_say (self, "");
  else if (name != NULL)
    lw_window_choose_batch (self, name);
}

gboolean
lw_window_open_now (LwWindow   *self,
                    const char *path)
{
  if (!read_file (self, path))
    return FALSE;

  lw_window_note_recent (self, path);

  return TRUE;
}

static void
open_now (LwWindow *self,
          gpointer  data)
{
  g_autofree char *path = g_file_get_path (data);

  if (path == NULL)
    {
      lw_window_say (self, _ ("Only files on this computer can be opened."));
      return;
    }

  lw_window_open_now (self, path);
}

void
lw_window_open_file (LwWindow *self,
                     GFile    *file)
{
  lw_window_when_safe (self, open_now, g_object_ref (file), g_object_unref);
}

static void
open_chosen_cb (GFile   *file,
                gpointer data)
{
  g_autoptr (LwWindow) self = data;

  if (file != NULL)
    lw_window_open_file (self, file);
}

static void
open_file (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  lw_compat_ask_open (GTK_WINDOW (data), open_chosen_cb, g_object_ref (data));
}

static void
open_recent (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (target, NULL));

  lw_window_open_file (data, file);
}

static void
new_now (LwWindow *self,
         gpointer  data)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  gint64 noon_s = (g_date_time_to_unix (now) + g_date_time_get_utc_offset (now) / G_USEC_PER_SEC) / 86400 * 86400
                  + 12 * 3600;
  g_autoptr (LwSeason) season = lw_edit_new_season (noon_s);

  lw_session_open (self->session, season, NULL);
  lw_window_disk_took (self, NULL);
}

static void
new_season (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  lw_window_when_safe (data, new_now, NULL, NULL);
}

static void
save_as (GSimpleAction *action,
         GVariant      *target,
         gpointer       data)
{
  ask_where (waiting_new (data));
}

static void
save (GSimpleAction *action,
      GVariant      *target,
      gpointer       data)
{
  LwWindow *self = data;
  const char *path = lw_session_path (self->session);

  if (path != NULL)
    save_to (waiting_new (self), path, FALSE);
  else
    ask_where (waiting_new (self));
}

void
lw_window_save_over (LwWindow *self)
{
  Waiting *waiting = waiting_new (self);

  waiting->path = g_strdup (lw_session_path (self->session));
  save_now (waiting);
}

void
lw_window_add_file_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "new", .activate = new_season },
    { .name = "open", .activate = open_file },
    { .name = "open-recent", .activate = open_recent, .parameter_type = "s" },
    { .name = "save", .activate = save },
    { .name = "save-as", .activate = save_as },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
