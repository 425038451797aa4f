/* Sizes: ISO 216 for A, ANSI/ASME Y14.1 for Letter; names: PWG 5101.1 media names. From memory. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/paper.h"

#define MM (72 / 25.4)

static const struct
{
  const char *name, *pwg;
  double width, height;
} papers[LW_N_PAPERS] = {
  [LW_PAPER_A4] = { "A4", "iso_a4", 210 * MM, 297 * MM },
  [LW_PAPER_A3] = { "A3", "iso_a3", 297 * MM, 420 * MM },
  [LW_PAPER_LETTER] = { "Letter", "na_letter", 612, 792 },
};

const char *
lw_paper_name (LwPaper paper)
{
  return papers[paper].name;
}

const char *
lw_paper_pwg (LwPaper paper)
{
  return papers[paper].pwg;
}

int
lw_paper_find (const char *name)
{
  for (int i = 0; i < LW_N_PAPERS; i++)
    if (g_ascii_strcasecmp (papers[i].name, name) == 0)
      return i;

  return -1;
}

void
lw_paper_size (LwPaper  paper,
               gboolean landscape,
               double  *width,
               double  *height)
{
  *width = landscape ? papers[paper].height : papers[paper].width;
  *height = landscape ? papers[paper].width : papers[paper].height;
}
