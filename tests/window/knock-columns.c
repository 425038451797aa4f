/* The knock-on table scrolls by whole columns: at every width and however far it is scrolled a column is in sight whole,
 * its heading with it, or not at all; and each has its turn. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/desktop.h"
#include "bench/knock-card.h"
#include "bench/knock-table-private.h"
#include "../plain-season.h"

#define APART 23 /* px from one scroll to the next: less than a column */

typedef struct
{
  LwSession *session;
  GtkWidget *window;
  LwKnockTable *table;
} Made;

static void
pass (guint ms)
{
  for (gint64 end = g_get_monotonic_time () + 1000 * (gint64) ms; g_get_monotonic_time () < end; g_usleep (500))
    while (g_main_context_iteration (NULL, FALSE))
      ;
}

static LwKnockTable *
table_in (GtkWidget *under)
{
  LwKnockTable *found = LW_IS_KNOCK_TABLE (under) ? LW_KNOCK_TABLE (under) : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (under); found == NULL && child != NULL;
       child = gtk_widget_get_next_sibling (child))
    found = table_in (child);

  return found;
}

static void
set_up (Made         *made,
        gconstpointer from_right)
{
  static const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_SUN };
  g_autoptr (LwSeason) season = plain_season (kinds, G_N_ELEMENTS (kinds));
  GtkWidget *card;

  gtk_widget_set_default_direction (from_right != NULL ? GTK_TEXT_DIR_RTL : GTK_TEXT_DIR_LTR);
  made->session = lw_session_new ();
  card = lw_knock_card_new (made->session);
  made->table = table_in (card);
  made->window = gtk_window_new ();
  gtk_widget_add_css_class (made->window, "bench");
  gtk_window_set_child (GTK_WINDOW (made->window), card);
  lw_session_open (made->session, season, NULL);
  lw_session_compute (made->session);
  gtk_window_present (GTK_WINDOW (made->window));
  while (lw_knock_table_n_rows (made->table) == 0)
    g_main_context_iteration (NULL, TRUE);
}

static void
tear_down (Made         *made,
           gconstpointer from_right)
{
  gtk_window_destroy (GTK_WINDOW (made->window));
  g_object_unref (made->session);
}

static graphene_rect_t
place_of (const Made *made,
          int         row,
          int         column)
{
  graphene_rect_t box;

  g_assert_true (gtk_widget_compute_bounds (lw_knock_table_widget (made->table, row, column), GTK_WIDGET (made->table), &box));

  return box;
}

/* Counts the columns in sight and marks them. */
static guint
check_columns (const Made   *made,
               gconstpointer from_right,
               gboolean      seen[LW_N_QUANTITIES])
{
  float width = (float) gtk_widget_get_width (GTK_WIDGET (made->table));
  float name = place_of (made, LW_KNOCK_HEADS, LW_KNOCK_FIRST).size.width;
  float from = from_right != NULL ? 0 : name, to = from_right != NULL ? width - name : width;
  guint n = 0;

  for (int q = 0; q < LW_N_QUANTITIES; q++)
    {
      graphene_rect_t head = place_of (made, LW_KNOCK_HEADS, q), cell = place_of (made, 0, q);
      gboolean outside = cell.origin.x >= to || cell.origin.x + cell.size.width <= from;
      gboolean inside = cell.origin.x >= from && cell.origin.x + cell.size.width <= to;

      g_assert_true (inside != outside);
      g_assert_cmpfloat (head.origin.x, ==, cell.origin.x);
      g_assert_cmpfloat (head.size.width, ==, cell.size.width);
      seen[q] |= inside;
      n += inside;
    }

  return n;
}

static void
test_whole (Made         *made,
            gconstpointer from_right)
{
  for (int width = 300; width <= 390; width += 90)
    {
      GtkAdjustment *across = made->table->adjustments[GTK_ORIENTATION_HORIZONTAL];
      gboolean seen[LW_N_QUANTITIES] = { FALSE };

      gtk_window_set_default_size (GTK_WINDOW (made->window), width, 400);
      pass (100);
      g_assert_cmpint (gtk_widget_get_width (made->window), ==, width);
      for (double at = 0; at < gtk_adjustment_get_upper (across); at += APART)
        {
          gtk_adjustment_set_value (across, at);
          /* Laid out at the next frame. */
          pass (20);
          g_assert_cmpuint (check_columns (made, from_right, seen), >=, 2);
        }
      for (guint q = 0; q < LW_N_QUANTITIES; q++)
        g_assert_true (seen[q]);
    }
}

/* In a table with room for less than a column the first in turn is there nevertheless. */
static void
test_narrow (Made         *made,
             gconstpointer from_right)
{
  const int *starts = made->table->columns.starts;
  int width;

  pass (50);
  width = made->table->columns.first + starts[1] / 2;
  gtk_widget_size_allocate (made->table->heads, &(GtkAllocation) { 0, 0, width, made->table->head_height }, -1);
  g_assert_cmpfloat (place_of (made, LW_KNOCK_HEADS, 0).origin.x, <, width);
  g_assert_cmpfloat (place_of (made, LW_KNOCK_HEADS, 1).origin.x, >=, width);
}

int
main (int    argc,
      char **argv)
{
  gtk_init ();
  lw_desktop_style (gdk_display_get_default ());
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/knock-columns/whole", Made, NULL, set_up, test_whole, tear_down);
  g_test_add ("/knock-columns/whole-from-right", Made, "from right", set_up, test_whole, tear_down);
  g_test_add ("/knock-columns/narrow", Made, NULL, set_up, test_narrow, tear_down);

  return g_test_run ();
}
