/* Asking first: the rest of the curves is hidden, guesses are marked under names, then the answer is drawn and the
 * distances are told. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bench/lesson-window-private.h"
#include "season/text.h"

#define KEY_SHARE 0.02 /* of the panel's range, for each press */

static void
tell (LwLessonWindow *self,
      const char     *words)
{
  gtk_label_set_label (GTK_LABEL (self->ask_told), words);
}

static void
clear (LwLessonWindow *self)
{
  for (guint i = 0; i < self->n_guesses; i++)
    g_free (self->guesses[i].name);
  self->n_guesses = 0;
  self->pointed = NAN;
  self->answering = self->answered = FALSE;
}

void
lw_lesson_ask_begin (LwLessonWindow *self,
                     guint           curve)
{
  if (self->cast->n == 0)
    return;

  lw_lesson_play (self, FALSE);
  if (self->ask >= 0 && (self->answering || self->answered))
    self->head = self->ask_head;
  clear (self);
  self->ask = (int) curve;
  self->ask_head = self->head;
  self->ask_stop = self->at;
  tell (self, _ ("Click where the curve ends, or use Up, Down and Enter; then type a name."));
  gtk_editable_set_text (GTK_EDITABLE (self->ask_name), "");
  gtk_widget_set_visible (self->ask_row, TRUE);
  gtk_widget_grab_focus (self->view);
}

void
lw_lesson_ask_end (LwLessonWindow *self)
{
  const LwStop *stop;

  if (self->ask < 0)
    return;

  if (self->answering || self->answered)
    {
      self->head = self->ask_head;
      self->at = self->ask_stop;
      stop = &g_array_index (self->stops, LwStop, self->at);
      if (stop->kind == LW_STOP_MOMENT)
        self->asked[self->at] = TRUE;
    }
  clear (self);
  self->ask = -1;
  gtk_widget_set_visible (self->ask_row, FALSE);
  gtk_widget_grab_focus (self->view);
}

static void
get_look (LwLessonWindow *self,
          LwLessonLook   *look)
{
  *look = (LwLessonLook) {
    .season = self->season, .n = self->cast->n, .shown = self->cast->shown,
    .curves = (const LwCurves *const *) self->cast->curves, .by_clock = self->by_clock,
  };
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    look->of[i] = self->of[i];
}

static void
point (LwLessonWindow *self,
       double          value)
{
  if (self->ask < 0 || self->answering || self->answered)
    return;
  if (self->n_guesses == LW_GUESS_MOST)
    {
      tell (self, _ ("No more marks: show the answer."));
      return;
    }

  self->pointed = value;
  lw_lesson_window_refresh (self, TRUE);
}

void
lw_lesson_ask_point (LwLessonWindow *self,
                     int             way)
{
  LwLessonLook look;
  double low, high;

  get_look (self, &look);
  lw_lesson_range (&look, (guint) self->ask, &low, &high);
  if (isnan (self->pointed))
    point (self, (low + high) / 2);
  else
    point (self, CLAMP (self->pointed + way * KEY_SHARE * (high - low), low, high));
}

static void
pointed_cb (LwLessonView   *view,
            double          value,
            LwLessonWindow *self)
{
  point (self, value);
  gtk_widget_grab_focus (self->ask_name);
}

/* The name is there: the mark stays. */
static void
named_cb (LwLessonWindow *self)
{
  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->ask_name))));

  if (self->ask < 0 || self->answering || self->answered)
    return;
  if (isnan (self->pointed))
    {
      tell (self, _ ("First click where the curve ends, or press Up or Down."));
      gtk_widget_grab_focus (self->view);
      return;
    }
  if (*name == '\0')
    {
      tell (self, _ ("Type a name for the mark."));
      return;
    }

  self->guesses[self->n_guesses++] = (LwGuess) { .name = g_steal_pointer (&name), .value = self->pointed };
  self->pointed = NAN;
  gtk_editable_set_text (GTK_EDITABLE (self->ask_name), "");
  tell (self, _ ("The next one; or Space shows the answer."));
  gtk_widget_grab_focus (self->view);
  lw_lesson_window_refresh (self, TRUE);
}

void
lw_lesson_ask_answer (LwLessonWindow *self)
{
  if (self->ask < 0 || self->answering || self->answered)
    return;

  self->pointed = NAN;
  self->answering = TRUE;
  tell (self, "");
  gtk_widget_grab_focus (self->view);
  lw_lesson_play (self, TRUE);
}

void
lw_lesson_ask_arrived (LwLessonWindow *self)
{
  const LwTrack *track = self->cast->tracks[0];
  LwOutcome end = lw_track_end (track, track->n_steps - 1, -1);
  LwQuantity of = self->of[self->ask];
  double truth = lw_quantity_of (of, &end);

  self->answering = FALSE;
  self->answered = TRUE;
  lw_guesses_rank (self->guesses, self->n_guesses, truth);
  g_free (self->caption);
  self->caption = lw_lesson_tells (of, truth, self->guesses, self->n_guesses);
  tell (self, _ ("The arrows go on from where it was asked."));
}

GtkWidget *
lw_lesson_ask_row_new (LwLessonWindow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *name = gtk_label_new (_ ("Name")), *mark = gtk_button_new_with_label (_ ("Set the mark"));
  GtkWidget *answer = gtk_button_new_with_label (_ ("Show the answer"));

  self->pointed = NAN;
  self->ask = -1;
  self->ask_told = gtk_label_new ("");
  self->ask_name = gtk_entry_new ();
  gtk_label_set_xalign (GTK_LABEL (self->ask_told), 0);
  gtk_label_set_ellipsize (GTK_LABEL (self->ask_told), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (self->ask_told, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->ask_name), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Name of who marks"),
                                  -1);
  gtk_box_append (GTK_BOX (row), self->ask_told);
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), self->ask_name);
  gtk_box_append (GTK_BOX (row), mark);
  gtk_box_append (GTK_BOX (row), answer);
  gtk_widget_add_css_class (row, "lesson-bar");
  gtk_widget_set_visible (row, FALSE);

  g_signal_connect_swapped (self->ask_name, "activate", G_CALLBACK (named_cb), self);
  g_signal_connect_swapped (mark, "clicked", G_CALLBACK (named_cb), self);
  g_signal_connect_swapped (answer, "clicked", G_CALLBACK (lw_lesson_ask_answer), self);
  g_signal_connect (self->view, "pointed", G_CALLBACK (pointed_cb), self);

  return row;
}
