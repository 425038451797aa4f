/* The difference table. It is made anew, in a thread, when a change is over; its numbers are those of
 * leafwend-cli compare. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-table.h"

#include <math.h>
#include <string.h>

#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/over-table-item.h"
#include "bench/over-table-view.h"
#include "season/export.h"
#include "season/text.h"
#include "season/wording.h"

struct _LwOverTable
{
  GtkWindow parent_instance;

  LwSession *session;
  LwOverlays *overlays;
  GtkWidget *choice;      /* which of those laid over */
  GtkWidget *clock;
  GtkWidget *note;
  GtkWidget *view;
  GListStore *items;
  gboolean updating;      /* the choice follows the overlays, not the other way */
  char *chosen;           /* (nullable) letter and name of the one that was chosen */

  gpointer asked;         /* the last question; compared, never read */
  char *text;             /* (nullable) the table as it is shown */
  char *csv;
};

G_DEFINE_FINAL_TYPE (LwOverTable, lw_over_table, GTK_TYPE_WINDOW)

/* What is compared, and what came of it. */
typedef struct
{
  LwSeason *season[2];
  guint at[2];
  LwTrack *track[2];
  gboolean by_clock;
  char *failure;
  GArray *rows;           /* (nullable) LwCompareRow */
} Asked;

static void
asked_free (Asked *asked)
{
  for (guint i = 0; i < 2; i++)
    {
      lw_season_unref (asked->season[i]);
      g_clear_pointer (&asked->track[i], lw_track_unref);
    }
  g_clear_pointer (&asked->rows, g_array_unref);
  g_free (asked->failure);
  g_free (asked);
}

static void
sides_of (const Asked *asked,
          LwSide       sides[2])
{
  for (guint i = 0; i < 2; i++)
    sides[i] = (LwSide) { asked->season[i]->batches[asked->at[i]], asked->track[i] };
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  Asked *asked = data;
  LwSide sides[2];

  for (guint i = 0; i < 2 && asked->failure == NULL; i++)
    if (asked->track[i] == NULL)
      asked->track[i] = lw_compare_track (asked->season[i], asked->at[i], &asked->failure);
  if (asked->failure == NULL)
    {
      sides_of (asked, sides);
      asked->rows = asked->by_clock ? lw_compare_clock (sides) : lw_compare_steps (sides);
    }
  g_task_return_boolean (task, TRUE);
}

/* The last row is of the finished teas if both batches end there. */
static gboolean
is_finished (const LwCompareRow *row,
             const LwSide        sides[2])
{
  for (guint i = 0; i < 2; i++)
    if (!row->of[i].there || row->of[i].step + 1 != sides[i].batch->n_steps)
      return FALSE;

  return isnan (row->clock_s);
}

static void
fill (LwOverTable *self,
      const Asked *asked)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
  LwSide sides[2];

  sides_of (asked, sides);
  for (guint i = 0; asked->rows != NULL && i < asked->rows->len; i++)
    {
      const LwCompareRow *row = &g_array_index (asked->rows, LwCompareRow, i);

      for (int of = LW_COMPARE_MINUTES; of < LW_N_QUANTITIES; of++)
        g_ptr_array_add (items, lw_over_item_new (row, sides, is_finished (row, sides), of));
    }
  g_list_store_splice (self->items, 0, g_list_model_get_n_items (G_LIST_MODEL (self->items)), items->pdata, items->len);

  g_clear_pointer (&self->text, g_free);
  g_clear_pointer (&self->csv, g_free);
  if (asked->rows != NULL)
    {
      self->text = lw_compare_table (asked->rows, sides, FALSE);
      self->csv = lw_compare_table (asked->rows, sides, TRUE);
    }
}

static void
note (LwOverTable *self,
      const char  *words)
{
  gtk_label_set_label (GTK_LABEL (self->note), words);
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  LwOverTable *self = LW_OVER_TABLE (source);
  const Asked *asked = g_task_get_task_data (G_TASK (result));
  g_autofree char *this_date = NULL, *that_date = NULL, *words = NULL;
  LwSide sides[2];

  if (self->asked != asked || self->items == NULL)
    return;

  fill (self, asked);
  lw_over_view_set_clock (self->view, asked->by_clock);
  sides_of (asked, sides);
  this_date = lw_say_date (sides[0].batch->when_s);
  that_date = lw_say_date (sides[1].batch->when_s);
  /* Translators: two batches, each with its date */
  words = g_strdup_printf (_ ("This: %s, %s. That: %s, %s. Difference: that less this, then rounded."), sides[0].batch->name,
                           this_date, sides[1].batch->name, that_date);
  note (self, asked->failure != NULL ? asked->failure : words);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_STATE_BUSY, FALSE, -1);
}

/* (transfer full) letter and name. */
static char *
words_of (const LwLaid *laid)
{
  g_autofree char *tag = lw_laid_tag (laid), *name = lw_laid_name (laid);

  return g_strjoin (" ", tag, name, NULL);
}

/* A drag is waited for. */
static void
ask_anew (LwOverTable *self)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));
  g_autoptr (GTask) task = NULL;
  LwLaid *laid;
  Asked *asked;

  if (lw_session_is_dragging (self->session) && self->text != NULL)
    note (self, _ ("From before the change; made anew when you let go."));
  if (self->updating || lw_session_is_dragging (self->session) || lw_session_batch (self->session) == NULL
      || at >= lw_overlays_n (self->overlays))
    return;

  laid = lw_overlays_nth (self->overlays, at);
  g_free (self->chosen);
  self->chosen = words_of (laid);
  asked = g_new0 (Asked, 1);
  asked->season[0] = lw_season_ref (lw_session_base (self->session));
  asked->at[0] = (guint) lw_session_batch_index (self->session);
  asked->season[1] = lw_season_ref (laid->season);
  asked->at[1] = laid->at;
  asked->track[1] = laid->track != NULL ? lw_track_ref (laid->track) : NULL;
  asked->by_clock = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->clock));
  self->asked = asked;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_STATE_BUSY, TRUE, -1);
  task = g_task_new (self, NULL, done_cb, NULL);
  g_task_set_task_data (task, asked, (GDestroyNotify) asked_free);
  g_task_run_in_thread (task, work);
}

/* Others lie over: the choice is filled anew and stays where it was, if that still lies over. */
static void
changed_cb (LwOverTable *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint n = lw_overlays_n (self->overlays), at = 0;

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *words = words_of (lw_overlays_nth (self->overlays, i));

      if (g_strcmp0 (words, self->chosen) == 0)
        at = i;
      gtk_string_list_append (names, words);
    }
  self->updating = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->choice), G_LIST_MODEL (names));
  if (n > 0)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choice), at);
  self->updating = FALSE;
  gtk_widget_set_sensitive (self->choice, n > 0);
  if (n > 0)
    {
      ask_anew (self);
      return;
    }

  self->asked = NULL;
  g_list_store_remove_all (self->items);
  g_clear_pointer (&self->text, g_free);
  g_clear_pointer (&self->csv, g_free);
  note (self, _ ("Nothing lies over the batch in hand: tick a batch in the list."));
}

/* Copying and saving */

static void
copy (LwOverTable *self)
{
  if (self->text == NULL)
    return;

  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), self->text);
  note (self, _ ("The table is on the clipboard as text."));
}

static gboolean
copy_cb (GtkWidget *widget,
         GVariant  *arguments,
         gpointer   data)
{
  copy (LW_OVER_TABLE (widget));

  return TRUE;
}

static void
chosen_cb (GFile   *file,
           gpointer data)
{
  g_autoptr (LwOverTable) self = data;
  const char *answers[] = { _ ("Close"), NULL };
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL, *said = NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL || self->csv == NULL)
    return;
  if (!lw_export_save (path, self->csv, strlen (self->csv), &error))
    {
      lw_ask (GTK_WINDOW (self), _ ("The table was not saved"), error->message, answers, NULL, NULL, NULL);
      return;
    }

  said = g_strdup_printf (_ ("Saved in %s."), path);
  note (self, said);
}

static void
save (LwOverTable *self)
{
  if (self->csv != NULL)
    lw_compat_ask_export (GTK_WINDOW (self), _ ("Save the table"), _ ("differences.csv"), chosen_cb, g_object_ref (self));
}

static void
lw_over_table_dispose (GObject *object)
{
  LwOverTable *self = LW_OVER_TABLE (object);

  g_clear_object (&self->items);
  g_clear_object (&self->overlays);
  g_clear_object (&self->session);
  g_clear_pointer (&self->chosen, g_free);
  g_clear_pointer (&self->text, g_free);
  g_clear_pointer (&self->csv, g_free);

  G_OBJECT_CLASS (lw_over_table_parent_class)->dispose (object);
}

static void
lw_over_table_class_init (LwOverTableClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_over_table_dispose;
  gtk_widget_class_add_binding (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, copy_cb, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_w, GDK_CONTROL_MASK, "window.close", NULL);
}

static GtkWidget *
button_new (LwOverTable *self,
            const char  *label,
            GCallback    clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);

  return button;
}

static void
lw_over_table_init (LwOverTable *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->items = g_list_store_new (LW_TYPE_OVER_ITEM);
  self->choice = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_hexpand (self->choice, TRUE);
  gtk_widget_set_tooltip_text (self->choice, _ ("Which batch the one in hand is compared with"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Compared with"), -1);
  self->clock = gtk_check_button_new_with_label (_ ("By the time of day"));
  self->note = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->note), 0);
  gtk_label_set_wrap (GTK_LABEL (self->note), TRUE);
  gtk_widget_add_css_class (self->note, "knock-note");
  self->view = lw_over_view_new (G_LIST_MODEL (self->items));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);
  gtk_widget_set_vexpand (scrolled, TRUE);

  gtk_box_append (GTK_BOX (head), self->choice);
  gtk_box_append (GTK_BOX (head), self->clock);
  gtk_box_append (GTK_BOX (head), button_new (self, _ ("Copy as text"), G_CALLBACK (copy)));
  gtk_box_append (GTK_BOX (head), button_new (self, _ ("Save as CSV…"), G_CALLBACK (save)));
  gtk_widget_add_css_class (box, "over-table");
  gtk_box_append (GTK_BOX (box), head);
  gtk_box_append (GTK_BOX (box), self->note);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_widget_add_css_class (GTK_WIDGET (self), "bench");
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Differences"));
  gtk_window_set_default_size (GTK_WINDOW (self), 720, 560);
}

GtkWidget *
lw_over_table_new (GtkWindow *parent,
                   LwSession *session)
{
  LwOverTable *self = g_object_new (LW_TYPE_OVER_TABLE, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->session = g_object_ref (session);
  self->overlays = g_object_ref (lw_overlays_of (session));
  g_signal_connect_object (self->overlays, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (ask_anew), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->choice, "notify::selected", G_CALLBACK (ask_anew), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->clock, "toggled", G_CALLBACK (ask_anew), self, G_CONNECT_SWAPPED);
  changed_cb (self);

  return GTK_WIDGET (self);
}
