/* The card. A change dims the numbers and calls off what is being computed; a new computation starts
 * when the change is over. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-card.h"

#include "bench/knock-table.h"
#include "season/text.h"

struct _LwKnockCard
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *title;
  GtkWidget *copy;
  GtkWidget *note;       /* what the numbers are, or that they are old */
  GtkWidget *table;

  int at;                /* the step whose end is shown, -1: the finished tea */
  gboolean fresh;        /* whether the table is that of the present season */
  gboolean choosing;     /* a step is being taken in hand by the table */
  gboolean held;         /* whether `at` stays though another step was taken in hand so */
  GCancellable *job;     /* (nullable) of the computation that is wanted */
};

/* What a computation is of. */
typedef struct
{
  LwSeason *season;
  guint batch;
  int at;
} Asked;

G_DEFINE_FINAL_TYPE (LwKnockCard, lw_knock_card, GTK_TYPE_WIDGET)

static void
asked_free (Asked *asked)
{
  lw_season_unref (asked->season);
  g_free (asked);
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  Asked *asked = data;
  GArray *knocks = lw_knock_on (asked->season, asked->batch, asked->at, cancellable);

  g_task_return_pointer (task, knocks != NULL ? lw_knock_list_new (asked->season, asked->batch, asked->at, knocks) : NULL,
                         (GDestroyNotify) lw_knock_list_free);
}

static void
note (LwKnockCard *self,
      const char  *words)
{
  gtk_label_set_label (GTK_LABEL (self->note), words);
}

/* NULL: there is nothing. */
static void
show_list (LwKnockCard *self,
           LwKnockList *list)
{
  g_autofree char *heading = list != NULL ? lw_knock_list_heading (list) : g_strdup (_ ("Knock-on"));

  gtk_label_set_label (GTK_LABEL (self->title), heading);
  gtk_widget_set_sensitive (self->copy, list != NULL);
  note (self, list != NULL ? _ ("What one more notch of each setting changes. Blue: less. Orange: more. Pale: hardly noticed.")
                           : _ ("Nothing is computed."));
  lw_knock_table_show (LW_KNOCK_TABLE (self->table), list);
  gtk_widget_remove_css_class (self->table, "stale");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->table), GTK_ACCESSIBLE_STATE_BUSY, FALSE, -1);
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  LwKnockCard *self = LW_KNOCK_CARD (source);
  GTask *task = G_TASK (result);
  LwKnockList *list = g_task_propagate_pointer (task, NULL);

  /* Called off meanwhile. */
  if (g_task_get_cancellable (task) != self->job)
    {
      g_clear_pointer (&list, lw_knock_list_free);
      return;
    }

  g_clear_object (&self->job);
  self->fresh = TRUE;
  show_list (self, list);
}

static void
call_off (LwKnockCard *self)
{
  if (self->job != NULL)
    g_cancellable_cancel (self->job);
  g_clear_object (&self->job);
}

static void
start (LwKnockCard *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  g_autoptr (GTask) task = NULL;
  Asked *asked;

  call_off (self);
  if (batch == NULL || batch->n_steps == 0)
    {
      self->fresh = TRUE;
      show_list (self, NULL);
      return;
    }

  asked = g_new (Asked, 1);
  *asked = (Asked) { lw_season_ref (lw_session_season (self->session)), (guint) lw_session_batch_index (self->session),
                     MIN (self->at, (int) batch->n_steps - 1) };
  self->job = g_cancellable_new ();
  task = g_task_new (self, self->job, done_cb, NULL);
  g_task_set_task_data (task, asked, (GDestroyNotify) asked_free);
  g_task_run_in_thread (task, work);
}

/* What is shown is old now. A card that nobody sees waits until it is mapped, and a drag until it ends. */
static void
change (LwKnockCard *self)
{
  const LwKnockList *list = lw_knock_table_list (LW_KNOCK_TABLE (self->table));

  self->fresh = FALSE;
  call_off (self);
  if (list != NULL && (int) list->batch != lw_session_batch_index (self->session))
    {
      self->held = FALSE;
      show_list (self, NULL);
    }
  if (!self->held)
    self->at = lw_session_place (self->session);
  gtk_widget_add_css_class (self->table, "stale");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->table), GTK_ACCESSIBLE_STATE_BUSY, TRUE, -1);
  note (self, lw_session_is_dragging (self->session) ? _ ("From before the change; made anew when you let go.")
                                                     : _ ("From before the change; being made anew …"));
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && !lw_session_is_dragging (self->session))
    start (self);
}

/* The outcomes asked for stay while their causes are looked at. */
static void
step_cb (LwKnockCard *self)
{
  self->held = self->choosing;
  if (!self->held && self->at != lw_session_place (self->session))
    change (self);
}

static void
chosen_cb (LwKnockCard *self,
           guint        row,
           guint        quantity)
{
  const LwBatch *batch = lw_session_batch (self->session);
  LwHandle handle = lw_knock_list_row (lw_knock_table_list (LW_KNOCK_TABLE (self->table)), row)->handle;

  /* The numbers may be from before a step was taken out. */
  if (batch == NULL || handle.step >= batch->n_steps)
    return;

  self->choosing = TRUE;
  lw_session_choose_step (self->session, (int) handle.step);
  g_signal_emit_by_name (self, "chosen", handle.step, (guint) handle.setting, quantity);
  self->choosing = FALSE;
}

static void
copy (LwKnockCard *self)
{
  const LwKnockList *list = lw_knock_table_list (LW_KNOCK_TABLE (self->table));
  g_autofree char *csv = list != NULL ? lw_knock_list_csv (list) : NULL;

  if (csv == NULL)
    return;

  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), csv);
  if (self->fresh)
    note (self, _ ("The table is on the clipboard as CSV."));
}

static gboolean
copy_cb (GtkWidget *widget,
         GVariant  *arguments,
         gpointer   data)
{
  copy (LW_KNOCK_CARD (widget));

  return TRUE;
}

static void
lw_knock_card_map (GtkWidget *widget)
{
  LwKnockCard *self = LW_KNOCK_CARD (widget);

  GTK_WIDGET_CLASS (lw_knock_card_parent_class)->map (widget);
  if (!self->fresh)
    change (self);
}

static void
lw_knock_card_unmap (GtkWidget *widget)
{
  call_off (LW_KNOCK_CARD (widget));
  GTK_WIDGET_CLASS (lw_knock_card_parent_class)->unmap (widget);
}

static void
lw_knock_card_dispose (GObject *object)
{
  LwKnockCard *self = LW_KNOCK_CARD (object);
  GtkWidget *child;

  call_off (self);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_knock_card_parent_class)->dispose (object);
}

static void
lw_knock_card_class_init (LwKnockCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_knock_card_dispose;
  widget_class->map = lw_knock_card_map;
  widget_class->unmap = lw_knock_card_unmap;

  g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 3, G_TYPE_UINT,
                G_TYPE_UINT, G_TYPE_UINT);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, copy_cb, NULL);
  gtk_widget_class_set_css_name (widget_class, "knockcard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
label_new (const char *class)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, class);

  return label;
}

static void
lw_knock_card_init (LwKnockCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *scrolled = gtk_scrolled_window_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->title = label_new ("knock-title");
  self->note = label_new ("knock-note");
  self->copy = gtk_button_new_with_label (_ ("Copy as CSV"));
  self->table = lw_knock_table_new ();
  gtk_widget_set_valign (self->copy, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (self->copy, _ ("Put the table on the clipboard (Ctrl+C)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Knock-on"), -1);
  /* Bars that stay say that there are more columns, and cover no numbers. */
  gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (scrolled), FALSE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->table);
  gtk_widget_set_vexpand (scrolled, TRUE);

  gtk_box_append (GTK_BOX (head), self->title);
  gtk_box_append (GTK_BOX (head), self->copy);
  gtk_widget_set_parent (head, GTK_WIDGET (self));
  gtk_widget_set_parent (self->note, GTK_WIDGET (self));
  gtk_widget_set_parent (scrolled, GTK_WIDGET (self));
  g_signal_connect_swapped (self->copy, "clicked", G_CALLBACK (copy), self);
  g_signal_connect_swapped (self->table, "chosen", G_CALLBACK (chosen_cb), self);
}

GtkWidget *
lw_knock_card_new (LwSession *session)
{
  LwKnockCard *self = g_object_new (LW_TYPE_KNOCK_CARD, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "track", G_CALLBACK (change), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "step", G_CALLBACK (step_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
