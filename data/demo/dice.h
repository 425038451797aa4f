/* Chance for the invented seasons: the same numbers from the same seed, everywhere. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* About normal, mean 0 and standard deviation 1, never beyond 6; only sums, no library function
 * whose last digit differs between machines. */
double demo_scatter (GRand *dice);

/* `value` to the nearest 1 / `per_unit`, as short as a decimal can be. */
double demo_round   (double value,
                     double per_unit);
