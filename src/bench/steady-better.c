/* What would be steadier: asks for other settings, shows them, and takes or leaves them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-parts.h"

#include "bench/steady-words.h"
#include "season/text.h"
#include "study/replan.h"

typedef struct
{
  LwSession *session;
  GtkWidget *seek;
  GtkWidget *progress; /* here, too: the card's own may be scrolled out of sight */
  GtkWidget *stop;
  GtkWidget *words;
  GtkWidget *changes;
  GtkWidget *caution; /* beside what is offered */
  GtkWidget *take;
  GtkWidget *leave;
  GtkWidget *reach;
} Part;

/* Whether the plan itself, without any luck, meets its aims; TRUE also where it has none. */
static gboolean
meets_aims (LwSession *session)
{
  const LwBatch *batch = lw_session_batch (session);
  g_autoptr (GArray) wants = lw_wants_of_aims (batch);
  g_autoptr (LwReached) reached = NULL;

  if (wants->len == 0)
    return TRUE;
  reached = lw_reach_judge (lw_session_season (session), (guint) lw_session_batch_index (session), wants);

  return reached == NULL || reached->all_met;
}

static void
show (Part       *part,
      const char *words,
      const char *changes,
      gboolean    offered)
{
  gtk_label_set_label (GTK_LABEL (part->words), words);
  gtk_widget_set_visible (part->words, words[0] != '\0');
  gtk_label_set_label (GTK_LABEL (part->changes), changes);
  gtk_widget_set_visible (part->changes, changes[0] != '\0');
  gtk_widget_set_visible (part->caution, offered);
  gtk_widget_set_visible (part->take, offered);
  gtk_widget_set_visible (part->leave, offered);
  gtk_widget_set_visible (part->reach, FALSE);
}

static void
result_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  LwSteady *steady = lw_steady_of (part->session);
  const LwSteadier *found = lw_steady_found (steady);
  g_autoptr (GArray) changes = lw_steady_found_changes (steady);
  g_autofree char *words = NULL, *told = NULL;

  if (found == NULL)
    {
      show (part, "", "", FALSE);
      return;
    }

  words = lw_steady_say_found (found);
  told = found->better ? lw_steady_say_changes (lw_session_batch (part->session), changes) : g_strdup ("");
  show (part, words, told, found->better);
}

static void
work_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  LwSteady *steady = lw_steady_of (part->session);
  gboolean seeks = lw_steady_work (steady) == LW_STEADY_SEEKS, focused = gtk_widget_has_focus (part->stop);

  gtk_widget_set_sensitive (part->seek, lw_steady_can (steady) && lw_steady_work (steady) == LW_STEADY_RESTS);
  gtk_widget_set_visible (part->seek, !seeks);
  gtk_widget_set_visible (part->stop, seeks);
  gtk_widget_set_visible (part->progress, seeks);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (part->progress), CLAMP (lw_steady_done (steady), 0, 1));
  if (!seeks && focused)
    gtk_widget_grab_focus (part->seek);
}

/* What was said of the batch before a change. */
static void
track_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  work_cb (box);
  if (gtk_widget_get_visible (part->words))
    result_cb (box);
}

static void
seek_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  const LwBatch *batch = lw_session_batch (part->session);
  g_autoptr (GArray) wants = batch != NULL ? lw_wants_of_aims (batch) : NULL;
  gboolean focused = gtk_widget_has_focus (part->seek);

  if (wants == NULL || wants->len == 0)
    {
      show (part, _ ("There is no aim to be inside of: set one in the result."), "", FALSE);
      return;
    }
  if (!meets_aims (part->session))
    {
      show (part, _ ("The plan itself misses its aims, whatever varies: reach them first."), "", FALSE);
      gtk_widget_set_visible (part->reach, TRUE);
      return;
    }

  lw_steady_seek (lw_steady_of (part->session));
  if (focused)
    gtk_widget_grab_focus (part->stop);
}

static void
stop_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  lw_steady_cancel (lw_steady_of (part->session));
}

static void
take_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  lw_steady_take (lw_steady_of (part->session));
  gtk_widget_grab_focus (part->seek);
}

static void
leave_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  lw_steady_leave (lw_steady_of (part->session));
  gtk_widget_grab_focus (part->seek);
}

static void
reach_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  show (part, "", "", FALSE);
  gtk_widget_activate_action (box, "win.reach-aims", NULL);
}

static GtkWidget *
button_new (GtkWidget  *box,
            GtkWidget  *row,
            const char *label,
            const char *tip,
            GCallback   clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_set_tooltip_text (button, tip);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (row), button);
  g_signal_connect_object (button, "clicked", clicked, box, G_CONNECT_SWAPPED);

  return button;
}

GtkWidget *
lw_steady_better_new (LwSession *session)
{
  Part *part = g_new0 (Part, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  part->session = session;
  gtk_box_append (GTK_BOX (box), lw_steady_label (_ ("Make it steadier"), "steady-heading"));
  part->seek = button_new (box, box, _ ("Look for steadier settings"),
                           _ ("Times, heat, cover and pressure are turned until more samples come inside; pinned ones stay"),
                           G_CALLBACK (seek_cb));
  part->stop = button_new (box, box, _ ("Stop looking"), _ ("Leave off; what was there stays"), G_CALLBACK (stop_cb));
  part->progress = gtk_progress_bar_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (part->progress), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How far the search has come"), -1);
  gtk_box_append (GTK_BOX (box), part->progress);
  part->words = lw_steady_label ("", "steady-sentence");
  part->changes = lw_steady_label ("", "steady-changes");
  gtk_box_append (GTK_BOX (box), part->words);
  gtk_box_append (GTK_BOX (box), part->changes);
  part->caution = lw_steady_label (lw_replan_caution (), "steady-note");
  gtk_box_append (GTK_BOX (box), part->caution);
  part->take = button_new (box, row, _ ("Take"), _ ("Make these the batch’s settings; one undo takes them back"),
                           G_CALLBACK (take_cb));
  part->leave = button_new (box, row, _ ("Leave"), _ ("Keep the batch’s settings"), G_CALLBACK (leave_cb));
  part->reach = button_new (box, row, _ ("Reach the aims"), _ ("Search for settings that meet the aims"),
                            G_CALLBACK (reach_cb));
  gtk_box_append (GTK_BOX (box), row);
  g_object_set_data_full (G_OBJECT (box), "part", part, g_free);

  g_signal_connect_object (lw_steady_of (session), "result", G_CALLBACK (result_cb), box, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_steady_of (session), "work", G_CALLBACK (work_cb), box, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), box, G_CONNECT_SWAPPED);
  work_cb (box);
  result_cb (box);

  return box;
}
