/* What the parts are made of. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-parts.h"

#include "bench/look.h"

GtkWidget *
lw_steady_label (const char *text,
                 const char *class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, class);

  return label;
}

void
lw_steady_empty (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    {
      if (GTK_IS_GRID (box))
        gtk_grid_remove (GTK_GRID (box), child);
      else
        gtk_box_remove (GTK_BOX (box), child);
    }
}

int
lw_steady_attach (GtkGrid    *grid,
                  int         y,
                  const char *name,
                  GtkWidget  *bar,
                  const char *number,
                  const char *words)
{
  g_autofree char *numbers = lw_look_numbers (number);
  GtkWidget *told = lw_steady_label (numbers, "steady-number");

  gtk_grid_attach (grid, lw_steady_label (name, "steady-aim"), 0, y++, 2, 1);
  gtk_label_set_wrap (GTK_LABEL (told), FALSE);
  gtk_grid_attach (grid, bar, 0, y, 1, 1);
  gtk_grid_attach (grid, told, 1, y++, 1, 1);
  if (words != NULL)
    gtk_grid_attach (grid, lw_steady_label (words, "steady-note"), 0, y++, 2, 1);

  return y;
}
