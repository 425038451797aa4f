/* Playing a lesson: the head moves as the clock does, and stops where something is asked. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/clock.h"
#include "bench/lesson-window-private.h"

#define USUAL_SPEED 2
#define ANSWER_SPEED 6.0  /* an answer is drawn that fast */
#define MOST_STEP_S 5.0   /* a frame that came later than this does not jump */

static const double speeds[] = { 0.25, 0.5, 1, 2, 4, 8 };

double
lw_lesson_window_speed (LwLessonWindow *self)
{
  return speeds[self->speed];
}

/* The first question between two moments that is still open, -1: none. */
static int
question_between (LwLessonWindow *self,
                  LwHead          from,
                  LwHead          to)
{
  const LwLesson *lesson = lw_lesson_window_lesson (self);

  for (guint i = 0; lesson != NULL && i < self->stops->len; i++)
    {
      const LwStop *stop = &g_array_index (self->stops, LwStop, i);

      if (stop->kind == LW_STOP_MOMENT && lesson->moments[stop->moment].ask >= 0 && !self->asked[i]
          && lw_head_compare (from, stop->head) <= 0 && lw_head_compare (stop->head, to) <= 0)
        return (int) i;
    }

  return -1;
}

static void
stop_at (LwLessonWindow *self,
         guint           at)
{
  const LwLesson *lesson = lw_lesson_window_lesson (self);
  const LwStop *stop = &g_array_index (self->stops, LwStop, at);

  self->at = at;
  self->head = stop->head;
  if (stop->kind == LW_STOP_MOMENT && lesson->moments[stop->moment].ask >= 0 && !self->asked[at])
    lw_lesson_ask_begin (self, (guint) lesson->moments[stop->moment].ask);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *frames,
         gpointer       data)
{
  LwLessonWindow *self = LW_LESSON_WINDOW (widget);
  double now_s = lw_clock_now_s (), gone_s = CLAMP (now_s - self->last_s, 0, MOST_STEP_S * lw_clock_pace ());
  double speed = self->answering ? ANSWER_SPEED : lw_lesson_window_speed (self);
  LwHead from = self->head;
  gboolean goes_on;
  guint at = self->at;
  int question;

  self->last_s = now_s;
  goes_on = lw_head_advance (&self->head, self->cast->shown[0].batch, self->by_clock, gone_s * speed / LW_LESSON_PLAY_S);
  question = self->answering ? -1 : question_between (self, from, self->head);
  if (question >= 0)
    {
      lw_lesson_play (self, FALSE);
      stop_at (self, (guint) question);
    }
  else
    {
      self->at = MAX (self->at, lw_lesson_stop_at (self->stops, self->head));
      if (!goes_on)
        lw_lesson_play (self, FALSE);
      if (!goes_on && self->answering)
        lw_lesson_ask_arrived (self);
    }
  lw_lesson_window_refresh (self, at != self->at || self->tick == 0);

  return self->tick != 0;
}

void
lw_lesson_play (LwLessonWindow *self,
                gboolean        on)
{
  if (on == (self->tick != 0) || self->cast->n == 0)
    return;

  if (on)
    {
      self->last_s = lw_clock_now_s ();
      self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
    }
  else
    {
      gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
      self->tick = 0;
    }
  lw_lesson_bar_update (self);
}

void
lw_lesson_play_or_pause (LwLessonWindow *self)
{
  if (self->cast->n == 0)
    return;

  if (self->ask >= 0 && !self->answered)
    {
      lw_lesson_ask_answer (self);
      return;
    }
  lw_lesson_ask_end (self);
  if (self->tick == 0 && self->at + 1 == self->stops->len)
    stop_at (self, 0);
  lw_lesson_play (self, self->tick == 0);
  lw_lesson_window_refresh (self, TRUE);
}

/* Onwards from a question that has marks is to its answer, and from an answer being drawn to its end: no mark is lost.
 * FALSE if it is neither. */
static gboolean
hurry (LwLessonWindow *self)
{
  if (self->ask < 0 || self->answered || (!self->answering && self->n_guesses == 0))
    return FALSE;
  if (!self->answering)
    {
      lw_lesson_ask_answer (self);
      return TRUE;
    }

  lw_lesson_play (self, FALSE);
  self->head = g_array_index (self->stops, LwStop, self->stops->len - 1).head;
  lw_lesson_ask_arrived (self);
  lw_lesson_window_refresh (self, TRUE);

  return TRUE;
}

void
lw_lesson_go (LwLessonWindow *self,
              int             way)
{
  guint at;

  if (self->cast->n == 0 || (way > 0 && hurry (self)))
    return;

  lw_lesson_play (self, FALSE);
  lw_lesson_ask_end (self);
  at = self->at;
  /* Back from between two stops is to the one that was passed. */
  if (way < 0 && at > 0 && lw_head_compare (self->head, g_array_index (self->stops, LwStop, at).head) <= 0)
    at--;
  else if (way > 0 && at + 1 < self->stops->len)
    at++;
  stop_at (self, at);
  lw_lesson_window_refresh (self, TRUE);
}

void
lw_lesson_faster (LwLessonWindow *self,
                  int             way)
{
  self->speed = (guint) CLAMP ((int) self->speed + way, 0, (int) G_N_ELEMENTS (speeds) - 1);
  lw_lesson_bar_update (self);
}

static gboolean
asks (LwLessonWindow *self)
{
  return self->ask >= 0 && !self->answering && !self->answered;
}

/* Keys of the picture: a remote's, too. */
static gboolean
view_key_cb (GtkEventControllerKey *keys,
             guint                  key,
             guint                  code,
             GdkModifierType        state,
             LwLessonWindow        *self)
{
  int ahead = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL ? -1 : 1;

  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return FALSE;

  switch (key)
    {
    case GDK_KEY_space:
      lw_lesson_play_or_pause (self);
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_Left:
      lw_lesson_go (self, key == GDK_KEY_Right ? ahead : -ahead);
      return TRUE;
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      lw_lesson_faster (self, key == GDK_KEY_plus || key == GDK_KEY_KP_Add ? 1 : -1);
      return TRUE;
    case GDK_KEY_1:
    case GDK_KEY_2:
    case GDK_KEY_3:
      lw_lesson_ask_begin (self, key - GDK_KEY_1);
      lw_lesson_window_refresh (self, TRUE);
      return TRUE;
    case GDK_KEY_Up:
    case GDK_KEY_Down:
      if (!asks (self))
        return FALSE;
      lw_lesson_ask_point (self, key == GDK_KEY_Up ? 1 : -1);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (!asks (self))
        return FALSE;
      gtk_widget_grab_focus (self->ask_name);
      return TRUE;
    default:
      return FALSE;
    }
}

static gboolean
window_key_cb (GtkEventControllerKey *keys,
               guint                  key,
               guint                  code,
               GdkModifierType        state,
               LwLessonWindow        *self)
{
  switch (key)
    {
    case GDK_KEY_Page_Down:
    case GDK_KEY_Page_Up:
      lw_lesson_go (self, key == GDK_KEY_Page_Down ? 1 : -1);
      return TRUE;
    case GDK_KEY_F11:
      if (gtk_window_is_fullscreen (GTK_WINDOW (self)))
        gtk_window_unfullscreen (GTK_WINDOW (self));
      else
        gtk_window_fullscreen (GTK_WINDOW (self));
      return TRUE;
    case GDK_KEY_Escape:
      if (self->ask < 0)
        {
          gtk_window_close (GTK_WINDOW (self));
          return TRUE;
        }
      lw_lesson_play (self, FALSE);
      lw_lesson_ask_end (self);
      lw_lesson_window_refresh (self, TRUE);
      return TRUE;
    default:
      return FALSE;
    }
}

void
lw_lesson_add_keys (LwLessonWindow *self)
{
  GtkEventController *view = gtk_event_controller_key_new (), *window = gtk_event_controller_key_new ();

  self->speed = USUAL_SPEED;
  g_signal_connect (view, "key-pressed", G_CALLBACK (view_key_cb), self);
  g_signal_connect (window, "key-pressed", G_CALLBACK (window_key_cb), self);
  gtk_widget_add_controller (self->view, view);
  gtk_widget_add_controller (GTK_WIDGET (self), window);
}
