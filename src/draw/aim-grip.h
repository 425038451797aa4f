/* What a pointer in a panel takes hold of among the aims, and what a drag makes of it: pure geometry. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/panel.h"

typedef enum
{
  LW_AIM_NONE,
  LW_AIM_LOW,   /* one side of a bracket */
  LW_AIM_HIGH,
  LW_AIM_BOTH,  /* the bracket between them: both sides move */
  LW_AIM_NEW,   /* the column's end edge, where there is none */
} LwAimPart;

typedef struct
{
  LwAimPart part;
  int step;     /* that the aim stands at; -1: the finished tea */
  LwAim aim;    /* as it was; its note is borrowed */
  double from;  /* the value under the pointer when it was taken */
} LwAimGrip;

/* What lies under x, y in a panel of `height`. */
LwAimGrip lw_aim_grip_at   (const LwPanelLook *look,
                            const LwAxis      *axis,
                            const LwLetter    *letter,
                            double             height,
                            double             x,
                            double             y);

/* The aim with the pointer at `y`, on notches, on finer ones if `fine`; its sides in their order and range. */
LwAim     lw_aim_grip_drag (const LwAimGrip   *grip,
                            const LwAxis      *axis,
                            const LwLetter    *letter,
                            double             height,
                            double             y,
                            gboolean           fine);
