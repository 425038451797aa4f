/* The layer. Tab comes to one of its points and leaves from it; arrows go from point to point. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/weigh-layer.h"

#include <math.h>

#include "bench/look.h"
#include "bench/weigh-words.h"

#define SIZE 22 /* px to point at */

typedef struct
{
  guint step;
  guint at;
} Place;

struct _LwWeighLayer
{
  GtkWidget parent_instance;

  LwStatePanel *panel;  /* holds this */
  LwSession *session;
  GArray *places;       /* Place, one for each child */
  gboolean walls;       /* by a view that shows them */
  GtkWidget *last;      /* the point that had the keyboard; compared, never followed */
};

G_DEFINE_FINAL_TYPE (LwWeighLayer, lw_weigh_layer, GTK_TYPE_WIDGET)

static gboolean
place_of (LwWeighLayer *self,
          GtkWidget    *point,
          Place        *place)
{
  guint i = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child;
       child = gtk_widget_get_next_sibling (child), i++)
    if (child == point)
      {
        *place = g_array_index (self->places, Place, i);
        return TRUE;
      }

  return FALSE;
}

/* (nullable) the weigh-in there, if the batch in hand has it. */
static const LwWeighIn *
weigh_in_at (LwWeighLayer *self,
             Place         place)
{
  const LwBatch *batch = lw_session_batch (self->session);

  if (batch == NULL || place.step >= batch->n_steps || place.at >= batch->steps[place.step].n_weigh_ins)
    return NULL;

  return &batch->steps[place.step].weigh_ins[place.at];
}

/* What the point means in this panel, beside its name; NULL: the reading again. */
static void
say (LwWeighLayer *self,
     GtkWidget    *point)
{
  Place place;
  const LwWeighIn *weigh_in = point != NULL && place_of (self, point, &place) ? weigh_in_at (self, place) : NULL;
  g_autofree char *value = weigh_in != NULL ? lw_weigh_value (weigh_in) : NULL;
  g_autofree char *words = value != NULL && weigh_in->note != NULL ? g_strdup_printf ("%s. %s", value, weigh_in->note)
                                                                   : g_strdup (value);

  lw_state_panel_say (self->panel, words);
}

static void
enter_cb (GtkEventController *controller,
          double              x,
          double              y,
          LwWeighLayer       *self)
{
  say (self, gtk_event_controller_get_widget (controller));
}

static void
leave_cb (LwWeighLayer *self)
{
  say (self, gtk_widget_get_focus_child (GTK_WIDGET (self)));
}

static void
focus_cb (GtkEventController *controller,
          LwWeighLayer       *self)
{
  self->last = gtk_event_controller_get_widget (controller);
  say (self, self->last);
}

static void
clicked_cb (LwWeighLayer *self,
            GtkWidget    *point)
{
  Place place;

  if (place_of (self, point, &place))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.weigh-in-change", "(uu)", place.step, place.at);
}

static gboolean
key_cb (GtkEventController *controller,
        guint               key,
        guint               code,
        GdkModifierType     state,
        LwWeighLayer       *self)
{
  Place place;

  if ((key != GDK_KEY_Delete && key != GDK_KEY_KP_Delete)
      || !place_of (self, gtk_event_controller_get_widget (controller), &place))
    return FALSE;

  return gtk_widget_activate_action (GTK_WIDGET (self), "win.weigh-in-remove", "(uu)", place.step, place.at);
}

static void
add_point (LwWeighLayer *self)
{
  GtkWidget *point = gtk_button_new ();
  GtkEventController *motion = gtk_event_controller_motion_new (), *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_widget_add_css_class (point, "weigh-point");
  g_signal_connect_swapped (point, "clicked", G_CALLBACK (clicked_cb), self);
  g_signal_connect (motion, "enter", G_CALLBACK (enter_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (focus, "enter", G_CALLBACK (focus_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (point, motion);
  gtk_widget_add_controller (point, focus);
  gtk_widget_add_controller (point, keys);
  gtk_widget_set_parent (point, GTK_WIDGET (self));
}

/* As many children as the panel shows points, each with its place. */
static void
take_places (LwWeighLayer *self)
{
  LwPanelLook look = lw_state_panel_look (self->panel);
  double value;

  g_array_set_size (self->places, 0);
  for (guint step = 0; look.batch != NULL && step < MIN (look.batch->n_steps, look.scale->n); step++)
    for (guint i = 0; i < look.batch->steps[step].n_weigh_ins; i++)
      {
        const LwWeighIn *weigh_in = &look.batch->steps[step].weigh_ins[i];
        Place place = { step, i };

        if (weigh_in->minute <= lw_step_get (&look.batch->steps[step], LW_SET_MINUTES) + 1e-9
            && lw_panel_measured (&look, weigh_in, 0, &value))
          g_array_append_val (self->places, place);
      }
}

static void
track_cb (LwWeighLayer *self)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  guint have = 0;

  /* Nobody can reach a point meanwhile: they follow when it has ended. */
  if (lw_session_is_dragging (self->session))
    return;

  self->walls = lw_session_scale (self->session)->view.logs;
  take_places (self);
  for (GtkWidget *next; child != NULL; child = next, have++)
    {
      next = gtk_widget_get_next_sibling (child);
      if (have >= self->places->len)
        gtk_widget_unparent (child);
    }
  for (; have < self->places->len; have++)
    add_point (self);

  child = gtk_widget_get_first_child (GTK_WIDGET (self));
  for (guint i = 0; child != NULL; child = gtk_widget_get_next_sibling (child), i++)
    {
      Place place = g_array_index (self->places, Place, i);
      g_autofree char *words = lw_weigh_tell (lw_session_season (self->session), lw_session_batch (self->session),
                                              place.step, weigh_in_at (self, place), lw_session_track (self->session));

      gtk_widget_set_tooltip_text (child, words);
      gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
    }
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

void
lw_weigh_layer_moved (LwWeighLayer *self)
{
  if (self->walls != lw_session_scale (self->session)->view.logs)
    track_cb (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
lw_weigh_layer_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  LwWeighLayer *self = LW_WEIGH_LAYER (widget);
  LwPanelLook look = lw_state_panel_look (self->panel);
  LwLetter letter = lw_look_letter (GTK_WIDGET (self->panel));
  LwAxis axis;
  double top, bottom;
  guint i = 0;

  if (self->places->len == 0)
    return;

  axis = lw_panel_axis (&look);
  lw_panel_plot (height, &letter, &top, &bottom);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child; child = gtk_widget_get_next_sibling (child), i++)
    {
      Place place = g_array_index (self->places, Place, i);
      const LwWeighIn *weigh_in = weigh_in_at (self, place);
      GtkAllocation at = { -SIZE, -SIZE, SIZE, SIZE };
      int natural;
      double value;

      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &natural, NULL, NULL, NULL);
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, -1, &natural, NULL, NULL, NULL);
      if (weigh_in != NULL && place.step < look.scale->n && lw_panel_measured (&look, weigh_in, 0, &value))
        {
          at.x = (int) CLAMP (lw_scale_x (look.scale, place.step, weigh_in->minute) - SIZE / 2.0, 0, width - SIZE);
          at.y = (int) CLAMP (lw_axis_y (&axis, top, bottom, value) - SIZE / 2.0, 0, height - SIZE);
        }
      gtk_widget_size_allocate (child, &at, -1);
    }
}

static gboolean
lw_weigh_layer_contains (GtkWidget *widget,
                         double     x,
                         double     y)
{
  return FALSE;
}

/* By Tab in to the last one used, and out; by arrows along. */
static gboolean
lw_weigh_layer_focus (GtkWidget       *widget,
                      GtkDirectionType direction)
{
  LwWeighLayer *self = LW_WEIGH_LAYER (widget);
  GtkWidget *focus = gtk_widget_get_focus_child (widget), *first = gtk_widget_get_first_child (widget);
  gboolean tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;
  gboolean onward = (direction == GTK_DIR_RIGHT) != lw_look_is_rtl (widget);
  Place place;

  if (focus == NULL)
    focus = self->last != NULL && place_of (self, self->last, &place) ? self->last : first;
  else if (tab)
    return FALSE;
  else if (direction == GTK_DIR_LEFT || direction == GTK_DIR_RIGHT)
    focus = onward ? gtk_widget_get_next_sibling (focus) : gtk_widget_get_prev_sibling (focus);
  else
    return FALSE;

  return focus != NULL && gtk_widget_grab_focus (focus);
}

static void
lw_weigh_layer_dispose (GObject *object)
{
  LwWeighLayer *self = LW_WEIGH_LAYER (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->places, g_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_weigh_layer_parent_class)->dispose (object);
}

static void
lw_weigh_layer_class_init (LwWeighLayerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_weigh_layer_dispose;
  widget_class->size_allocate = lw_weigh_layer_size_allocate;
  widget_class->contains = lw_weigh_layer_contains;
  widget_class->focus = lw_weigh_layer_focus;

  gtk_widget_class_set_css_name (widget_class, "weighlayer");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_weigh_layer_init (LwWeighLayer *self)
{
  self->places = g_array_new (FALSE, FALSE, sizeof (Place));
}

static void
secondary_cb (LwWeighLayer *self,
              int           n_press,
              double        x,
              double        y)
{
  double minute;
  guint step;

  if (!lw_session_is_dragging (self->session)
      && lw_scale_at (lw_session_scale (self->session), x, &step, &minute))
    gtk_widget_activate_action (GTK_WIDGET (self), "win.weigh-in-at", "(ud)", step, minute);
}

GtkWidget *
lw_weigh_layer_new (LwStatePanel *panel,
                    LwSession    *session)
{
  LwWeighLayer *self = g_object_new (LW_TYPE_WEIGH_LAYER, NULL);
  GtkGesture *click = gtk_gesture_click_new ();

  self->panel = panel;
  self->session = g_object_ref (session);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (secondary_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (panel), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  if (lw_session_track (session) != NULL)
    track_cb (self);

  return GTK_WIDGET (self);
}
