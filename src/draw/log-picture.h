/* A small picture of a log by itself: its curves over its own time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/letter.h"
#include "season/log.h"

/* Draws into 0,0..width,height. */
void lw_log_picture_draw (cairo_t         *cr,
                          double           width,
                          double           height,
                          const LwLog     *log,
                          const LwLetter  *letter,
                          const LwPalette *palette);
