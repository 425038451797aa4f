/* A leaf-state panel: one quantity's curves under the steps' columns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/curve.h"
#include "draw/letter.h"
#include "draw/ticks.h"
#include "season/season.h"
#include "season/spell.h"
#include "study/spread.h"

/* Another batch laid over this one. */
typedef struct
{
  const LwCurves *curves;
  const double *minutes; /* its own step times */
  guint n;
  const int *columns;    /* (nullable) the column of each of its steps, -1: none; NULL: in order */
  double begins;         /* by clock, where `columns` do not count: minutes from the batch's begin to its own */
  const char *tag;       /* (nullable) a letter, at the line's end, and there */
  const char *name;      /* (nullable) its name as far as there is room */
  LwInk ink;
  guint dash;            /* 0 unbroken; any number, the patterns repeat */
  gboolean thin;         /* one of many */
} LwPanelOverlay;

/* The lines of the batches laid over, kept as a picture: while columns only shift and stretch, it is shifted and
 * stretched with them, and no line is traced anew. */
typedef struct _LwPanelKept LwPanelKept;
LwPanelKept *lw_panel_kept_new  (void);
void         lw_panel_kept_free (LwPanelKept *kept);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwPanelKept, lw_panel_kept_free)

/* x of a minute counted from the batch's begin, whatever the step. */
double       lw_panel_clock_x   (const LwScale *scale,
                                 double         minute);

/* A turning point on the mean's line. */
typedef struct
{
  guint step;
  double minute;
  const char *word;
} LwPanelTurn;

typedef struct
{
  LwQuantity quantity;
  const LwScale *scale;
  const LwCurves *curves;      /* (nullable) the batch as it is */
  const LwCurves *ghost;       /* (nullable) the batch before the change; its own steps' times */
  const double *ghost_minutes; /* its own steps' times; it is drawn in the present columns */
  guint ghost_n;
  const LwBatch *batch;        /* (nullable) for aims and weigh-ins */
  double fresh_moisture_pct;   /* to turn weights into the panel's quantity */
  const char *const *part_names; /* (nullable) with `parts`: shown at the lines' ends */
  gboolean parts;              /* draw each part as a thin line */
  gboolean quick;              /* while dragging: faster, a little rougher lines */
  const char *reading;         /* (nullable) the value at the reading line, beside the name */
  const LwPanelOverlay *overlays; /* (nullable) */
  guint n_overlays;
  gboolean gutter;             /* their names stand beyond the last column, else in the plot */
  LwPanelKept *kept;           /* (nullable) where their picture is kept */
  guint overlays_stamp;        /* another one: they are others, or lie elsewhere */
  double pixels;               /* of the screen in a px, for what is kept; 0: one */
  const LwSpell *spells;       /* (nullable) night and rain behind the curves */
  guint n_spells;
  const LwPanelTurn *turns;    /* (nullable) */
  guint n_turns;
  guint untold;                /* so many last steps are without the value at their end */
  double quiet_from, quiet_to; /* no values of steps' ends between these x: something else will stand there */
  const LwSpread *spread;      /* (nullable) of the batch as it is, with points: bands in the place of the parts' */
} LwPanelLook;

/* (transfer full) array of LwPanelTurn: the track's turning points that concern the quantity. */
GArray *lw_panel_turns (const LwTrack    *track,
                        LwQuantity        quantity);

/* The axis a panel uses for all that it shows: percentages start at 0. */
LwAxis lw_panel_axis  (const LwPanelLook *look);

/* What a weigh-in of `look->batch` says of the panel's quantity, `off` standard deviations up; beside the leaf's temperature
 * the wall's, where the view shows walls. FALSE if it says nothing of it. */
gboolean lw_panel_measured (const LwPanelLook *look,
                            const LwWeighIn   *weigh_in,
                            double             off,
                            double            *value);

/* The lowest and the highest that the bands reach; FALSE where there are none. */
gboolean lw_panel_spans  (const LwPanelLook *look,
                          double            *low,
                          double            *high);

/* Lowest and highest temperature of the logs that are shown; FALSE if there are none. */
gboolean lw_panel_logs_range (const LwPanelLook *look,
                              double            *low,
                              double            *high);

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

/* x at which a panel's name and unit have ended, from the side where reading begins: what stands beside
 * the name begins here. */
double lw_panel_head_width (LwQuantity         quantity,
                            const LwLetter    *letter);

/* The baseline of the name. */
double lw_panel_head_baseline (const LwLetter *letter);

/* The time ruler under the blocks: each column's own ticks, chosen so that words never meet. */
void   lw_ruler_draw  (cairo_t           *cr,
                       double             width,
                       double             height,
                       const LwScale     *scale,
                       const LwLetter    *letter,
                       const LwPalette   *palette);

/* The same by clock, with leads in its top LW_RULER_LEAD px from the blocks to their columns. */
#define LW_RULER_LEAD 9.0
void   lw_ruler_draw_clock (cairo_t           *cr,
                            double             width,
                            const LwScale     *scale,
                            gint64             when_s,
                            const LwLetter    *letter,
                            const LwPalette   *palette);
