/* The rounded card that panels and blocks stand on. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"

#define LW_FRAME_RADIUS 7.0

/* The card's outline as a path, on whole and half pixels so that its edge is crisp. */
void lw_frame_path (cairo_t *cr,
                    double   width,
                    double   height,
                    double   line);

/* Fills the card's ground. */
void lw_frame_fill (cairo_t *cr,
                    double   width,
                    double   height,
                    LwInk    ground);

/* Draws its edge, `line` px wide, inside width and height. */
void lw_frame_edge (cairo_t *cr,
                    double   width,
                    double   height,
                    double   line,
                    LwInk    ink);
