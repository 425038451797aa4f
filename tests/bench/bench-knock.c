/* How long after the end of a drag the knock-on card shows the new numbers: a batch of six steps, all settings, a real
 * window, until the frame is drawn. Prints a median; asserts nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <stdlib.h>

#include "bench/desktop.h"
#include "bench/knock-card.h"
#include "season/edit.h"
#include "../plain-season.h"

#define TIMES 31

static LwSeason *
season_new (void)
{
  static const LwKind kinds[] = {
    LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_REST, LW_KIND_DRY_SUN, LW_KIND_ROAST,
  };

  return plain_season (kinds, G_N_ELEMENTS (kinds));
}

static gboolean
is_stale (GtkWidget *under)
{
  for (GtkWidget *child = gtk_widget_get_first_child (under); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_has_css_class (child, "stale") || is_stale (child))
      return TRUE;

  return FALSE;
}

static void
painted_cb (gboolean *painted)
{
  *painted = TRUE;
}

/* Until the card is fresh and the frame after that is drawn. */
static void
wait_shown (GtkWidget *card)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (card);
  gboolean painted = FALSE;
  gulong handler;

  while (is_stale (card))
    g_main_context_iteration (NULL, TRUE);
  handler = g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (painted_cb), &painted);
  gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_PAINT);
  while (!painted)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handler_disconnect (clock, handler);
}

static int
by_size (const void *a,
         const void *b)
{
  gint64 x = *(const gint64 *) a, y = *(const gint64 *) b;

  return x < y ? -1 : x > y;
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (LwSession) session = NULL;
  GtkWidget *window, *card;
  gint64 us[TIMES];

  setlocale (LC_ALL, "");
  gtk_init ();
  lw_desktop_style (gdk_display_get_default ());
  season = season_new ();
  session = lw_session_new ();
  card = lw_knock_card_new (session);
  window = gtk_window_new ();
  gtk_widget_add_css_class (window, "bench");
  gtk_window_set_default_size (GTK_WINDOW (window), 400, 800);
  gtk_window_set_child (GTK_WINDOW (window), card);
  lw_session_open (session, season, NULL);
  lw_session_compute (session);
  gtk_window_present (GTK_WINDOW (window));
  wait_shown (card);

  for (guint i = 0; i < TIMES; i++)
    {
      gint64 begin;

      /* The first step: nothing that was remembered of the batch holds any more. */
      lw_session_drag_begin (session);
      lw_session_preview (session, lw_edit_set (lw_session_base (session), 0, 0, LW_SET_MINUTES, 1000 + i));
      lw_session_compute (session);
      begin = g_get_monotonic_time ();
      lw_session_drag_commit (session, "Set");
      lw_session_compute (session);
      wait_shown (card);
      us[i] = g_get_monotonic_time () - begin;
    }
  qsort (us, TIMES, sizeof *us, by_size);
  printf ("knock-on card, six steps, drag's end to picture  median %6.1f ms, least %6.1f ms\n", (double) us[TIMES / 2] / 1e3,
          (double) us[0] / 1e3);
  gtk_window_destroy (GTK_WINDOW (window));

  return 0;
}
