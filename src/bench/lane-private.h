/* What the lane's files share: lane.c shows, lane-pointer.c drags, lane-keys.c types. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/grip.h"
#include "bench/lane.h"

struct _LwLane
{
  GtkWidget parent_instance;

  LwSession *session;
  GPtrArray *blocks;  /* GtkWidget */
  GPtrArray *adds;    /* GtkMenuButton, one more than blocks */
  int add_height;

  GtkGesture *gesture;
  LwGrip grip;
  gboolean pressed;
  gboolean dragging;
  double press_x, press_y;
  char *tag;          /* the value at the pointer */
  double tag_x, tag_y;
};

/* Height of the blocks, under the row of "+" buttons. */
double lw_lane_block_height (LwLane      *self);

/* lane-pointer.c */
void   lw_lane_add_pointer  (LwLane      *self);
void   lw_lane_snapshot_tag (LwLane      *self,
                             GtkSnapshot *snapshot);

/* lane-keys.c */
void   lw_lane_add_keys     (LwLane      *self);
