/* The controls under the lesson's picture. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lesson-window-private.h"
#include "season/text.h"

#define LEAST_CHARS 8  /* of what is chosen */

static void
chosen_cb (LwLessonWindow *self)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));

  if (self->filling || at == GTK_INVALID_LIST_POSITION)
    return;

  lw_lesson_window_choose (self, at > 0 && at <= self->season->n_lessons ? self->season->lessons[at - 1]->name : NULL);
  gtk_widget_grab_focus (self->view);
}

static void
curve_cb (LwLessonWindow *self,
          GParamSpec     *what,
          GtkWidget      *choice)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (choice));

  if (self->filling || at >= LW_N_QUANTITIES)
    return;

  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    if (self->curves[i] == choice)
      {
        self->of[i] = (LwQuantity) at;
        if (self->ask == (int) i)
          lw_lesson_ask_end (self);
        lw_cast_set_of (self->cast, i, self->of[i]);
      }
  lw_lesson_bar_update (self);
  lw_lesson_window_refresh (self, TRUE);
  gtk_widget_grab_focus (self->view);
}

/* Turns of other batches come at other moments now, so that all is laid out anew. */
static void
clock_cb (LwLessonWindow *self)
{
  const LwLesson *lesson = lw_lesson_window_lesson (self);

  if (self->filling || self->cast->n == 0)
    return;

  lw_lesson_play (self, FALSE);
  lw_lesson_ask_end (self);
  self->by_clock = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->clock));
  g_array_unref (self->stops);
  self->stops = lw_lesson_stops (self->cast->shown, self->cast->n, self->by_clock, lesson);
  self->at = lw_lesson_stop_at (self->stops, self->head);
  g_free (self->asked);
  self->asked = g_new0 (gboolean, self->stops->len);
  lw_lesson_window_refresh (self, TRUE);
}

static void
previous_cb (LwLessonWindow *self)
{
  lw_lesson_go (self, -1);
}

static void
next_cb (LwLessonWindow *self)
{
  lw_lesson_go (self, 1);
}

static void
slower_cb (LwLessonWindow *self)
{
  lw_lesson_faster (self, -1);
}

static void
faster_cb (LwLessonWindow *self)
{
  lw_lesson_faster (self, 1);
}

static void
name (GtkWidget  *widget,
      const char *label)
{
  gtk_widget_set_tooltip_text (widget, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static GtkWidget *
button_new (LwLessonWindow *self,
            const char     *icon,
            const char     *label,
            GCallback       clicked)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);

  name (button, label);
  gtk_widget_set_focus_on_click (button, FALSE);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (self->bar), button);

  return button;
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), LEAST_CHARS);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *item)
{
  gtk_label_set_label (GTK_LABEL (gtk_list_item_get_child (item)),
                       gtk_string_object_get_string (GTK_STRING_OBJECT (gtk_list_item_get_item (item))));
}

/* The list as GTK has it; what is chosen ends in dots where the window is too narrow for the bar. */
static void
let_shrink (GtkDropDown *choice)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_drop_down_set_list_factory (choice, gtk_drop_down_get_factory (choice));
  gtk_drop_down_set_factory (choice, factory);
  g_object_unref (factory);
}

static GtkWidget *
choice_new (LwLessonWindow    *self,
            const char *const *words,
            const char        *label,
            GCallback          chosen)
{
  GtkWidget *choice = gtk_drop_down_new_from_strings (words);

  let_shrink (GTK_DROP_DOWN (choice));
  name (choice, label);
  g_signal_connect_swapped (choice, "notify::selected", chosen, self);
  gtk_box_append (GTK_BOX (self->bar), choice);

  return choice;
}

static GtkWidget *
menu_new (LwLessonWindow *self)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new (), moments = g_menu_new (), lessons = g_menu_new (), view = g_menu_new ();

  self->questions = g_menu_new ();
  g_menu_append (moments, _ ("_Say something here…"), "lesson.moment(-1)");
  g_menu_append_submenu (moments, _ ("Ask h_ere"), G_MENU_MODEL (self->questions));
  g_menu_append (moments, _ ("_Take back what is said here"), "lesson.take-back");
  g_menu_append (lessons, _ ("_New lesson of what is shown…"), "lesson.new");
  g_menu_append (lessons, _ ("_Keep these curves in the lesson"), "lesson.keep");
  g_menu_append (lessons, _ ("Rena_me the lesson…"), "lesson.rename");
  g_menu_append (lessons, _ ("_Remove the lesson"), "lesson.remove");
  g_menu_append (view, _ ("_Open the demo's lessons"), "win.demo-lessons");
  g_menu_append (view, _ ("_Full screen (F11)"), "lesson.fullscreen");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (moments));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (lessons));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (view));
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "open-menu-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_menu_button_set_direction (GTK_MENU_BUTTON (button), GTK_ARROW_UP);
  name (button, _ ("Lessons of this season"));
  gtk_box_append (GTK_BOX (self->bar), button);

  return button;
}

static void
fill_questions (LwLessonWindow *self)
{
  g_autoptr (GMenu) now = g_menu_new ();

  g_menu_remove_all (self->questions);
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    {
      const char *label = _ (lw_quantity_row (self->of[i])->label);
      g_autofree char *keep = g_strdup_printf ("lesson.moment(%u)", i), *ask = g_strdup_printf ("lesson.ask(%u)", i);
      g_autofree char *key = g_strdup_printf ("%s (%u)", label, i + 1);

      g_menu_append (self->questions, label, keep);
      g_menu_append (now, key, ask);
    }
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (self->ask_menu), G_MENU_MODEL (now));
}

/* A list is not replaced while it is chosen from. */
static gboolean
lists (GListModel    *listed,
       GtkStringList *names)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (names));

  if (g_list_model_get_n_items (listed) != n)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!g_str_equal (gtk_string_list_get_string (GTK_STRING_LIST (listed), i), gtk_string_list_get_string (names, i)))
      return FALSE;

  return TRUE;
}

static void
fill_lessons (LwLessonWindow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint chosen = 0;

  gtk_string_list_append (names, _ ("Batch in hand"));
  for (guint i = 0; i < self->season->n_lessons; i++)
    {
      gtk_string_list_append (names, self->season->lessons[i]->name);
      if (g_strcmp0 (self->name, self->season->lessons[i]->name) == 0)
        chosen = i + 1;
    }
  if (!lists (gtk_drop_down_get_model (GTK_DROP_DOWN (self->choice)), names))
    gtk_drop_down_set_model (GTK_DROP_DOWN (self->choice), G_LIST_MODEL (names));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choice), chosen);
}

void
lw_lesson_bar_update (LwLessonWindow *self)
{
  gboolean plays = self->tick != 0;
  g_autofree char *pace = g_strdup_printf ("%g×", lw_lesson_window_speed (self));

  self->filling = TRUE;
  fill_lessons (self);
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->curves[i]), self->of[i]);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->clock), self->by_clock);
  self->filling = FALSE;

  fill_questions (self);
  gtk_button_set_icon_name (GTK_BUTTON (self->play), plays ? "media-playback-pause-symbolic" : "media-playback-start-symbolic");
  name (self->play, plays ? _ ("Pause (Space)") : _ ("Play (Space)"));
  gtk_label_set_label (GTK_LABEL (self->pace), pace);
}

void
lw_lesson_bar_fill (LwLessonWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  const char *quantities[LW_N_QUANTITIES + 1] = { NULL };
  const char *places[LW_LESSON_CURVES] = { _ ("First curve"), _ ("Second curve"), _ ("Third curve") };
  const char *none[] = { NULL };
  GtkWidget *space = gtk_label_new (NULL);

  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    quantities[i] = _ (lw_quantity_row ((LwQuantity) i)->label);
  self->bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_add_css_class (self->bar, "lesson-bar");

  self->choice = choice_new (self, none, _ ("Lesson"), G_CALLBACK (chosen_cb));
  button_new (self, "go-previous-symbolic", _ ("To the turning point before (Left)"), G_CALLBACK (previous_cb));
  self->play = button_new (self, "media-playback-start-symbolic", _ ("Play (Space)"), G_CALLBACK (lw_lesson_play_or_pause));
  button_new (self, "go-next-symbolic", _ ("To the next turning point (Right)"), G_CALLBACK (next_cb));
  button_new (self, "list-remove-symbolic", _ ("Slower (-)"), G_CALLBACK (slower_cb));
  self->pace = gtk_label_new (NULL);
  gtk_label_set_width_chars (GTK_LABEL (self->pace), 5);
  gtk_widget_set_direction (self->pace, GTK_TEXT_DIR_LTR);
  gtk_box_append (GTK_BOX (self->bar), self->pace);
  button_new (self, "list-add-symbolic", _ ("Faster (+)"), G_CALLBACK (faster_cb));
  gtk_widget_set_hexpand (space, TRUE);
  gtk_box_append (GTK_BOX (self->bar), space);
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    self->curves[i] = choice_new (self, quantities, places[i], G_CALLBACK (curve_cb));

  self->clock = gtk_toggle_button_new_with_label (_ ("By clock"));
  gtk_widget_set_focus_on_click (self->clock, FALSE);
  g_signal_connect_swapped (self->clock, "toggled", G_CALLBACK (clock_cb), self);
  gtk_box_append (GTK_BOX (self->bar), self->clock);
  self->ask_menu = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->ask_menu), _ ("Ask first"));
  gtk_menu_button_set_direction (GTK_MENU_BUTTON (self->ask_menu), GTK_ARROW_UP);
  name (self->ask_menu, _ ("Ask first"));
  gtk_box_append (GTK_BOX (self->bar), self->ask_menu);
  menu_new (self);

  self->ask_row = lw_lesson_ask_row_new (self);
  gtk_box_append (GTK_BOX (box), self->view);
  gtk_box_append (GTK_BOX (box), self->ask_row);
  gtk_box_append (GTK_BOX (box), self->bar);
  gtk_window_set_child (GTK_WINDOW (self), box);
}
