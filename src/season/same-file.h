/* Whether two paths lead to one file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* By the file's place on the disk, so also through a link; by their names where one is not there. FALSE if one is
 * NULL. */
gboolean lw_same_file (const char *a,
                       const char *b);
