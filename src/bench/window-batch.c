/* Actions on a batch as a whole: repeat, put its plan beside it, write down, remove; and on the season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/facts-windows.h"
#include "bench/fit-window.h"
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
batch_facts (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  LwWindow *self = data;

  lw_batch_facts_open (GTK_WINDOW (self), self->session, lw_running_in_hand (self->running));
}

static void
season_facts (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  lw_season_facts_open (data, LW_WINDOW (data)->session);
}

static void
remove_batch (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;
  guint batch = (guint) lw_session_batch_index (self->session);

  if (lw_running_in_hand (self->running))
    {
      lw_window_say (self, _ ("This batch is running: end it before you remove it."));
      return;
    }

  lw_session_edit_batch (self->session, lw_edit_remove_batch (lw_session_base (self->session), batch),
                         _ ("Remove batch"), batch > 0 ? batch - 1 : 0);
  lw_window_say (self, _ ("The batch is removed. Undo brings it back."));
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
    { .name = "batch-facts", .activate = batch_facts },
    { .name = "season-facts", .activate = season_facts },
    { .name = "fit-leaf", .activate = fit_leaf },
    { .name = "remove-batch", .activate = remove_batch },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
