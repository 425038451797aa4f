/* leafwend-cli picture: a batch on one sheet, as PNG, SVG or PDF. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <string.h>

#include "draw/sheet.h"
#include "season/surround.h"
#include "season/text.h"

#define SAMPLES 240

/* A file's name out of a batch's: letters and digits stay, the rest becomes hyphens. */
static char *
file_name (const char *batch)
{
  g_autoptr (GString) name = g_string_new (NULL);

  for (const char *p = batch; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (g_unichar_isalnum (c))
        g_string_append_unichar (name, c);
      else if (name->len > 0 && name->str[name->len - 1] != '-')
        g_string_append_c (name, '-');
    }
  while (name->len > 0 && name->str[name->len - 1] == '-')
    g_string_truncate (name, name->len - 1);
  if (name->len == 0)
    g_string_append (name, "batch");

  return g_string_free (g_steal_pointer (&name), FALSE);
}

static gboolean
draw_batch (LwSeason   *season,
            guint       at,
            LwMarch    *march,
            int         width,
            int         height,
            const char *path)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, at);
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES, .turns = TRUE });
  g_autoptr (GError) error = NULL;

  if (!lw_sheet_save (path, width, height, season, at, track, &error))
    {
      lw_complain ("%s", error->message);
      return FALSE;
    }

  if (track->failure.failed)
    {
      g_autofree char *text = lw_plan_failure_text (plan, season->batches[at], track);

      lw_complain ("%s: %s", season->batches[at]->name, text);
    }

  return !track->failure.failed;
}

static gboolean
is_folder (const char *path)
{
  return g_str_has_suffix (path, "/") || g_file_test (path, G_FILE_TEST_IS_DIR);
}

int
lw_command_picture (int    argc,
                    char **argv)
{
  g_auto (GStrv) names = NULL;
  g_autofree char *output = NULL;
  int width = 1000, height = 700;
  gboolean whole = TRUE;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING_ARRAY, &names,
      N_ ("Only this batch; its name or the name's first word. May be given again."), N_ ("NAME") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output,
      N_ ("The picture, .png, .svg or .pdf; or a folder for a PNG of each batch"), N_ ("FILE") },
    { "width", 0, 0, G_OPTION_ARG_INT, &width, N_ ("Width, 300 to 10000 (1000); a PNG has two pixels for each"), N_ ("SIZE") },
    { "height", 0, 0, G_OPTION_ARG_INT, &height, N_ ("Height, 300 to 10000 (700)"), N_ ("SIZE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GArray) batches = NULL;
  g_autoptr (LwMarch) march = NULL;

  if (!lw_command_options ("picture", entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (output == NULL || MIN (width, height) < 300 || MAX (width, height) > 10000)
    {
      lw_complain (output == NULL ? _ ("picture: say where with -o FILE")
                                  : _ ("picture: width and height take 300 to 10000"));
      return LW_EXIT_USAGE;
    }

  season = lw_command_season (path);
  if (season == NULL)
    return LW_EXIT_WRONG;
  batches = lw_command_batches (season, names);
  if (batches == NULL)
    return LW_EXIT_WRONG;
  if (batches->len != 1 && !is_folder (output))
    {
      lw_complain (_ ("picture: %s can hold one batch; name it with --batch, or give a folder"), output);
      return LW_EXIT_USAGE;
    }
  if (is_folder (output) && g_mkdir_with_parents (output, 0777) != 0)
    {
      lw_complain (_ ("the folder %s could not be made: %s"), output, g_strerror (errno));
      return LW_EXIT_WRONG;
    }

  march = lw_march_new ();
  g_assert (march != NULL);
  for (guint i = 0; i < batches->len; i++)
    {
      guint at = g_array_index (batches, guint, i);
      g_autofree char *stem = file_name (season->batches[at]->name);
      g_autofree char *leaf = g_strconcat (stem, ".png", NULL);
      g_autofree char *file = is_folder (output) ? g_build_filename (output, leaf, NULL) : g_strdup (output);

      whole &= draw_batch (season, at, march, width, height, file);
    }

  return whole ? 0 : LW_EXIT_WRONG;
}
