/* The list. Rows are made anew only when they would show something else. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/batch-list.h"

#include "bench/batch-item.h"
#include "bench/over-tick.h"
#include "season/text.h"

struct _LwBatchList
{
  GtkBox parent_instance;

  LwSession *session;
  GtkWidget *search;
  GtkWidget *list;
  GListStore *items;
  GtkFilterListModel *shown;
  GtkSingleSelection *selection;
  gboolean updating; /* the list follows the session, not the other way */
};

G_DEFINE_FINAL_TYPE (LwBatchList, lw_batch_list, GTK_TYPE_BOX)

/* Only what is cut off is told so: a box over the list hides the row under it. */
static gboolean
tip_cb (GtkLabel   *label,
        int         x,
        int         y,
        gboolean    by_keys,
        GtkTooltip *tooltip)
{
  if (!pango_layout_is_ellipsized (gtk_label_get_layout (label)))
    return FALSE;
  gtk_tooltip_set_text (tooltip, gtk_label_get_label (label));

  return TRUE;
}

static GtkWidget *
row_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, css_class);
  gtk_widget_set_has_tooltip (label, TRUE);
  g_signal_connect (label, "query-tooltip", G_CALLBACK (tip_cb), NULL);

  return label;
}

/* Words, and beside them the tick that lays the batch over. */
static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *row,
          LwBatchList              *self)
{
  static const char *const classes[] = { "batch-name", "batch-detail", "batch-detail" };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);

  for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
    gtk_box_append (GTK_BOX (box), row_label (classes[i]));
  gtk_widget_set_hexpand (box, TRUE);
  gtk_box_append (GTK_BOX (line), box);
  gtk_box_append (GTK_BOX (line), lw_over_tick_new (lw_overlays_of (self->session)));
  gtk_list_item_set_child (row, line);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *row,
         LwBatchList              *self)
{
  LwBatchItem *item = gtk_list_item_get_item (row);
  const char *texts[] = { lw_batch_item_name (item), lw_batch_item_detail (item), lw_batch_item_state (item) };
  GtkWidget *line = gtk_list_item_get_child (row), *label = gtk_widget_get_first_child (gtk_widget_get_first_child (line));

  lw_over_tick_set (LW_OVER_TICK (gtk_widget_get_last_child (line)), lw_session_season (self->session), NULL,
                    lw_batch_item_index (item));
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++, label = gtk_widget_get_next_sibling (label))
    {
      gtk_label_set_label (GTK_LABEL (label), texts[i]);
      gtk_widget_set_visible (label, texts[i][0] != '\0');
    }
}

/* Space on a row does what its tick does. */
static gboolean
key_cb (LwBatchList           *self,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));
  GtkWidget *line = focus != NULL ? gtk_widget_get_first_child (focus) : NULL;
  GtkWidget *tick = line != NULL ? gtk_widget_get_last_child (line) : NULL;

  if (key != GDK_KEY_space || (state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK | GDK_ALT_MASK)) != 0 || tick == NULL
      || !LW_IS_OVER_TICK (tick))
    return FALSE;
  lw_over_tick_toggle (LW_OVER_TICK (tick));

  return TRUE;
}

static gboolean
matches (gpointer item,
         gpointer data)
{
  LwBatchList *self = data;

  return lw_batch_item_matches (item, gtk_editable_get_text (GTK_EDITABLE (self->search)));
}

static void
select_in_hand (LwBatchList *self)
{
  int batch = lw_session_batch_index (self->session);
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->selection));

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (LwBatchItem) item = g_list_model_get_item (G_LIST_MODEL (self->selection), i);

      if ((int) lw_batch_item_index (item) == batch)
        {
          if (gtk_single_selection_get_selected (self->selection) != i)
            gtk_single_selection_set_selected (self->selection, i);
          return;
        }
    }
  gtk_single_selection_set_selected (self->selection, GTK_INVALID_LIST_POSITION);
}

static void
search_cb (LwBatchList *self)
{
  self->updating = TRUE;
  gtk_filter_changed (gtk_filter_list_model_get_filter (self->shown), GTK_FILTER_CHANGE_DIFFERENT);
  select_in_hand (self);
  self->updating = FALSE;
}

static void
season_cb (LwBatchList *self)
{
  const LwSeason *season = lw_session_season (self->session);
  guint have = g_list_model_get_n_items (G_LIST_MODEL (self->items));

  self->updating = TRUE;
  /* First, so that no row is ever of a batch that is gone. */
  if (have > season->n_batches)
    g_list_store_splice (self->items, season->n_batches, have - season->n_batches, NULL, 0);
  for (guint i = 0; i < season->n_batches; i++)
    {
      g_autoptr (LwBatchItem) item = lw_batch_item_new (season, i);
      g_autoptr (LwBatchItem) old = i < have ? g_list_model_get_item (G_LIST_MODEL (self->items), i) : NULL;

      if (old == NULL || !lw_batch_item_same (item, old))
        g_list_store_splice (self->items, i, old != NULL ? 1 : 0, (gpointer *) &item, 1);
    }
  select_in_hand (self);
  self->updating = FALSE;
}

static void
selected_cb (LwBatchList *self)
{
  LwBatchItem *item = gtk_single_selection_get_selected_item (self->selection);

  if (!self->updating && item != NULL)
    lw_session_choose (self->session, lw_batch_item_index (item));
}

static void
lw_batch_list_dispose (GObject *object)
{
  LwBatchList *self = LW_BATCH_LIST (object);

  if (self->shown != NULL)
    gtk_filter_list_model_set_filter (self->shown, NULL);
  g_clear_object (&self->session);
  g_clear_object (&self->items);
  g_clear_object (&self->shown);
  g_clear_object (&self->selection);

  G_OBJECT_CLASS (lw_batch_list_parent_class)->dispose (object);
}

static void
lw_batch_list_class_init (LwBatchListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_batch_list_dispose;
}

static void
lw_batch_list_init (LwBatchList *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "batches");

  self->search = gtk_search_entry_new ();
  g_object_set (self->search, "placeholder-text", _ ("Find"), NULL);
  gtk_widget_set_tooltip_text (self->search, _ ("Find batches by name, date, leaf, tea or note"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->search), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Find batches"), -1);
  g_signal_connect_swapped (self->search, "search-changed", G_CALLBACK (search_cb), self);
  gtk_box_append (GTK_BOX (self), self->search);

  self->items = g_list_store_new (LW_TYPE_BATCH_ITEM);
  self->shown = gtk_filter_list_model_new (g_object_ref (G_LIST_MODEL (self->items)),
                                           GTK_FILTER (gtk_custom_filter_new (matches, self, NULL)));
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->shown)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  g_signal_connect_swapped (self->selection, "notify::selected", G_CALLBACK (selected_cb), self);

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  self->list = gtk_list_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)), factory);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Batches"), -1);

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->list, keys);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->list);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (self), scrolled);
}

GtkWidget *
lw_batch_list_new (LwSession *session)
{
  LwBatchList *self = g_object_new (LW_TYPE_BATCH_LIST, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
