/* What a drag on the lane takes hold of and what it makes of the season: pure
 * geometry and edits, no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/letter.h"
#include "draw/scale.h"
#include "season/season.h"

#define LW_BLOCK_INSET 3.0 /* of a block in its column */

typedef enum
{
  LW_GRIP_NONE,
  LW_GRIP_EDGE,  /* the end edge: time */
  LW_GRIP_LINE,  /* the leading setting */
  LW_GRIP_BODY,  /* the place among the steps */
} LwGripPart;

/* One drag. */
typedef struct
{
  LwGripPart part;
  guint step;      /* taken hold of; for BODY where it is now */
  guint from;      /* where it was */
  double off_x;    /* from the pointer to the edge or the block's middle */
  double off_y;    /* from the pointer to the line */
  double block_y;  /* top of the blocks */
  double block_height;
} LwGrip;

/* What lies under x, y. `leading` are the values of the blocks' lines. */
LwGrip    lw_grip_at     (const LwScale  *scale,
                          const LwBatch  *batch,
                          const double   *leading,
                          double          block_y,
                          double          block_height,
                          const LwLetter *letter,
                          double          x,
                          double          y);

/* (transfer full) the season with the pointer at x, y, made from `base`; NULL where nothing changes yet.
 * Moves the dragged column of `scale` along. */
LwSeason *lw_grip_drag   (LwGrip         *grip,
                          const LwSeason *base,
                          guint           batch,
                          LwScale        *scale,
                          const LwLetter *letter,
                          double          x,
                          double          y,
                          gboolean        fine);

/* The setting that the drag changes; -1 for BODY. */
int       lw_grip_setting (const LwGrip  *grip,
                           const LwBatch *batch);
