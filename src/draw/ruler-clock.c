/* The ticks of a scale by clock, which go through all columns alike. The begin says day
 * and hour; midnights say the day; where two words would meet the later one is left out, and
 * the next says a day that was left out so. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/ruler.h"

#include <math.h>

#include "draw/ticks.h"
#include "season/wording.h"

#define APART 14.0    /* between words */
#define CLOSEST 16.0  /* between ticks */
#define EDGE 4.0
#define DAY_S 86400

/* The steps that the ticks are for. */
typedef struct
{
  const LwScale *scale;
  guint first;
  guint last;
  double begin_s;   /* of the first, on the clock */
  double minutes;
  double left;      /* x of both ends, left < right */
  double right;
} Stretch;

static Stretch
stretch_of (const LwScale *scale,
            gint64         when_s)
{
  gboolean zoomed = scale->view.zoomed >= 0;
  Stretch stretch = {
    .scale = scale,
    .first = zoomed ? (guint) scale->view.zoomed : 0,
    .last = zoomed ? (guint) scale->view.zoomed : scale->n - 1,
    .begin_s = (double) when_s,
  };
  double from, to, other;

  for (guint i = 0; i < stretch.first; i++)
    stretch.begin_s += 60 * scale->minutes[i];
  for (guint i = stretch.first; i <= stretch.last; i++)
    stretch.minutes += scale->minutes[i];

  lw_scale_column (scale, stretch.first, &from, &other);
  lw_scale_column (scale, stretch.last, &to, &other);
  stretch.left = MIN (from, to);
  lw_scale_column (scale, stretch.first, &other, &from);
  lw_scale_column (scale, stretch.last, &other, &to);
  stretch.right = MAX (from, to);

  return stretch;
}

static LwTick
tick_at (const Stretch *stretch,
         double         clock_s)
{
  double minute = (clock_s - stretch->begin_s) / 60;
  guint step = stretch->first;

  while (step < stretch->last && minute >= stretch->scale->minutes[step])
    minute -= stretch->scale->minutes[step++];

  return (LwTick) { .step = step, .minute = minute, .x = lw_scale_x (stretch->scale, step, minute) };
}

static gint64
day_of (double clock_s)
{
  return (gint64) floor (clock_s / DAY_S + 1e-9);
}

/* `days`: with a day that was not told yet. */
static char *
word_of (double   clock_s,
         gboolean days)
{
  gint64 when_s = (gint64) llround (clock_s);

  if (when_s % DAY_S == 0)
    return lw_say_day (when_s);

  return days ? lw_say_moment (when_s) : lw_say_clock (when_s);
}

/* Puts the word under its tick and inside the stretch, unless it would meet `before` (nullable). */
static gboolean
place_word (const Stretch *stretch,
            LwTick        *tick,
            double         width,
            const LwTick  *before)
{
  double most = MAX (stretch->right - EDGE - width, stretch->left + EDGE);

  tick->left = CLAMP (tick->x - width / 2, stretch->left + EDGE, most);
  tick->right = tick->left + width;

  return before == NULL || MAX (tick->left, before->left) - MIN (tick->right, before->right) >= APART;
}

/* Gives the tick its word: with the day where that is not `told` and there is room, else without, else none. */
static gboolean
tell (const Stretch *stretch,
      LwTick        *tick,
      double         clock_s,
      const LwTick  *before,
      gint64        *told,
      LwTextWidth    width_of,
      gpointer       data)
{
  gboolean day = day_of (clock_s) != *told;

  for (int with = day; with >= 0; with--)
    {
      g_autofree char *text = word_of (clock_s, with);

      if (!place_word (stretch, tick, width_of (text, data), before))
        continue;
      if (with)
        *told = day_of (clock_s);
      tick->text = g_steal_pointer (&text);
      return TRUE;
    }

  tick->left = tick->right = tick->x;

  return FALSE;
}

static void
tick_clear (LwTick *tick)
{
  g_free (tick->text);
}

GArray *
lw_ruler_clock_ticks (const LwScale *scale,
                      gint64         when_s,
                      LwTextWidth    width_of,
                      gpointer       data)
{
  GArray *ticks = g_array_new (FALSE, FALSE, sizeof (LwTick));
  double gap_s, word_s, width;
  Stretch stretch;
  LwTick first, before;
  gint64 told;

  g_array_set_clear_func (ticks, (GDestroyNotify) tick_clear);
  if (scale->n == 0)
    return ticks;

  stretch = stretch_of (scale, when_s);
  width = stretch.right - stretch.left;
  /* A minute is the finest that the words tell apart. */
  gap_s = 60 * MAX (lw_ticks_minutes (stretch.minutes, width, CLOSEST), 1);
  word_s = 60 * MAX (lw_ticks_minutes (stretch.minutes, width, width_of ("00:00", data) + APART), 1);

  first = tick_at (&stretch, stretch.begin_s);
  first.text = lw_say_moment ((gint64) stretch.begin_s);
  place_word (&stretch, &first, width_of (first.text, data), NULL);
  g_array_append_val (ticks, first);
  before = first;
  told = day_of (stretch.begin_s);

  for (double at_s = (floor (stretch.begin_s / gap_s) + 1) * gap_s; at_s <= stretch.begin_s + 60 * stretch.minutes + 1e-6;
       at_s += gap_s)
    {
      LwTick tick = tick_at (&stretch, at_s);

      tick.left = tick.right = tick.x;
      if (fabs (fmod (at_s, word_s)) < 0.5 && tell (&stretch, &tick, at_s, &before, &told, width_of, data))
        before = tick;
      g_array_append_val (ticks, tick);
    }

  return ticks;
}
