/* Invented weigh-ins: what the makers would have noted of the hidden leaf. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "demo/script.h"

/* Gives `batch`, which `season` does not hold yet, its fresh weight as noted and its weigh-ins. */
void demo_weigh (const LwSeason  *season,
                 LwBatch         *batch,
                 const DemoBatch *script,
                 guint32          seed);
