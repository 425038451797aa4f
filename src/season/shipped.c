/* Where the files are that ship beside the program. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/shipped.h"

#include "config.h"

char *
lw_shipped_docs_path (const char *name)
{
  const char *folder = g_getenv ("LEAFWEND_DOCS");

  return folder != NULL ? g_build_filename (folder, name, NULL) : g_build_filename (LW_DATA_DIR, "docs", name, NULL);
}

char *
lw_shipped_path (const char *name)
{
  const char *folder = g_getenv ("LEAFWEND_DATA");

  return g_build_filename (folder != NULL ? folder : LW_DATA_DIR, name, NULL);
}
