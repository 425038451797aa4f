/* The time ruler. Each column chooses the smallest round time between its ticks
 * at which its words stay apart; its words stay inside the column, so that
 * neighbours need not know of each other. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/ruler.h"

#include <math.h>

#include "draw/panel.h"

#define EDGE 4.0       /* between a word and its column's edge */
#define APART 12.0     /* between words */
#define CLOSEST 22.0   /* between ticks */
#define SMALL 0.85
#define TICK 4.0

static void
tick_clear (LwTick *tick)
{
  g_free (tick->text);
}

/* Begins right behind the column's edge for 0, else stands under its tick. */
static void
place_word (const LwScale *scale,
            LwTick        *tick,
            double         width)
{
  double left, right;

  lw_scale_column (scale, tick->step, &left, &right);
  tick->left = tick->x - width / 2;
  if (tick->minute <= 0)
    tick->left = scale->rtl ? right - EDGE - width : left + EDGE;
  /* The end of all columns has no 0 of a next one beside it. */
  else if (tick->step + 1 == scale->n)
    tick->left = CLAMP (tick->left, left + EDGE, MAX (right - EDGE - width, left + EDGE));
  tick->right = tick->left + width;

  if (tick->left < left + EDGE - 0.01 || tick->right > right - EDGE + 0.01)
    {
      tick->right = tick->left = tick->x;
      g_clear_pointer (&tick->text, g_free);
    }
}

static gboolean
words_meet (const LwTick *a,
            const LwTick *b)
{
  if (a->text == NULL || b->text == NULL)
    return FALSE;

  return MAX (a->left, b->left) - MIN (a->right, b->right) < APART;
}

/* Adds a column's ticks, `gap` minutes apart. FALSE if words meet. */
static gboolean
add_column (GArray        *ticks,
            const LwScale *scale,
            guint          step,
            double         gap,
            LwTextWidth    width_of,
            gpointer       data)
{
  double minutes = scale->minutes[step];
  gboolean last_column = step + 1 == scale->n;
  guint n = (guint) floor (minutes / gap + 1e-9);
  int before = -1;

  for (guint i = 0; i <= n; i++)
    {
      LwTick tick = { .step = step, .minute = i * gap, .x = lw_scale_x (scale, step, i * gap) };

      if (i > 0 && !last_column && tick.minute > minutes * (1 - 1e-9))
        break;

      tick.text = lw_ticks_text (tick.minute, gap);
      place_word (scale, &tick, width_of (tick.text, data));
      g_array_append_val (ticks, tick);
      if (tick.text == NULL)
        continue;
      if (before >= 0 && words_meet (&g_array_index (ticks, LwTick, before), &tick))
        return FALSE;
      before = (int) ticks->len - 1;
    }

  return TRUE;
}

GArray *
lw_ruler_ticks (const LwScale *scale,
                LwTextWidth    width_of,
                gpointer       data)
{
  GArray *ticks = g_array_new (FALSE, FALSE, sizeof (LwTick));

  g_array_set_clear_func (ticks, (GDestroyNotify) tick_clear);

  for (guint step = 0; step < scale->n; step++)
    {
      guint begin = ticks->len;
      double gap = lw_ticks_minutes (scale->minutes[step], scale->width[step], CLOSEST);

      while (!add_column (ticks, scale, step, gap, width_of, data))
        {
          g_array_set_size (ticks, begin);
          gap = lw_ticks_minutes (gap * 1.01, 1, 1);
        }
    }

  return ticks;
}

typedef struct
{
  cairo_t *cr;
  const LwLetter *letter;
} Lettering;

static double
word_width (const char *text,
            gpointer    data)
{
  Lettering *lettering = data;
  double width;

  lw_letter_size (lettering->cr, lettering->letter, SMALL, FALSE, text, &width, NULL);

  return width;
}

static void
draw_tick (cairo_t         *cr,
           double           x,
           double           top,
           double           bottom,
           LwInk            ink)
{
  cairo_move_to (cr, x, top);
  cairo_line_to (cr, x, bottom);
  cairo_set_line_width (cr, 1);
  lw_ink_use (cr, ink);
  cairo_stroke (cr);
}

static void
draw_word (const Lettering *lettering,
           const LwTick    *tick,
           double           y,
           LwInk            ink)
{
  lw_ink_use (lettering->cr, ink);
  if (tick->text != NULL)
    lw_letter_draw (lettering->cr, lettering->letter, tick->left, y,
                    lettering->letter->rtl ? LW_TEXT_END : LW_TEXT_START, SMALL, FALSE, 0, tick->text);
}

void
lw_ruler_draw (cairo_t         *cr,
               double           width,
               double           height,
               const LwScale   *scale,
               const LwLetter  *letter,
               const LwPalette *palette)
{
  LwLetter own = *letter;
  Lettering lettering = { cr, &own };
  g_autoptr (GArray) ticks = NULL;

  own.rtl = scale->rtl;
  ticks = lw_ruler_ticks (scale, word_width, &lettering);

  for (guint i = 0; i < ticks->len; i++)
    {
      const LwTick *tick = &g_array_index (ticks, LwTick, i);
      gboolean edge = tick->minute <= 0;

      draw_tick (cr, CLAMP (floor (tick->x) + 0.5, 0.5, width - 0.5), 0, edge ? height : TICK,
                 edge ? palette->rule : lw_ink_thin (palette->faint, 0.6));
      draw_word (&lettering, tick, TICK, palette->faint);
    }
}

/* From where a block ends to where its column does. */
static void
draw_leads (cairo_t         *cr,
            const LwScale   *scale,
            const LwPalette *palette)
{
  for (guint step = 1; step < scale->n; step++)
    {
      cairo_move_to (cr, floor (lw_scale_block_begin (scale, step)) + 0.5, 0);
      cairo_line_to (cr, floor (lw_scale_x (scale, step, 0)) + 0.5, LW_RULER_LEAD);
    }
  cairo_set_line_width (cr, 1);
  lw_ink_use (cr, lw_ink_thin (palette->faint, 0.6));
  cairo_stroke (cr);
}

void
lw_ruler_draw_clock (cairo_t         *cr,
                     double           width,
                     const LwScale   *scale,
                     gint64           when_s,
                     const LwLetter  *letter,
                     const LwPalette *palette)
{
  LwLetter own = *letter;
  Lettering lettering = { cr, &own };
  g_autoptr (GArray) ticks = NULL;

  own.rtl = scale->rtl;
  ticks = lw_ruler_clock_ticks (scale, when_s, word_width, &lettering);
  draw_leads (cr, scale, palette);

  for (guint i = 0; i < ticks->len; i++)
    {
      const LwTick *tick = &g_array_index (ticks, LwTick, i);

      draw_tick (cr, CLAMP (floor (tick->x) + 0.5, 0.5, width - 0.5), LW_RULER_LEAD, LW_RULER_LEAD + TICK,
                 lw_ink_thin (palette->faint, tick->text != NULL ? 1 : 0.6));
      draw_word (&lettering, tick, LW_RULER_LEAD + TICK, palette->faint);
    }
}
