/* Edits of lessons from their window: each is one edit of the season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"
#include "bench/lesson-window-private.h"
#include "season/text.h"

/* Takes over the lesson, in the place of the one that is shown, and shows it. */
static void
put (LwLessonWindow *self,
     LwLesson       *lesson,
     gboolean        anew,
     const char     *label)
{
  LwSeason *season = lw_session_season (self->session);
  int at = anew || self->name == NULL ? -1 : lw_season_lesson (season, self->name);
  g_autofree char *name = g_strdup (lesson->name);
  LwHead head = self->head;

  lw_session_edit (self->session, lw_edit_put_lesson (season, at, lesson), label, NULL);
  lw_lesson_window_choose (self, name);
  self->head = head;
  self->at = lw_lesson_stop_at (self->stops, head);
  lw_lesson_bar_update (self);
  lw_lesson_update_actions (self);
  lw_lesson_window_refresh (self, TRUE);
}

/* (transfer full) a name not yet used, as near to `name` as can be. */
static char *
free_name (LwLessonWindow *self,
           const char     *name)
{
  LwSeason *season = lw_session_season (self->session);
  char *own = g_strdup (name);

  for (guint i = 2; lw_season_lesson (season, own) >= 0; i++)
    {
      g_free (own);
      own = g_strdup_printf ("%s (%u)", name, i);
    }

  return own;
}

static LwLesson *
shown_lesson (LwLessonWindow *self)
{
  return lw_lesson_copy (lw_lesson_window_lesson (self));
}

static void
set_looks (LwLessonWindow *self,
           LwLesson       *lesson)
{
  lesson->by_clock = self->by_clock;
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lesson->curves[i] = self->of[i];
}

static void
new_cb (int         answer,
        const char *text,
        gpointer    data)
{
  g_autoptr (LwLessonWindow) self = data;
  g_autofree char *name = NULL;
  LwLesson *lesson;

  if (answer != 1 || text == NULL || *text == '\0' || self->cast == NULL || self->cast->n == 0)
    return;

  name = free_name (self, text);
  lesson = lw_lesson_new (name);
  set_looks (self, lesson);
  for (guint i = 0; i < self->cast->n; i++)
    lw_lesson_show (lesson, self->cast->shown[i].batch->name);
  put (self, lesson, TRUE, _ ("Add a lesson"));
}

static void
ask_name (LwLessonWindow *self,
          const char     *heading,
          const char     *answer,
          const char     *name,
          LwAnswered      answered)
{
  const char *answers[] = { _ ("Cancel"), answer, NULL };

  lw_lesson_play (self, FALSE);
  lw_ask (GTK_WINDOW (self), heading, "", answers, name, answered, g_object_ref (self));
}

static void
new_lesson (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  LwLessonWindow *self = data;

  ask_name (self, _ ("Name of the new lesson"), _ ("Add"), self->title, new_cb);
}

static void
renamed_cb (int         answer,
            const char *text,
            gpointer    data)
{
  g_autoptr (LwLessonWindow) self = data;
  LwLesson *lesson;

  if (answer != 1 || text == NULL || *text == '\0' || self->name == NULL || g_str_equal (text, self->name))
    return;

  lesson = shown_lesson (self);
  g_free (lesson->name);
  lesson->name = free_name (self, text);
  put (self, lesson, FALSE, _ ("Rename a lesson"));
}

static void
rename_lesson (GSimpleAction *action,
               GVariant      *target,
               gpointer       data)
{
  LwLessonWindow *self = data;

  ask_name (self, _ ("Name of the lesson"), _ ("Rename"), self->name, renamed_cb);
}

static void
remove_lesson (GSimpleAction *action,
               GVariant      *target,
               gpointer       data)
{
  LwLessonWindow *self = data;
  LwSeason *season = lw_session_season (self->session);
  int at = lw_season_lesson (season, self->name);

  g_clear_pointer (&self->name, g_free);
  lw_session_edit (self->session, lw_edit_remove_lesson (season, (guint) at), _ ("Remove a lesson"), NULL);
  lw_lesson_window_choose (self, NULL);
}

static void
keep_looks (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  LwLesson *lesson = shown_lesson (data);

  set_looks (data, lesson);
  put (data, lesson, FALSE, _ ("Keep the curves of a lesson"));
}

/* What is to be added, and where. */
typedef struct
{
  LwLessonWindow *self;
  int ask;
  LwHead head;
} Moment;

static void
moment_cb (int         answer,
           const char *text,
           gpointer    data)
{
  g_autofree Moment *moment = data;
  g_autoptr (LwLessonWindow) self = moment->self;
  gboolean silent = text == NULL || *text == '\0';
  LwLesson *lesson;

  if (answer != 1 || self->name == NULL || (silent && moment->ask < 0))
    return;

  lesson = shown_lesson (self);
  self->head = moment->head;
  lw_lesson_add_moment (lesson, (LwLessonMoment) { moment->head.step, moment->head.minute, moment->ask,
                                                   silent ? NULL : g_strdup (text) });
  put (self, lesson, FALSE, moment->ask < 0 ? _ ("Add what is said in a lesson") : _ ("Add a question to a lesson"));
}

static void
add_moment (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  LwLessonWindow *self = data;
  const char *answers[] = { _ ("Cancel"), _ ("Add"), NULL };
  Moment *moment = g_new (Moment, 1);

  lw_lesson_play (self, FALSE);
  lw_lesson_ask_end (self);
  *moment = (Moment) { g_object_ref (self), g_variant_get_int32 (target), self->head };
  lw_ask (GTK_WINDOW (self), moment->ask < 0 ? _ ("What is said here") : _ ("How it is asked here"), self->where, answers,
          "", moment_cb, moment);
}

static void
take_back (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  LwLessonWindow *self = data;
  const LwStop *stop = &g_array_index (self->stops, LwStop, self->at);
  LwLesson *lesson;

  if (stop->kind != LW_STOP_MOMENT)
    return;

  lw_lesson_ask_end (self);
  lesson = shown_lesson (self);
  lw_lesson_remove_moment (lesson, stop->moment);
  put (self, lesson, FALSE, _ ("Remove what is said in a lesson"));
}

static void
ask_first (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  lw_lesson_ask_begin (data, (guint) g_variant_get_int32 (target));
  lw_lesson_window_refresh (data, TRUE);
}

static void
fill_screen (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  gtk_window_fullscreen (data);
}

void
lw_lesson_update_actions (LwLessonWindow *self)
{
  static const char *const of_lesson[] = { "rename", "remove", "keep", "moment", "take-back" };
  static const char *const of_any[] = { "new", "ask" };

  for (guint i = 0; i < G_N_ELEMENTS (of_lesson); i++)
    g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self->actions), of_lesson[i])),
                                 self->name != NULL && self->cast->n > 0);
  for (guint i = 0; i < G_N_ELEMENTS (of_any); i++)
    g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self->actions), of_any[i])),
                                 self->cast->n > 0);
}

void
lw_lesson_add_actions (LwLessonWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "new", .activate = new_lesson },
    { .name = "rename", .activate = rename_lesson },
    { .name = "remove", .activate = remove_lesson },
    { .name = "keep", .activate = keep_looks },
    { .name = "moment", .activate = add_moment, .parameter_type = "i" },
    { .name = "take-back", .activate = take_back },
    { .name = "ask", .activate = ask_first, .parameter_type = "i" },
    { .name = "fullscreen", .activate = fill_screen },
  };

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "lesson", G_ACTION_GROUP (self->actions));
}
