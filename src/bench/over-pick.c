/* The batches of another season, to tick. What is ticked lies over at once. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-pick.h"

#include "bench/batch-item.h"
#include "bench/modal.h"
#include "bench/over-tick.h"
#include "season/text.h"

/* What the rows are of; the list's. */
typedef struct
{
  LwOverlays *overlays;
  LwSeason *season;
  char *path;
} Pick;

static void
pick_free (gpointer data,
           GClosure *closure)
{
  Pick *pick = data;

  g_object_unref (pick->overlays);
  lw_season_unref (pick->season);
  g_free (pick->path);
  g_free (pick);
}

static GtkWidget *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, css_class);

  return label;
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *row,
          Pick                     *pick)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10), *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (words), label_new ("batch-name"));
  gtk_box_append (GTK_BOX (words), label_new ("batch-detail"));
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (line), lw_over_tick_new (pick->overlays));
  gtk_box_append (GTK_BOX (line), words);
  gtk_list_item_set_child (row, line);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *row,
         Pick                     *pick)
{
  LwBatchItem *item = gtk_list_item_get_item (row);
  GtkWidget *line = gtk_list_item_get_child (row), *words = gtk_widget_get_last_child (line);
  g_autofree char *detail = g_strjoin (" · ", lw_batch_item_detail (item), lw_batch_item_state (item), NULL);

  lw_over_tick_set (LW_OVER_TICK (gtk_widget_get_first_child (line)), pick->season, pick->path, lw_batch_item_index (item));
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_first_child (words)), lw_batch_item_name (item));
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_last_child (words)), detail);
}

/* A click or Return on a row. */
static void
activate_cb (GtkListView *list,
             guint        position,
             Pick        *pick)
{
  const char *name = pick->season->batches[position]->name;

  lw_overlays_lay (pick->overlays, pick->season, pick->path, position, lw_overlays_get (pick->overlays, pick->path, name) == NULL);
}

/* Space on a row does what its tick does. */
static gboolean
key_cb (Pick                  *pick,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  GtkWidget *list = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (list));
  GtkWidget *line = focus != NULL ? gtk_widget_get_first_child (focus) : NULL;
  GtkWidget *tick = line != NULL ? gtk_widget_get_first_child (line) : NULL;

  if (key != GDK_KEY_space || (state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK | GDK_ALT_MASK)) != 0 || tick == NULL
      || !LW_IS_OVER_TICK (tick))
    return FALSE;
  lw_over_tick_toggle (LW_OVER_TICK (tick));

  return TRUE;
}

static GtkWidget *
list_new (Pick *pick)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GListStore *items = g_list_store_new (LW_TYPE_BATCH_ITEM);
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkWidget *list;

  for (guint i = 0; i < pick->season->n_batches; i++)
    {
      g_autoptr (LwBatchItem) item = lw_batch_item_new (pick->season, i);

      g_list_store_append (items, item);
    }
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), pick);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), pick);
  list = gtk_list_view_new (GTK_SELECTION_MODEL (gtk_single_selection_new (G_LIST_MODEL (items))), factory);
  g_signal_connect_data (list, "activate", G_CALLBACK (activate_cb), pick, pick_free, 0);
  /* Before the list takes it for a selection. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), pick);
  gtk_widget_add_controller (list, keys);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, pick->season->name, -1);

  return list;
}

void
lw_over_pick (GtkWindow  *parent,
              LwOverlays *overlays,
              LwSeason   *season,
              const char *path)
{
  GtkWidget *window = lw_modal_new (parent, season->name), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *close;
  GtkWidget *scrolled = gtk_scrolled_window_new (), *heading = gtk_label_new (_ ("Tick what is to lie over the batch in hand."));
  Pick *pick = g_new (Pick, 1);

  *pick = (Pick) { g_object_ref (overlays), lw_season_ref (season), g_strdup (path) };
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_label_set_wrap (GTK_LABEL (heading), TRUE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), list_new (pick));
  gtk_widget_set_vexpand (scrolled, TRUE);
  close = gtk_button_new_with_label (_ ("Close"));
  gtk_widget_set_halign (close, GTK_ALIGN_END);
  g_signal_connect_swapped (close, "clicked", G_CALLBACK (gtk_window_close), window);

  gtk_widget_add_css_class (box, "over-pick");
  gtk_box_append (GTK_BOX (box), heading);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), close);
  gtk_widget_add_css_class (window, "bench");
  gtk_window_set_default_size (GTK_WINDOW (window), 420, 520);
  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_window_present (GTK_WINDOW (window));
}
