/* Guesses of where a curve ends: how far off each is, and who is nearest. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#define LW_GUESS_MOST 12

typedef struct
{
  char *name;
  double value;   /* in the curve's unit */
  double off;     /* value less truth; filled in */
  guint rank;     /* from 1, the same for the same distance; filled in */
} LwGuess;

/* Fills in and sorts the nearest first, those of one distance as they came. */
void lw_guesses_rank (LwGuess *guesses,
                      guint    n,
                      double   truth);
