/* How tightly leaf holds its water. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/law.h"

/* Water activity, 0..1, of leaf with `water` > 0 kg/kg at `temp_c`: modified Halsey,
 * exp (-exp (a + b T) (100 X)^-c). Form: ASABE D245; constants: see law.c. */
double lw_sorption_activity (const LwLaw *law,
                             double       water,
                             double       temp_c);

/* Water at which the activity is `activity`: the inverse, in closed form. */
double lw_sorption_water    (const LwLaw *law,
                             double       activity,
                             double       temp_c);
