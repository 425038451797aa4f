/* The lane: its children and where they stand. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lane-private.h"

#include <math.h>

#include "bench/look.h"
#include "bench/settings.h"
#include "bench/step-block.h"
#include "bench/telling.h"
#include "draw/block.h"
#include "season/document.h"
#include "season/text.h"

#define ADD_GAP 2

G_DEFINE_FINAL_TYPE (LwLane, lw_lane, GTK_TYPE_WIDGET)

double
lw_lane_block_height (LwLane *self)
{
  return gtk_widget_get_height (GTK_WIDGET (self)) - self->add_height;
}

/* Adding */

static void
add_step (GtkWidget  *widget,
          const char *name,
          GVariant   *target)
{
  LwLane *self = LW_LANE (widget);
  int batch = lw_session_batch_index (self->session);
  g_autofree char *label = NULL;
  guint at, kind;

  g_variant_get (target, "(uu)", &at, &kind);
  if (batch < 0 || kind >= LW_N_KINDS || at > lw_session_batch (self->session)->n_steps
      || lw_session_batch (self->session)->n_steps >= LW_MAX_STEPS)
    return;

  /* Translators: a kind of step */
  label = g_strdup_printf (_ ("Add %s"), _ (lw_kind_row (kind)->label));
  lw_session_edit (self->session, lw_edit_add_step (lw_session_base (self->session), (guint) batch, at, kind),
                   label, NULL);
  lw_session_choose_step (self->session, (int) at);
  lw_lane_focus (self, at);
}

static void
fill_add_cb (GtkMenuButton *button,
             gpointer       data)
{
  g_autoptr (GMenu) menu = g_menu_new ();

  if (gtk_menu_button_get_menu_model (button) != NULL)
    return;

  for (guint kind = 0; kind < LW_N_KINDS; kind++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (_ (lw_kind_row (kind)->label), NULL);

      g_menu_item_set_action_and_target (item, "lane.add-step", "(uu)", GPOINTER_TO_UINT (data), kind);
      g_menu_append_item (menu, item);
    }
  gtk_menu_button_set_menu_model (button, G_MENU_MODEL (menu));
}

static GtkWidget *
add_button_new (guint at)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autofree char *label = g_strdup_printf (_ ("Add a step at place %u"), at + 1);

  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "list-add-symbolic");
  gtk_menu_button_set_has_frame (GTK_MENU_BUTTON (button), FALSE);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), fill_add_cb, GUINT_TO_POINTER (at), NULL);
  gtk_widget_add_css_class (button, "add");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);

  return button;
}

/* Showing */

static void
offer_add (GtkWidget *button,
           gboolean   room)
{
  const char *words = room ? _ ("Add a step here") : _ ("A batch has no more steps than these");

  /* Setting a tooltip asks the display where the pointer is, and waits for the answer. */
  if (g_strcmp0 (gtk_widget_get_tooltip_text (button), words) == 0)
    return;

  gtk_widget_set_sensitive (button, room);
  gtk_widget_set_tooltip_text (button, words);
}

static void
match_children (LwLane *self,
                guint   n)
{
  while (self->blocks->len > n)
    g_ptr_array_remove_index (self->blocks, self->blocks->len - 1);
  while (self->adds->len > n + 1)
    g_ptr_array_remove_index (self->adds, self->adds->len - 1);

  /* Buttons and blocks by turns, so that Tab goes along the batch. */
  while (self->adds->len < n + 1 || self->blocks->len < n)
    {
      GtkWidget *child;

      if (self->adds->len <= self->blocks->len)
        {
          child = add_button_new (self->adds->len);
          g_ptr_array_add (self->adds, child);
        }
      else
        {
          child = lw_step_block_new ();
          g_ptr_array_add (self->blocks, child);
        }
      gtk_widget_set_parent (child, GTK_WIDGET (self));
    }

  for (guint i = 0; i < self->adds->len; i++)
    offer_add (g_ptr_array_index (self->adds, i), n < LW_MAX_STEPS);
}

/* What the search for what holds moved, until the next edit; `led`: of the leading setting. */
static char *
moved (LwLane        *self,
       const LwBatch *batch,
       guint          step,
       char         **led)
{
  const LwSeason *before = lw_session_before (self->session);
  guint at = (guint) lw_session_batch_index (self->session);
  const LwBatch *was = before != NULL && at < before->n_batches ? before->batches[at] : NULL;
  const LwStep *now = &batch->steps[step];
  const LwKindRow *kind = lw_kind_row (now->kind);
  char *words = NULL;

  if (was == NULL || was->n_steps != batch->n_steps || was->steps[step].kind != now->kind
      || lw_session_said (self->session) == NULL)
    return NULL;
  for (guint i = 0; i < kind->n_settings && words == NULL; i++)
    if (kind->settings[i].setting != kind->leading)
      words = lw_tell_change (&was->steps[step], now, kind->settings[i].setting);
  *led = lw_tell_change (&was->steps[step], now, kind->leading);

  return words;
}

static char *
change_of (LwLane        *self,
           const LwBatch *batch,
           guint          step,
           char         **led)
{
  const LwSeason *base = lw_session_base (self->session);
  int setting = self->dragging ? lw_grip_setting (&self->grip, batch) : -1;
  const LwStep *was;

  if (setting < 0 || step != self->grip.step)
    return moved (self, batch, step, led);

  was = &base->batches[lw_session_batch_index (self->session)]->steps[step];
  if (setting != (int) lw_kind_row (was->kind)->leading)
    *led = lw_tell_change (was, &batch->steps[step], lw_kind_row (was->kind)->leading);

  return lw_tell_change (was, &batch->steps[step], (LwSetting) setting);
}

static void
show_blocks (LwLane *self)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  guint n = batch != NULL ? MIN (batch->n_steps, LW_SCALE_MAX_STEPS) : 0;

  match_children (self, n);
  gtk_widget_set_visible (g_ptr_array_index (self->adds, 0), batch != NULL);
  for (guint i = 0; i < n; i++)
    {
      LwStepBlock *block = g_ptr_array_index (self->blocks, i);
      g_autofree char *led = NULL, *before = change_of (self, batch, i, &led);
      g_autofree char *words = NULL;

      lw_step_block_show (block, season, batch, i, (int) i == lw_session_step (self->session), before, led);
      /* Said at rest only: a screen reader must not be flooded by a drag. */
      if (!self->dragging)
        {
          words = lw_tell_step (season, batch, i, lw_session_track (self->session));
          lw_step_block_tell (block, words);
        }
    }
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
allocate_child (GtkWidget *child,
                double     x,
                double     y,
                double     width,
                double     height)
{
  GtkAllocation place = { (int) round (x), (int) round (y), MAX ((int) round (width), 1), (int) round (height) };

  gtk_widget_size_allocate (child, &place, -1);
}

static void
lw_lane_size_allocate (GtkWidget *widget,
                       int        width,
                       int        height,
                       int        baseline)
{
  LwLane *self = LW_LANE (widget);
  const LwScale *scale = lw_session_scale (self->session);
  double blocks = lw_lane_block_height (self);

  for (guint i = 0; i < self->blocks->len && i < scale->n; i++)
    {
      double left, right;

      lw_scale_block (scale, i, &left, &right);
      allocate_child (g_ptr_array_index (self->blocks, i), left + LW_BLOCK_INSET, self->add_height,
                      right - left - 2 * LW_BLOCK_INSET, blocks);
    }

  for (guint i = 0; i < self->adds->len; i++)
    {
      GtkWidget *button = g_ptr_array_index (self->adds, i);
      double x = lw_scale_block_begin (scale, MIN (i, scale->n));
      int natural;

      gtk_widget_measure (button, GTK_ORIENTATION_HORIZONTAL, -1, NULL, &natural, NULL, NULL);
      allocate_child (button, CLAMP (x - natural / 2.0, 0, MAX (width - natural, 0)), 0, natural,
                      self->add_height - ADD_GAP);
    }
}

static void
lw_lane_measure (GtkWidget     *widget,
                 GtkOrientation orientation,
                 int            for_size,
                 int           *minimum,
                 int           *natural,
                 int           *minimum_baseline,
                 int           *natural_baseline)
{
  LwLane *self = LW_LANE (widget);
  LwLetter letter = lw_look_letter (widget);

  *minimum = *natural = 1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;

  self->add_height = 20;
  for (guint i = 0; i < MIN (self->adds->len, 1); i++)
    gtk_widget_measure (g_ptr_array_index (self->adds, i), GTK_ORIENTATION_VERTICAL, -1, NULL, &self->add_height,
                        NULL, NULL);
  self->add_height += ADD_GAP;
  *minimum = *natural = self->add_height + (int) lw_block_height (&letter);
}

static void
lw_lane_snapshot (GtkWidget   *widget,
                  GtkSnapshot *snapshot)
{
  LwLane *self = LW_LANE (widget);

  GTK_WIDGET_CLASS (lw_lane_parent_class)->snapshot (widget, snapshot);
  lw_lane_snapshot_tag (self, snapshot);
}

/* The widget */

void
lw_lane_focus (LwLane *self,
               guint   step)
{
  if (step < self->blocks->len)
    gtk_widget_grab_focus (g_ptr_array_index (self->blocks, step));
}

void
lw_lane_settings (LwLane *self,
                  guint   step)
{
  if (step < self->blocks->len)
    lw_settings_open (g_ptr_array_index (self->blocks, step), self->session, step);
}

void
lw_lane_offer_step (LwLane *self,
                    guint   at)
{
  if (at < self->adds->len)
    gtk_menu_button_popup (g_ptr_array_index (self->adds, at));
}

static void
lw_lane_dispose (GObject *object)
{
  LwLane *self = LW_LANE (object);

  if (self->blocks != NULL)
    match_children (self, 0);
  if (self->adds != NULL)
    g_ptr_array_set_size (self->adds, 0);
  g_clear_pointer (&self->blocks, g_ptr_array_unref);
  g_clear_pointer (&self->adds, g_ptr_array_unref);
  g_clear_pointer (&self->tag, g_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_lane_parent_class)->dispose (object);
}

static void
lw_lane_class_init (LwLaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_lane_dispose;
  widget_class->measure = lw_lane_measure;
  widget_class->size_allocate = lw_lane_size_allocate;
  widget_class->snapshot = lw_lane_snapshot;

  gtk_widget_class_install_action (widget_class, "lane.add-step", "(uu)", add_step);
  gtk_widget_class_set_css_name (widget_class, "lane");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
}

static void
lw_lane_init (LwLane *self)
{
  self->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) gtk_widget_unparent);
  self->adds = g_ptr_array_new_with_free_func ((GDestroyNotify) gtk_widget_unparent);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Steps of the batch"), -1);
  lw_lane_add_pointer (self);
}

GtkWidget *
lw_lane_new (LwSession *session)
{
  LwLane *self = g_object_new (LW_TYPE_LANE, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "track", G_CALLBACK (show_blocks), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "step", G_CALLBACK (show_blocks), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "said", G_CALLBACK (show_blocks), self, G_CONNECT_SWAPPED);
  lw_lane_add_keys (self);

  return GTK_WIDGET (self);
}
