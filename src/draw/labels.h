/* Where names stand beside the ends of lines: near them and never on one another. Pure geometry. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef struct
{
  double want;  /* y of the line's end */
  double y;     /* of the name's middle; filled in */
  guint lane;   /* which column of names, from 0; filled in */
} LwLabel;

/* Places `n` names, each `height` px high, between top and bottom: together they move as little as can be (least
 * squares), in the order of their lines' ends, so that no two leaders cross. Where one column has no room for all, as
 * many as needed; returns how many, 0 if there are no names or not even one has room. */
guint lw_labels_place (LwLabel *labels,
                       guint    n,
                       double   top,
                       double   bottom,
                       double   height);
