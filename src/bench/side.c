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
#define TABS 3   /* in a row */

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

/* The page that a tab shows. */
typedef struct
{
  GtkStack *stack;
  const char *name;
} Tab;

static void
tab_cb (GtkToggleButton *button,
        Tab             *tab)
{
  if (gtk_toggle_button_get_active (button))
    gtk_stack_set_visible_child_name (tab->stack, tab->name);
}

static void
tab_free (gpointer  tab,
          GClosure *closure)
{
  g_free (tab);
}

/* A switcher of GTK stands in one row, which would widen the column. */
static void
add_page (GtkGrid    *tabs,
          GtkStack   *stack,
          GtkWidget  *page,
          const char *name,
          const char *title)
{
  GtkWidget *first = gtk_grid_get_child_at (tabs, 0, 0), *scrolled = scrolled_new (page);
  GtkWidget *button = g_object_new (GTK_TYPE_TOGGLE_BUTTON, "label", title, "accessible-role", GTK_ACCESSIBLE_ROLE_TAB, NULL);
  int n = 0;
  Tab *tab = g_new (Tab, 1);

  while (gtk_grid_get_child_at (tabs, n % TABS, n / TABS) != NULL)
    n++;

  *tab = (Tab) { stack, name };
  gtk_stack_add_named (stack, scrolled, name);
  g_signal_connect_data (button, "toggled", G_CALLBACK (tab_cb), tab, tab_free, 0);
  gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), (GtkToggleButton *) first);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), first == NULL);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_CONTROLS, scrolled, NULL, -1);
  gtk_grid_attach (tabs, button, n % TABS, n / TABS, 1, 1);
}

GtkWidget *
lw_side_new (LwSession *session,
             LwLane    *lane)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *stack = gtk_stack_new ();
  GtkWidget *tabs = g_object_new (GTK_TYPE_GRID, "column-homogeneous", TRUE, "accessible-role",
                                  GTK_ACCESSIBLE_ROLE_TAB_LIST, NULL);
  GtkWidget *knock = lw_knock_card_new (session);

  add_page (GTK_GRID (tabs), GTK_STACK (stack), lw_result_card_new (session), "result", _ ("Result"));
  add_page (GTK_GRID (tabs), GTK_STACK (stack), knock, "knock", _ ("Knock-on"));
  add_page (GTK_GRID (tabs), GTK_STACK (stack), lw_why_card_new (session), "why", _ ("Why here"));
  add_page (GTK_GRID (tabs), GTK_STACK (stack), lw_weigh_card_new (session), "weigh", _ ("Weigh-ins"));
  add_page (GTK_GRID (tabs), GTK_STACK (stack), lw_steady_card_new (session), "steady", _ ("Steady"));

  gtk_widget_set_vexpand (knock, TRUE);
  g_signal_connect_object (knock, "chosen", G_CALLBACK (chosen_cb), lane, G_CONNECT_SWAPPED);

  gtk_widget_add_css_class (side, "side");
  gtk_widget_set_size_request (side, WIDTH, -1);
  gtk_widget_add_css_class (tabs, "tabs");
  gtk_box_append (GTK_BOX (side), tabs);
  gtk_box_append (GTK_BOX (side), stack);

  return side;
}
