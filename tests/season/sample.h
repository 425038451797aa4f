/* A season in which every field of every value is set, for the tests. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/document.h"

/* (transfer full) */
LwSeason *sample_season        (void);

/* Asserts that the two are the same, field by field, to the last bit. */
void      sample_assert_same   (const LwSeason  *a,
                                const LwSeason  *b);

/* (transfer full) reads what must be a season; tells the first problem otherwise. */
LwSeason *sample_read          (const char      *text);
