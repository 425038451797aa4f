/* The card window's inside: the preview, and beside it the fields, the signs and the buttons. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/card-preview.h"
#include "bench/card-signs.h"
#include "bench/card-window-private.h"
#include "season/text.h"

#define LEAST_KG 0.001
#define MOST_KG 1e5
#define WIDTH 980
#define HEIGHT 720
#define SIDE_WIDTH 340

LwCardWish
lw_card_window_wish (LwCardWindow *self)
{
  return (LwCardWish) {
    .paper = (LwPaper) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->paper)),
    .landscape = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->direction)) == 1,
    .load_kg = gtk_spin_button_get_value (GTK_SPIN_BUTTON (self->load)),
    .sheet = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->sheet)),
  };
}

/* A field with its label, which says the field's name, too. */
static GtkWidget *
line_new (GtkGrid    *grid,
          int         y,
          const char *name,
          GtkWidget  *field)
{
  GtkWidget *label = gtk_label_new (name);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (field, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (grid, label, 0, y, 1, 1);
  gtk_grid_attach (grid, field, 1, y, 1, 1);

  return field;
}

static GtkWidget *
fields_new (LwCardWindow *self)
{
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());
  const char *directions[] = { _ ("portrait"), _ ("landscape"), NULL };
  const char *papers[LW_N_PAPERS + 1] = { NULL };

  for (guint i = 0; i < LW_N_PAPERS; i++)
    papers[i] = lw_paper_name ((LwPaper) i);
  gtk_grid_set_column_spacing (grid, 8);
  gtk_grid_set_row_spacing (grid, 6);
  self->paper = line_new (grid, 0, _ ("Paper"), gtk_drop_down_new_from_strings (papers));
  self->direction = line_new (grid, 1, _ ("Orientation"), gtk_drop_down_new_from_strings (directions));
  self->load = line_new (grid, 2, _ ("Fresh leaf, kg"), gtk_spin_button_new_with_range (LEAST_KG, MOST_KG, 0.5));
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (self->load), 2);
  self->sheet = gtk_check_button_new_with_label (_ ("With the batch sheet, to write on"));
  gtk_grid_attach (grid, self->sheet, 0, 3, 2, 1);
  if (g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER))
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->paper), LW_PAPER_LETTER);

  g_signal_connect_swapped (self->paper, "notify::selected", G_CALLBACK (lw_card_window_queue), self);
  g_signal_connect_swapped (self->direction, "notify::selected", G_CALLBACK (lw_card_window_queue), self);
  g_signal_connect_swapped (self->load, "value-changed", G_CALLBACK (lw_card_window_load), self);
  g_signal_connect_swapped (self->sheet, "toggled", G_CALLBACK (lw_card_window_queue), self);

  return GTK_WIDGET (grid);
}

static GtkWidget *
words_new (const char *words,
           const char *style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 36);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);

  return label;
}

static GtkWidget *
scrolled_new (GtkWidget *child,
              gboolean   high)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  gtk_widget_set_vexpand (scrolled, high);

  return scrolled;
}

static void
print_cb (LwCardWindow *self)
{
  lw_card_window_print (self, NULL);
}

static GtkWidget *
button_new (LwCardWindow *self,
            GtkWidget    *box,
            const char   *label,
            GCallback     clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_hexpand (button, TRUE);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (box), button);

  return button;
}

static GtkWidget *
side_new (LwCardWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_widget_add_css_class (box, "ask");
  gtk_widget_set_size_request (box, SIDE_WIDTH, -1);
  gtk_widget_set_hexpand (box, FALSE);
  self->signs = lw_card_signs_new (self->session);
  self->told = words_new ("", NULL);
  gtk_box_append (GTK_BOX (box), fields_new (self));
  gtk_box_append (GTK_BOX (box), words_new (_ ("Signs to look for"), "heading"));
  gtk_box_append (GTK_BOX (box), scrolled_new (self->signs, TRUE));
  gtk_box_append (GTK_BOX (box), self->told);
  self->save = button_new (self, buttons, _ ("Save as…"), G_CALLBACK (lw_card_window_ask));
  self->print = button_new (self, buttons, _ ("Print…"), G_CALLBACK (print_cb));
  gtk_widget_add_css_class (self->print, "suggested-action");
  gtk_box_append (GTK_BOX (box), buttons);

  return box;
}

void
lw_card_window_fill (LwCardWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *pages;

  self->preview = lw_card_preview_new ();
  pages = scrolled_new (self->preview, TRUE);
  gtk_widget_set_hexpand (pages, TRUE);
  gtk_widget_add_css_class (pages, "desk");
  gtk_box_append (GTK_BOX (box), pages);
  gtk_box_append (GTK_BOX (box), side_new (self));

  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_focus (GTK_WINDOW (self), self->paper);
}
