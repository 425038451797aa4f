/* A name where there is little room: whole, or its first words, never half a word. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/letter.h"

/* (transfer full) (nullable) `name` if it fits into `room` px; else as many of its first words as fit with "…" after
 * them, if a word of letters is among them; else NULL: there is nothing to know it by. `size` and `bold` as in
 * lw_letter_draw. */
char *lw_elide_name (cairo_t        *cr,
                     const LwLetter *letter,
                     double          size,
                     gboolean        bold,
                     double          room,
                     const char     *name);
