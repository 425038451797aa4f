/* What the row's files share: over-row.c is the widget, over-row-draw.c where its blocks are and how they look. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/over-row.h"

#define LW_OVER_NEAR 10.0  /* of a mark, to be pointed at, px */
#define LW_OVER_BUTTON 20  /* width of what takes it off */

typedef struct
{
  GskRenderNode *node; /* (nullable) at 0,0 */
  int width;
} LwKeptBlock;

struct _LwOverRow
{
  GtkWidget parent_instance;

  LwSession *session;
  LwLaid *laid;
  GtkWidget *off;
  LwKeptBlock *blocks;          /* of each step */
  GskRenderNode *name;   /* (nullable) what stands in the gutter, at 0,0 */
  double name_width;
  guint drawn;           /* stamp of what the blocks show */
  gboolean drawn_clock;
  guint told;            /* stamp of what a screen reader was told */
  gboolean told_clock;   /* and whether by the clock */
};

/* over-row-draw.c */

/* (transfer full) what of its time lies beyond the columns by the clock, "" if nothing or by step. */
char    *lw_over_row_beyond     (LwOverRow   *self);

/* Left and right of a step's block; FALSE if it has none. */
gboolean lw_over_row_place      (LwOverRow   *self,
                                 guint        step,
                                 double      *left,
                                 double      *right);

/* Whether a run of steps without a match begins here, and x of its mark. */
gboolean lw_over_row_gap_begins (LwOverRow   *self,
                                 guint        step);
double   lw_over_row_gap_x      (LwOverRow   *self,
                                 guint        first);

/* Whether the whole name has room in a row of that width. */
gboolean lw_over_row_has_name   (LwOverRow   *self,
                                 int          width);

/* x at which the last column ends. */
double   lw_over_row_end_x      (LwOverRow   *self);

/* Drops what is kept. */
void     lw_over_row_drop       (LwOverRow   *self);
void     lw_over_row_draw       (LwOverRow   *self,
                                 GtkSnapshot *snapshot);
