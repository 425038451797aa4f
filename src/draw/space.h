/* A panel while it is being drawn: its plot, what it shows, and which places are
 * taken by words and marks. Only for the panel's own files. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/panel.h"
#include "draw/trace.h"

#define LW_SPACE_MOST_TAKEN 192

typedef struct
{
  double x, y, width, height;
} LwBox;

/* Rows of curves besides the parts, which are 0 and up. */
enum { LW_ROW_LOWEST = -3, LW_ROW_HIGHEST = -2, LW_ROW_MEAN = -1 };

typedef struct
{
  cairo_t *cr;
  double width;
  double height;
  double top;      /* of the plot */
  double bottom;
  const LwPanelLook *look;
  const LwAxis *axis;
  const LwLetter *letter;
  const LwPalette *palette;
  LwInk ink;       /* of the quantity's curve */
  double axis_words; /* width of the axis' words at the last column's end, once they are there */
  guint n_taken;
  LwBox taken[LW_SPACE_MOST_TAKEN];
} LwSpace;

const double *lw_space_row    (const LwCurves *curves,
                               guint        step,
                               int          row);

/* Dashes by number, and setting them; 0 is unbroken. */
void     lw_space_dash        (LwSpace     *space,
                               guint        dash);

double   lw_space_y           (const LwSpace *space,
                               double       value);

/* x of a box `width` wide, `in` px inside the end edge of `step`'s column. */
double   lw_space_end_x       (const LwSpace *space,
                               guint        step,
                               double       in,
                               double       width);

void     lw_space_take        (LwSpace     *space,
                               LwBox        box);

/* Moves the box up or down to the place nearest above `high_y` or below `low_y` that is inside
 * the plot and not taken; at most `far` px. */
gboolean lw_space_find        (const LwSpace *space,
                               LwBox       *box,
                               double       high_y,
                               double       low_y,
                               double       far);

/* Clears a place for words at the end of `step`, so that lines under them do not hurt. */
void     lw_space_plate       (LwSpace     *space,
                               guint        step,
                               const LwBox *box);

/* Highest and lowest y of a row of the panel's curves in `step`, from the box to the step's end. */
void     lw_space_over        (const LwSpace *space,
                               guint        step,
                               int          row,
                               const LwBox *box,
                               double      *high_y,
                               double      *low_y);

/* How far inside the end edge of `step`'s column words begin: clear of brackets and points. */
double   lw_space_words_in    (const LwSpace *space,
                               guint        step);

/* Where the line of an overlay ends: in which column, where, and whether at the end of the last. FALSE if none of it
 * is here. */
gboolean lw_space_overlay_end (const LwSpace *space,
                               const LwPanelOverlay *overlay,
                               guint       *column,
                               LwSpot      *end,
                               gboolean    *last);

/* What a weigh-in at the edge between this step and the next takes there, px. */
double   lw_space_edge_in     (const LwSpace *space,
                               guint        step);

/* Whether a tick of the axis is told: every one, every second, fifth or tenth, or just the highest. */
gboolean lw_space_tick_told   (const LwSpace *space,
                               guint        tick);

/* The aims for the shown quantity at the end of `step`; returns how many of at most `most`. */
guint    lw_space_aims        (const LwSpace *space,
                               guint        step,
                               const LwAim **aims,
                               guint        most);

/* x of the bracket of the `place`th of these. */
double   lw_space_bracket_x   (const LwSpace *space,
                               guint        step,
                               guint        place);

/* The mean at the end of `step`, NAN where it is not known. */
double   lw_space_end_value   (const LwSpace *space,
                               guint        step);

/* How far a line may lie off its points, px: less than can be seen, more while dragging. */
double   lw_space_off         (const LwSpace *space);

/* Names a line that ends at `end_y` in `step`, inside its end. */
void     lw_space_name_line   (LwSpace     *space,
                               guint        step,
                               double       end_y,
                               guint        dash,
                               LwInk        ink,
                               const char  *name);

/* What is drawn, in order (panel-spells.c, panel-bands.c, panel-lines.c, panel-logs.c, panel-over.c, panel-marks.c,
 * panel-words.c, panel-labels.c, panel-turning.c). */
void     lw_space_spells      (LwSpace     *space);
void     lw_space_bands       (LwSpace     *space);
void     lw_space_lines       (LwSpace     *space);
void     lw_space_overlays    (LwSpace     *space);
void     lw_space_logs        (LwSpace     *space); /* by lw_space_lines */
void     lw_space_aim_marks   (LwSpace     *space);
void     lw_space_weigh_ins   (LwSpace     *space);
void     lw_space_axis_words  (LwSpace     *space);
void     lw_space_end_words   (LwSpace     *space);
void     lw_space_band_names  (LwSpace     *space);
void     lw_space_labels      (LwSpace     *space,
                               double       axis_words);
void     lw_space_log_names   (LwSpace     *space);
void     lw_space_turns       (LwSpace     *space);
void     lw_space_head        (LwSpace     *space);
