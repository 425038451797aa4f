/* A file of people gets new contents, and at no moment is there a half-written one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The file at the end of the links that `path` is, new or in place of what is there, whose mode it keeps; what is protected
 * against writing, or no plain file, is refused. It is on the disk then. FALSE and `error`, which names the path and says
 * what to do; what was there is as it was. */
gboolean lw_replace_file (const char *path,
                          const char *data,
                          gsize       length,
                          GError    **error);
