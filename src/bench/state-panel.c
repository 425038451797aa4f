/* The panel's widget. The curves are a kept picture; the reading line and the reading
 * are cheap and drawn over it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/state-panel.h"

#include <math.h>

#include "bench/aim-drag.h"
#include "bench/look.h"
#include "bench/panel-over.h"
#include "bench/steady-words.h"
#include "bench/steady.h"
#include "bench/telling.h"
#include "bench/weigh-layer.h"
#include "draw/panel.h"
#include "draw/words.h"
#include "season/measured.h"
#include "season/text.h"

#define LEAST_HEIGHT 96
#define USUAL_HEIGHT 150

struct _LwStatePanel
{
  GtkWidget parent_instance;

  LwSession *session;
  LwQuantity quantity;
  GtkWidget *reading;     /* label beside the name */
  GtkWidget *weigh_ins;   /* the points to choose */

  LwCurves *curves;
  LwCurves *ghost;
  GArray *spells;         /* night and rain */
  gboolean by_clock;      /* what `spells` are for */
  GArray *turns;          /* LwPanelTurn */
  LwPanelOver *over;
  const LwTrack *ghost_of; /* what `ghost` was made from; compared, never read */
  gboolean pointed;       /* the pointer is here: the parts are shown */

  GskRenderNode *picture;
  LwAxis axis;
  gboolean axis_held;
  char *said;             /* (nullable) instead of the reading */
};

G_DEFINE_FINAL_TYPE (LwStatePanel, lw_state_panel, GTK_TYPE_WIDGET)

static void
drop_picture (LwStatePanel *self)
{
  g_clear_pointer (&self->picture, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* On a clock nights go through all steps. */
static void
take_spells (LwStatePanel *self)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);

  g_clear_pointer (&self->spells, g_array_unref);
  self->by_clock = lw_session_scale (self->session)->view.by_clock;
  if (batch != NULL)
    self->spells = self->by_clock ? lw_spells_clock (season, batch) : lw_spells_new (season, batch);
}

void
lw_state_panel_moved (LwStatePanel *self)
{
  if (self->by_clock != lw_session_scale (self->session)->view.by_clock)
    take_spells (self);
  lw_weigh_layer_moved (LW_WEIGH_LAYER (self->weigh_ins));
  drop_picture (self);
}

static void
show_reading (LwStatePanel *self)
{
  const LwTrack *track = lw_session_track (self->session);
  g_autofree char *text = NULL;
  double minute;
  guint step;

  if (self->said != NULL)
    text = g_strdup (self->said);
  else if (track != NULL && lw_session_reading (self->session, &step, &minute) && step < track->n_steps)
    {
      LwOutcome outcome = lw_track_outcome_at (track, step, -1, minute * 60);

      text = lw_words_value (self->quantity, lw_quantity_of (self->quantity, &outcome));
    }

  gtk_label_set_label (GTK_LABEL (self->reading), text != NULL ? text : "");
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
take_ghost (LwStatePanel *self)
{
  const LwTrack *ghost = lw_session_ghost (self->session);

  if (ghost == self->ghost_of)
    return;

  g_clear_pointer (&self->ghost, lw_curves_unref);
  self->ghost_of = ghost;
  if (ghost != NULL)
    self->ghost = lw_curves_new (ghost, self->quantity);
}

static void
track_cb (LwStatePanel *self)
{
  const LwTrack *track = lw_session_track (self->session);
  const LwBatch *batch = lw_session_batch (self->session);

  g_clear_pointer (&self->curves, lw_curves_unref);
  g_clear_pointer (&self->turns, g_array_unref);
  if (track != NULL)
    {
      self->curves = lw_curves_new (track, self->quantity);
      self->turns = lw_panel_turns (track, self->quantity);
    }
  take_ghost (self);
  take_spells (self);
  show_reading (self);
  drop_picture (self);

  /* At rest only: a screen reader must not be flooded by a drag. */
  if (batch != NULL && !lw_session_is_dragging (self->session))
    {
      g_autofree char *own = lw_tell_panel (batch, self->quantity, track);
      g_autofree char *curves = lw_panel_over_tell (self->over, own);
      const LwSpread *spread = lw_steady_bands (lw_steady_of (self->session));
      g_autofree char *bands = spread != NULL ? lw_steady_say_bands (spread, self->quantity) : NULL;
      g_autofree char *words = g_strconcat (curves, bands, NULL);

      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
    }
}

LwPanelLook
lw_state_panel_look (LwStatePanel *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  const LwProfile *profile = batch != NULL ? lw_season_profile (lw_session_season (self->session), batch->leaf) : NULL;
  LwPanelLook look = {
    .quantity = self->quantity,
    .scale = lw_session_scale (self->session),
    .curves = self->curves,
    .ghost = self->ghost,
    .batch = batch,
    .fresh_moisture_pct = batch != NULL ? lw_fresh_moisture_pct (lw_session_season (self->session), batch) : NAN,
    .part_names = profile != NULL ? (const char *const *) profile->part_names : NULL,
    .parts = self->pointed && !lw_session_is_dragging (self->session),
    .quick = lw_session_is_dragging (self->session),
    .spread = lw_steady_bands (lw_steady_of (self->session)),
  };

  look.ghost_minutes = lw_session_ghost_minutes (self->session, &look.ghost_n);
  if (self->spells != NULL)
    {
      look.spells = (const LwSpell *) self->spells->data;
      look.n_spells = self->spells->len;
    }
  if (self->turns != NULL)
    {
      look.turns = (const LwPanelTurn *) (gpointer) self->turns->data;
      look.n_turns = self->turns->len;
    }
  lw_panel_over_look (self->over, &look);

  return look;
}

LwAxis
lw_state_panel_axis (LwStatePanel *self)
{
  return self->axis;
}

void
lw_state_panel_hold_axis (LwStatePanel *self,
                          gboolean      hold)
{
  self->axis_held = hold;
  drop_picture (self);
}

void
lw_state_panel_say (LwStatePanel *self,
                    const char   *words)
{
  g_free (self->said);
  self->said = g_strdup (words);
  show_reading (self);
}

static void
draw_picture (LwStatePanel *self,
              int           width,
              int           height)
{
  GtkSnapshot *own = gtk_snapshot_new ();
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  LwPanelLook look = lw_state_panel_look (self);
  cairo_t *cr = gtk_snapshot_append_cairo (own, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  if (!self->axis_held)
    self->axis = lw_panel_axis (&look);
  lw_panel_draw (cr, width, height, &look, &self->axis, &letter, lw_look_palette (GTK_WIDGET (self)));
  cairo_destroy (cr);
  self->picture = gtk_snapshot_free_to_node (own);
}

static void
draw_reading_line (LwStatePanel *self,
                   GtkSnapshot  *snapshot)
{
  const LwPalette *palette = lw_look_palette (GTK_WIDGET (self));
  const LwTrack *track = lw_session_track (self->session);
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self)), minute, top, bottom, x, y;
  GdkRGBA line = lw_look_rgba (palette->choice), dot = lw_look_rgba (palette->curve[self->quantity]);
  LwOutcome outcome;
  guint step;

  if (track == NULL || !lw_session_reading (self->session, &step, &minute) || step >= track->n_steps
      || step >= lw_session_scale (self->session)->n)
    return;

  x = floor (lw_scale_x (lw_session_scale (self->session), step, minute));
  lw_panel_plot (height, &letter, &top, &bottom);
  gtk_snapshot_append_color (snapshot, &line, &GRAPHENE_RECT_INIT ((float) x, (float) top - 4, 1, (float) (height - top) + 3));

  outcome = lw_track_outcome_at (track, step, -1, minute * 60);
  y = lw_axis_y (&self->axis, top, bottom, lw_quantity_of (self->quantity, &outcome));
  gtk_snapshot_append_color (snapshot, &dot, &GRAPHENE_RECT_INIT ((float) x - 3, (float) y - 3, 7, 7));
}

static void
lw_state_panel_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  LwStatePanel *self = LW_STATE_PANEL (widget);

  if (self->picture == NULL)
    draw_picture (self, gtk_widget_get_width (widget), gtk_widget_get_height (widget));
  if (self->picture != NULL)
    gtk_snapshot_append_node (snapshot, self->picture);

  draw_reading_line (self, snapshot);
  gtk_widget_snapshot_child (widget, self->weigh_ins, snapshot);
  gtk_widget_snapshot_child (widget, self->reading, snapshot);
}

static void
lw_state_panel_measure (GtkWidget     *widget,
                        GtkOrientation orientation,
                        int            for_size,
                        int           *minimum,
                        int           *natural,
                        int           *minimum_baseline,
                        int           *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_VERTICAL ? LEAST_HEIGHT : 1;
  *natural = orientation == GTK_ORIENTATION_VERTICAL ? USUAL_HEIGHT : 1;
}

/* The reading begins where the panel's name and unit end. */
static void
lw_state_panel_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  LwStatePanel *self = LW_STATE_PANEL (widget);
  LwLetter letter = lw_look_letter (widget);
  int after = (int) lw_panel_head_width (self->quantity, &letter), room = MAX (width - after - 8, 1), tall, base;
  GtkAllocation place;

  gtk_widget_measure (self->reading, GTK_ORIENTATION_VERTICAL, room, NULL, &tall, NULL, &base);
  place = (GtkAllocation) {
    lw_look_is_rtl (widget) ? 8 : after, (int) lw_panel_head_baseline (&letter) - base, room, tall,
  };
  gtk_widget_size_allocate (self->reading, &place, -1);
  gtk_widget_size_allocate (self->weigh_ins, &(GtkAllocation) { 0, 0, width, height }, -1);
  drop_picture (self);
}

static void
lw_state_panel_css_changed (GtkWidget         *widget,
                            GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_state_panel_parent_class)->css_changed (widget, change);
  drop_picture (LW_STATE_PANEL (widget));
}

static void
motion_cb (LwStatePanel *self,
           double        x,
           double        y)
{
  guint step;
  double minute;

  if (lw_session_is_dragging (self->session))
    return;
  if (!self->pointed)
    {
      self->pointed = TRUE;
      drop_picture (self);
    }
  if (lw_scale_at (lw_session_scale (self->session), x, &step, &minute))
    lw_session_read_at (self->session, step, minute);
}

static void
leave_cb (LwStatePanel *self)
{
  self->pointed = FALSE;
  drop_picture (self);
}

static void
lw_state_panel_dispose (GObject *object)
{
  LwStatePanel *self = LW_STATE_PANEL (object);

  g_clear_pointer (&self->reading, gtk_widget_unparent);
  g_clear_pointer (&self->weigh_ins, gtk_widget_unparent);
  g_clear_pointer (&self->picture, gsk_render_node_unref);
  g_clear_pointer (&self->curves, lw_curves_unref);
  g_clear_pointer (&self->ghost, lw_curves_unref);
  g_clear_pointer (&self->spells, g_array_unref);
  g_clear_pointer (&self->turns, g_array_unref);
  g_clear_pointer (&self->said, g_free);
  g_clear_pointer (&self->over, lw_panel_over_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_state_panel_parent_class)->dispose (object);
}

static void
lw_state_panel_class_init (LwStatePanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_state_panel_dispose;
  widget_class->snapshot = lw_state_panel_snapshot;
  widget_class->measure = lw_state_panel_measure;
  widget_class->size_allocate = lw_state_panel_size_allocate;
  widget_class->css_changed = lw_state_panel_css_changed;

  gtk_widget_class_set_css_name (widget_class, "statepanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lw_state_panel_init (LwStatePanel *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->reading = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->reading), 0);
  gtk_label_set_ellipsize (GTK_LABEL (self->reading), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (self->reading, "panel-reading");
  gtk_widget_set_parent (self->reading, GTK_WIDGET (self));
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

GtkWidget *
lw_state_panel_new (LwSession *session,
                    LwQuantity quantity)
{
  LwStatePanel *self = g_object_new (LW_TYPE_STATE_PANEL, NULL);

  self->session = g_object_ref (session);
  self->quantity = quantity;
  self->over = lw_panel_over_new (session, GTK_WIDGET (self), quantity, G_CALLBACK (track_cb));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (lw_quantity_row (quantity)->label), -1);
  lw_aim_drag_add (self, session);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "reading", G_CALLBACK (show_reading), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_steady_of (session), "result", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  /* A panel may be added when all is there. */
  if (lw_session_track (session) != NULL)
    track_cb (self);
  self->weigh_ins = lw_weigh_layer_new (self, session);
  gtk_widget_set_parent (self->weigh_ins, GTK_WIDGET (self));

  return GTK_WIDGET (self);
}
