/* From a script to a season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "demo/script.h"

/* (transfer full) */
LwSeason *demo_stage (const DemoSeason *script);
