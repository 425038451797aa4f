/* Ranking guesses. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/guess.h"

#include <math.h>

void
lw_guesses_rank (LwGuess *guesses,
                 guint    n,
                 double   truth)
{
  /* By insertion: few, and those of one distance stay in order. */
  for (guint i = 0; i < n; i++)
    {
      LwGuess guess = guesses[i];
      guint at = i;

      guess.off = guess.value - truth;
      for (; at > 0 && fabs (guesses[at - 1].off) > fabs (guess.off); at--)
        guesses[at] = guesses[at - 1];
      guesses[at] = guess;
    }

  for (guint i = 0; i < n; i++)
    guesses[i].rank = i > 0 && fabs (guesses[i].off) == fabs (guesses[i - 1].off) ? guesses[i - 1].rank : i + 1;
}
