/* The stack. While a gap is dragged the heights are px; at rest they are ratios, so that
 * another window's height keeps their proportions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/panel-stack.h"

#include <math.h>

#include "bench/heights.h"
#include "bench/panel-gap.h"
#include "bench/panel-memory.h"
#include "bench/state-panel.h"
#include "season/text.h"

#define USUAL_N 3 /* panels that are always shown */

static const LwQuantity order[] = {
  LW_MOISTURE, LW_OXIDATION, LW_RUPTURE, /* always */
  LW_LEAF_TEMP, LW_ENZYME, LW_ROAST, LW_GREEN, LW_BROKEN, LW_WEIGHT,
};

#define MOST G_N_ELEMENTS (order)

struct _LwPanelStack
{
  GtkWidget parent_instance;

  LwSession *session;
  GSettings *settings;    /* (nullable) */

  guint n;
  GtkWidget *panels[MOST]; /* those shown, from the top */
  LwQuantity of[MOST];
  GtkWidget *gaps[MOST];   /* the one under each panel but the last */
  double ratio[LW_N_QUANTITIES];

  gboolean held;           /* a gap is being moved: */
  double grabbed[MOST];    /* heights when it was taken hold of */
  double heights[MOST];    /* and now; at rest as they were given out last */
};

G_DEFINE_FINAL_TYPE (LwPanelStack, lw_panel_stack, GTK_TYPE_WIDGET)

static int
least_height (LwPanelStack *self)
{
  int least = 0;

  for (guint i = 0; i < self->n; i++)
    {
      int one;

      gtk_widget_measure (self->panels[i], GTK_ORIENTATION_VERTICAL, -1, &one, NULL, NULL, NULL);
      least = MAX (least, one);
    }

  return MAX (least, 1);
}

static void
ratios_of (LwPanelStack *self,
           double       *ratios)
{
  double shown[MOST];

  for (guint i = 0; i < self->n; i++)
    shown[i] = self->ratio[self->of[i]];
  /* Anew, so that one is 1 also when the lowest was put away. */
  lw_heights_ratios (shown, self->n, ratios);
}

static void
lw_panel_stack_measure (GtkWidget     *widget,
                        GtkOrientation orientation,
                        int            for_size,
                        int           *minimum,
                        int           *natural,
                        int           *minimum_baseline,
                        int           *natural_baseline)
{
  LwPanelStack *self = LW_PANEL_STACK (widget);
  int gaps = (int) (MAX (self->n, 1) - 1) * LW_GAP_HEIGHT;
  double ratios[MOST], need = 0;

  *minimum = *natural = 1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;

  ratios_of (self, ratios);
  if (!self->held)
    need = lw_heights_need (ratios, self->n, least_height (self));
  for (guint i = 0; self->held && i < self->n; i++)
    need += self->heights[i];

  *minimum = *natural = (int) ceil (need - 0.01) + gaps;
}

static void
lw_panel_stack_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  LwPanelStack *self = LW_PANEL_STACK (widget);
  double ratios[MOST], y = 0;

  if (self->n == 0)
    return;

  ratios_of (self, ratios);
  if (!self->held)
    lw_heights_share (ratios, self->n, height - (double) (self->n - 1) * LW_GAP_HEIGHT, self->heights);

  for (guint i = 0; i < self->n; i++)
    {
      int top = (int) lround (y), bottom = (int) lround (y + self->heights[i]);

      gtk_widget_size_allocate (self->panels[i], &(GtkAllocation) { 0, top, width, MAX (bottom - top, 1) }, -1);
      if (i + 1 < self->n)
        gtk_widget_size_allocate (self->gaps[i], &(GtkAllocation) { 0, bottom, width, LW_GAP_HEIGHT }, -1);
      y += self->heights[i] + LW_GAP_HEIGHT;
    }
}

/* What the gaps say; at rest only, so that a screen reader is not flooded by a drag. */
static void
tell_gaps (LwPanelStack *self)
{
  double ratios[MOST], all;

  ratios_of (self, ratios);
  all = lw_heights_need (ratios, self->n, 1);
  for (guint i = 0; i + 1 < self->n; i++)
    {
      const char *above = _ (lw_quantity_row (self->of[i])->label);
      const char *below = _ (lw_quantity_row (self->of[i + 1])->label);
      /* Translators: two panels */
      g_autofree char *label = g_strdup_printf (_ ("Between %s and %s"), above, below);
      g_autofree char *words = NULL;

      /* Translators: a panel and its share, the panel below and its share */
      words = g_strdup_printf (_ ("%s has %.0f %% of the height, %s %.0f %%. Up and Down move the gap, Return makes all "
                                  "panels alike."),
                               above, 100 * ratios[i] / all, below, 100 * ratios[i + 1] / all);
      lw_panel_gap_tell (LW_PANEL_GAP (self->gaps[i]), label, words);
    }
}

/* Moving a gap */

static guint
place_of (LwPanelStack *self,
          GtkWidget    *gap)
{
  guint i = 0;

  while (i + 2 < self->n && self->gaps[i] != gap)
    i++;

  return i;
}

static void
grab_cb (GtkWidget    *gap,
         LwPanelStack *self)
{
  for (guint i = 0; i < self->n; i++)
    self->grabbed[i] = self->heights[i];
  self->held = TRUE;
}

static void
move_cb (GtkWidget    *gap,
         double        by,
         LwPanelStack *self)
{
  if (!self->held)
    return;

  for (guint i = 0; i < self->n; i++)
    self->heights[i] = self->grabbed[i];
  lw_heights_move (self->heights, self->n, place_of (self, gap), by, least_height (self));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
settle_cb (GtkWidget    *gap,
           LwPanelStack *self)
{
  double ratios[MOST];

  if (!self->held)
    return;

  self->held = FALSE;
  lw_heights_ratios (self->heights, self->n, ratios);
  for (guint i = 0; i < self->n; i++)
    self->ratio[self->of[i]] = ratios[i];
  lw_panel_memory_keep_heights (self->settings, self->ratio);
  tell_gaps (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
lw_panel_stack_even (LwPanelStack *self)
{
  self->held = FALSE;
  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    self->ratio[i] = 1;
  lw_panel_memory_keep_heights (self->settings, self->ratio);
  tell_gaps (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

/* Showing */

const LwQuantity *
lw_panel_stack_extra (guint *n)
{
  *n = MOST - USUAL_N;

  return order + USUAL_N;
}

gboolean
lw_panel_stack_shows (LwPanelStack *self,
                      LwQuantity    quantity)
{
  for (guint i = 0; i < self->n; i++)
    if (self->of[i] == quantity)
      return TRUE;

  return FALSE;
}

static GtkWidget *
gap_new (LwPanelStack *self)
{
  GtkWidget *gap = lw_panel_gap_new ();

  g_signal_connect (gap, "grab", G_CALLBACK (grab_cb), self);
  g_signal_connect (gap, "move", G_CALLBACK (move_cb), self);
  g_signal_connect (gap, "settle", G_CALLBACK (settle_cb), self);
  g_signal_connect_swapped (gap, "even", G_CALLBACK (lw_panel_stack_even), self);

  return gap;
}

/* One gap fewer than panels, each under its panel, also for those who go from child to child. */
static void
match_gaps (LwPanelStack *self)
{
  GtkWidget *last = NULL;

  for (guint i = 0; i < MOST; i++)
    {
      if (i + 1 >= self->n)
        g_clear_pointer (&self->gaps[i], gtk_widget_unparent);
      else if (self->gaps[i] == NULL)
        self->gaps[i] = gap_new (self);

      for (guint k = 0; k < 2 && i < self->n; k++)
        {
          GtkWidget *child = k == 0 ? self->panels[i] : self->gaps[i];

          if (child == NULL)
            continue;
          gtk_widget_insert_after (child, GTK_WIDGET (self), last);
          last = child;
        }
    }
  tell_gaps (self);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static guint
rank_of (LwQuantity quantity)
{
  guint i = 0;

  while (i < MOST && order[i] != quantity)
    i++;

  return i;
}

static void
add (LwPanelStack *self,
     LwQuantity    quantity)
{
  guint at = self->n;

  for (; at > 0 && rank_of (self->of[at - 1]) > rank_of (quantity); at--)
    {
      self->of[at] = self->of[at - 1];
      self->panels[at] = self->panels[at - 1];
    }
  self->of[at] = quantity;
  self->panels[at] = lw_state_panel_new (self->session, quantity);
  self->n++;
}

static void
put_away (LwPanelStack *self,
          LwQuantity    quantity)
{
  guint at = 0;

  while (self->of[at] != quantity)
    at++;
  gtk_widget_unparent (self->panels[at]);
  for (self->n--; at < self->n; at++)
    {
      self->of[at] = self->of[at + 1];
      self->panels[at] = self->panels[at + 1];
    }
}

void
lw_panel_stack_show (LwPanelStack *self,
                     LwQuantity    quantity,
                     gboolean      shown)
{
  g_return_if_fail (rank_of (quantity) >= USUAL_N && rank_of (quantity) < MOST);

  if (lw_panel_stack_shows (self, quantity) == shown)
    return;

  self->held = FALSE;
  if (shown)
    add (self, quantity);
  else
    put_away (self, quantity);
  match_gaps (self);
  lw_panel_memory_keep_shown (self->settings, self->of + USUAL_N, self->n - USUAL_N);
}

void
lw_panel_stack_moved (LwPanelStack *self)
{
  for (guint i = 0; i < self->n; i++)
    lw_state_panel_moved (LW_STATE_PANEL (self->panels[i]));
}

static void
lw_panel_stack_dispose (GObject *object)
{
  LwPanelStack *self = LW_PANEL_STACK (object);

  for (guint i = 0; i < self->n; i++)
    gtk_widget_unparent (self->panels[i]);
  self->n = 0;
  for (guint i = 0; i < MOST; i++)
    g_clear_pointer (&self->gaps[i], gtk_widget_unparent);
  g_clear_object (&self->session);
  g_clear_object (&self->settings);

  G_OBJECT_CLASS (lw_panel_stack_parent_class)->dispose (object);
}

static void
lw_panel_stack_class_init (LwPanelStackClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_panel_stack_dispose;
  widget_class->measure = lw_panel_stack_measure;
  widget_class->size_allocate = lw_panel_stack_size_allocate;

  gtk_widget_class_set_css_name (widget_class, "panelstack");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_panel_stack_init (LwPanelStack *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("State of the leaf"), -1);
}

GtkWidget *
lw_panel_stack_new (LwSession *session,
                    GSettings *settings)
{
  LwPanelStack *self = g_object_new (LW_TYPE_PANEL_STACK, NULL);

  self->session = g_object_ref (session);
  self->settings = settings != NULL ? g_object_ref (settings) : NULL;
  lw_panel_memory_heights (self->settings, self->ratio);
  for (guint i = 0; i < MOST; i++)
    if (i < USUAL_N || lw_panel_memory_shows (settings, order[i]))
      add (self, order[i]);
  match_gaps (self);

  return GTK_WIDGET (self);
}
