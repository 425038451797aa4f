/* The row: the lock is a real button; what it shows is drawn by the list. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/result-row.h"

#include <math.h>

#include "bench/aim-field.h"
#include "bench/look.h"
#include "bench/telling.h"
#include "season/text.h"

#define GAP 6
#define PAD 3

struct _LwResultRow
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *lock;
  int step;
  LwOutcomeLook look;
  char *more;
  char *why;
  gboolean showing;   /* the lock follows the session, not the pointer */
};

G_DEFINE_FINAL_TYPE (LwResultRow, lw_result_row, GTK_TYPE_WIDGET)

static void
lock_cb (LwResultRow *self)
{
  if (!self->showing)
    lw_session_lock (self->session, self->step, self->look.quantity,
                     gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->lock)));
}

static void
open_aim (LwResultRow *self)
{
  if (lw_session_batch (self->session) != NULL)
    lw_aim_field_open (GTK_WIDGET (self), self->session, self->step, self->look.quantity);
}

static void
click_cb (LwResultRow *self,
          int          n_press,
          double       x,
          double       y)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  open_aim (self);
}

static gboolean
key_cb (LwResultRow     *self,
        guint            key,
        guint            code,
        GdkModifierType  state)
{
  gboolean down = key == GDK_KEY_Down || key == GDK_KEY_KP_Down;
  GtkWidget *next = down ? gtk_widget_get_next_sibling (GTK_WIDGET (self))
                         : gtk_widget_get_prev_sibling (GTK_WIDGET (self));

  switch (key)
    {
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      open_aim (self);
      return TRUE;

    case GDK_KEY_space:
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->lock),
                                    !gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->lock)));
      return TRUE;

    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return next != NULL && gtk_widget_grab_focus (next);

    default:
      return FALSE;
    }
}

static int
lock_width (LwResultRow *self)
{
  int natural;

  gtk_widget_measure (self->lock, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);

  return natural;
}

static void
lw_result_row_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  LwResultRow *self = LW_RESULT_ROW (widget);
  LwLetter letter = lw_look_letter (widget);
  int lock;

  gtk_widget_measure (self->lock, orientation, -1, NULL, &lock, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = lock + GAP + (int) (15 * letter.base_px);
  else
    *minimum = *natural = MAX ((int) lw_outcome_height (&self->look, &letter) + 2 * PAD, lock);
}

static void
lw_result_row_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  LwResultRow *self = LW_RESULT_ROW (widget);
  int lock = lock_width (self), tall;
  GtkWidget *child;

  gtk_widget_measure (self->lock, GTK_ORIENTATION_VERTICAL, -1, NULL, &tall, NULL, NULL);
  gtk_widget_size_allocate (self->lock,
                            &(GtkAllocation) { lw_look_is_rtl (widget) ? width - lock : 0, 0, lock, MIN (tall, height) },
                            -1);
  for (child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER (child))
      gtk_popover_present (GTK_POPOVER (child));
}

void
lw_result_row_draw (LwResultRow *self,
                    cairo_t     *cr)
{
  GtkWidget *widget = GTK_WIDGET (self);
  int lock = lock_width (self) + GAP;
  LwLetter letter = lw_look_letter (widget);

  letter.rtl = lw_look_is_rtl (widget);
  cairo_save (cr);
  cairo_translate (cr, letter.rtl ? 0 : lock, PAD);
  lw_outcome_draw (cr, MAX (gtk_widget_get_width (widget) - lock, 1), &self->look, &letter, lw_look_palette (widget));
  cairo_restore (cr);
}

static void
lw_result_row_dispose (GObject *object)
{
  LwResultRow *self = LW_RESULT_ROW (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  self->lock = NULL;
  g_clear_object (&self->session);
  g_clear_pointer (&self->more, g_free);
  g_clear_pointer (&self->why, g_free);

  G_OBJECT_CLASS (lw_result_row_parent_class)->dispose (object);
}

static void
lw_result_row_class_init (LwResultRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_result_row_dispose;
  widget_class->measure = lw_result_row_measure;
  widget_class->size_allocate = lw_result_row_size_allocate;

  gtk_widget_class_set_css_name (widget_class, "resultrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
lw_result_row_init (LwResultRow *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->step = -1;
  self->look = (LwOutcomeLook) { .value = NAN, .change = NAN, .held = NAN };
  self->lock = gtk_toggle_button_new ();
  gtk_button_set_icon_name (GTK_BUTTON (self->lock), "changes-allow-symbolic");
  gtk_widget_add_css_class (self->lock, "flat");
  gtk_widget_set_tooltip_text (self->lock, _ ("Hold this outcome while steps are changed"));
  gtk_widget_set_focusable (self->lock, FALSE);
  gtk_widget_set_parent (self->lock, GTK_WIDGET (self));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);

  g_signal_connect_swapped (self->lock, "toggled", G_CALLBACK (lock_cb), self);
  g_signal_connect_swapped (click, "released", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
lw_result_row_new (LwSession *session,
                   LwQuantity quantity)
{
  LwResultRow *self = g_object_new (LW_TYPE_RESULT_ROW, NULL);
  /* Translators: an outcome that is held */
  g_autofree char *hold = g_strdup_printf (_ ("Hold %s"), _ (lw_quantity_row (quantity)->label));

  self->session = g_object_ref (session);
  self->look.quantity = quantity;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->lock), GTK_ACCESSIBLE_PROPERTY_LABEL, hold, -1);

  return GTK_WIDGET (self);
}

void
lw_result_row_show (LwResultRow         *self,
                    int                  step,
                    const LwOutcomeLook *look)
{
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  double height = lw_outcome_height (&self->look, &letter);
  gboolean held = !isnan (look->held);

  self->step = step;
  g_free (self->more);
  self->more = g_strdup (look->more);
  g_free (self->why);
  self->why = g_strdup (look->why);
  self->look = *look;
  self->look.more = self->more;
  self->look.why = self->why;
  if (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->lock)) != held)
    {
      self->showing = TRUE;
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->lock), held);
      self->showing = FALSE;
      gtk_button_set_icon_name (GTK_BUTTON (self->lock), held ? "changes-prevent-symbolic" : "changes-allow-symbolic");
    }

  if (height != lw_outcome_height (&self->look, &letter))
    gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
lw_result_row_tell (LwResultRow *self)
{
  g_autofree char *words = lw_tell_outcome (&self->look);

  /* Setting a tooltip asks the display where the pointer is, and waits for the answer. */
  if (g_strcmp0 (gtk_widget_get_tooltip_text (GTK_WIDGET (self)), self->why) != 0)
    gtk_widget_set_tooltip_text (GTK_WIDGET (self), self->why);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}
