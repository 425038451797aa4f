/* A step's block. From the top: a row for pictogram and name, a second row, and
 * the range in which the leading setting's line moves; heights do not depend on
 * the width, so that lines of neighbours compare. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/block.h"

#include <math.h>
#include <string.h>

#include "draw/frame.h"
#include "season/text.h"
#include "season/wording.h"

#define PAD 8.0
#define TOP 6.0
#define RANGE_PAD 7.0
#define BOTTOM 13.0
#define RANGE_LINES 2.0
#define HANDLE 5.0
#define SMALL 0.88
#define SMALLEST 0.7
#define SLIM 52.0      /* px: no room for words */

/* What one drawing of a block passes around. */
typedef struct
{
  cairo_t *cr;
  double width;
  double height;
  double line;       /* px of a row */
  double handle;     /* its radius */
  const LwBlockLook *look;
  const LwLetter *letter;
  const LwPalette *palette;
  char *time;
  gboolean narrow;
} Block;

static double
second_row (double line)
{
  return TOP + line;
}

static double
range_top (double line)
{
  return TOP + 2 * line + RANGE_PAD;
}

double
lw_block_height (const LwLetter *letter)
{
  double line = lw_letter_line (letter);

  return ceil (range_top (line) + RANGE_LINES * line + BOTTOM);
}

gboolean
lw_block_is_slim (double width)
{
  return width < SLIM;
}

double
lw_block_line_y (LwKind          kind,
                 double          height,
                 const LwLetter *letter,
                 double          value)
{
  const LwKindRow *row = lw_kind_row (kind);
  double share = (value - row->line_low) / (row->line_high - row->line_low);
  double bottom = height - BOTTOM;

  return bottom - CLAMP (share, 0, 1) * (bottom - range_top (lw_letter_line (letter)));
}

double
lw_block_value (LwKind          kind,
                double          height,
                const LwLetter *letter,
                double          y)
{
  const LwKindRow *row = lw_kind_row (kind);
  double bottom = height - BOTTOM;
  double share = (bottom - y) / (bottom - range_top (lw_letter_line (letter)));

  return row->line_low + CLAMP (share, 0, 1) * (row->line_high - row->line_low);
}

static double
start_x (const Block *block,
         double       in)
{
  return block->look->rtl ? block->width - in : in;
}

static double
end_x (const Block *block,
       double       in)
{
  return block->look->rtl ? in : block->width - in;
}

static double
width_of (const Block *block,
          double       size,
          gboolean     bold,
          const char  *text)
{
  double width;

  lw_letter_size (block->cr, block->letter, size, bold, text, &width, NULL);

  return width;
}

/* Small text that shrinks a little before it is cut. */
static void
draw_fitted (const Block  *block,
             double        x,
             double        y,
             LwTextAnchor  anchor,
             gboolean      bold,
             double        room,
             const char   *text)
{
  double size = SMALL;

  /* By trial: letters do not shrink in proportion. */
  while (size > SMALLEST && width_of (block, size, bold, text) > room)
    size = MAX (size - 0.03, SMALLEST);

  lw_letter_draw (block->cr, block->letter, x, y, anchor, size, bold, room, text);
}

static const char *
name_of (const Block *block)
{
  return _ (lw_kind_row (block->look->step->kind)->label);
}

static double
pictogram_size (const Block *block)
{
  return round (block->line * (block->narrow ? 0.8 : 1));
}

static gboolean
is_narrow (const Block *block)
{
  double words = width_of (block, 1, TRUE, name_of (block))
                 + width_of (block, SMALL, FALSE, block->time);

  return 2 * PAD + block->line + 6 + words + 10 > block->width;
}

static void
draw_slim (const Block *block)
{
  double picture = round (MIN (block->line * 0.9, block->width - 8));

  lw_pictogram_draw (block->cr, block->look->step->kind, round ((block->width - picture) / 2),
                     round (TOP + (block->line - picture) / 2), picture, block->palette->ink);
}

static void
draw_name (const Block *block)
{
  double pad = block->narrow ? PAD - 2 : PAD;
  double picture = pictogram_size (block);
  double after = pad + picture + (block->narrow ? 4 : 6);
  double x = start_x (block, pad) - (block->look->rtl ? picture : 0);
  double baseline = TOP + block->line * 0.76;
  double time = 0;

  lw_pictogram_draw (block->cr, block->look->step->kind, x,
                     round (TOP + (block->line - picture) / 2), picture, block->palette->ink);
  if (!block->narrow)
    {
      lw_ink_use (block->cr, block->palette->ink);
      time = lw_letter_draw_on (block->cr, block->letter, end_x (block, PAD), baseline, LW_TEXT_END,
                                SMALL, FALSE, 0, block->time) + 10;
    }
  lw_ink_use (block->cr, block->palette->ink);
  lw_letter_draw_on (block->cr, block->letter, start_x (block, after), baseline, LW_TEXT_START,
                     block->narrow ? SMALL : 1, TRUE, MAX (block->width - after - pad - time, 1),
                     name_of (block));
}

/* Whether the change told by `before` is one of time, and so stands for the time itself. */
static gboolean
before_tells (const Block *block,
              const char  *of)
{
  return block->look->before != NULL && strstr (block->look->before, of) != NULL;
}

/* (transfer full) the change, or, where there is no room for both, rather what it is now than half of what it was. */
static char *
change_text (const Block *block,
             const char  *change,
             const char  *now,
             double       room)
{
  return width_of (block, SMALLEST, TRUE, change) > room ? g_strdup_printf ("→ %s", now) : g_strdup (change);
}

static void
draw_second_row (const Block *block)
{
  gboolean before = block->look->before != NULL
                    && (!block->narrow || before_tells (block, block->time));
  double pad = block->narrow ? PAD - 2 : PAD;
  double y = second_row (block->line), room = block->width - 2 * pad;
  g_autofree char *words = before ? change_text (block, block->look->before, block->time, room)
                                  : g_strdup (block->time);

  if (!before && !block->narrow)
    return;

  lw_ink_use (block->cr, before ? block->palette->choice : block->palette->ink);
  draw_fitted (block, block->narrow ? start_x (block, pad) : end_x (block, pad), y,
               block->narrow ? LW_TEXT_START : LW_TEXT_END, before, room, words);
}

static gboolean
follows_log (const Block *block)
{
  return lw_step_log (block->look->step, lw_kind_row (block->look->step->kind)->leading) != NULL;
}

/* (transfer full) as much of "29 °C air · weather" as there is room for. */
static char *
value_text (const Block *block,
            double       room)
{
  LwSetting leading = lw_kind_row (block->look->step->kind)->leading;
  const LwSettingRow *row = lw_setting_row (leading);
  g_autofree char *value = lw_say_setting (leading, block->look->leading);
  /* Translators: a value and what it is of: "260 °C wall" */
  g_autofree char *named = g_strdup_printf (_ ("%s %s"), value, _ (row->label));
  /* Translators: a value with its name, which follows the weather */
  g_autofree char *full = g_strdup_printf (_ ("%s · weather"), named);

  /* Translators: a value with its name, which follows a temperature log */
  g_autofree char *logged = g_strdup_printf (_ ("%s · log"), named);

  if (follows_log (block) && width_of (block, SMALL, FALSE, logged) <= room)
    return g_steal_pointer (&logged);
  if (block->look->on_weather && width_of (block, SMALL, FALSE, full) <= room)
    return g_steal_pointer (&full);
  if (width_of (block, SMALL, FALSE, named) <= room)
    return g_steal_pointer (&named);
  if (width_of (block, SMALLEST, FALSE, value) <= room)
    return g_steal_pointer (&value);

  return g_strdup_printf ("%.*f", row->digits, block->look->leading);
}

static LwInk
line_ink (const Block *block)
{
  LwSetting leading = lw_kind_row (block->look->step->kind)->leading;

  return leading == LW_SET_AIR_C || leading == LW_SET_WALL_C ? block->palette->heat
                                                             : block->palette->press;
}

/* Above the line if the rows at the top leave room for it, else below; clear of the handle
 * where the words reach it. */
static double
value_y (const Block *block,
         double       line_y,
         double       reach)
{
  double text = block->line * 0.92;
  gboolean two_rows = block->narrow || block->look->before != NULL;
  double ceiling = two_rows ? second_row (block->line) + block->line : second_row (block->line) - 1;
  double clear = reach > block->width / 2 - block->handle - 2 ? block->handle - 1 : 2;

  return line_y - clear - text >= ceiling - 2 ? line_y - clear - text : line_y + clear;
}

static void
draw_value (const Block *block,
            double       line_y)
{
  double pad = block->narrow ? PAD - 2 : PAD;
  double room = block->width - 2 * pad;
  gboolean other = block->narrow && block->look->before != NULL
                   && !before_tells (block, block->time);
  gboolean before = block->look->led != NULL || other;
  g_autofree char *now = lw_say_setting (lw_kind_row (block->look->step->kind)->leading, block->look->leading);
  g_autofree char *text = block->look->led != NULL ? change_text (block, block->look->led, now, room)
                          : other ? g_strdup (block->look->before) : value_text (block, room);
  double reach = pad + MIN (width_of (block, SMALL, before, text), room);

  lw_ink_use (block->cr, before ? block->palette->choice : line_ink (block));
  draw_fitted (block, start_x (block, pad), value_y (block, line_y, reach), LW_TEXT_START, before,
               room, text);
}

static void
draw_line (const Block *block,
           double       line_y)
{
  static const double dashes[] = { 5, 4 };
  cairo_t *cr = block->cr;
  double middle = round (block->width / 2);

  cairo_move_to (cr, PAD - 2, line_y);
  cairo_line_to (cr, block->width - PAD + 2, line_y);
  cairo_set_line_width (cr, round (2 * lw_letter_scale (block->letter)));
  if (block->look->on_weather || follows_log (block))
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  lw_ink_use (cr, line_ink (block));
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);

  cairo_arc (cr, middle, line_y, block->handle + 1.5, 0, 2 * G_PI);
  lw_ink_use (cr, block->palette->card);
  cairo_fill (cr);
  cairo_arc (cr, middle, line_y, block->handle, 0, 2 * G_PI);
  lw_ink_use (cr, line_ink (block));
  cairo_fill (cr);
}

void
lw_block_draw (cairo_t           *cr,
               double             width,
               double             height,
               const LwBlockLook *look,
               const LwLetter    *letter,
               const LwPalette   *palette)
{
  g_autofree char *time = lw_say_minutes (lw_step_get (look->step, LW_SET_MINUTES));
  LwLetter own = *letter;
  Block block = {
    .cr = cr, .width = width, .height = height, .line = lw_letter_line (letter),
    .handle = HANDLE * lw_letter_scale (letter),
    .look = look, .letter = &own, .palette = palette, .time = time,
  };
  double line_y = round (lw_block_line_y (look->step->kind, height, letter, look->leading));

  own.rtl = look->rtl;
  block.narrow = is_narrow (&block);

  lw_hatch_frame (cr, look->step->kind, width, height, palette);
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  if (lw_block_is_slim (width))
    {
      draw_slim (&block);
      draw_line (&block, line_y);
    }
  else
    {
      draw_name (&block);
      draw_second_row (&block);
      draw_line (&block, line_y);
      draw_value (&block, line_y);
    }
  cairo_restore (cr);

  lw_frame_edge (cr, width, height, look->chosen ? 2 : 1,
                 look->chosen ? palette->choice : palette->rule);
}
