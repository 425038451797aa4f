/* Kinds of tea in the window: choosing one gives the batch its name and the finished tea its aims. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/menu.h"
#include "bench/window-private.h"

#include "season/shipped.h"
#include "season/text.h"

static void
take (LwWindow      *self,
      guint          at,
      const LwBatch *kind)
{
  const LwSeason *base = lw_session_base (self->session);
  const LwBatch *batch = base->batches[at];
  const char *name = kind != NULL ? kind->name : NULL;
  const LwAim *aims = kind != NULL ? kind->aims : NULL;
  guint n = kind != NULL ? kind->n_aims : 0;
  g_autofree char *said = NULL;

  if (g_strcmp0 (batch->tea, name) == 0 && lw_aims_same (batch->aims, batch->n_aims, aims, n))
    return;

  /* Translators: a kind of tea, and how many windows its finished tea is to meet */
  said = kind != NULL ? g_strdup_printf (ngettext ("“%s” sets %u aim for the finished tea; the season's file will tell its source.",
                                                   "“%s” sets %u aims for the finished tea; the season's file will tell their sources.",
                                                   n), name, n)
                      : g_strdup (_ ("The batch is no kind of tea, and its finished tea has no aims."));
  lw_session_edit (self->session, lw_edit_take_tea (base, at, name, aims, n), _ ("Set kind of tea"), NULL);
  lw_window_say (self, said);
}

static void
choose_tea (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  LwWindow *self = data;
  const char *name = g_variant_get_string (target, NULL);
  int batch = lw_session_batch_index (self->session);
  int kind = self->teas != NULL ? lw_season_batch (self->teas, name) : -1;

  if (batch >= 0 && (kind >= 0 || *name == '\0'))
    take (self, (guint) batch, kind >= 0 ? self->teas->batches[kind] : NULL);
}

/* Which of the kinds the batch is; a tea of another name is none of them. */
static void
season_cb (LwWindow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  GSimpleAction *action = G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "batch-tea"));

  g_simple_action_set_enabled (action, batch != NULL);
  g_simple_action_set_state (action, g_variant_new_string (batch != NULL && batch->tea != NULL ? batch->tea : ""));
}

/* Without the file, or with one that is not sound, there is only “None”; leafwend-cli teas tells why. */
static void
fill_menu (LwWindow *self)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *path = lw_shipped_path (LW_SHIPPED_TEAS);

  self->teas = lw_document_load (path, problems);

  lw_menu_add_choice (self->tea_menu, _ ("None"), "win.batch-tea", "");
  for (guint i = 0; self->teas != NULL && i < self->teas->n_batches; i++)
    lw_menu_add_choice (self->tea_menu, self->teas->batches[i]->name, "win.batch-tea", self->teas->batches[i]->name);
}

void
lw_window_add_tea_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "batch-tea", .activate = choose_tea, .parameter_type = "s", .state = "''" },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  fill_menu (self);
}
