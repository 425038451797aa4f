/* How a log's line looks wherever it is drawn: each place of a thermocouple has an ink and a dash. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "season/log.h"

LwInk lw_log_ink  (LwLogOf          of,
                   const LwPalette *palette);

/* For lw_dash_use. */
guint lw_log_dash (LwLogOf          of);
