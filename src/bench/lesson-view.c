/* Drawing the lesson, and pointing at it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lesson-view.h"

#include "bench/look.h"

#define LEAST_WIDTH 480
#define LEAST_HEIGHT 320

struct _LwLessonView
{
  GtkWidget parent_instance;

  gboolean shows;
  LwLessonLook look;
  char *words;
};

G_DEFINE_FINAL_TYPE (LwLessonView, lw_lesson_view, GTK_TYPE_WIDGET)

enum { POINTED, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
lw_lesson_view_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  LwLessonView *self = LW_LESSON_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const LwPalette *palette = lw_look_palette (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  if (self->shows)
    {
      self->look.rtl = lw_look_is_rtl (widget);
      lw_lesson_draw (cr, width, height, &self->look, palette);
    }
  else if (self->words != NULL)
    {
      LwLetter letter = { .base_px = lw_lesson_letter (height, 1), .rtl = lw_look_is_rtl (widget) };

      lw_ink_use (cr, palette->ink);
      lw_letter_draw (cr, &letter, width / 2.0, height / 2.0, LW_TEXT_MIDDLE, 1.4, FALSE, width, self->words);
    }
  cairo_destroy (cr);
}

static void
lw_lesson_view_measure (GtkWidget     *widget,
                        GtkOrientation orientation,
                        int            for_size,
                        int           *minimum,
                        int           *natural,
                        int           *minimum_baseline,
                        int           *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
}

static void
pressed_cb (GtkGestureClick *click,
            int              n,
            double           x,
            double           y,
            LwLessonView    *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  double value;

  /* While a name may be typed, a click that misses must not send the next letters, and a Space, to the picture. */
  if (!self->shows || self->look.ask < 0 || self->look.answered)
    gtk_widget_grab_focus (widget);
  if (self->shows && !self->look.answered
      && lw_lesson_value_at (&self->look, gtk_widget_get_width (widget), gtk_widget_get_height (widget), y, &value))
    g_signal_emit (self, signals[POINTED], 0, value);
}

static void
lw_lesson_view_finalize (GObject *object)
{
  g_free (LW_LESSON_VIEW (object)->words);

  G_OBJECT_CLASS (lw_lesson_view_parent_class)->finalize (object);
}

static void
lw_lesson_view_class_init (LwLessonViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lw_lesson_view_finalize;
  widget_class->snapshot = lw_lesson_view_snapshot;
  widget_class->measure = lw_lesson_view_measure;
  signals[POINTED] = g_signal_new ("pointed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_DOUBLE);

  gtk_widget_class_set_css_name (widget_class, "lessonview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lw_lesson_view_init (LwLessonView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lw_lesson_view_new (void)
{
  return g_object_new (LW_TYPE_LESSON_VIEW, NULL);
}

void
lw_lesson_view_show (LwLessonView       *self,
                     const LwLessonLook *look,
                     const char         *words)
{
  self->shows = look != NULL;
  if (look != NULL)
    self->look = *look;
  g_free (self->words);
  self->words = g_strdup (words);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
lw_lesson_view_tell (LwLessonView *self,
                     const char   *label,
                     const char   *description)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
}
