/* One outcome of a batch as a line of a list: its name, its value, how that changed, and, where it is aimed at or
 * held, a bar with the window and the verdict. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/letter.h"

typedef struct
{
  LwQuantity quantity;
  double value;
  double change;      /* against the ghost; NAN: there is none */
  gboolean aimed;
  double low;         /* where aimed; an open side is infinite */
  double high;
  double held;        /* what it is locked at; NAN: it is not */
  double tolerance;   /* within which it still counts as held */
  const char *more;   /* (nullable) what the value is made of */
  const char *why;    /* (nullable) where the aim comes from; told in words only */
} LwOutcomeLook;

/* Height of the line; more of them where there is more to tell. */
double lw_outcome_height (const LwOutcomeLook *look,
                          const LwLetter      *letter);

void   lw_outcome_draw   (cairo_t             *cr,
                          double               width,
                          const LwOutcomeLook *look,
                          const LwLetter      *letter,
                          const LwPalette     *palette);

/* (transfer full) "+1.2", in the quantity's digits; "" where it is none worth the telling. */
char  *lw_outcome_change (LwQuantity           quantity,
                          double               change);

/* (transfer full) (nullable) how it stands: "within", "held", "+1.2 off"; NULL where nothing is wanted of it. */
char  *lw_outcome_verdict (const LwOutcomeLook *look);

/* (transfer full) "58 to 66", "at most 6": a window in the quantity's digits. */
char  *lw_outcome_window  (LwQuantity          quantity,
                           double              low,
                           double              high);
