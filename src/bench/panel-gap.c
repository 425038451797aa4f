/* The gap's pointer and keys. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/panel-gap.h"

#include "season/text.h"

#define NOTCH 10.0
#define MANY 5

struct _LwPanelGap
{
  GtkWidget parent_instance;

  GtkGesture *drag;
  double press_y;   /* in the parent, which stays while the gap moves */
  gboolean moving;  /* a press alone is no move yet: it may be half of a double click */
};

enum { GRAB, MOVE, SETTLE, EVEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LwPanelGap, lw_panel_gap, GTK_TYPE_WIDGET)

static double
y_in_parent (LwPanelGap *self,
             double      y)
{
  graphene_point_t at = GRAPHENE_POINT_INIT (0, (float) y), up = at;

  if (!gtk_widget_compute_point (GTK_WIDGET (self), gtk_widget_get_parent (GTK_WIDGET (self)), &at, &up))
    return y;

  return (double) up.y;
}

static void
drag_begin_cb (LwPanelGap     *self,
               double          x,
               double          y,
               GtkGestureDrag *gesture)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->press_y = y_in_parent (self, y);
}

static void
drag_update_cb (LwPanelGap     *self,
                double          dx,
                double          dy,
                GtkGestureDrag *gesture)
{
  double x, y;

  if (!self->moving)
    g_signal_emit (self, signals[GRAB], 0);
  self->moving = TRUE;
  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  g_signal_emit (self, signals[MOVE], 0, y_in_parent (self, y + dy) - self->press_y);
}

static void
drag_end_cb (LwPanelGap     *self,
             double          dx,
             double          dy,
             GtkGestureDrag *gesture)
{
  if (self->moving)
    g_signal_emit (self, signals[SETTLE], 0);
  self->moving = FALSE;
}

static void
click_cb (LwPanelGap *self,
          int         n_press,
          double      x,
          double      y)
{
  if (n_press == 2)
    g_signal_emit (self, signals[EVEN], 0);
}

static gboolean
key_cb (LwPanelGap     *self,
        guint           key,
        guint           code,
        GdkModifierType state)
{
  double by = state & GDK_SHIFT_MASK ? NOTCH * MANY : NOTCH;

  switch (key)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      by = -by;
      G_GNUC_FALLTHROUGH;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      g_signal_emit (self, signals[GRAB], 0);
      g_signal_emit (self, signals[MOVE], 0, by);
      g_signal_emit (self, signals[SETTLE], 0);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      g_signal_emit (self, signals[EVEN], 0);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
lw_panel_gap_measure (GtkWidget     *widget,
                      GtkOrientation orientation,
                      int            for_size,
                      int           *minimum,
                      int           *natural,
                      int           *minimum_baseline,
                      int           *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? LW_GAP_HEIGHT : 1;
}

/* A window that opens puts the keyboard on something that takes it; that should not be a gap. */
static void
lw_panel_gap_size_allocate (GtkWidget *widget,
                            int        width,
                            int        height,
                            int        baseline)
{
  gtk_widget_set_focusable (widget, TRUE);
}

static void
lw_panel_gap_class_init (LwPanelGapClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  widget_class->measure = lw_panel_gap_measure;
  widget_class->size_allocate = lw_panel_gap_size_allocate;
  signals[GRAB] = g_signal_new ("grab", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[MOVE] = g_signal_new ("move", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  signals[SETTLE] = g_signal_new ("settle", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[EVEN] = g_signal_new ("even", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "panelgap");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SEPARATOR);
}

static void
lw_panel_gap_init (LwPanelGap *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "row-resize");
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _ ("Drag to share out the height; double-click to make all panels alike"));

  self->drag = gtk_gesture_drag_new ();
  g_signal_connect_swapped (self->drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (self->drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (self->drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (self->drag));
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_gesture_group (click, self->drag);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
lw_panel_gap_new (void)
{
  return g_object_new (LW_TYPE_PANEL_GAP, NULL);
}

void
lw_panel_gap_tell (LwPanelGap *self,
                   const char *label,
                   const char *words)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}
