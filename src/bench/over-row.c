/* The row's widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-row-private.h"

#include <math.h>

#include "bench/look.h"
#include "bench/over-row-words.h"
#include "draw/slim.h"
#include "season/text.h"

G_DEFINE_FINAL_TYPE (LwOverRow, lw_over_row, GTK_TYPE_WIDGET)

char *
lw_over_row_words (LwOverRow *self)
{
  g_autofree char *tag = lw_laid_tag (self->laid), *name = lw_laid_name (self->laid);
  g_autofree char *steps = lw_over_say_steps (self->laid);

  /* Translators: a batch laid over: its letter, its name, its steps */
  return g_strdup_printf (_ ("%s %s: %s"), tag, name, steps);
}

char *
lw_over_row_unnamed (LwOverRow *self,
                     int        width)
{
  g_autofree char *tag = lw_laid_tag (self->laid), *name = lw_laid_name (self->laid);

  return self->laid->path == NULL || lw_over_row_has_name (self, width) ? NULL : g_strjoin (" ", tag, name, NULL);
}

/* What is told follows the columns' kinds. */
static void
tell (LwOverRow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  guint stamp = lw_overlays_stamp (lw_overlays_of (self->session));
  g_autofree char *label = NULL, *gaps = NULL;

  gboolean by_clock = lw_session_scale (self->session)->view.by_clock;

  /* By the clock it follows the times of the batch in hand, too. */
  if (batch == NULL || (stamp == self->told && !by_clock && !self->told_clock))
    return;

  self->told = stamp;
  self->told_clock = by_clock;
  label = lw_over_row_words (self);
  gaps = by_clock ? lw_over_row_beyond (self) : lw_over_say_gaps (self->laid, batch);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, gaps, -1);
}

void
lw_over_row_moved (LwOverRow *self)
{
  if (!lw_session_is_dragging (self->session))
    tell (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
lw_over_row_snapshot (GtkWidget   *widget,
                      GtkSnapshot *snapshot)
{
  LwOverRow *self = LW_OVER_ROW (widget);
  guint stamp = lw_overlays_stamp (lw_overlays_of (self->session));
  gboolean by_clock = lw_session_scale (self->session)->view.by_clock;

  /* Marks stand elsewhere. */
  if (stamp != self->drawn || by_clock != self->drawn_clock)
    lw_over_row_drop (self);
  self->drawn = stamp;
  self->drawn_clock = by_clock;
  lw_over_row_draw (self, snapshot);
  gtk_widget_snapshot_child (widget, self->off, snapshot);
}

static void
lw_over_row_measure (GtkWidget     *widget,
                     GtkOrientation orientation,
                     int            for_size,
                     int           *minimum,
                     int           *natural,
                     int           *minimum_baseline,
                     int           *natural_baseline)
{
  LwLetter letter = lw_look_letter (widget);
  int button;

  gtk_widget_measure (LW_OVER_ROW (widget)->off, orientation, -1, &button, NULL, NULL, NULL);
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? MAX ((int) lw_slim_height (&letter), button) : 1;
}

static void
lw_over_row_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  LwOverRow *self = LW_OVER_ROW (widget);
  int x = lw_look_is_rtl (widget) ? 0 : MAX (width - LW_OVER_BUTTON, 0), least;

  gtk_widget_measure (self->off, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  gtk_widget_size_allocate (self->off, &(GtkAllocation) { x, 0, MAX (LW_OVER_BUTTON, least), height }, -1);
  gtk_widget_queue_draw (widget);
}

static void
lw_over_row_css_changed (GtkWidget         *widget,
                         GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_over_row_parent_class)->css_changed (widget, change);
  if (LW_OVER_ROW (widget)->laid == NULL)
    return;

  lw_over_row_drop (LW_OVER_ROW (widget));
  gtk_widget_queue_draw (widget);
}

static gboolean
tooltip_cb (LwOverRow  *self,
            int         x,
            int         y,
            gboolean    keyboard,
            GtkTooltip *tooltip)
{
  const LwBatch *batch = lw_session_batch (self->session);
  const LwScale *scale = lw_session_scale (self->session);
  g_autofree char *words = NULL, *beyond = NULL, *all = NULL;
  double left, right, minute;
  guint column;

  for (guint i = 0; words == NULL && i < lw_laid_batch (self->laid)->n_steps; i++)
    if (lw_over_row_gap_begins (self, i) && fabs (lw_over_row_gap_x (self, i) - x) < LW_OVER_NEAR)
      words = lw_over_say_gap (self->laid, i);
  for (guint i = 0; words == NULL && i < lw_laid_batch (self->laid)->n_steps; i++)
    if (lw_over_row_place (self, i, &left, &right) && x >= left && x < right)
      words = lw_over_say_step (self->laid, i);
  if (words == NULL && batch != NULL && !scale->view.by_clock && lw_scale_at (scale, x, &column, &minute)
      && column < batch->n_steps && (scale->rtl ? x > lw_over_row_end_x (self) : x < lw_over_row_end_x (self)))
    words = lw_over_say_missing (self->laid, batch, column);
  beyond = lw_over_row_beyond (self);
  if (words == NULL && beyond[0] == '\0')
    words = lw_laid_name (self->laid);
  all = g_strjoin (words != NULL && beyond[0] != '\0' ? "\n" : "", words != NULL ? words : "", beyond, NULL);
  gtk_tooltip_set_text (tooltip, all);

  return TRUE;
}

static void
take_off (LwOverRow *self)
{
  lw_overlays_lay (lw_overlays_of (self->session), self->laid->season, self->laid->path, self->laid->at, FALSE);
}

static gboolean
take_off_cb (GtkWidget *widget,
             GVariant  *arguments,
             gpointer   data)
{
  take_off (LW_OVER_ROW (widget));

  return TRUE;
}

static void
click_cb (LwOverRow *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

static void
lw_over_row_dispose (GObject *object)
{
  LwOverRow *self = LW_OVER_ROW (object);

  if (self->laid != NULL)
    lw_over_row_drop (self);
  g_clear_pointer (&self->off, gtk_widget_unparent);
  g_clear_pointer (&self->blocks, g_free);
  g_clear_pointer (&self->laid, lw_laid_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_over_row_parent_class)->dispose (object);
}

static void
lw_over_row_class_init (LwOverRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_over_row_dispose;
  widget_class->snapshot = lw_over_row_snapshot;
  widget_class->measure = lw_over_row_measure;
  widget_class->size_allocate = lw_over_row_size_allocate;
  widget_class->css_changed = lw_over_row_css_changed;
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Delete, 0, take_off_cb, NULL);
  gtk_widget_class_set_css_name (widget_class, "overrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
}

static void
lw_over_row_init (LwOverRow *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->off = gtk_button_new_from_icon_name ("window-close-symbolic");
  gtk_button_set_has_frame (GTK_BUTTON (self->off), FALSE);
  gtk_widget_set_parent (self->off, GTK_WIDGET (self));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect_swapped (self->off, "clicked", G_CALLBACK (take_off), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect (self, "query-tooltip", G_CALLBACK (tooltip_cb), NULL);
}

GtkWidget *
lw_over_row_new (LwSession *session,
                 LwLaid    *laid)
{
  LwOverRow *self = g_object_new (LW_TYPE_OVER_ROW, NULL);
  g_autofree char *name = lw_laid_name (laid);
  /* Translators: a batch that is laid over */
  g_autofree char *words = g_strdup_printf (_ ("Take off %s"), name);

  self->session = g_object_ref (session);
  self->laid = lw_laid_ref (laid);
  self->blocks = g_new0 (LwKeptBlock, MAX (lw_laid_batch (laid)->n_steps, 1));
  gtk_widget_set_tooltip_text (self->off, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->off), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  tell (self);

  return GTK_WIDGET (self);
}
