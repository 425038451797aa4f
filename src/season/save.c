/* Saving a document: checked, then put in place of the old file as a whole. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/document.h"
#include "season/replace.h"
#include "season/text.h"

/* Whether `data` can be read again: what cannot must never replace a file that can. */
static gboolean
check_readable (const char *path,
                const char *data,
                gsize       length,
                GError    **error)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_read (data, length, problems);
  g_autofree char *shown = g_filename_display_name (path);
  const LwProblem *first;

  if (season != NULL)
    return TRUE;

  first = g_ptr_array_index (problems, 0);
  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL,
               _ ("“%s” was not saved, since it could not be opened again: %s %s"), shown,
               first->what, first->remedy);

  return FALSE;
}

gboolean
lw_document_save (const LwSeason *season,
                  const char     *path,
                  GError        **error)
{
  gsize length;
  g_autofree char *data = lw_document_write (season, &length);

  return check_readable (path, data, length, error) && lw_replace_file (path, data, length, error);
}
