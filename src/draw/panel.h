/* A leaf-state panel: one quantity's curves under the steps' columns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/curve.h"
#include "draw/letter.h"
#include "draw/ticks.h"
#include "season/season.h"

typedef struct
{
  LwQuantity quantity;
  const LwScale *scale;
  const LwCurves *curves;      /* (nullable) the batch as it is */
  const LwCurves *ghost;       /* (nullable) the batch before the change; its own steps' times */
  const double *ghost_minutes; /* the ghost's step times; it is drawn in the present columns, step by step */
  guint ghost_n;
  const LwBatch *batch;        /* (nullable) for aims and weigh-ins */
  double fresh_moisture_pct;   /* to turn weights into the panel's quantity */
  const char *const *part_names; /* (nullable) with `parts`: shown at the lines' ends */
  gboolean parts;              /* draw each part as a thin line */
  gboolean quick;              /* while dragging: faster, a little rougher lines */
  const char *reading;         /* (nullable) the value at the reading line, beside the name */
} LwPanelLook;

/* The axis a panel uses for its curves and ghost: percentages start at 0. */
LwAxis lw_panel_axis  (const LwPanelLook *look);

/* Top and bottom of the plot inside a panel of `height`. */
void   lw_panel_plot  (double             height,
                       const LwLetter    *letter,
                       double            *top,
                       double            *bottom);

/* Draws into 0,0..width,height. */
void   lw_panel_draw  (cairo_t           *cr,
                       double             width,
                       double             height,
                       const LwPanelLook *look,
                       const LwAxis      *axis,
                       const LwLetter    *letter,
                       const LwPalette   *palette);

/* The time ruler under the blocks: each column's own ticks, chosen so that words never meet. */
void   lw_ruler_draw  (cairo_t           *cr,
                       double             width,
                       double             height,
                       const LwScale     *scale,
                       const LwLetter    *letter,
                       const LwPalette   *palette);
