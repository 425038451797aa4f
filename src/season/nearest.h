/* The known name nearest to a mistyped one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* (transfer none) (nullable) of `names` (const char *), the one that few slips of the
 * hand turn into `typed`; NULL if none is near. */
const char *lw_nearest (const char *typed,
                        GPtrArray  *names);
