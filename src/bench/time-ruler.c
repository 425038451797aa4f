/* The ruler's widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/time-ruler.h"

#include "bench/look.h"
#include "draw/panel.h"
#include "season/text.h"
#include "season/wording.h"

#define PAD 3.0

struct _LwTimeRuler
{
  GtkWidget parent_instance;

  LwSession *session;
  GskRenderNode *picture;
  gboolean told_clock;    /* which way of time a screen reader was told of */
};

G_DEFINE_FINAL_TYPE (LwTimeRuler, lw_time_ruler, GTK_TYPE_WIDGET)

static gboolean
is_by_clock (LwTimeRuler *self)
{
  return lw_session_batch (self->session) != NULL && lw_session_scale (self->session)->view.by_clock;
}

static void
tell (LwTimeRuler *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  g_autofree char *begin = NULL, *end = NULL, *words = NULL;
  double minutes = 0;

  self->told_clock = is_by_clock (self);
  for (guint i = 0; batch != NULL && i < batch->n_steps; i++)
    minutes += lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  if (self->told_clock)
    {
      begin = lw_say_moment (batch->when_s);
      end = lw_say_moment (batch->when_s + (gint64) (60 * minutes));
      /* Translators: when a batch begins and ends */
      words = g_strdup_printf (_ ("From %s to %s."), begin, end);
    }
  else
    {
      words = lw_say_minutes (minutes);
    }

  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->told_clock ? _ ("Time by the clock") : _ ("Time in each step"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

void
lw_time_ruler_moved (LwTimeRuler *self)
{
  if (self->told_clock != is_by_clock (self))
    tell (self);
  g_clear_pointer (&self->picture, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Words at rest only: a screen reader must not be flooded by a drag. */
static void
track_cb (LwTimeRuler *self)
{
  if (!lw_session_is_dragging (self->session))
    tell (self);
  lw_time_ruler_moved (self);
}

static void
lw_time_ruler_dispose (GObject *object)
{
  LwTimeRuler *self = LW_TIME_RULER (object);

  g_clear_pointer (&self->picture, gsk_render_node_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_time_ruler_parent_class)->dispose (object);
}

/* (transfer full) the reading line's time, in its step or on the clock. */
static char *
reading_words (LwTimeRuler *self,
               guint        step,
               double       minute)
{
  const LwScale *scale = lw_session_scale (self->session);

  if (!is_by_clock (self))
    return lw_say_minutes (minute);

  for (guint i = 0; i < step; i++)
    minute += scale->minutes[i];

  return lw_say_clock (lw_session_batch (self->session)->when_s + (gint64) (60 * minute));
}

static cairo_t *
begin (GtkSnapshot *snapshot,
       double       width,
       double       height)
{
  return gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
}

static void
draw_reading (LwTimeRuler *self,
              GtkSnapshot *snapshot,
              double       width,
              double       height)
{
  const LwPalette *palette = lw_look_palette (GTK_WIDGET (self));
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  g_autofree char *text = NULL;
  double text_width, text_height, x, minute;
  cairo_t *cr;
  guint step;

  if (!lw_session_reading (self->session, &step, &minute) || step >= lw_session_scale (self->session)->n)
    return;

  cr = begin (snapshot, width, height);
  text = reading_words (self, step, minute);
  lw_letter_size (cr, &letter, 0.9, TRUE, text, &text_width, &text_height);
  x = CLAMP (lw_scale_x (lw_session_scale (self->session), step, minute) - text_width / 2, 6,
             MAX (width - text_width - 6, 6));
  lw_ink_use (cr, palette->choice);
  cairo_rectangle (cr, x - 6, 0, text_width + 12, height);
  cairo_fill (cr);
  lw_ink_use (cr, palette->card);
  lw_letter_draw (cr, &letter, x, (height - text_height) / 2, LW_TEXT_START, 0.9, TRUE, 0, text);
  cairo_destroy (cr);
}

static void
lw_time_ruler_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  LwTimeRuler *self = LW_TIME_RULER (widget);
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->picture == NULL)
    {
      GtkSnapshot *own = gtk_snapshot_new ();
      LwLetter letter = lw_look_letter (widget);
      cairo_t *cr = begin (own, width, height);

      if (is_by_clock (self))
        lw_ruler_draw_clock (cr, width, lw_session_scale (self->session), lw_session_batch (self->session)->when_s,
                             &letter, lw_look_palette (widget));
      else
        lw_ruler_draw (cr, width, height, lw_session_scale (self->session), &letter, lw_look_palette (widget));
      cairo_destroy (cr);
      self->picture = gtk_snapshot_free_to_node (own);
    }
  if (self->picture != NULL)
    gtk_snapshot_append_node (snapshot, self->picture);

  draw_reading (self, snapshot, width, height);
}

static void
lw_time_ruler_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  LwLetter letter = lw_look_letter (widget);
  double lead = is_by_clock (LW_TIME_RULER (widget)) ? LW_RULER_LEAD : 0;

  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? (int) (lw_letter_line (&letter) + 2 * PAD + lead) : 1;
}

static void
lw_time_ruler_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  lw_time_ruler_moved (LW_TIME_RULER (widget));
}

static void
lw_time_ruler_css_changed (GtkWidget         *widget,
                           GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_time_ruler_parent_class)->css_changed (widget, change);
  lw_time_ruler_moved (LW_TIME_RULER (widget));
}

static void
lw_time_ruler_class_init (LwTimeRulerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_time_ruler_dispose;
  widget_class->snapshot = lw_time_ruler_snapshot;
  widget_class->measure = lw_time_ruler_measure;
  widget_class->size_allocate = lw_time_ruler_size_allocate;
  widget_class->css_changed = lw_time_ruler_css_changed;

  gtk_widget_class_set_css_name (widget_class, "timeruler");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lw_time_ruler_init (LwTimeRuler *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Time in each step"), -1);
}

GtkWidget *
lw_time_ruler_new (LwSession *session)
{
  LwTimeRuler *self = g_object_new (LW_TYPE_TIME_RULER, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "reading", G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
