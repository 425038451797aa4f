/* The lesson's window: which batches it shows, and what its picture says. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bench/lesson-window-private.h"
#include "bench/overlays.h"
#include "draw/words.h"
#include "season/text.h"
#include "season/wording.h"

#define WIDTH 1280
#define HEIGHT 720

G_DEFINE_FINAL_TYPE (LwLessonWindow, lw_lesson_window, GTK_TYPE_WINDOW)

const LwLesson *
lw_lesson_window_lesson (LwLessonWindow *self)
{
  int at = self->name != NULL ? lw_season_lesson (self->season, self->name) : -1;

  return at >= 0 ? self->season->lessons[at] : NULL;
}

/* The places of the batches to show: those of the lesson, or the one in hand with those of its season laid over it. */
static guint
batches_of (LwLessonWindow *self,
            guint           batches[LW_LESSON_MOST_SHOWN])
{
  const LwLesson *lesson = lw_lesson_window_lesson (self);
  LwOverlays *over = lw_overlays_of (self->session);
  guint n = 0;

  if (lesson != NULL)
    {
      for (; n < lesson->n_shown; n++)
        batches[n] = (guint) MAX (lw_season_batch (self->season, lesson->shown[n]), 0);
      return n;
    }

  if (lw_session_batch_index (self->session) >= 0)
    batches[n++] = (guint) lw_session_batch_index (self->session);
  for (guint i = 0; n > 0 && i < lw_overlays_n (over) && n < LW_LESSON_MOST_SHOWN; i++)
    {
      LwLaid *laid = lw_overlays_nth (over, i);
      int at = laid->path == NULL ? lw_season_batch (self->season, lw_laid_batch (laid)->name) : -1;

      if (at >= 0)
        batches[n++] = (guint) at;
    }

  return n;
}

static char *
title_of (LwLessonWindow *self)
{
  const LwLesson *lesson = lw_lesson_window_lesson (self);
  g_autoptr (GString) title = g_string_new (lesson != NULL ? lesson->name : "");

  for (guint i = 0; lesson == NULL && i < self->cast->n; i++)
    g_string_append_printf (title, "%s%s", i > 0 ? " · " : "", self->cast->shown[i].batch->name);

  return g_string_free (g_steal_pointer (&title), FALSE);
}

static char *
where_of (LwLessonWindow *self)
{
  const LwBatch *batch = self->cast->shown[0].batch;
  const LwStep *step = &batch->steps[self->head.step];
  /* Whole seconds, and whole minutes where the step is long, so that the words do not flicker. */
  double grain = lw_step_get (step, LW_SET_MINUTES) > 60 ? 1 : 1 / 60.0;
  g_autofree char *time = lw_say_minutes (round (self->head.minute / grain) * grain);

  /* Others may be elsewhere. */
  if (self->cast->n > 1)
    /* Translators: a batch, a step's number and name, and the time into it */
    return g_strdup_printf (_ ("%s: %u. %s, %s"), batch->name, self->head.step + 1, _ (lw_kind_row (step->kind)->label),
                            time);

  /* Translators: a step's number and name, and the time into it */
  return g_strdup_printf (_ ("%u. %s, %s"), self->head.step + 1, _ (lw_kind_row (step->kind)->label), time);
}

static void
tell (LwLessonWindow *self)
{
  g_autoptr (GString) said = g_string_new (self->caption);
  /* Translators: %s is the title of a lesson */
  g_autofree char *label = g_strdup_printf (_ ("Lesson: %s"), self->title);

  g_string_append_printf (said, "\n%s", self->where);
  for (guint i = 0; i < self->cast->n; i++)
    {
      LwOutcome now;

      if (!lw_lesson_is (self->cast->shown, i, self->by_clock, self->head, &now))
        continue;

      g_string_append_printf (said, "\n%s:", self->cast->shown[i].batch->name);
      for (guint k = 0; k < LW_LESSON_CURVES; k++)
        {
          g_autofree char *value = lw_words_value (self->of[k], lw_quantity_of (self->of[k], &now));

          g_string_append_printf (said, " %s %s;", _ (lw_quantity_row (self->of[k])->label), value);
        }
    }
  for (guint i = 0; i < self->n_guesses; i++)
    {
      g_autofree char *value = lw_words_value (self->of[self->ask], self->guesses[i].value);

      /* Translators: a name, and what that apprentice guessed */
      g_string_append_printf (said, _ ("\n%s marked %s."), self->guesses[i].name, value);
    }
  if (!isnan (self->pointed))
    {
      g_autofree char *value = lw_words_value (self->of[self->ask], self->pointed);

      g_string_append_printf (said, _ ("\nPointed at %s."), value);
    }
  lw_lesson_view_tell (LW_LESSON_VIEW (self->view), label, said->str);
}

static void
caption (LwLessonWindow *self)
{
  if (self->answered)
    return;

  g_free (self->caption);
  if (self->ask >= 0 && !(g_array_index (self->stops, LwStop, self->ask_stop).kind == LW_STOP_MOMENT
                          && lw_head_compare (g_array_index (self->stops, LwStop, self->ask_stop).head, self->ask_head) == 0))
    /* Translators: %s is an outcome, as "Moisture" */
    self->caption = g_strdup_printf (_ ("%s: where does the curve end?"), _ (lw_quantity_row (self->of[self->ask])->label));
  else
    self->caption = lw_lesson_says (self->cast->shown, self->cast->n,
                                    &g_array_index (self->stops, LwStop, self->ask >= 0 ? self->ask_stop : self->at),
                                    lw_lesson_window_lesson (self), self->of);
}

void
lw_lesson_window_refresh (LwLessonWindow *self,
                          gboolean        say)
{
  LwLessonLook look;

  if (self->cast->n == 0)
    {
      const char *words = self->cast->failure != NULL ? self->cast->failure : _ ("There is no batch to show.");

      lw_lesson_view_show (LW_LESSON_VIEW (self->view), NULL, words);
      lw_lesson_view_tell (LW_LESSON_VIEW (self->view), _ ("Lesson"), words);
      return;
    }

  caption (self);
  g_free (self->where);
  self->where = where_of (self);
  look = (LwLessonLook) {
    .season = self->season, .n = self->cast->n, .shown = self->cast->shown,
    .curves = (const LwCurves *const *) self->cast->curves, .by_clock = self->by_clock, .head = self->head,
    .title = self->title, .caption = self->caption, .where = self->where, .ask = self->ask, .answered = self->answered,
    .pointed = self->pointed, .guesses = self->guesses, .n_guesses = self->n_guesses,
  };
  look.hides = self->ask >= 0 || lw_lesson_hides (self->stops, lw_lesson_window_lesson (self), self->asked, self->head);
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    look.of[i] = self->of[i];
  lw_lesson_view_show (LW_LESSON_VIEW (self->view), &look, NULL);
  if (say)
    tell (self);
}

/* Computes what is to be shown anew; the head stays where it can. */
static void
compute (LwLessonWindow *self)
{
  guint batches[LW_LESSON_MOST_SHOWN], n;
  LwSeason *season = lw_session_season (self->session);

  lw_lesson_play (self, FALSE);
  if (self->cast != NULL)
    lw_lesson_ask_end (self);
  g_clear_pointer (&self->season, lw_season_unref);
  self->season = lw_season_ref (season);
  if (lw_lesson_window_lesson (self) == NULL)
    g_clear_pointer (&self->name, g_free);

  g_clear_pointer (&self->cast, lw_cast_free);
  g_clear_pointer (&self->stops, g_array_unref);
  n = batches_of (self, batches);
  self->cast = lw_cast_new (self->season, batches, n, self->of);
  g_free (self->title);
  self->title = title_of (self);
  if (self->cast->n > 0)
    {
      self->stops = lw_lesson_stops (self->cast->shown, self->cast->n, self->by_clock, lw_lesson_window_lesson (self));
      if (lw_head_compare (self->head, g_array_index (self->stops, LwStop, self->stops->len - 1).head) > 0
          || self->head.minute > lw_step_get (&self->cast->shown[0].batch->steps[self->head.step], LW_SET_MINUTES))
        self->head = (LwHead) { 0 };
      self->at = lw_lesson_stop_at (self->stops, self->head);
      g_free (self->asked);
      self->asked = g_new0 (gboolean, self->stops->len);
    }

  lw_lesson_bar_update (self);
  lw_lesson_update_actions (self);
  lw_lesson_window_refresh (self, TRUE);
}

void
lw_lesson_window_choose (LwLessonWindow *self,
                         const char     *name)
{
  const LwLesson *lesson;

  g_free (self->name);
  self->name = g_strdup (name);
  g_clear_pointer (&self->season, lw_season_unref);
  self->season = lw_season_ref (lw_session_season (self->session));
  lesson = lw_lesson_window_lesson (self);
  for (guint i = 0; lesson != NULL && i < LW_LESSON_CURVES; i++)
    self->of[i] = lesson->curves[i];
  self->by_clock = lesson != NULL && lesson->by_clock;
  self->head = (LwHead) { 0 };
  compute (self);
}

static void
season_cb (LwLessonWindow *self)
{
  if (lw_session_is_dragging (self->session) || (self->season == lw_session_season (self->session) && self->name != NULL))
    return;

  compute (self);
}

static void
lw_lesson_window_dispose (GObject *object)
{
  LwLessonWindow *self = LW_LESSON_WINDOW (object);

  if (self->cast != NULL)
    {
      lw_lesson_play (self, FALSE);
      lw_lesson_view_show (LW_LESSON_VIEW (self->view), NULL, NULL);
    }
  for (guint i = 0; i < self->n_guesses; i++)
    g_free (self->guesses[i].name);
  self->n_guesses = 0;
  g_clear_pointer (&self->cast, lw_cast_free);
  g_clear_pointer (&self->stops, g_array_unref);
  g_clear_pointer (&self->asked, g_free);
  g_clear_pointer (&self->season, lw_season_unref);
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->title, g_free);
  g_clear_pointer (&self->caption, g_free);
  g_clear_pointer (&self->where, g_free);
  g_clear_object (&self->questions);
  g_clear_object (&self->actions);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_lesson_window_parent_class)->dispose (object);
}

static void
lw_lesson_window_class_init (LwLessonWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_lesson_window_dispose;
}

static void
lw_lesson_window_init (LwLessonWindow *self)
{
  self->of[0] = LW_MOISTURE;
  self->of[1] = LW_OXIDATION;
  self->of[2] = LW_RUPTURE;
}

/* In full screen there is the picture alone. */
static void
fullscreen_cb (LwLessonWindow *self)
{
  gtk_widget_set_visible (self->bar, !gtk_window_is_fullscreen (GTK_WINDOW (self)));
}

GtkWidget *
lw_lesson_window_new (GtkWindow *parent,
                      LwSession *session)
{
  LwLessonWindow *self = g_object_new (LW_TYPE_LESSON_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE,
                                       "title", _ ("Lesson"), "default-width", WIDTH, "default-height", HEIGHT, NULL);

  self->session = g_object_ref (session);
  gtk_widget_add_css_class (GTK_WIDGET (self), "bench");
  self->view = lw_lesson_view_new ();
  if (G_IS_ACTION_GROUP (parent))
    gtk_widget_insert_action_group (GTK_WIDGET (self), "win", G_ACTION_GROUP (parent));
  lw_lesson_add_actions (self);
  lw_lesson_bar_fill (self);
  lw_lesson_add_keys (self);
  lw_lesson_window_choose (self, NULL);
  g_signal_connect_object (session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_overlays_of (session), "changed", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect (self, "notify::fullscreened", G_CALLBACK (fullscreen_cb), NULL);
  gtk_widget_grab_focus (self->view);

  return GTK_WIDGET (self);
}
