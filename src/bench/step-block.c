/* The block's widget: a kept picture, drawn anew only when what it shows changes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/step-block.h"

#include "bench/look.h"
#include "draw/block.h"
#include "season/text.h"

struct _LwStepBlock
{
  GtkWidget parent_instance;

  LwStep step;
  LwBlockLook look;
  char *before;
  char *led;
  char *words;
  GskRenderNode *picture;
};

G_DEFINE_FINAL_TYPE (LwStepBlock, lw_step_block, GTK_TYPE_WIDGET)

static void
drop_picture (LwStepBlock *self)
{
  g_clear_pointer (&self->picture, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
lw_step_block_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (lw_step_block_parent_class)->dispose (object);
}

static void
lw_step_block_finalize (GObject *object)
{
  LwStepBlock *self = LW_STEP_BLOCK (object);

  g_clear_pointer (&self->picture, gsk_render_node_unref);
  lw_step_clear (&self->step);
  g_free (self->before);
  g_free (self->led);
  g_free (self->words);

  G_OBJECT_CLASS (lw_step_block_parent_class)->finalize (object);
}

static void
draw_picture (LwStepBlock *self,
              int          width,
              int          height)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  self->look.step = &self->step;
  self->look.before = self->before;
  self->look.led = self->led;
  self->look.rtl = lw_look_is_rtl (GTK_WIDGET (self));
  lw_block_draw (cr, width, height, &self->look, &letter, lw_look_palette (GTK_WIDGET (self)));
  cairo_destroy (cr);
  self->picture = gtk_snapshot_free_to_node (snapshot);
}

static void
lw_step_block_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  LwStepBlock *self = LW_STEP_BLOCK (widget);

  if (self->picture == NULL)
    draw_picture (self, gtk_widget_get_width (widget), gtk_widget_get_height (widget));
  if (self->picture != NULL)
    gtk_snapshot_append_node (snapshot, self->picture);

  GTK_WIDGET_CLASS (lw_step_block_parent_class)->snapshot (widget, snapshot);
}

static void
lw_step_block_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  LwLetter letter = lw_look_letter (widget);

  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? (int) lw_block_height (&letter) : 1;
}

static void
lw_step_block_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  drop_picture (LW_STEP_BLOCK (widget));

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER (child))
      gtk_popover_present (GTK_POPOVER (child));
}

/* A block without room for words says them when it is pointed at. */
static gboolean
lw_step_block_query_tooltip (GtkWidget  *widget,
                             int         x,
                             int         y,
                             gboolean    by_key,
                             GtkTooltip *tooltip)
{
  LwStepBlock *self = LW_STEP_BLOCK (widget);

  if (self->words == NULL || !lw_block_is_slim (gtk_widget_get_width (widget)))
    return FALSE;

  gtk_tooltip_set_text (tooltip, self->words);

  return TRUE;
}

static void
lw_step_block_css_changed (GtkWidget         *widget,
                           GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_step_block_parent_class)->css_changed (widget, change);
  drop_picture (LW_STEP_BLOCK (widget));
}

static void
lw_step_block_class_init (LwStepBlockClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_step_block_dispose;
  G_OBJECT_CLASS (klass)->finalize = lw_step_block_finalize;
  widget_class->snapshot = lw_step_block_snapshot;
  widget_class->measure = lw_step_block_measure;
  widget_class->size_allocate = lw_step_block_size_allocate;
  widget_class->css_changed = lw_step_block_css_changed;
  widget_class->query_tooltip = lw_step_block_query_tooltip;

  gtk_widget_class_set_css_name (widget_class, "stepblock");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
lw_step_block_init (LwStepBlock *self)
{
  self->step = lw_step_new (LW_KIND_WITHER);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lw_step_block_new (void)
{
  return g_object_new (LW_TYPE_STEP_BLOCK, NULL);
}

void
lw_step_block_show (LwStepBlock    *self,
                    const LwSeason *season,
                    const LwBatch  *batch,
                    guint           step,
                    gboolean        chosen,
                    const char     *before,
                    const char     *led)
{
  const LwStep *now = &batch->steps[step];
  gboolean on_weather;
  double leading = lw_block_leading (season, batch, step, &on_weather);

  if (now->kind == self->step.kind && leading == self->look.leading && on_weather == self->look.on_weather
      && lw_step_get (now, LW_SET_MINUTES) == lw_step_get (&self->step, LW_SET_MINUTES)
      && chosen == self->look.chosen && g_strcmp0 (before, self->before) == 0
      && g_strcmp0 (led, self->led) == 0)
    return;

  lw_step_clear (&self->step);
  self->step = lw_step_copy (now);
  self->look.chosen = chosen;
  self->look.leading = leading;
  self->look.on_weather = on_weather;
  g_free (self->before);
  self->before = g_strdup (before);
  g_free (self->led);
  self->led = g_strdup (led);
  drop_picture (self);
}

void
lw_step_block_tell (LwStepBlock *self,
                    const char  *words)
{
  if (g_strcmp0 (words, self->words) == 0)
    return;

  g_free (self->words);
  self->words = g_strdup (words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}
