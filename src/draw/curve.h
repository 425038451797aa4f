/* The curves of one quantity through all steps, reduced to what a screen can
 * show: per column at most one lowest and highest value a pixel. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/scale.h"
#include "leaf/track.h"
#include "season/quantity.h"

typedef struct _LwCurves LwCurves;

/* The mean, each part, and the band between parts of `quantity`, read off every sample. */
LwCurves     *lw_curves_new   (const LwTrack  *track,
                               LwQuantity      quantity);
LwCurves     *lw_curves_ref   (LwCurves       *curves);
void          lw_curves_unref (LwCurves       *curves);

/* Lowest and highest value of mean and parts. */
void          lw_curves_range (const LwCurves *curves,
                               double         *low,
                               double         *high);

guint         lw_curves_n_steps (const LwCurves *curves);
guint         lw_curves_n_parts (const LwCurves *curves);

/* Samples of a step: minutes and values, `n` of each. `part` -1 is the mean. (transfer none) */
const double *lw_curves_minutes (const LwCurves *curves,
                                 guint           step,
                                 guint          *n);
const double *lw_curves_values  (const LwCurves *curves,
                                 guint           step,
                                 int             part);
const double *lw_curves_lowest  (const LwCurves *curves,
                                 guint           step);
const double *lw_curves_highest (const LwCurves *curves,
                                 guint           step);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwCurves, lw_curves_unref)
