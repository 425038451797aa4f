/* The side column's pages. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/side.h"

#include "bench/knock-card.h"
#include "bench/result-card.h"
#include "bench/steady-card.h"
#include "bench/weigh-card.h"
#include "bench/why-card.h"
#include "season/text.h"

#define WIDTH 304

static GtkWidget *
scrolled_new (GtkWidget *child)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  /* No page may widen the column: what it shows wraps. */
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_EXTERNAL, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), child);
  gtk_widget_set_vexpand (scrolled, TRUE);

  return scrolled;
}

static void
chosen_cb (LwLane *lane,
           guint   step)
{
  lw_lane_focus (lane, step);
}

GtkWidget *
lw_side_new (LwSession *session,
             LwLane    *lane)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *stack = gtk_stack_new ();
  GtkWidget *switcher = gtk_stack_switcher_new (), *knock = lw_knock_card_new (session);

  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (stack));
  gtk_stack_add_titled (GTK_STACK (stack), scrolled_new (lw_result_card_new (session)), "result", _ ("Result"));
  gtk_stack_add_titled (GTK_STACK (stack), scrolled_new (knock), "knock", _ ("Knock-on"));
  gtk_stack_add_titled (GTK_STACK (stack), scrolled_new (lw_why_card_new (session)), "why", _ ("Why here"));
  gtk_stack_add_titled (GTK_STACK (stack), scrolled_new (lw_weigh_card_new (session)), "weigh", _ ("Weigh-ins"));
  gtk_stack_add_titled (GTK_STACK (stack), scrolled_new (lw_steady_card_new (session)), "steady", _ ("Steady"));

  gtk_widget_set_vexpand (knock, TRUE);
  g_signal_connect_object (knock, "chosen", G_CALLBACK (chosen_cb), lane, G_CONNECT_SWAPPED);

  gtk_widget_add_css_class (side, "side");
  gtk_widget_set_size_request (side, WIDTH, -1);
  gtk_box_append (GTK_BOX (side), switcher);
  gtk_box_append (GTK_BOX (side), stack);

  return side;
}
