/* The leaf of the batch in hand: which of the season's it is, a new one, and what it is like. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/leaf-window.h"
#include "bench/menu.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/import.h"
#include "season/text.h"

#define NAME_END 20 /* characters that are put behind a name */

static void
edit_leaf (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  lw_leaf_window_open (data, LW_WINDOW (data)->session);
}

static void
choose_leaf (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  LwWindow *self = data;
  const LwSeason *base = lw_session_base (self->session);
  const char *id = g_variant_get_string (target, NULL);
  int batch = lw_session_batch_index (self->session);
  g_autofree const char **ids = g_new0 (const char *, MAX (base->n_batches, 1));

  if (batch < 0 || lw_season_profile (base, id) == NULL || g_str_equal (base->batches[batch]->leaf, id))
    return;

  ids[batch] = id;
  lw_session_edit (self->session, lw_edit_set_leaves (base, ids), _ ("Set leaf of batch"), NULL);
}

static gboolean
is_named (const LwSeason *season,
          const char     *name)
{
  for (guint i = 0; i < season->n_profiles; i++)
    if (g_str_equal (season->profiles[i]->name, name))
      return TRUE;

  return FALSE;
}

/* (transfer full) as a repeated batch is called. */
static char *
next_name (const LwSeason *season,
           const char     *like)
{
  g_autofree char *cut = g_utf8_substring (like, 0, MIN (g_utf8_strlen (like, -1), LW_MAX_TEXT - NAME_END));

  for (guint i = 2;; i++)
    {
      /* Translators: the name of a leaf, then a counting number */
      g_autofree char *name = g_strdup_printf (_ ("%s (%u)"), cut, i);

      if (!is_named (season, name))
        return g_steal_pointer (&name);
    }
}

static void
new_leaf (GSimpleAction *action,
          GVariant      *target,
          gpointer       data)
{
  LwWindow *self = data;
  const LwSeason *base = lw_session_base (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  g_autofree char *name = NULL, *id = NULL;

  if (base->n_profiles >= LW_MAX_PROFILES)
    {
      lw_window_say (self, _ ("The season has no room for one more leaf; nothing was changed."));
      return;
    }

  name = next_name (base, lw_season_profile (base, batch->leaf)->name);
  id = lw_import_leaf_id (base, name);
  lw_session_edit (self->session, lw_edit_add_leaf (base, (guint) lw_session_batch_index (self->session), id, name),
                   _ ("New leaf"), NULL);
  lw_leaf_window_open (GTK_WINDOW (self), self->session);
}

/* The season's leaves as they are now, and which of them the batch is of. */
static void
season_cb (LwWindow *self)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  GSimpleAction *action = G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "batch-leaf"));
  g_autoptr (GMenu) menu = g_menu_new ();

  for (guint i = 0; i < season->n_profiles; i++)
    lw_menu_add_choice (menu, season->profiles[i]->name, "win.batch-leaf", season->profiles[i]->id);
  lw_menu_refill (self->leaf_menu, menu);

  lw_window_enable (self, "batch-leaf", batch != NULL);
  lw_window_enable (self, "edit-leaf", batch != NULL);
  lw_window_enable (self, "new-leaf", batch != NULL);
  g_simple_action_set_state (action, g_variant_new_string (batch != NULL ? batch->leaf : ""));
}

void
lw_window_add_leaf_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "batch-leaf", .activate = choose_leaf, .parameter_type = "s", .state = "''" },
    { .name = "edit-leaf", .activate = edit_leaf },
    { .name = "new-leaf", .activate = new_leaf },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}
