/* The card "Why here" in a real window: what it follows, how often it is made anew, what it says of itself. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>

#include "bench/desktop.h"
#include "bench/why-card.h"
#include "season/document.h"
#include "study/why.h"
#include "../plain-season.h"

typedef struct
{
  LwSession *session;
  GtkWidget *window;
  GtkWidget *card;
} Fixture;

static LwSeason *
season_new (void)
{
  static const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL };

  return plain_season (kinds, G_N_ELEMENTS (kinds));
}

static gboolean
late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;

  return G_SOURCE_REMOVE;
}

/* Lets some frames pass. */
static void
settle (void)
{
  gboolean late = FALSE;

  g_timeout_add (150, late_cb, &late);
  while (!late)
    g_main_context_iteration (NULL, TRUE);
}

static void
set_up (Fixture      *f,
        gconstpointer data)
{
  g_autoptr (LwSeason) season = season_new ();

  f->session = lw_session_new ();
  f->card = lw_why_card_new (f->session);
  f->window = gtk_window_new ();
  gtk_widget_add_css_class (f->window, "bench");
  gtk_window_set_default_size (GTK_WINDOW (f->window), 320, 420);
  gtk_window_set_child (GTK_WINDOW (f->window), f->card);
  lw_session_open (f->session, season, NULL);
  lw_session_compute (f->session);
  gtk_window_present (GTK_WINDOW (f->window));
  settle ();
}

static void
tear_down (Fixture      *f,
           gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_object_unref (f->session);
}

static GtkWidget *
child_of (const Fixture *f,
          const char    *class)
{
  for (GtkWidget *child = gtk_widget_get_first_child (f->card); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_has_css_class (child, class))
      return child;

  g_error ("the card has no %s", class);
}

static const char *
words_of (const Fixture *f,
          const char    *class)
{
  return gtk_label_get_label (GTK_LABEL (child_of (f, class)));
}

static GtkWidget *
choice_of (const Fixture *f)
{
  for (GtkWidget *child = gtk_widget_get_first_child (f->card); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_DROP_DOWN (child))
      return child;

  g_assert_not_reached ();
}

/* (transfer full) what the study says. */
static char *
sentence_at (const Fixture *f,
             guint          step,
             double         minute,
             LwRate         rate)
{
  g_autoptr (LwPlan) plan = lw_plan_new (lw_session_season (f->session), 0);
  g_autoptr (LwWhy) why = lw_why_new (plan, lw_session_track (f->session), step, minute, rate);

  return g_strdup (why->sentence);
}

static void
test_follows (Fixture      *f,
              gconstpointer data)
{
  double last = lw_session_track (f->session)->steps[2]->duration_s / 60;
  g_autofree char *at_end = sentence_at (f, 2, last, LW_RATE_OXIDATION);
  g_autofree char *at_line = sentence_at (f, 1, 16, LW_RATE_OXIDATION);
  g_autofree char *in_hand = sentence_at (f, 0, 1e9, LW_RATE_OXIDATION);
  g_autofree char *water = sentence_at (f, 0, 1e9, LW_RATE_WATER);

  g_assert_cmpstr (words_of (f, "why-sentence"), ==, at_end);

  lw_session_read_at (f->session, 1, 16);
  settle ();
  g_assert_cmpstr (words_of (f, "why-title"), ==, "Why here: oxidation at 16 min");
  g_assert_cmpstr (words_of (f, "why-sentence"), ==, at_line);

  lw_session_read_off (f->session);
  lw_session_choose_step (f->session, 0);
  settle ();
  g_assert_cmpstr (words_of (f, "why-sentence"), ==, in_hand);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (choice_of (f)), LW_RATE_WATER);
  settle ();
  g_assert_cmpstr (words_of (f, "why-sentence"), ==, water);
  g_assert_true (g_str_has_prefix (words_of (f, "why-title"), "Why here: water loss at "));
}

static void
count_cb (guint *count)
{
  ++*count;
}

/* However often the line moves, the card is made anew once a frame. */
static void
test_once_a_frame (Fixture      *f,
                   gconstpointer data)
{
  guint count = 0;

  g_signal_connect_swapped (child_of (f, "why-title"), "notify::label", G_CALLBACK (count_cb), &count);
  for (guint i = 1; i < 40; i++)
    lw_session_read_at (f->session, 1, i * 0.5);
  g_assert_cmpuint (count, ==, 0);
  settle ();
  g_assert_cmpuint (count, ==, 1);
  g_assert_cmpstr (words_of (f, "why-title"), ==, "Why here: oxidation at 19 min 30 s");
}

/* An edit that has no result yet does not mix its plan with the old track. */
static void
test_edit (Fixture      *f,
           gconstpointer data)
{
  g_autofree char *after = NULL;

  lw_session_read_at (f->session, 1, 16);
  lw_session_edit (f->session, lw_edit_remove_step (lw_session_base (f->session), 0, 1), "Remove", NULL);
  settle ();
  lw_session_compute (f->session);
  settle ();
  after = sentence_at (f, 1, 1e9, LW_RATE_OXIDATION);
  lw_session_read_off (f->session);
  settle ();
  g_assert_cmpstr (words_of (f, "why-sentence"), ==, after);
}

static void
test_access (Fixture      *f,
             gconstpointer data)
{
  guint bars = 0;

  gtk_test_accessible_assert_role (f->card, GTK_ACCESSIBLE_ROLE_GROUP);
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (f->card), GTK_ACCESSIBLE_PROPERTY_LABEL));
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (choice_of (f)), GTK_ACCESSIBLE_PROPERTY_LABEL));

  for (GtkWidget *child = gtk_widget_get_first_child (f->card); child != NULL; child = gtk_widget_get_next_sibling (child))
    for (GtkWidget *part = gtk_widget_get_first_child (child); part != NULL; part = gtk_widget_get_next_sibling (part))
      if (g_strcmp0 (gtk_widget_get_css_name (part), "factorbar") == 0 && gtk_widget_get_visible (part))
        {
          gtk_test_accessible_assert_role (part, GTK_ACCESSIBLE_ROLE_METER);
          g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (part), GTK_ACCESSIBLE_PROPERTY_LABEL));
          g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (part), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT));
          bars++;
        }
  g_assert_cmpuint (bars, >=, 4);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  gtk_test_init (&argc, &argv, NULL);
  lw_desktop_style (gdk_display_get_default ());

  g_test_add ("/why-card/follows", Fixture, NULL, set_up, test_follows, tear_down);
  g_test_add ("/why-card/once-a-frame", Fixture, NULL, set_up, test_once_a_frame, tear_down);
  g_test_add ("/why-card/edit", Fixture, NULL, set_up, test_edit, tear_down);
  g_test_add ("/why-card/access", Fixture, NULL, set_up, test_access, tear_down);

  return g_test_run ();
}
