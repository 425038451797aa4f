/* Temperature logs in the window: a table comes into the batch in hand, logs are shown and removed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/menu.h"
#include "bench/window-private.h"

#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/log-window.h"
#include "season/document.h"
#include "season/text.h"

#define LEAF_TEMP "panel-leaf-temp"

static void
imported_cb (const LwLog *log,
             gpointer     data)
{
  LwWindow *self = data;
  /* Translators: the name of a log */
  g_autofree char *said = g_strdup_printf (_ ("“%s” is a log of this batch. In the settings of a step its wall or air can"
                                              " follow it."), log->name);

  g_action_group_change_action_state (G_ACTION_GROUP (self), LEAF_TEMP, g_variant_new_boolean (TRUE));
  lw_window_say (self, said);
}

/* Why there is no table in it. */
static void
tell_problems (LwWindow   *self,
               const char *path,
               GPtrArray  *problems)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *name = g_filename_display_name (base);
  g_autofree char *heading = g_strdup_printf (_ ("%s cannot be imported"), name);
  g_auto (GStrv) all = NULL;

  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *line = lw_problem_text (g_ptr_array_index (problems, i), name);

      g_strv_builder_add (lines, line);
    }
  all = g_strv_builder_end (lines);
  lw_tell_list (GTK_WINDOW (self), heading, _ ("The season stays as it is."), all);
}

static void
open_path (LwWindow   *self,
           const char *path,
           int         step)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwLogTable *table;

  if (lw_session_batch (self->session) == NULL)
    return;

  table = lw_log_table_load (path, problems);
  if (table == NULL)
    tell_problems (self, path, problems);
  else
    lw_log_window_open (GTK_WINDOW (self), self->session, path, table, step, imported_cb, self);
}

typedef struct
{
  LwWindow *window;
  int step;
} Asked;

static void
table_chosen_cb (GFile   *file,
                 gpointer data)
{
  g_autofree Asked *asked = data;
  g_autoptr (LwWindow) self = asked->window;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    open_path (self, path, asked->step);
  else if (file != NULL)
    lw_window_say (self, _ ("Only files on this computer can be opened."));
}

/* The number of the step from whose settings it is asked for, or -1. */
static void
import_log (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  const Asked asked = { g_object_ref (data), g_variant_get_int32 (target) };

  lw_compat_ask_table (GTK_WINDOW (data), _ ("Import a temperature log"), table_chosen_cb,
                       g_memdup2 (&asked, sizeof asked));
}

static void
import_log_table (GSimpleAction *action,
                  GVariant      *target,
                  gpointer       data)
{
  open_path (LW_WINDOW (data), g_variant_get_bytestring (target), -1);
}

static void
show_logs (GSimpleAction *action,
           GVariant      *state,
           gpointer       data)
{
  lw_board_show_logs (LW_WINDOW (data)->board, g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static void
remove_log (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  LwWindow *self = data;
  int batch = lw_session_batch_index (self->session);
  const char *id = g_variant_get_string (target, NULL);

  if (batch >= 0 && lw_batch_log (lw_session_base (self->session)->batches[batch], id) != NULL)
    lw_session_edit (self->session, lw_edit_remove_log (lw_session_base (self->session), (guint) batch, id),
                     _ ("Remove a temperature log"), NULL);
}

/* The logs of the batch in hand. */
static void
season_cb (LwWindow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  g_autoptr (GMenu) menu = g_menu_new ();

  g_menu_append (menu, _ ("Show _wall and air"), "win.show-logs");
  for (guint i = 0; batch != NULL && i < batch->n_logs; i++)
    {
      const LwLog *log = batch->logs[i].log;
      /* Translators: the name of a log */
      g_autofree char *label = g_strdup_printf (_ ("Remove “%s”"), log->name);

      lw_menu_add_choice (menu, label, "win.remove-log", log->id);
    }
  lw_menu_refill (self->log_menu, menu);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "import-log")),
                               batch != NULL && batch->n_steps > 0);
}

void
lw_window_add_log_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "import-log", .activate = import_log, .parameter_type = "i" },
    { .name = "import-log-table", .activate = import_log_table, .parameter_type = "ay" },
    { .name = "show-logs", .state = "false", .change_state = show_logs },
    { .name = "remove-log", .activate = remove_log, .parameter_type = "s" },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}
