/* A label that comes and goes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/caution-line.h"

#include "study/replan.h"

static void
follow_cb (LwSession *session,
           GtkWidget *label)
{
  gtk_widget_set_visible (label, lw_session_n_locks (session) > 0 || lw_session_said (session) != NULL);
}

GtkWidget *
lw_caution_line_new (LwSession *session)
{
  GtkWidget *label = gtk_label_new (lw_replan_caution_short ());

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "caution-line");
  g_signal_connect_object (session, "said", G_CALLBACK (follow_cb), label, 0);
  g_signal_connect_object (session, "locks", G_CALLBACK (follow_cb), label, 0);
  g_signal_connect_object (session, "season", G_CALLBACK (follow_cb), label, 0);
  follow_cb (session, label);

  return label;
}
