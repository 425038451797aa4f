/* The papers that cards are printed on. Points, 72 to the inch. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef enum
{
  LW_PAPER_A4,
  LW_PAPER_A3,
  LW_PAPER_LETTER,
} LwPaper;

#define LW_N_PAPERS (LW_PAPER_LETTER + 1)

/* "A4", as people and the command line call it, and as printing systems do: "iso_a4". */
const char *lw_paper_name (LwPaper     paper);
const char *lw_paper_pwg  (LwPaper     paper);

/* By name, capitals or not; -1 if there is none. */
int         lw_paper_find (const char *name);

void        lw_paper_size (LwPaper     paper,
                           gboolean    landscape,
                           double     *width,
                           double     *height);
