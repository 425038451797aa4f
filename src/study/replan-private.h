/* What replan.c asks of replan-words.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/replan.h"

/* (transfer full, translated) what the weigh-ins say of the batch at the moment of the last. */
char *lw_replan_say_finding (const LwCorrect   *correct);

/* (transfer full, translated) why a setting is not left where it was: with it there, and all else as in the new plan,
 * `want` would come out as `met`. */
char *lw_replan_say_why     (const LwReplanRow *row,
                             const LwReplanAim *aim,
                             const LwMet       *met);
