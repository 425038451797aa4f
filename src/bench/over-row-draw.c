/* Where a row's blocks are and how they look. Each block is a kept picture that moves with its column and is drawn
 * anew only at another width. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-row-private.h"

#include <math.h>

#include "bench/look.h"
#include "bench/over-row-words.h"
#include "draw/block.h"
#include "draw/elide.h"
#include "draw/slim.h"
#include "draw/space.h"

#define INSET 2.0
#define SAMPLE 11.0  /* of its line, before its letter */
#define SAMPLE_GAP 3.0
#define POINT 4.0    /* of time that is not shown */
#define TAG_GAP 4.0
#define NAME_SIZE 0.8
#define LEAST 6.0    /* of a block, px */

void
lw_over_row_drop (LwOverRow *self)
{
  for (guint i = 0; i < lw_laid_batch (self->laid)->n_steps; i++)
    g_clear_pointer (&self->blocks[i].node, gsk_render_node_unref);
  g_clear_pointer (&self->name, gsk_render_node_unref);
}

/* Of the batch in hand, minutes. */
static double
shown_time (LwOverRow *self)
{
  const LwScale *scale = lw_session_scale (self->session);
  double all = 0;

  for (guint i = 0; i < scale->n; i++)
    all += scale->minutes[i];

  return all;
}

char *
lw_over_row_beyond (LwOverRow *self)
{
  if (!lw_session_scale (self->session)->view.by_clock)
    return g_strdup ("");

  return lw_over_say_beyond (self->laid, lw_overlays_begins (lw_overlays_of (self->session), self->laid), shown_time (self));
}

gboolean
lw_over_row_place (LwOverRow *self,
                   guint      step,
                   double    *left,
                   double    *right)
{
  const LwScale *scale = lw_session_scale (self->session);
  double begins = lw_overlays_begins (lw_overlays_of (self->session), self->laid), all = shown_time (self), a, b;

  if (!scale->view.by_clock)
    {
      if (self->laid->columns[step] < 0 || self->laid->columns[step] >= (int) scale->n)
        return FALSE;
      lw_scale_column (scale, (guint) self->laid->columns[step], left, right);
      return TRUE;
    }

  for (guint i = 0; i < step; i++)
    begins += self->laid->minutes[i];
  if (scale->n == 0 || begins >= all || begins + self->laid->minutes[step] <= 0)
    return FALSE;

  a = lw_panel_clock_x (scale, MAX (begins, 0));
  b = lw_panel_clock_x (scale, MIN (begins + self->laid->minutes[step], all));
  *left = MIN (a, b);
  *right = MAX (a, b);

  return TRUE;
}

/* x of the mark for the steps from `first` on that have no match. */
double
lw_over_row_gap_x (LwOverRow *self,
       guint      first)
{
  const LwScale *scale = lw_session_scale (self->session);
  int before = first > 0 ? self->laid->columns[first - 1] : -1;
  LwLetter letter;
  double in;

  if (before < 0)
    return lw_scale_x (scale, 0, 0);

  /* The last one stands before the name, not over it. */
  letter = lw_look_letter (GTK_WIDGET (self));
  in = (guint) before + 1 == scale->n ? lw_slim_mark (&letter) : 0;

  return lw_scale_x (scale, (guint) before, scale->minutes[before]) - (scale->rtl ? -in : in);
}

gboolean
lw_over_row_gap_begins (LwOverRow *self,
            guint      step)
{
  const LwScale *scale = lw_session_scale (self->session);

  return !scale->view.by_clock && scale->n > 0 && self->laid->columns[step] < 0
         && (step == 0 || (self->laid->columns[step - 1] >= 0 && self->laid->columns[step - 1] < (int) scale->n));
}

/* Whether the mark of steps without a match stands over the step's start. */
static gboolean
gap_ends (LwOverRow *self,
          guint      step)
{
  guint first = step;

  while (first > 0 && self->laid->columns[first - 1] < 0)
    first--;

  return first < step && lw_over_row_gap_begins (self, first)
         && self->laid->columns[step] == (first > 0 ? self->laid->columns[first - 1] + 1 : 0);
}

static cairo_t *
begin (GtkSnapshot *snapshot,
       double       left,
       double       right,
       double       height)
{
  return gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT ((float) left, 0, (float) (right - left), (float) height));
}

static GskRenderNode *
draw_block (LwOverRow *self,
            guint      step,
            double     width,
            double     height)
{
  const LwBatch *batch = lw_laid_batch (self->laid);
  GtkSnapshot *own = gtk_snapshot_new ();
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  LwSlimLook look = { .step = &batch->steps[step], .rtl = lw_look_is_rtl (GTK_WIDGET (self)) };
  cairo_t *cr = begin (own, 0, width, height);
  gboolean on_weather;

  look.leading = lw_block_leading (self->laid->season, batch, step, &on_weather);
  look.after = gap_ends (self, step);
  look.marked = step + 1 < batch->n_steps && lw_over_row_gap_begins (self, step + 1);
  lw_slim_draw (cr, width, height, &look, &letter, lw_look_palette (GTK_WIDGET (self)));
  cairo_destroy (cr);

  return gtk_snapshot_free_to_node (own);
}

static void
snapshot_block (LwOverRow   *self,
                GtkSnapshot *snapshot,
                guint        step,
                double       height)
{
  LwKeptBlock *kept = &self->blocks[step];
  double left, right;
  int width;

  if (!lw_over_row_place (self, step, &left, &right))
    return;

  left = round (left) + INSET;
  width = (int) (round (right) - INSET - left);
  if (width < LEAST || left > gtk_widget_get_width (GTK_WIDGET (self)))
    return;

  if (kept->width != width)
    g_clear_pointer (&kept->node, gsk_render_node_unref);
  if (kept->node == NULL)
    kept->node = draw_block (self, step, width, height);
  kept->width = width;
  if (kept->node == NULL)
    return;

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) left, 0));
  gtk_snapshot_append_node (snapshot, kept->node);
  gtk_snapshot_restore (snapshot);
}

/* A thin line where the batch in hand has a step and this one none. */
static void
snapshot_missing (LwOverRow   *self,
                  GtkSnapshot *snapshot,
                  double       height)
{
  const LwScale *scale = lw_session_scale (self->session);
  GdkRGBA ink = lw_look_rgba (lw_look_palette (GTK_WIDGET (self))->rule);

  for (guint column = 0; !scale->view.by_clock && column < scale->n; column++)
    {
      double left, right;

      lw_scale_column (scale, column, &left, &right);
      if (!lw_over_has_column (self->laid, column))
        gtk_snapshot_append_color (snapshot, &ink, &GRAPHENE_RECT_INIT ((float) left + 8, (float) floor (height / 2),
                                                                        (float) MAX (right - left - 16, 1), 1));
    }
}

static void
snapshot_gaps (LwOverRow   *self,
               GtkSnapshot *snapshot,
               double       height)
{
  const LwBatch *batch = lw_laid_batch (self->laid);
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));

  for (guint i = 0; i < batch->n_steps; i++)
    {
      guint n = 0;
      double x;
      cairo_t *cr;

      if (!lw_over_row_gap_begins (self, i))
        continue;

      while (i + n < batch->n_steps && self->laid->columns[i + n] < 0)
        n++;
      x = round (CLAMP (lw_over_row_gap_x (self, i), LW_OVER_NEAR, MAX (gtk_widget_get_width (GTK_WIDGET (self)) - LW_OVER_NEAR, LW_OVER_NEAR)));
      cr = begin (snapshot, x - 2 * LW_OVER_NEAR, x + 2 * LW_OVER_NEAR, height);
      lw_slim_draw_gap (cr, x, height, n, &letter, lw_look_palette (GTK_WIDGET (self)));
      cairo_destroy (cr);
    }
}

/* The letter and what fits of the name, as at the line's end, after a piece of the line. */
static GskRenderNode *
draw_name (LwOverRow *self,
           double     width,
           double     height)
{
  GtkSnapshot *own = gtk_snapshot_new ();
  const LwPalette *palette = lw_look_palette (GTK_WIDGET (self));
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  cairo_t *cr = begin (own, 0, width, height);
  LwSpace space = { .cr = cr };
  g_autofree char *tag = lw_laid_tag (self->laid), *name = lw_laid_name (self->laid), *shown = NULL;
  double baseline = round (height / 2 + lw_letter_line (&letter) * LW_SLIM_SIZE * 0.28), used = SAMPLE + SAMPLE_GAP, way, start;

  letter.rtl = lw_look_is_rtl (GTK_WIDGET (self));
  way = letter.rtl ? -1 : 1;
  start = letter.rtl ? width : 0;
  cairo_move_to (cr, start, floor (height / 2) + 0.5);
  cairo_rel_line_to (cr, way * SAMPLE, 0);
  cairo_set_line_width (cr, lw_laid_is_thin (self->laid) ? 1.1 : 2);
  lw_space_dash (&space, lw_laid_dash (self->laid));
  lw_ink_use (cr, lw_laid_ink (self->laid, palette));
  cairo_stroke (cr);
  lw_space_dash (&space, 0);

  lw_ink_use (cr, lw_ink_mix (lw_laid_ink (self->laid, palette), palette->ink, 0.35));
  used += lw_letter_draw_on (cr, &letter, start + way * used, baseline, LW_TEXT_START, NAME_SIZE, TRUE, 0, tag) + TAG_GAP;
  shown = lw_elide_name (cr, &letter, NAME_SIZE, FALSE, width - used, name);
  if (shown != NULL)
    lw_letter_draw_on (cr, &letter, start + way * used, baseline, LW_TEXT_START, NAME_SIZE, FALSE, 0, shown);
  cairo_destroy (cr);

  return gtk_snapshot_free_to_node (own);
}

/* Where the last column ends. */
double
lw_over_row_end_x (LwOverRow *self)
{
  const LwScale *scale = lw_session_scale (self->session);

  return scale->n > 0 ? lw_scale_x (scale, scale->n - 1, scale->minutes[scale->n - 1]) : 0;
}

static double
name_room (LwOverRow *self,
           int        width)
{
  double end = round (lw_over_row_end_x (self));

  return (lw_look_is_rtl (GTK_WIDGET (self)) ? end : width - end) - LW_OVER_BUTTON - 2;
}

gboolean
lw_over_row_has_name (LwOverRow *self,
                      int        width)
{
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 1, 1);
  cairo_t *cr = cairo_create (surface);
  g_autofree char *tag = lw_laid_tag (self->laid), *name = lw_laid_name (self->laid);
  double tag_width, whole;

  lw_letter_size (cr, &letter, NAME_SIZE, TRUE, tag, &tag_width, NULL);
  lw_letter_size (cr, &letter, NAME_SIZE, FALSE, name, &whole, NULL);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  return SAMPLE + SAMPLE_GAP + tag_width + TAG_GAP + whole <= name_room (self, width);
}

static void
snapshot_name (LwOverRow   *self,
               GtkSnapshot *snapshot,
               double       height)
{
  gboolean rtl = lw_look_is_rtl (GTK_WIDGET (self));
  double end = round (lw_over_row_end_x (self)), room = name_room (self, gtk_widget_get_width (GTK_WIDGET (self)));

  if (self->name_width != room)
    g_clear_pointer (&self->name, gsk_render_node_unref);
  if (self->name == NULL && room > 0)
    self->name = draw_name (self, room, height);
  self->name_width = room;
  if (self->name == NULL)
    return;

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) (end - (rtl ? room : 0)), 0));
  gtk_snapshot_append_node (snapshot, self->name);
  gtk_snapshot_restore (snapshot);
}

/* A point that leads on, its tip `way` of x. */
static void
draw_point (cairo_t *cr,
            double   x,
            double   way,
            double   height,
            LwInk    ink)
{
  cairo_move_to (cr, x, height / 2);
  cairo_rel_line_to (cr, -way * POINT, -POINT);
  cairo_rel_line_to (cr, 0, 2 * POINT);
  cairo_close_path (cr);
  lw_ink_use (cr, ink);
  cairo_fill (cr);
}

/* By the clock: points where it begins before or ends after what is shown; in words where nothing of it is. */
static void
snapshot_beyond (LwOverRow   *self,
                 GtkSnapshot *snapshot,
                 double       height)
{
  const LwScale *scale = lw_session_scale (self->session);
  const LwPalette *palette = lw_look_palette (GTK_WIDGET (self));
  g_autofree char *words = lw_over_row_beyond (self);
  double begins = lw_overlays_begins (lw_overlays_of (self->session), self->laid), ends = begins, shown = shown_time (self);
  double start = lw_scale_x (scale, 0, 0), end = lw_over_row_end_x (self), way = scale->rtl ? -1 : 1;
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  cairo_t *cr;

  if (words[0] == '\0' || scale->n == 0)
    return;

  for (guint i = 0; i < lw_laid_batch (self->laid)->n_steps; i++)
    ends += self->laid->minutes[i];
  letter.rtl = scale->rtl;
  cr = begin (snapshot, 0, gtk_widget_get_width (GTK_WIDGET (self)), height);
  lw_ink_use (cr, palette->faint);
  if (ends <= 0 || begins >= shown)
    lw_letter_draw_on (cr, &letter, start + way * LEAST, round (height / 2 + lw_letter_line (&letter) * LW_SLIM_SIZE * 0.28),
                       LW_TEXT_START, LW_SLIM_SIZE, FALSE, MAX (fabs (end - start) - LEAST, 1), words);
  if (begins < 0 && ends > 0)
    draw_point (cr, start - way * (POINT + INSET), -way, height, palette->ink);
  if (begins < shown && ends > shown)
    draw_point (cr, end - way * INSET, way, height, palette->ink);
  cairo_destroy (cr);
}

void
lw_over_row_draw (LwOverRow   *self,
                  GtkSnapshot *snapshot)
{
  double height = gtk_widget_get_height (GTK_WIDGET (self));

  snapshot_missing (self, snapshot, height);
  for (guint i = 0; i < lw_laid_batch (self->laid)->n_steps; i++)
    snapshot_block (self, snapshot, i, height);
  snapshot_gaps (self, snapshot, height);
  snapshot_beyond (self, snapshot, height);
  snapshot_name (self, snapshot, height);
}
