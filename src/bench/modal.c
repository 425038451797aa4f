/* What all windows over another have. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/modal.h"

GtkWidget *
lw_modal_new (GtkWindow  *parent,
              const char *title)
{
  GtkWidget *window = gtk_window_new ();
  GtkEventController *shortcuts = gtk_shortcut_controller_new ();

  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (shortcuts),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_named_action_new ("window.close")));
  gtk_widget_add_controller (window, shortcuts);

  return window;
}

GtkWidget *
lw_modal_button (GtkWidget  *box,
                 const char *label,
                 GCallback   clicked,
                 gpointer    data)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, data);
  gtk_box_append (GTK_BOX (box), button);

  return button;
}
