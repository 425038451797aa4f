/* The kinds' pictograms: a few strokes each on a square of 24 by 24, as a table. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/block.h"

#define SQUARE 24.0
#define STROKE 1.7

typedef enum
{
  END,
  MOVE,   /* to x, y */
  LINE,   /* to x, y */
  CURVE,  /* by x, y and x2, y2 to x3, y3 */
  ARC,    /* round x, y with radius x2, from y2 to x3 quarter turns */
} Pen;

typedef struct
{
  Pen pen;
  double x, y, x2, y2, x3, y3;
} Mark;

#define M(x, y) { MOVE, x, y }
#define L(x, y) { LINE, x, y }
#define C(x, y, x2, y2, x3, y3) { CURVE, x, y, x2, y2, x3, y3 }
#define A(x, y, radius, from, to) { ARC, x, y, radius, from, to }

/* A leaf hung on a line. */
static const Mark wither[] = {
  M (2, 4), L (22, 4),
  M (12, 4), L (12, 16),
  M (12, 7.5), C (5.5, 11, 6, 18, 12, 22), C (18, 18, 18.5, 11, 12, 7.5),
  { END },
};

/* A leaf thrown round. */
static const Mark tumble[] = {
  A (12, 12, 9.6, -0.2, 2.9),
  M (2.2, 4.6), L (2.5, 10.3), L (8, 8.9),
  M (8.2, 15.8), C (7.8, 11, 10.6, 8.2, 16, 8), C (16.2, 13.2, 13.2, 16.2, 8.2, 15.8),
  { END },
};

/* A pan on the fire. */
static const Mark fix_pan[] = {
  M (1.5, 6.5), L (22.5, 6.5),
  A (12, 6.5, 9.2, 0, 2),
  M (7, 19), L (7, 22), M (12, 19.5), L (12, 22.5), M (17, 19), L (17, 22),
  { END },
};

/* A drum on its side. */
static const Mark fix_drum[] = {
  M (6, 4), C (2.2, 4, 2.2, 20, 6, 20), C (9.8, 20, 9.8, 4, 6, 4),
  L (18, 4), C (21.8, 4, 21.8, 20, 18, 20), L (6, 20),
  M (12.2, 9), L (16, 12), L (12.2, 15),
  { END },
};

/* Steam through a grate. */
static const Mark fix_steam[] = {
  M (2.5, 21), L (21.5, 21),
  M (6, 17.5), C (2.5, 13, 9.5, 8, 6, 3),
  M (12, 17.5), C (8.5, 13, 15.5, 8, 12, 3),
  M (18, 17.5), C (14.5, 13, 21.5, 8, 18, 3),
  { END },
};

/* A rolled leaf, seen from its end. */
static const Mark roll[] = {
  M (2, 21), L (22, 21),
  M (20.5, 3.5), L (11.5, 3.5),
  C (5.8, 3.5, 3, 7, 3, 11.5), C (3, 16, 7, 18.5, 11.5, 18.5), C (16, 18.5, 19, 15.5, 19, 12),
  C (19, 9, 16, 7, 12.5, 7), C (9.5, 7, 7, 9, 7, 11.7), C (7, 13.8, 9, 15, 11.2, 15),
  C (13.6, 15, 15, 13.8, 15, 12.2), C (15, 11.2, 14, 10.6, 12.5, 10.8),
  { END },
};

/* A heap, warm within. */
static const Mark rest[] = {
  M (1.5, 20.5), L (22.5, 20.5),
  M (3, 20.5), C (6, 17, 7, 5, 12, 5), C (17, 5, 18, 17, 21, 20.5),
  M (8.8, 16.5), C (9.8, 14, 10.5, 11, 12, 11), C (13.5, 11, 14.2, 14, 15.2, 16.5),
  { END },
};

static const Mark dry_sun[] = {
  A (12, 12, 4.6, 0, 4),
  M (12, 4.2), L (12, 1.5), M (12, 19.8), L (12, 22.5),
  M (4.2, 12), L (1.5, 12), M (19.8, 12), L (22.5, 12),
  M (6.5, 6.5), L (4.6, 4.6), M (17.5, 17.5), L (19.4, 19.4),
  M (6.5, 17.5), L (4.6, 19.4), M (17.5, 6.5), L (19.4, 4.6),
  { END },
};

/* Air up through a tray. */
static const Mark dry_air[] = {
  M (1.5, 9.5), L (1.5, 13), L (22.5, 13), L (22.5, 9.5),
  M (7.5, 22), L (7.5, 16), M (16.5, 22), L (16.5, 16),
  M (7.5, 10), L (7.5, 2.5), M (4.5, 5.6), L (7.5, 2.5), L (10.5, 5.6),
  M (16.5, 10), L (16.5, 2.5), M (13.5, 5.6), L (16.5, 2.5), L (19.5, 5.6),
  { END },
};

/* A basket over embers. */
static const Mark roast[] = {
  M (2.5, 2.5), L (21.5, 2.5), L (17.5, 10.5), L (6.5, 10.5), L (2.5, 2.5),
  M (7, 14), L (7, 16), M (12, 14), L (12, 16), M (17, 14), L (17, 16),
  A (6, 20.6, 1.9, 0, 4), A (12, 20.6, 1.9, 0, 4), A (18, 20.6, 1.9, 0, 4),
  { END },
};

static const Mark *const pictograms[LW_N_KINDS] = {
  [LW_KIND_WITHER] = wither,
  [LW_KIND_TUMBLE] = tumble,
  [LW_KIND_FIX_PAN] = fix_pan,
  [LW_KIND_FIX_DRUM] = fix_drum,
  [LW_KIND_FIX_STEAM] = fix_steam,
  [LW_KIND_ROLL] = roll,
  [LW_KIND_REST] = rest,
  [LW_KIND_DRY_SUN] = dry_sun,
  [LW_KIND_DRY_AIR] = dry_air,
  [LW_KIND_ROAST] = roast,
};

static void
trace_marks (cairo_t    *cr,
             const Mark *mark)
{
  for (; mark->pen != END; mark++)
    switch (mark->pen)
      {
      case MOVE:
        cairo_move_to (cr, mark->x, mark->y);
        break;
      case LINE:
        cairo_line_to (cr, mark->x, mark->y);
        break;
      case CURVE:
        cairo_curve_to (cr, mark->x, mark->y, mark->x2, mark->y2, mark->x3, mark->y3);
        break;
      case ARC:
        cairo_new_sub_path (cr);
        cairo_arc (cr, mark->x, mark->y, mark->x2, mark->y2 * G_PI_2, mark->x3 * G_PI_2);
        break;
      case END:
      default:
        break;
      }
}

void
lw_pictogram_draw (cairo_t *cr,
                   LwKind   kind,
                   double   x,
                   double   y,
                   double   size,
                   LwInk    ink)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, size / SQUARE, size / SQUARE);
  cairo_new_path (cr);
  trace_marks (cr, pictograms[kind]);
  cairo_set_line_width (cr, STROKE);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  lw_ink_use (cr, ink);
  cairo_stroke (cr);
  cairo_restore (cr);
}
