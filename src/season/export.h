/* What the program gives out besides seasons (tables, pictures, cards) on its way into a file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Writes `data` of `length` bytes. A file that is there is replaced whole, at the end of a link where `path` is one; a season's
 * file never is, by whatever name; a device or a pipe is written to. FALSE and `error`, which names the path and says what to
 * do; what was there then is as it was. */
gboolean lw_export_save (const char *path,
                         const char *data,
                         gsize       length,
                         GError    **error);
