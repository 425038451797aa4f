/* The picture: the names of the steps, their times, and the panel. Weights become moistures by the leaf as it was fitted,
 * so that the points stand where they belong beside the curve after. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-panel.h"

#include <math.h>

#include "bench/look.h"
#include "draw/panel.h"
#include "season/surround.h"
#include "season/text.h"
#include "study/fit-tells.h"
#include "study/fit-words.h"

#define LEAST_HEIGHT 190
#define USUAL_HEIGHT 240
#define RULER 22.0
#define INSET 7.0 /* of the columns, so that points at their ends are whole */
#define SAMPLES 160

struct _LwFitPanel
{
  GtkWidget parent_instance;

  const LwFit *fit;       /* (nullable) */
  guint at;               /* of its batches */
  LwQuantity of;

  LwBatch *batch;         /* (nullable) as fitted, without aims */
  double fresh_moisture_pct;
  double minutes[LW_SCALE_MAX_STEPS];
  guint n;
  LwTrack *tracks[2];     /* before, after */
  LwCurves *curves[2];
  GskRenderNode *picture;
};

G_DEFINE_FINAL_TYPE (LwFitPanel, lw_fit_panel, GTK_TYPE_WIDGET)

static void
drop_picture (LwFitPanel *self)
{
  g_clear_pointer (&self->picture, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drop_batch (LwFitPanel *self)
{
  g_clear_pointer (&self->batch, lw_batch_unref);
  for (guint i = 0; i < 2; i++)
    {
      g_clear_pointer (&self->tracks[i], lw_track_unref);
      g_clear_pointer (&self->curves[i], lw_curves_unref);
    }
  self->n = 0;
}

/* (transfer full) (nullable) */
static LwTrack *
march (LwSeason *season,
       guint     batch)
{
  g_autoptr (LwMarch) marcher = lw_march_new ();
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);

  return marcher != NULL && plan != NULL ? lw_plan_march (plan, marcher, (LwSampling) { .samples = SAMPLES }) : NULL;
}

static void
take_batch (LwFitPanel *self)
{
  guint batch = self->fit->batches[self->at].batch;
  g_autoptr (LwSeason) after = lw_fit_season (self->fit, batch);

  drop_batch (self);
  self->batch = lw_batch_copy (after->batches[batch]);
  lw_aims_clear (&self->batch->aims, &self->batch->n_aims);
  self->n = MIN (self->batch->n_steps, LW_SCALE_MAX_STEPS);
  for (guint i = 0; i < self->batch->n_steps; i++)
    lw_aims_clear (&self->batch->steps[i].aims, &self->batch->steps[i].n_aims);
  for (guint i = 0; i < self->n; i++)
    self->minutes[i] = lw_step_get (&self->batch->steps[i], LW_SET_MINUTES);
  self->fresh_moisture_pct = !isnan (self->batch->fresh_moisture_pct)
                               ? self->batch->fresh_moisture_pct
                               : lw_season_profile (after, self->batch->leaf)->fresh_moisture_pct;
  self->tracks[0] = march (self->fit->season, batch);
  self->tracks[1] = march (after, batch);
}

/* The nearest thing to what was shown of the last batch. */
static void
take_quantity (LwFitPanel *self)
{
  guint choice = lw_fit_panel_choice (self);

  for (LwQuantity i = 0; i < LW_N_QUANTITIES && !(choice & 1u << self->of); i++)
    if (choice & 1u << i)
      self->of = i;
  for (guint i = 0; i < 2; i++)
    {
      g_clear_pointer (&self->curves[i], lw_curves_unref);
      if (self->tracks[i] != NULL)
        self->curves[i] = lw_curves_new (self->tracks[i], self->of);
    }
}

static void
tell (LwFitPanel *self)
{
  const LwBatch *batch = self->fit != NULL ? self->fit->season->batches[self->fit->batches[self->at].batch] : NULL;
  g_autofree char *points = batch != NULL ? lw_fit_points_say (self->fit, &self->fit->batches[self->at]) : g_strdup ("");
  /* Translators: a batch, then a quantity of it */
  g_autofree char *name = batch != NULL
                            ? g_strdup_printf (_ ("Before and after: %s, %s"), batch->name, _ (lw_quantity_row (self->of)->label))
                            : g_strdup (_ ("Before and after"));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, points, -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  drop_picture (self);
  g_signal_emit_by_name (self, "shown");
}

void
lw_fit_panel_show (LwFitPanel  *self,
                   const LwFit *fit,
                   int          batch)
{
  self->fit = fit;
  self->at = 0;
  drop_batch (self);
  for (guint k = 0; fit != NULL && k < fit->n_batches; k++)
    if ((int) fit->batches[k].batch == batch)
      self->at = k;
  if (fit != NULL)
    {
      take_batch (self);
      take_quantity (self);
    }
  tell (self);
}

guint
lw_fit_panel_at (LwFitPanel *self)
{
  return self->at;
}

void
lw_fit_panel_step (LwFitPanel *self,
                   int         by)
{
  int at = (int) self->at + by;

  if (self->fit == NULL || at < 0 || at >= (int) self->fit->n_batches)
    return;

  self->at = (guint) at;
  take_batch (self);
  take_quantity (self);
  tell (self);
}

LwQuantity
lw_fit_panel_quantity (LwFitPanel *self)
{
  return self->of;
}

guint
lw_fit_panel_choice (LwFitPanel *self)
{
  return self->batch != NULL ? lw_fit_quantities (self->batch) : 0;
}

void
lw_fit_panel_choose (LwFitPanel *self,
                     LwQuantity  quantity)
{
  if (!(lw_fit_panel_choice (self) & 1u << quantity) || quantity == self->of)
    return;

  self->of = quantity;
  take_quantity (self);
  tell (self);
}

static void
other_quantity (LwFitPanel *self,
                int         by)
{
  guint choice = lw_fit_panel_choice (self);

  for (int i = (int) self->of + by; i >= 0 && i < LW_N_QUANTITIES; i += by)
    if (choice & 1u << i)
      {
        lw_fit_panel_choose (self, (LwQuantity) i);
        return;
      }
}

static gboolean
key_cb (LwFitPanel     *self,
        guint           key,
        guint           code,
        GdkModifierType state)
{
  int way = lw_look_is_rtl (GTK_WIDGET (self)) ? -1 : 1;

  if (self->fit == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      lw_fit_panel_step (self, -way);
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      lw_fit_panel_step (self, way);
      return TRUE;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      other_quantity (self, -1);
      return TRUE;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      other_quantity (self, 1);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
draw_steps (LwFitPanel      *self,
            cairo_t         *cr,
            const LwScale   *scale,
            const LwLetter  *letter,
            const LwPalette *palette)
{
  for (guint i = 0; i < self->n; i++)
    {
      double left, right;

      lw_scale_column (scale, i, &left, &right);
      lw_ink_use (cr, palette->ink);
      lw_letter_draw (cr, letter, scale->rtl ? right - 4 : left + 4, 2, LW_TEXT_START, 0.9, TRUE, right - left - 8,
                      _ (lw_kind_row (self->batch->steps[i].kind)->label));
    }
}

static void
draw (LwFitPanel *self,
      cairo_t    *cr,
      double      width,
      double      height)
{
  const LwPalette *palette = lw_look_palette (GTK_WIDGET (self));
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  const LwPanelOverlay overlays[] = {
    { .curves = self->curves[0], .minutes = self->minutes, .n = self->n, .name = _ ("before"),
      .ink = palette->faint, .dash = 1 },
    { .curves = self->curves[1], .minutes = self->minutes, .n = self->n, .name = _ ("after"),
      .ink = palette->curve[self->of] },
  };
  double line = lw_letter_line (&letter) + 4, ruler = ceil (RULER * lw_letter_scale (&letter));
  LwPanelLook look;
  LwAxis axis;
  LwScale scale;

  lw_scale_fill (&scale, self->minutes, self->n, INSET, width - 2 * INSET, lw_look_is_rtl (GTK_WIDGET (self)));
  look = (LwPanelLook) {
    .quantity = self->of, .scale = &scale, .curves = self->curves[1], .batch = self->batch,
    .fresh_moisture_pct = self->fresh_moisture_pct, .overlays = overlays, .n_overlays = G_N_ELEMENTS (overlays),
  };
  letter.rtl = scale.rtl;
  axis = lw_panel_axis (&look);

  draw_steps (self, cr, &scale, &letter, palette);
  cairo_save (cr);
  cairo_translate (cr, 0, line);
  lw_ruler_draw (cr, width, ruler, &scale, &letter, palette);
  cairo_translate (cr, 0, ruler);
  lw_panel_draw (cr, width, height - line - ruler, &look, &axis, &letter, palette);
  cairo_restore (cr);
}

static void
lw_fit_panel_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  LwFitPanel *self = LW_FIT_PANEL (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->curves[0] == NULL || self->curves[1] == NULL || self->n == 0)
    return;
  if (self->picture == NULL)
    {
      GtkSnapshot *own = gtk_snapshot_new ();
      cairo_t *cr = gtk_snapshot_append_cairo (own, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

      draw (self, cr, width, height);
      cairo_destroy (cr);
      self->picture = gtk_snapshot_free_to_node (own);
    }
  if (self->picture != NULL)
    gtk_snapshot_append_node (snapshot, self->picture);
}

static void
lw_fit_panel_measure (GtkWidget     *widget,
                      GtkOrientation orientation,
                      int            for_size,
                      int           *minimum,
                      int           *natural,
                      int           *minimum_baseline,
                      int           *natural_baseline)
{
  LwFitPanel *self = LW_FIT_PANEL (widget);
  LwLetter letter = lw_look_letter (widget);
  int least = self->n > 0 ? (int) ceil (lw_scale_least_width (self->minutes, self->n) + 2 * INSET) : 1;

  *minimum = orientation == GTK_ORIENTATION_VERTICAL ? (int) ceil (LEAST_HEIGHT * lw_letter_scale (&letter)) : least;
  *natural = MAX (*minimum, orientation == GTK_ORIENTATION_VERTICAL ? USUAL_HEIGHT : least);
}

static void
lw_fit_panel_size_allocate (GtkWidget *widget,
                            int        width,
                            int        height,
                            int        baseline)
{
  drop_picture (LW_FIT_PANEL (widget));
}

static void
lw_fit_panel_css_changed (GtkWidget         *widget,
                          GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_fit_panel_parent_class)->css_changed (widget, change);
  drop_picture (LW_FIT_PANEL (widget));
}

static void
lw_fit_panel_dispose (GObject *object)
{
  LwFitPanel *self = LW_FIT_PANEL (object);

  self->fit = NULL;
  drop_batch (self);
  g_clear_pointer (&self->picture, gsk_render_node_unref);

  G_OBJECT_CLASS (lw_fit_panel_parent_class)->dispose (object);
}

static void
lw_fit_panel_class_init (LwFitPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_fit_panel_dispose;
  widget_class->snapshot = lw_fit_panel_snapshot;
  widget_class->measure = lw_fit_panel_measure;
  widget_class->size_allocate = lw_fit_panel_size_allocate;
  widget_class->css_changed = lw_fit_panel_css_changed;

  g_signal_new ("shown", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "fitpanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lw_fit_panel_init (LwFitPanel *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (gtk_widget_grab_focus), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
lw_fit_panel_new (void)
{
  return g_object_new (LW_TYPE_FIT_PANEL, NULL);
}
