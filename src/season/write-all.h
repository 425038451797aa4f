/* Writing to a file that is open. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* All of it, through interruptions. FALSE and errno if that cannot be; part of it may be written then. */
gboolean lw_write_all (int         fd,
                       const char *data,
                       gsize       length);
