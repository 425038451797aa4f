/* The log window. The table is read anew at every choice, so what is shown is what would be imported. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/log-window.h"

#include <math.h>

#include "bench/log-columns-grid.h"
#include "bench/look.h"
#include "bench/modal.h"
#include "draw/log-picture.h"
#include "season/document.h"
#include "season/import.h"
#include "season/log-say.h"
#include "season/notation.h"
#include "season/text.h"

#define PICTURE_HEIGHT 120
#define LIST_HEIGHT 84
#define MOST_HEIGHT 600   /* of all but the buttons, which stay on the smallest screen with the largest letters */

typedef struct
{
  LwSession *session;
  guint batch;
  char *id, *name;
  LwLogTable *table;
  LwLogTaken *taken;
  gboolean dated;         /* what `begin` was filled for */
  LwLogImported imported;
  gpointer data;

  GtkWidget *window;
  GtkWidget *told;        /* rows, curves */
  GtkWidget *picture;
  GtkWidget *begin;       /* by the clock, if there are dates; then with each step */
  GtkWidget *later;       /* minutes */
  GtkWidget *left_out;    /* a line each */
  GtkWidget *refused;
  GtkWidget *import;
} LogWindow;

static void
log_window_free (LogWindow *self)
{
  g_object_unref (self->session);
  lw_log_table_free (self->table);
  g_clear_pointer (&self->taken, lw_log_taken_free);
  g_free (self->id);
  g_free (self->name);
  g_free (self);
}

static const LwBatch *
batch_of (LogWindow *self)
{
  return lw_session_base (self->session)->batches[self->batch];
}

static void
draw_cb (GtkDrawingArea *area,
         cairo_t        *cr,
         int             width,
         int             height,
         gpointer        data)
{
  LogWindow *self = data;
  LwLetter letter = lw_look_letter (GTK_WIDGET (area));

  letter.rtl = lw_look_is_rtl (GTK_WIDGET (area));
  lw_log_picture_draw (cr, width, height, self->taken != NULL ? self->taken->log : NULL, &letter,
                       lw_look_palette (GTK_WIDGET (area)));
}

/* (transfer full) all that is left out, or that nothing is. */
static char *
left_out_text (const LwLogTaken *taken)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < taken->problems->len; i++)
    {
      const LwProblem *problem = g_ptr_array_index (taken->problems, i);

      if (problem->line > 0)
        /* Translators: the line of a file, what is wrong there, what to do */
        g_string_append_printf (text, _ ("Line %u: %s %s"), problem->line, problem->what, problem->remedy);
      else
        g_string_append_printf (text, "%s %s", problem->what, problem->remedy);
      if (i + 1 < taken->problems->len || taken->untold > 0)
        g_string_append_c (text, '\n');
    }
  if (taken->untold > 0)
    g_string_append_printf (text, ngettext ("And %u more.", "And %u more.", taken->untold), taken->untold);

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* (transfer full) rows and curves. */
static char *
told_text (LogWindow *self)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *rows = NULL;

  if (self->taken->log == NULL)
    return g_strdup (_ ("Nothing can be read like this."));

  rows = lw_say_taken (self->taken);
  g_string_append (text, rows);
  for (guint i = 0; i < self->taken->log->n_curves; i++)
    {
      g_autofree char *curve = lw_say_curve (&self->taken->log->curves[i], self->table);

      g_string_append_printf (text, "\n%s", curve);
    }

  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
fill_begin (LogWindow *self)
{
  const LwBatch *batch = batch_of (self);
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->begin));

  if (self->dated)
    {
      g_autofree char *time = lw_time_text ((gint64) self->taken->start_s);
      /* Translators: a date and time */
      g_autofree char *item = g_strdup_printf (_ ("by the clock, %s"), time);

      gtk_string_list_append (list, item);
    }
  for (guint i = 0; i < batch->n_steps; i++)
    {
      /* Translators: the number of a step, its kind */
      g_autofree char *item = g_strdup_printf (_ ("with step %u, %s"), i + 1, _ (lw_kind_row (batch->steps[i].kind)->label));

      gtk_string_list_append (list, item);
    }
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->begin), G_LIST_MODEL (list));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->begin),
                              !self->dated && chosen < g_list_model_get_n_items (G_LIST_MODEL (list)) ? chosen : 0);
}

/* Where the choices put the log; `log` is not set. */
static LwBatchLog
placed (LogWindow *self)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->begin));
  LwBatchLog at = { .step = -1, .minute = gtk_spin_button_get_value (GTK_SPIN_BUTTON (self->later)) };

  if (self->dated && chosen == 0)
    at.minute += (self->taken->start_s - (double) batch_of (self)->when_s) / 60;
  else if (chosen != GTK_INVALID_LIST_POSITION)
    at.step = (int) chosen - self->dated;

  return at;
}

/* (transfer full) why it cannot be imported as it stands; NULL if it can. */
static char *
refusal (LogWindow *self)
{
  LwBatchLog at;

  if (self->taken->log == NULL)
    return g_strdup ("");
  if (batch_of (self)->n_logs >= LW_MAX_LOGS)
    return g_strdup (_ ("The batch has no room for one more log; remove one first."));

  at = placed (self);
  if (fabs (at.minute) > LW_LOG_MOST_MINUTES)
    return g_strdup (_ ("It begins more than thirty days before or after the batch: let it begin with a step."));

  return NULL;
}

static void
check (LogWindow *self)
{
  g_autofree char *refused = refusal (self);

  gtk_label_set_label (GTK_LABEL (self->refused), refused != NULL ? refused : "");
  gtk_widget_set_sensitive (self->import, refused == NULL);
}

static void
take (gpointer data)
{
  LogWindow *self = data;
  g_autofree char *told = NULL, *left_out = NULL;

  g_clear_pointer (&self->taken, lw_log_taken_free);
  self->taken = lw_log_take (self->table, self->id, self->name);
  told = told_text (self);
  left_out = left_out_text (self->taken);
  gtk_label_set_label (GTK_LABEL (self->told), told);
  gtk_label_set_label (GTK_LABEL (self->left_out), *left_out != '\0' ? left_out : _ ("Nothing is left out."));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, told, -1);
  gtk_widget_queue_draw (self->picture);

  if (self->dated != self->taken->dated)
    {
      self->dated = self->taken->dated;
      fill_begin (self);
    }
  check (self);
}

static void
import_cb (LogWindow *self)
{
  LwBatchLog at = placed (self);
  g_autoptr (LwSeason) next = NULL;
  g_autofree char *text = NULL;
  gsize length;

  at.log = lw_log_ref (self->taken->log);
  next = lw_edit_add_log (lw_session_base (self->session), self->batch, at);
  text = lw_document_write (next, &length);
  if (length > LW_MAX_FILE_BYTES)
    {
      gtk_label_set_label (GTK_LABEL (self->refused), _ ("The season's file would be larger than 8 MiB: take fewer columns, or"
                                                         " remove a log of another batch. Nothing was changed."));
      return;
    }

  lw_session_edit (self->session, g_steal_pointer (&next), _ ("Import a temperature log"), NULL);
  self->imported (self->taken->log, self->data);
  gtk_window_close (GTK_WINDOW (self->window));
}

static GtkWidget *
label_new (GtkWidget  *box,
           const char *text,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 90);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);

  return label;
}

static void
add_begin (LogWindow *self,
           GtkWidget *box,
           int        step)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *begins = gtk_label_new_with_mnemonic (_ ("It _begins"));
  GtkWidget *later = gtk_label_new_with_mnemonic (_ ("_minutes later"));

  self->begin = gtk_drop_down_new (NULL, NULL);
  self->later = gtk_spin_button_new_with_range (-LW_LOG_MOST_MINUTES, LW_LOG_MOST_MINUTES, 0.5);
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (self->later), 2);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->later), 0);
  gtk_label_set_mnemonic_widget (GTK_LABEL (begins), self->begin);
  gtk_label_set_mnemonic_widget (GTK_LABEL (later), self->later);
  gtk_box_append (GTK_BOX (row), begins);
  gtk_box_append (GTK_BOX (row), self->begin);
  gtk_box_append (GTK_BOX (row), self->later);
  gtk_box_append (GTK_BOX (row), later);
  gtk_box_append (GTK_BOX (box), row);

  fill_begin (self);
  if (step >= 0)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->begin), (guint) step);
  g_signal_connect_swapped (self->begin, "notify::selected", G_CALLBACK (check), self);
  g_signal_connect_swapped (self->later, "value-changed", G_CALLBACK (check), self);
}

static void
add_picture (LogWindow *self,
             GtkWidget *box)
{
  self->picture = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (self->picture), PICTURE_HEIGHT);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->picture), draw_cb, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->picture), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Curves of the log"), -1);
  gtk_box_append (GTK_BOX (box), self->picture);
}

static void
add_left_out (LogWindow *self,
              GtkWidget *box)
{
  GtkWidget *scrolled = gtk_scrolled_window_new (), *list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  label_new (box, _ ("Left out"), "heading");
  self->left_out = label_new (list, "", "small");
  gtk_label_set_selectable (GTK_LABEL (self->left_out), TRUE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), LIST_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), list);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_box_append (GTK_BOX (box), scrolled);
}

static void
add_buttons (LogWindow *self,
             GtkWidget *box)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *cancel = gtk_button_new_with_label (_ ("Cancel"));

  self->import = gtk_button_new_with_label (_ ("Import"));
  gtk_widget_add_css_class (self->import, "suggested-action");
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_close), self->window);
  g_signal_connect_swapped (self->import, "clicked", G_CALLBACK (import_cb), self);
  gtk_widget_set_halign (row, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (row), cancel);
  gtk_box_append (GTK_BOX (row), self->import);
  gtk_window_set_default_widget (GTK_WINDOW (self->window), self->import);
  gtk_box_append (GTK_BOX (box), row);
}

static GtkWidget *
scrolled_new (GtkWidget *box)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), MOST_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  gtk_widget_set_vexpand (scrolled, TRUE);

  return scrolled;
}

static void
window_new (LogWindow *self,
            GtkWindow *parent)
{
  self->window = lw_modal_new (parent, _ ("Import a temperature log"));
  gtk_window_set_default_size (GTK_WINDOW (self->window), 640, -1);
  g_object_set_data_full (G_OBJECT (self->window), "log", self, (GDestroyNotify) log_window_free);
}

void
lw_log_window_open (GtkWindow    *parent,
                    LwSession    *session,
                    const char   *path,
                    LwLogTable   *table,
                    int           step,
                    LwLogImported imported,
                    gpointer      data)
{
  LogWindow *self = g_new0 (LogWindow, 1);
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);

  self->session = g_object_ref (session);
  self->batch = (guint) lw_session_batch_index (session);
  self->table = table;
  self->name = lw_import_name (path);
  self->id = lw_import_log_id (batch_of (self), self->name);
  self->imported = imported;
  self->data = data;
  window_new (self, parent);

  gtk_widget_add_css_class (all, "ask");
  gtk_box_append (GTK_BOX (all), scrolled_new (box));
  label_new (box, self->name, "heading");
  gtk_box_append (GTK_BOX (box), lw_log_columns_grid_new (table, take, self));
  self->told = label_new (box, "", "small");
  add_picture (self, box);
  add_begin (self, box, step);
  add_left_out (self, box);
  self->refused = label_new (box, "", "refused");
  add_buttons (self, all);
  gtk_window_set_child (GTK_WINDOW (self->window), all);
  take (self);
  gtk_window_present (GTK_WINDOW (self->window));
}
