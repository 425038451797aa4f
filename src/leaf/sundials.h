/* What is not the same in SUNDIALS 6.4 and 7.x. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cvode/cvode.h>
#include <sundials/sundials_config.h>

/* NULL if memory cannot be had. */
SUNContext lw_sundials_new     (void);

/* Failures are results here: CVODE must not print them. */
void       lw_sundials_silence (SUNContext  context,
                                void       *cvode);
