/* Actions on a batch as a whole: repeat, put its plan beside it, rename, remove. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"
#include "bench/fit-window.h"
#include "bench/leaf-window.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/text.h"

static void
repeat_batch (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;
  guint batch = (guint) lw_session_batch_index (self->session);

  lw_session_edit_batch (self->session, lw_edit_repeat_batch (lw_session_base (self->session), batch),
                         _ ("Repeat batch"), batch + 1);
}

static void
add_planned (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  LwWindow *self = data;
  guint batch = (guint) lw_session_batch_index (self->session);

  lw_session_edit_batch (self->session, lw_edit_add_planned (lw_session_base (self->session), batch),
                         _ ("Put the plan beside it"), batch + 1);
}

static void
remove_batch (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;
  guint batch = (guint) lw_session_batch_index (self->session);

  lw_session_edit_batch (self->session, lw_edit_remove_batch (lw_session_base (self->session), batch),
                         _ ("Remove batch"), batch > 0 ? batch - 1 : 0);
  lw_window_say (self, _ ("The batch is removed. Undo brings it back."));
}

static void
renamed_cb (int         answer,
            const char *text,
            gpointer    data)
{
  g_autoptr (LwWindow) self = data;
  const LwSeason *base = lw_session_base (self->session);
  g_autofree char *name = g_strstrip (g_strdup (text));
  int batch = lw_session_batch_index (self->session), same = lw_season_batch (base, name);

  if (answer != 1 || batch < 0 || same == batch)
    return;
  if (name[0] == '\0' || same >= 0 || g_utf8_strlen (name, -1) > LW_MAX_TEXT)
    {
      lw_window_say (self, name[0] == '\0' ? _ ("A batch needs a name; nothing was changed.")
                           : same >= 0       ? _ ("Another batch has that name; nothing was changed.")
                                             : _ ("That name is too long; nothing was changed."));
      return;
    }

  lw_session_edit (self->session, lw_edit_rename_batch (base, (guint) batch, name), _ ("Rename batch"), NULL);
}

static void
rename_batch (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;
  const char *answers[] = { _ ("Cancel"), _ ("Rename"), NULL };

  lw_ask (GTK_WINDOW (self), _ ("Name of the batch"), NULL, answers, lw_session_batch (self->session)->name,
          renamed_cb, g_object_ref (self));
}

static void
edit_leaf (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  lw_leaf_window_open (data, LW_WINDOW (data)->session);
}

static void
fit_leaf (GSimpleAction *action,
          GVariant      *target,
          gpointer       data)
{
  lw_fit_window_open (data, LW_WINDOW (data)->session);
}

void
lw_window_add_batch_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "repeat-batch", .activate = repeat_batch },
    { .name = "add-planned", .activate = add_planned },
    { .name = "rename-batch", .activate = rename_batch },
    { .name = "edit-leaf", .activate = edit_leaf },
    { .name = "fit-leaf", .activate = fit_leaf },
    { .name = "remove-batch", .activate = remove_batch },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
