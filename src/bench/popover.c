/* Opening a popover and clearing up after it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/popover.h"

static void
closed_cb (GtkPopover *popover,
           GtkWidget  *widget)
{
  gtk_widget_unparent (GTK_WIDGET (popover));
  gtk_widget_grab_focus (widget);
  g_object_unref (widget);
}

GtkWidget *
lw_popover_open (GtkWidget      *widget,
                 GtkWidget      *child,
                 GtkPositionType side,
                 const char     *name)
{
  GtkWidget *popover = gtk_popover_new ();

  gtk_popover_set_child (GTK_POPOVER (popover), child);
  gtk_popover_set_position (GTK_POPOVER (popover), side);
  gtk_accessible_update_property (GTK_ACCESSIBLE (popover), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_parent (popover, widget);
  g_signal_connect (popover, "closed", G_CALLBACK (closed_cb), g_object_ref (widget));
  gtk_popover_popup (GTK_POPOVER (popover));

  return popover;
}
