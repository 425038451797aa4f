/* New, open, save, save as, recent files, and the question before unsaved changes go. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/text.h"

#define MOST_RECENT 8

typedef void (*Then) (LwWindow *self, gpointer data);

/* What is to be done once nothing unsaved would be lost. */
typedef struct
{
  LwWindow *window;
  Then then;
  gpointer data;
  GDestroyNotify free_data;
} Waiting;

static void
waiting_free (Waiting *waiting)
{
  if (waiting->free_data != NULL)
    waiting->free_data (waiting->data);
  g_object_unref (waiting->window);
  g_free (waiting);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Waiting, waiting_free)

static void
note_recent (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
    .mime_type = (char *) LW_SEASON_MIME, .app_name = (char *) "Leafwend", .app_exec = (char *) "leafwend %f",
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

/* TRUE if the season is now in the file. */
static gboolean
save_to (LwWindow   *self,
         const char *path)
{
  const char *answers[] = { _ ("Close"), NULL };
  g_autoptr (GError) error = NULL;
  g_autofree char *said = NULL;

  if (!lw_session_save (self->session, path, &error))
    {
      lw_ask (GTK_WINDOW (self), _ ("The season was not saved"), error->message, answers, NULL, NULL, NULL);
      return FALSE;
    }

  said = g_strdup_printf (_ ("Saved in %s."), path);
  lw_window_say (self, said);
  note_recent (path);
  lw_window_refill_recent (self);

  return TRUE;
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
  if (save_to (waiting->window, path) && waiting->then != NULL)
    waiting->then (waiting->window, waiting->data);
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

  if (answer == 2 && path == NULL)
    {
      ask_where (g_steal_pointer (&waiting));
      return;
    }
  if (answer == 0 || (answer == 2 && save_to (waiting->window, path)))
    waiting->then (waiting->window, waiting->data);
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
  if (lw_session_is_saved (self->session))
    then (self, data);
  else
    lw_ask (GTK_WINDOW (self), _ ("Save the changes to this season?"),
            _ ("What was changed since the last save will be lost otherwise."), answers, NULL, unsaved_cb,
            g_steal_pointer (&waiting));
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

static void
open_now (LwWindow *self,
          gpointer  data)
{
  g_autofree char *path = g_file_get_path (data);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = NULL;

  if (path == NULL)
    {
      lw_window_say (self, _ ("Only files on this computer can be opened."));
      return;
    }

  season = lw_document_load (path, problems);
  if (season == NULL)
    {
      tell_problems (self, path, problems);
      return;
    }

  lw_session_open (self->session, season, path);
  note_recent (path);
  lw_window_refill_recent (self);
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
    save_to (self, path);
  else
    ask_where (waiting_new (self));
}

void
lw_window_refill_recent (LwWindow *self)
{
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  int n = 0;

  g_menu_remove_all (self->recent_menu);
  for (GList *l = items; l != NULL && n < MOST_RECENT; l = l->next)
    {
      GtkRecentInfo *info = l->data;
      g_autoptr (GMenuItem) item = NULL;

      if (!gtk_recent_info_has_application (info, "Leafwend") || !gtk_recent_info_exists (info))
        continue;

      item = g_menu_item_new (gtk_recent_info_get_display_name (info), NULL);
      g_menu_item_set_action_and_target (item, "win.open-recent", "s", gtk_recent_info_get_uri (info));
      g_menu_append_item (self->recent_menu, item);
      n++;
    }
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
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
