/* What something read from a file is called in the season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* (transfer full) the file's name without folder and ending. */
char *lw_import_name (const char *path);

/* (transfer full) `name` as an id, or `otherwise` where none of its letters can stand in one, with a number where
 * `taken` says that it is used. */
char *lw_import_id   (const char *name,
                      const char *otherwise,
                      gboolean  (*taken) (const char *id, gconstpointer data),
                      gconstpointer data);
