/* A batch on one sheet: its name, blocks and panels, as a picture file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/panel.h"

/* Draws `batch` of `season` and its track into 0,0..width,height. */
void     lw_sheet_draw (cairo_t          *cr,
                        double            width,
                        double            height,
                        const LwSeason   *season,
                        guint             batch,
                        const LwTrack    *track,
                        const LwPalette  *palette);

/* Draws a sheet into a file; the suffix .png, .svg or .pdf chooses the format. The file appears
 * whole or not at all. `error` says what is wrong and what to do. */
gboolean lw_sheet_save (const char       *path,
                        double            width,
                        double            height,
                        const LwSeason   *season,
                        guint             batch,
                        const LwTrack    *track,
                        GError          **error);
