/* What is asked of a batch's steadiness, remembered from one session to the next. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/steady.h"

void lw_steady_memory_recall (LwSteady *steady);
void lw_steady_memory_keep   (LwSteady *steady);
