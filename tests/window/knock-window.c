/* knock-window SEASON BATCH: the board and the knock-on card in a window, for test_knock.py. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <stdlib.h>

#include "bench/board.h"
#include "bench/desktop.h"
#include "bench/knock-card.h"
#include "season/document.h"

static void
chosen_cb (LwBoard *board,
           guint    step,
           guint    setting,
           guint    quantity)
{
  lw_lane_focus (lw_board_lane (board), step);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwSession *session;
  GtkWidget *window, *paned, *board, *card;

  setlocale (LC_ALL, "");
  gtk_init ();
  lw_desktop_style (gdk_display_get_default ());
  season = argc == 3 ? lw_document_load (argv[1], problems) : NULL;
  if (season == NULL)
    return EXIT_FAILURE;

  session = lw_session_new ();
  window = gtk_window_new ();
  paned = gtk_paned_new (GTK_ORIENTATION_HORIZONTAL);
  board = lw_board_new (session);
  card = lw_knock_card_new (session);
  gtk_widget_set_size_request (card, 360, -1);
  gtk_paned_set_start_child (GTK_PANED (paned), board);
  gtk_paned_set_end_child (GTK_PANED (paned), card);
  gtk_paned_set_resize_end_child (GTK_PANED (paned), FALSE);
  gtk_window_set_child (GTK_WINDOW (window), paned);
  gtk_window_set_title (GTK_WINDOW (window), "Knock-on");
  gtk_widget_add_css_class (window, "bench");
  gtk_window_set_default_size (GTK_WINDOW (window), 1180, 560);
  g_signal_connect_swapped (card, "chosen", G_CALLBACK (chosen_cb), board);

  lw_session_open (session, season, NULL);
  lw_session_look_at_step (session, TRUE);
  for (guint i = 0; i < season->n_batches; i++)
    if (g_str_equal (season->batches[i]->name, argv[2]))
      lw_session_choose (session, i);
  gtk_window_present (GTK_WINDOW (window));
  while (g_list_model_get_n_items (gtk_window_get_toplevels ()) > 0)
    g_main_context_iteration (NULL, TRUE);
  g_object_unref (session);

  return EXIT_SUCCESS;
}
