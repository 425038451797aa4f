/* The page: a list of rows made anew at rest, when the batch or its curves have changed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/weigh-card.h"

#include "bench/weigh-words.h"
#include "season/measured.h"
#include "season/text.h"

struct _LwWeighCard
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *list;
  GtkWidget *none;     /* says how to begin */
};

G_DEFINE_FINAL_TYPE (LwWeighCard, lw_weigh_card, GTK_TYPE_WIDGET)

static GtkWidget *
line_new (const char *words,
          const char *class)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (class != NULL)
    gtk_widget_add_css_class (label, class);

  return label;
}

static void
add_row (LwWeighCard *self,
         guint        step,
         guint        at)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  const LwTrack *track = lw_session_track (self->session);
  const LwWeighIn *weigh_in = &batch->steps[step].weigh_ins[at];
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *moment = lw_weigh_moment (batch, step, weigh_in->minute), *value = lw_weigh_value (weigh_in);
  g_autofree char *all = lw_weigh_tell (season, batch, step, weigh_in, track);
  g_autofree char *name = lw_weigh_title (weigh_in->of);
  /* Translators: a measure, its value */
  g_autofree char *title = weigh_in->of == LW_NOTED ? g_strdup (name) : g_strdup_printf (_ ("%s %s"), name, value);
  LwBeside beside;

  gtk_box_append (GTK_BOX (box), line_new (moment, "batch-detail"));
  gtk_box_append (GTK_BOX (box), line_new (title, "weigh-title"));
  if (lw_beside (batch, step, weigh_in, track, lw_fresh_moisture_pct (season, batch), &beside))
    {
      g_autofree char *said = lw_weigh_beside (&beside);

      gtk_box_append (GTK_BOX (box), line_new (said, "batch-detail"));
    }
  if (weigh_in->note != NULL)
    gtk_box_append (GTK_BOX (box), line_new (weigh_in->note, NULL));

  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data (G_OBJECT (row), "step", GUINT_TO_POINTER (step));
  g_object_set_data (G_OBJECT (row), "at", GUINT_TO_POINTER (at));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, all, -1);
  gtk_list_box_append (GTK_LIST_BOX (self->list), row);
}

static void
act_on (LwWeighCard   *self,
        GtkListBoxRow *row,
        const char    *action)
{
  gtk_widget_activate_action (GTK_WIDGET (self), action, "(uu)",
                              GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (row), "step")),
                              GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (row), "at")));
}

static void
activated_cb (LwWeighCard   *self,
              GtkListBoxRow *row)
{
  act_on (self, row, "win.weigh-in-change");
}

static gboolean
key_cb (LwWeighCard    *self,
        guint           key,
        guint           code,
        GdkModifierType state)
{
  GtkWidget *row = gtk_widget_get_focus_child (self->list);

  if ((key != GDK_KEY_Delete && key != GDK_KEY_KP_Delete) || row == NULL)
    return FALSE;

  act_on (self, GTK_LIST_BOX_ROW (row), "win.weigh-in-remove");

  return TRUE;
}

/* The row at which the keyboard was gets it back. */
static void
track_cb (LwWeighCard *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  GtkWidget *focus = gtk_widget_get_focus_child (self->list), *row;
  int at = focus != NULL ? gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (focus)) : -1, n = 0;

  if (lw_session_is_dragging (self->session))
    return;

  while ((row = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), row);
  for (guint step = 0; batch != NULL && step < batch->n_steps; step++)
    for (guint i = 0; i < batch->steps[step].n_weigh_ins; i++, n++)
      add_row (self, step, i);

  gtk_widget_set_visible (self->list, n > 0);
  gtk_widget_set_visible (self->none, n == 0);
  if (at >= 0 && n > 0)
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), MIN (at, n - 1))));
}

static void
lw_weigh_card_dispose (GObject *object)
{
  LwWeighCard *self = LW_WEIGH_CARD (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_weigh_card_parent_class)->dispose (object);
}

static void
lw_weigh_card_class_init (LwWeighCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_weigh_card_dispose;
  gtk_widget_class_set_css_name (widget_class, "weighcard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_weigh_card_init (LwWeighCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkWidget *button = gtk_button_new_with_label (_ ("Add a weigh-in…"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.weigh-in");
  gtk_widget_set_tooltip_text (button, _ ("At the reading line, or at the end of the step in hand (M)"));
  gtk_widget_set_parent (button, GTK_WIDGET (self));

  self->none = line_new (_ ("Nothing was weighed or measured yet. Press M, or the other button of the pointer in a panel."),
                         "batch-detail");
  gtk_widget_set_parent (self->none, GTK_WIDGET (self));
  self->list = gtk_list_box_new ();
  gtk_widget_add_css_class (self->list, "weigh-list");
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Weigh-ins of the batch"), -1);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->list, keys);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));
}

GtkWidget *
lw_weigh_card_new (LwSession *session)
{
  LwWeighCard *self = g_object_new (LW_TYPE_WEIGH_CARD, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  if (lw_session_track (session) != NULL)
    track_cb (self);

  return GTK_WIDGET (self);
}
