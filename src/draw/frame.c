/* The card's shape. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/frame.h"

void
lw_frame_path (cairo_t *cr,
               double   width,
               double   height,
               double   line)
{
  double in = line / 2;
  double radius = MIN (LW_FRAME_RADIUS, MIN (width, height) / 2) - in;
  double near = in + radius, right = width - near, bottom = height - near;

  cairo_new_sub_path (cr);
  cairo_arc (cr, right, near, radius, -G_PI_2, 0);
  cairo_arc (cr, right, bottom, radius, 0, G_PI_2);
  cairo_arc (cr, near, bottom, radius, G_PI_2, G_PI);
  cairo_arc (cr, near, near, radius, G_PI, 3 * G_PI_2);
  cairo_close_path (cr);
}

void
lw_frame_fill (cairo_t *cr,
               double   width,
               double   height,
               LwInk    ground)
{
  lw_frame_path (cr, width, height, 0);
  lw_ink_use (cr, ground);
  cairo_fill (cr);
}

void
lw_frame_edge (cairo_t *cr,
               double   width,
               double   height,
               double   line,
               LwInk    ink)
{
  lw_frame_path (cr, width, height, line);
  cairo_set_line_width (cr, line);
  lw_ink_use (cr, ink);
  cairo_stroke (cr);
}
