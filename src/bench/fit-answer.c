/* The right side of the fit window: how much nearer the model comes, what to beware of, the curves, the values. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-window-private.h"

#include "bench/look.h"
#include "season/text.h"
#include "study/fit-words.h"

static const char before_words[] = N_ (
  "A fit looks for the leaf with which the model comes nearest to what was weighed, measured and judged in the ticked "
  "batches. What the weigh-ins say nothing of stays as the leaf's profile has it.\n\n"
  "Tick the batches and what may differ, then press Fit. No batch changes by it: what is found can be saved as a new leaf "
  "and used where you choose.");

static void
quantity_cb (LwFitWindow     *self,
             GtkToggleButton *button)
{
  if (gtk_toggle_button_get_active (button))
    lw_fit_panel_choose (LW_FIT_PANEL (self->panel),
                         (LwQuantity) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "quantity")));
}

static void
toggled_cb (GtkToggleButton *button,
            LwFitWindow     *self)
{
  quantity_cb (self, button);
}

static void
fill_quantities (LwFitWindow *self)
{
  guint choice = lw_fit_panel_choice (LW_FIT_PANEL (self->panel));
  LwQuantity shown = lw_fit_panel_quantity (LW_FIT_PANEL (self->panel));
  GtkWidget *first = NULL;

  lw_fit_clear (self->quantities);
  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    if (choice & 1u << i)
      {
        GtkWidget *button = gtk_toggle_button_new_with_label (_ (lw_quantity_row (i)->label));

        g_object_set_data (G_OBJECT (button), "quantity", GINT_TO_POINTER ((int) i));
        if (first != NULL)
          gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (first));
        first = first != NULL ? first : button;
        gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), i == shown);
        g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
        gtk_box_append (GTK_BOX (self->quantities), button);
      }
  g_object_set_data (G_OBJECT (self->quantities), "choice", GINT_TO_POINTER ((int) choice));
}

/* The buttons stay while they are the same ones: one of them may have the focus. */
static void
show_quantity (LwFitWindow *self)
{
  guint choice = lw_fit_panel_choice (LW_FIT_PANEL (self->panel));

  if ((int) choice != GPOINTER_TO_INT (g_object_get_data (G_OBJECT (self->quantities), "choice")))
    {
      fill_quantities (self);
      return;
    }

  for (GtkWidget *button = gtk_widget_get_first_child (self->quantities); button != NULL;
       button = gtk_widget_get_next_sibling (button))
    if (GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "quantity"))
        == (int) lw_fit_panel_quantity (LW_FIT_PANEL (self->panel)))
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
}

static void
shown_cb (LwFitWindow *self)
{
  guint at = lw_fit_panel_at (LW_FIT_PANEL (self->panel));
  g_autofree char *miss = NULL, *unseen = NULL, *words = NULL;
  const LwFitBatch *batch;

  if (self->fit == NULL)
    return;

  batch = &self->fit->batches[at];
  miss = lw_fit_miss_say (self->fit, batch);
  unseen = lw_fit_unseen_say (self->fit, batch);
  /* Translators: which of the batches, its name, how far the model missed its weigh-ins; how well it is foretold, or nothing */
  words = g_strdup_printf (_ ("%u of %u: %s. %s %s"), at + 1, self->fit->n_batches,
                           self->fit->season->batches[batch->batch]->name, miss, unseen != NULL ? unseen : "");
  g_strchomp (words);
  gtk_label_set_label (GTK_LABEL (self->head), words);
  gtk_widget_set_sensitive (self->back, at > 0);
  gtk_widget_set_sensitive (self->on, at + 1 < self->fit->n_batches);
  show_quantity (self);
}

static void
back_cb (LwFitWindow *self)
{
  lw_fit_panel_step (LW_FIT_PANEL (self->panel), -1);
}

static void
on_cb (LwFitWindow *self)
{
  lw_fit_panel_step (LW_FIT_PANEL (self->panel), 1);
}

static void
show_warnings (LwFitWindow *self)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; i < self->fit->n_warnings; i++)
    {
      g_autofree char *said = lw_fit_warning_say (self->fit, &self->fit->warnings[i]);

      g_string_append_printf (words, i > 0 ? "\n⚠ %s" : "⚠ %s", said);
    }
  gtk_label_set_label (GTK_LABEL (self->warnings), words->str);
  gtk_widget_set_visible (self->warnings, words->len > 0);
}

void
lw_fit_answer_refresh (LwFitWindow *self)
{
  gtk_widget_set_visible (self->changed, self->fit != NULL && !lw_fit_is_of (self->fit, lw_session_base (self->session)));
}

void
lw_fit_answer_show (LwFitWindow *self,
                    LwFit       *fit)
{
  LwFit *last = self->fit;
  g_autofree char *miss = lw_fit_miss_say (fit, NULL), *unseen = lw_fit_unseen_say (fit, NULL);
  g_autofree char *words = unseen != NULL ? g_strdup_printf ("%s %s", miss, unseen) : g_strdup (miss);

  self->fit = fit;
  gtk_label_set_label (GTK_LABEL (self->said), words);
  show_warnings (self);
  lw_fit_panel_show (LW_FIT_PANEL (self->panel), fit, lw_session_batch_index (self->session));
  lw_fit_clear (self->table);
  gtk_box_append (GTK_BOX (self->table), lw_fit_table_new (fit));
  lw_fit_keep_show (self);
  lw_fit_answer_refresh (self);
  gtk_widget_set_visible (self->words, FALSE);
  gtk_widget_set_visible (self->found, TRUE);
  g_clear_pointer (&last, lw_fit_free);
}

static GtkWidget *
changed_new (LwFitWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = lw_fit_label (_ ("The season has changed since: this is of the batches and the leaf as they were."),
                                   "refused");

  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  lw_fit_button (self, box, _ ("Fit again"), G_CALLBACK (lw_fit_window_run));
  gtk_widget_set_visible (box, FALSE);

  return box;
}

static GtkWidget *
arrow_new (LwFitWindow *self,
           GtkWidget   *box,
           const char  *icon,
           const char  *name,
           GCallback    clicked)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (box), button);

  return button;
}

static GtkWidget *
curves_new (LwFitWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->back = arrow_new (self, row, "go-previous-symbolic", _ ("The batch before (Left)"), G_CALLBACK (back_cb));
  self->on = arrow_new (self, row, "go-next-symbolic", _ ("The next batch (Right)"), G_CALLBACK (on_cb));
  self->head = lw_fit_label ("", NULL);
  gtk_widget_set_hexpand (self->head, TRUE);
  gtk_box_append (GTK_BOX (row), self->head);
  self->quantities = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_add_css_class (self->quantities, "linked");
  gtk_widget_set_halign (self->quantities, GTK_ALIGN_START);

  self->panel = lw_fit_panel_new ();
  g_signal_connect_swapped (self->panel, "shown", G_CALLBACK (shown_cb), self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->panel);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), self->quantities);
  gtk_box_append (GTK_BOX (box), scrolled);

  return box;
}

static GtkWidget *
found_new (LwFitWindow *self)
{
  GtkWidget *page = lw_fit_group (_ ("What was found"), 8), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *scrolled = gtk_scrolled_window_new (), *wide = gtk_scrolled_window_new ();

  self->changed = changed_new (self);
  self->said = lw_fit_label ("", "fit-said");
  self->warnings = lw_fit_label ("", "fit-warning");
  self->table = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (wide), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (wide), self->table);

  gtk_box_append (GTK_BOX (box), self->said);
  gtk_box_append (GTK_BOX (box), self->warnings);
  gtk_box_append (GTK_BOX (box), curves_new (self));
  gtk_box_append (GTK_BOX (box), wide);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  gtk_widget_set_vexpand (scrolled, TRUE);

  gtk_box_append (GTK_BOX (page), self->changed);
  gtk_box_append (GTK_BOX (page), scrolled);
  gtk_box_append (GTK_BOX (page), lw_fit_keep_new (self));

  return page;
}

GtkWidget *
lw_fit_answer_new (LwFitWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->words = lw_fit_label (_ (before_words), NULL);
  self->found = found_new (self);
  gtk_label_set_max_width_chars (GTK_LABEL (self->words), 70);
  gtk_widget_set_visible (self->found, FALSE);
  gtk_box_append (GTK_BOX (box), self->words);
  gtk_box_append (GTK_BOX (box), self->found);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_widget_add_css_class (box, "fit-answer");

  return box;
}
