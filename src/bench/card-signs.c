/* The fields. One is an edit when Return is pressed in it or the focus leaves it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/card-signs.h"

#include "season/document.h"
#include "season/text.h"

struct _LwCardSigns
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *grid;
  GPtrArray *entries; /* one for each step */
  int batch;          /* that they are of */
};

enum { EDITING, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LwCardSigns, lw_card_signs, GTK_TYPE_WIDGET)

static const char *
sign_of (const LwBatch *batch,
         guint          step)
{
  return batch->steps[step].sign != NULL ? batch->steps[step].sign : "";
}

static void
commit (LwCardSigns *self,
        guint        step)
{
  GtkWidget *entry = g_ptr_array_index (self->entries, step);
  const LwBatch *batch = lw_session_batch (self->session);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
  g_autofree char *label = NULL;

  if (batch == NULL || lw_session_batch_index (self->session) != self->batch || step >= batch->n_steps
      || lw_session_is_dragging (self->session) || g_str_equal (text, sign_of (batch, step)))
    return;

  /* Translators: %s is a kind of step */
  label = g_strdup_printf (_ ("Set sign of %s"), _ (lw_kind_row (batch->steps[step].kind)->label));
  g_signal_emit (self, signals[EDITING], 0);
  lw_session_edit (self->session, lw_edit_set_sign (lw_session_base (self->session), (guint) self->batch, step, text),
                   label, NULL);
}

void
lw_card_signs_commit (LwCardSigns *self)
{
  for (guint i = 0; i < self->entries->len; i++)
    commit (self, i);
}

static guint
step_of (LwCardSigns *self,
         GtkWidget   *entry)
{
  guint step = 0;

  g_ptr_array_find (self->entries, entry, &step);

  return step;
}

static void
activate_cb (GtkWidget   *entry,
             LwCardSigns *self)
{
  commit (self, step_of (self, entry));
}

static void
leave_cb (GtkEventController *focus,
          LwCardSigns        *self)
{
  commit (self, step_of (self, gtk_event_controller_get_widget (focus)));
}

static void
add_row (LwCardSigns   *self,
         const LwBatch *batch,
         guint          step)
{
  const char *kind = _ (lw_kind_row (batch->steps[step].kind)->label);
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  /* Translators: a step's number and kind */
  g_autofree char *words = g_strdup_printf (_ ("%u. %s"), step + 1, kind);
  /* Translators: what to look for in a step: "sign of step 2, fix in pan" */
  g_autofree char *name = g_strdup_printf (_ ("sign of step %u, %s"), step + 1, kind);
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_entry_set_max_length (GTK_ENTRY (entry), LW_MAX_TEXT);
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("see, hear, smell"));
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (entry, focus);
  gtk_grid_attach (GTK_GRID (self->grid), label, 0, (int) step, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), entry, 1, (int) step, 1, 1);
  g_ptr_array_add (self->entries, entry);
}

static gboolean
same_steps (LwCardSigns   *self,
            const LwBatch *batch)
{
  return self->batch == lw_session_batch_index (self->session) && batch != NULL && self->entries->len == batch->n_steps;
}

static void
season_cb (LwCardSigns *self)
{
  const LwBatch *batch = lw_session_batch (self->session);

  if (lw_session_is_dragging (self->session))
    return;

  if (!same_steps (self, batch))
    {
      g_ptr_array_set_size (self->entries, 0);
      for (GtkWidget *child; (child = gtk_widget_get_first_child (self->grid)) != NULL;)
        gtk_grid_remove (GTK_GRID (self->grid), child);
      self->batch = lw_session_batch_index (self->session);
      for (guint i = 0; batch != NULL && i < batch->n_steps; i++)
        add_row (self, batch, i);
    }

  /* What stands in a field is touched only when the season says something else than it did. */
  for (guint i = 0; i < self->entries->len; i++)
    {
      GtkWidget *entry = g_ptr_array_index (self->entries, i);
      const char *sign = sign_of (batch, i);

      if (g_strcmp0 (g_object_get_data (G_OBJECT (entry), "sign"), sign) == 0)
        continue;
      g_object_set_data_full (G_OBJECT (entry), "sign", g_strdup (sign), g_free);
      gtk_editable_set_text (GTK_EDITABLE (entry), sign);
    }
}

static void
lw_card_signs_dispose (GObject *object)
{
  LwCardSigns *self = LW_CARD_SIGNS (object);

  g_ptr_array_set_size (self->entries, 0);
  g_clear_pointer (&self->grid, gtk_widget_unparent);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_card_signs_parent_class)->dispose (object);
}

static void
lw_card_signs_finalize (GObject *object)
{
  g_ptr_array_unref (LW_CARD_SIGNS (object)->entries);

  G_OBJECT_CLASS (lw_card_signs_parent_class)->finalize (object);
}

static void
lw_card_signs_class_init (LwCardSignsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_card_signs_dispose;
  G_OBJECT_CLASS (klass)->finalize = lw_card_signs_finalize;
  signals[EDITING] = g_signal_new ("editing", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "cardsigns");
}

static void
lw_card_signs_init (LwCardSigns *self)
{
  self->entries = g_ptr_array_new ();
  self->batch = -1;
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 4);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
}

GtkWidget *
lw_card_signs_new (LwSession *session)
{
  LwCardSigns *self = g_object_new (LW_TYPE_CARD_SIGNS, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  season_cb (self);

  return GTK_WIDGET (self);
}
