/* The knock-on card in a real window: when it computes, that a drag and a hidden card do not, what it copies. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>

#include "bench/desktop.h"
#include "bench/knock-card.h"
#include "bench/knock-cell.h"
#include "bench/knock-table.h"
#include "study/knock-csv.h"
#include "../plain-season.h"

typedef struct
{
  LwSession *session;
  GtkWidget *window;
  GtkWidget *card;
  LwKnockTable *table;
} Fixture;

static LwSeason *
season_new (void)
{
  static const LwKind kinds[] = {
    LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_REST, LW_KIND_DRY_SUN, LW_KIND_ROAST,
  };
  LwSeason *season = plain_season (kinds, G_N_ELEMENTS (kinds));

  lw_season_insert_batch (season, 1, lw_batch_new ("2"));

  return season;
}

static gboolean
late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;

  return G_SOURCE_REMOVE;
}

static void
pass (guint ms)
{
  gboolean late = FALSE;

  g_timeout_add (ms, late_cb, &late);
  while (!late)
    g_main_context_iteration (NULL, TRUE);
}

static GtkWidget *
find (GtkWidget *under,
      GType      type)
{
  for (GtkWidget *child = gtk_widget_get_first_child (under); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = g_type_is_a (G_OBJECT_TYPE (child), type) ? child : find (child, type);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static gboolean
is_stale (const Fixture *f)
{
  return gtk_widget_has_css_class (GTK_WIDGET (f->table), "stale");
}

static void
wait_fresh (const Fixture *f)
{
  while (is_stale (f))
    g_main_context_iteration (NULL, TRUE);
}

/* What the table holds is what the study says of the session's season. */
static void
check_table (const Fixture *f,
             int            at)
{
  const LwKnockList *list = lw_knock_table_list (f->table);
  g_autoptr (GArray) knocks = lw_knock_on (lw_session_season (f->session), 0, at, NULL);

  g_assert_nonnull (list);
  g_assert_cmpint (list->at, ==, at);
  g_assert_cmpuint (list->knocks->len, ==, knocks->len);
  g_assert_cmpmem (list->knocks->data, list->knocks->len * sizeof (LwKnock), knocks->data, knocks->len * sizeof (LwKnock));
}

static void
set_up (Fixture      *f,
        gconstpointer data)
{
  g_autoptr (LwSeason) season = season_new ();

  gtk_widget_set_default_direction (data != NULL ? GTK_TEXT_DIR_RTL : GTK_TEXT_DIR_LTR);
  f->session = lw_session_new ();
  f->card = lw_knock_card_new (f->session);
  f->table = LW_KNOCK_TABLE (find (f->card, LW_TYPE_KNOCK_TABLE));
  f->window = gtk_window_new ();
  gtk_widget_add_css_class (f->window, "bench");
  gtk_window_set_default_size (GTK_WINDOW (f->window), 360, 600);
  gtk_window_set_child (GTK_WINDOW (f->window), f->card);
  lw_session_open (f->session, season, NULL);
  lw_session_look_at_step (f->session, TRUE);
  lw_session_compute (f->session);
  gtk_window_present (GTK_WINDOW (f->window));
  pass (50);
  wait_fresh (f);
}

static void
tear_down (Fixture      *f,
           gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_object_unref (f->session);
}

static LwSeason *
hotter (const Fixture *f,
        double         wall_c)
{
  return lw_edit_set (lw_session_base (f->session), 0, 1, LW_SET_WALL_C, wall_c);
}

static void
edit (const Fixture *f,
      double         wall_c)
{
  lw_session_edit (f->session, hotter (f, wall_c), "Set", NULL);
  lw_session_compute (f->session);
}

static void
test_follows (Fixture      *f,
              gconstpointer data)
{
  check_table (f, -1);
  edit (f, 200);
  g_assert_true (is_stale (f));
  wait_fresh (f);
  check_table (f, -1);

  lw_session_choose_step (f->session, 2);
  g_assert_true (is_stale (f));
  wait_fresh (f);
  check_table (f, 2);

  /* Neither can be computed: no batch's steps, no batch's numbers. */
  lw_session_choose (f->session, 1);
  lw_session_compute (f->session);
  pass (50);
  g_assert_null (lw_knock_table_list (f->table));
}

/* Frames of a drag start nothing; its end does, once for all of them. */
static void
test_drag (Fixture      *f,
           gconstpointer data)
{
  const LwKnockList *before = lw_knock_table_list (f->table);
  gint64 begin;

  lw_session_drag_begin (f->session);
  for (guint i = 0; i < 5; i++)
    {
      lw_session_preview (f->session, hotter (f, 200 + i));
      lw_session_compute (f->session);
      pass (60);
      g_assert_true (is_stale (f));
      g_assert_true (lw_knock_table_list (f->table) == before);
    }

  begin = g_get_monotonic_time ();
  lw_session_drag_commit (f->session, "Set");
  lw_session_compute (f->session);
  wait_fresh (f);
  /* No more than told: a busy machine takes what it takes. tests/bench measures. */
  g_test_message ("six steps: fresh %.1f ms after the drag", (double) (g_get_monotonic_time () - begin) / 1e3);
  g_assert_true (lw_knock_table_list (f->table) != before);
  check_table (f, -1);
}

/* A newer change calls off what is being computed for an older one. */
static void
test_superseded (Fixture      *f,
                 gconstpointer data)
{
  const LwKnockList *before = lw_knock_table_list (f->table);

  for (guint i = 0; i < 8; i++)
    edit (f, 200 + i);
  g_assert_true (lw_knock_table_list (f->table) == before);
  wait_fresh (f);
  check_table (f, -1);
  before = lw_knock_table_list (f->table);
  pass (300);
  g_assert_true (lw_knock_table_list (f->table) == before);
}

static void
test_hidden (Fixture      *f,
             gconstpointer data)
{
  const LwKnockList *before = lw_knock_table_list (f->table);

  gtk_widget_set_visible (f->card, FALSE);
  edit (f, 200);
  pass (300);
  g_assert_true (lw_knock_table_list (f->table) == before);
  gtk_widget_set_visible (f->card, TRUE);
  pass (50);
  wait_fresh (f);
  check_table (f, -1);

  /* Hidden while it computes. */
  edit (f, 210);
  gtk_widget_set_visible (f->card, FALSE);
  pass (300);
  g_assert_true (is_stale (f));
  gtk_widget_set_visible (f->card, TRUE);
  pass (50);
  wait_fresh (f);
  check_table (f, -1);
}

static void
note_cb (GtkWidget *card,
         guint      step,
         guint      setting,
         guint      quantity,
         guint     *noted)
{
  noted[0] = step;
  noted[1] = setting;
  noted[2] = quantity;
}

/* A cause that is chosen comes in hand; the outcomes asked for stay, and a step chosen elsewhere changes them. */
static void
test_chosen (Fixture      *f,
             gconstpointer data)
{
  const LwHandle wall = { 1, LW_SET_WALL_C };
  guint noted[3] = { 0 };

  g_signal_connect (f->card, "chosen", G_CALLBACK (note_cb), noted);
  g_signal_emit_by_name (f->table, "chosen", (guint) lw_knock_list_find (lw_knock_table_list (f->table), &wall),
                         (guint) LW_OXIDATION);
  g_assert_cmpuint (noted[0], ==, 1);
  g_assert_cmpuint (noted[1], ==, LW_SET_WALL_C);
  g_assert_cmpuint (noted[2], ==, LW_OXIDATION);
  g_assert_cmpint (lw_session_step (f->session), ==, 1);
  g_assert_false (is_stale (f));
  edit (f, 200);
  wait_fresh (f);
  check_table (f, -1);
  lw_session_choose_step (f->session, 3);
  wait_fresh (f);
  check_table (f, 3);
}

static void
read_cb (GObject      *clipboard,
         GAsyncResult *result,
         gpointer      data)
{
  *(char **) data = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);
}

/* Dots and commas stand where CSV has them, whatever the user's language. */
static void
test_copy (Fixture      *f,
           gconstpointer data)
{
  g_autofree char *text = NULL, *expected = NULL;
  g_autoptr (GArray) knocks = lw_knock_on (lw_session_season (f->session), 0, -1, NULL);
  gboolean comma = setlocale (LC_NUMERIC, "de_DE.UTF-8") != NULL;

  if (!comma)
    g_test_message ("no locale with a decimal comma is installed");
  g_signal_emit_by_name (find (f->card, GTK_TYPE_BUTTON), "clicked");
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (f->card), NULL, read_cb, &text);
  while (text == NULL)
    g_main_context_iteration (NULL, TRUE);
  setlocale (LC_NUMERIC, "C");
  expected = lw_knock_csv (lw_session_batch (f->session), knocks);
  g_assert_cmpstr (text, ==, expected);
}

static GtkWidget *
cell_saying (const Fixture *f,
             const char    *words)
{
  for (GtkWidget *strip = gtk_widget_get_first_child (GTK_WIDGET (f->table)); strip != NULL;
       strip = gtk_widget_get_next_sibling (strip))
    for (GtkWidget *cell = gtk_widget_get_first_child (strip); cell != NULL; cell = gtk_widget_get_next_sibling (cell))
      if (LW_IS_KNOCK_CELL (cell) && lw_knock_cell_said (LW_KNOCK_CELL (cell)) != NULL
          && g_str_has_prefix (lw_knock_cell_said (LW_KNOCK_CELL (cell)), words))
        return cell;

  g_error ("no cell says “%s”", words);
}

/* The first outcome stands beside the names of the settings, on the side where people begin to read; one after the
 * other it is followed by the others. */
static void
test_sides (Fixture      *f,
            gconstpointer data)
{
  graphene_rect_t table, first, second;

  g_assert_true (gtk_widget_compute_bounds (GTK_WIDGET (f->table), f->window, &table));
  g_assert_true (gtk_widget_compute_bounds (cell_saying (f, "time of step 1, plus 15 min: Moisture"), f->window, &first));
  g_assert_true (gtk_widget_compute_bounds (cell_saying (f, "time of step 1, plus 15 min: Oxidation"), f->window, &second));
  g_assert_cmpfloat (first.origin.x, >=, table.origin.x);
  g_assert_cmpfloat (first.origin.x + first.size.width, <=, table.origin.x + table.size.width);
  if (data != NULL)
    g_assert_cmpfloat (second.origin.x + second.size.width, <=, first.origin.x);
  else
    g_assert_cmpfloat (first.origin.x + first.size.width, <=, second.origin.x);
}

/* Rows out of sight have no widgets; those in sight fill the height. */
static void
test_recycled (Fixture      *f,
               gconstpointer data)
{
  guint strips = 0;

  for (GtkWidget *strip = gtk_widget_get_first_child (GTK_WIDGET (f->table)); strip != NULL;
       strip = gtk_widget_get_next_sibling (strip))
    strips++;
  g_assert_cmpuint (strips, >, 8);
  g_assert_cmpuint (strips, <, lw_knock_table_list (f->table)->rows->len);
}

int
main (int    argc,
      char **argv)
{
  setlocale (LC_ALL, "");
  gtk_test_init (&argc, &argv, NULL);
  lw_desktop_style (gdk_display_get_default ());

  g_test_add ("/knock-card/follows", Fixture, NULL, set_up, test_follows, tear_down);
  g_test_add ("/knock-card/drag", Fixture, NULL, set_up, test_drag, tear_down);
  g_test_add ("/knock-card/superseded", Fixture, NULL, set_up, test_superseded, tear_down);
  g_test_add ("/knock-card/hidden", Fixture, NULL, set_up, test_hidden, tear_down);
  g_test_add ("/knock-card/chosen", Fixture, NULL, set_up, test_chosen, tear_down);
  g_test_add ("/knock-card/copy", Fixture, NULL, set_up, test_copy, tear_down);
  g_test_add ("/knock-card/from-left", Fixture, NULL, set_up, test_sides, tear_down);
  g_test_add ("/knock-card/from-right", Fixture, "from right", set_up, test_sides, tear_down);
  g_test_add ("/knock-card/recycled", Fixture, NULL, set_up, test_recycled, tear_down);

  return g_test_run ();
}
