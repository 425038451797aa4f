/* What the tests of the shipped seasons share. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"

#define DEMO_LESSONS 0 /* in the place of a year: the lessons */

/* (transfer full) data/ondry-ridge-`year`.leafwend, read without a problem. */
LwSeason *demo_load      (int             year);

/* (transfer full) the whole track of a batch, sampled every half minute. */
LwTrack  *demo_march     (LwSeason       *season,
                          guint           batch);

void      demo_add_story (void);
void      demo_add_lessons (void);
void      demo_add_teas  (void);
void      demo_add_fit   (void);
void      demo_add_replan (void);
