/* What the commands share. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <stdio.h>
#include <string.h>

#include "season/document.h"
#include "season/export.h"
#include "season/text.h"

void
lw_complain (const char *format,
             ...)
{
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  fprintf (stderr, "leafwend-cli: %s\n", text);
}

gboolean
lw_command_options (const char         *name,
                    const GOptionEntry *entries,
                    int                *argc,
                    char             ***argv,
                    const char        **season_path)
{
  return lw_command_options_told (name, NULL, entries, argc, argv, season_path);
}

gboolean
lw_command_parse (const char         *name,
                  const char         *operands,
                  const char         *told,
                  const GOptionEntry *entries,
                  int                *argc,
                  char             ***argv)
{
  g_autoptr (GOptionContext) context = g_option_context_new (operands);
  g_autoptr (GError) error = NULL;
  g_autofree char *program = g_strdup_printf ("leafwend-cli %s", name);

  g_set_prgname (program);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_set_description (context, told);
  if (g_option_context_parse (context, argc, argv, &error))
    return TRUE;

  lw_complain (_ ("%s: %s; try “leafwend-cli %s --help”"), name, error->message, name);
  return FALSE;
}

gboolean
lw_command_options_told (const char         *name,
                         const char         *told,
                         const GOptionEntry *entries,
                         int                *argc,
                         char             ***argv,
                         const char        **season_path)
{
  if (!lw_command_parse (name, _ ("SEASON"), told, entries, argc, argv))
    return FALSE;

  if (*argc != 2)
    {
      lw_complain (*argc < 2 ? _ ("%s: name a season's file; try “leafwend-cli %s --help”")
                             : _ ("%s: one season's file at a time; try “leafwend-cli %s --help”"), name, name);
      return FALSE;
    }

  *season_path = (*argv)[1];
  return TRUE;
}

LwSeason *
lw_command_season (const char *path)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwSeason *season = lw_document_load (path, problems);

  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *text = lw_problem_text (g_ptr_array_index (problems, i), path);

      fprintf (stderr, "%s\n", text);
    }

  return season;
}

static int
find_batch (const LwSeason *season,
            const char     *name)
{
  int found = lw_season_batch (season, name);
  gsize length = strlen (name);

  if (found >= 0)
    return found;

  for (guint i = 0; i < season->n_batches; i++)
    {
      const char *have = season->batches[i]->name;

      if (g_str_has_prefix (have, name) && have[length] == ' ')
        {
          if (found >= 0)
            return -1;
          found = (int) i;
        }
    }

  return found;
}

GArray *
lw_command_batches (const LwSeason *season,
                    char          **names)
{
  g_autoptr (GArray) batches = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; names == NULL && i < season->n_batches; i++)
    g_array_append_val (batches, i);

  for (guint k = 0; names != NULL && names[k] != NULL; k++)
    {
      int found = find_batch (season, names[k]);
      guint i = (guint) MAX (found, 0);

      if (found < 0)
        {
          lw_complain (_ ("the season has no batch “%s”, or more than one that begins so; its batches are:"), names[k]);
          for (i = 0; i < season->n_batches; i++)
            fprintf (stderr, "  %s\n", season->batches[i]->name);
          return NULL;
        }
      g_array_append_val (batches, i);
    }

  return g_steal_pointer (&batches);
}

gboolean
lw_command_batch (const LwSeason *season,
                  const char     *name,
                  guint          *batch)
{
  char *names[] = { (char *) name, NULL };
  g_autoptr (GArray) found = lw_command_batches (season, names);

  if (found != NULL)
    *batch = g_array_index (found, guint, 0);

  return found != NULL;
}

gboolean
lw_command_output (const char *path,
                   const char *text,
                   gsize       length)
{
  g_autoptr (GError) error = NULL;

  if (path == NULL || strcmp (path, "-") == 0)
    {
      if (fwrite (text, 1, length, stdout) == length && fflush (stdout) == 0)
        return TRUE;
      lw_complain (_ ("standard output could not be written: %s"), g_strerror (errno));
      return FALSE;
    }

  if (lw_export_save (path, text, length, &error))
    return TRUE;

  lw_complain ("%s", error->message);
  return FALSE;
}

gboolean
lw_command_save (const LwSeason *season,
                 const char     *path)
{
  g_autoptr (GError) error = NULL;

  if (strcmp (path, "-") == 0)
    {
      gsize length;
      g_autofree char *text = lw_document_write (season, &length);

      return lw_command_output (path, text, length);
    }

  if (!lw_document_save (season, path, &error))
    lw_complain ("%s", error->message);

  return error == NULL;
}
