/* Names and ids from the names of files. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/import.h"

#include <string.h>

#include "season/document.h"
#include "season/shape.h"

static char *
id_of (const char   *name,
       const char   *otherwise,
       gboolean    (*taken) (gconstpointer data, const char *id),
       gconstpointer data)
{
  g_autofree char *like = g_str_to_ascii (name, "C");

  for (char *at = like; *at != '\0'; at++)
    *at = g_ascii_isalnum (*at) ? g_ascii_tolower (*at) : '-';
  if (strlen (like) > LW_MAX_ID - 8)
    like[LW_MAX_ID - 8] = '\0';

  for (guint i = 1;; i++)
    {
      g_autofree char *id = *like == '\0' ? g_strdup_printf ("%s-%u", otherwise, i)
                            : i == 1 ? g_strdup (like) : g_strdup_printf ("%s-%u", like, i);

      if (!taken (data, id))
        return g_steal_pointer (&id);
    }
}

static gboolean
has_leaf (gconstpointer season,
          const char   *id)
{
  return lw_season_profile (season, id) != NULL;
}

static gboolean
has_weather (gconstpointer season,
             const char   *id)
{
  return lw_season_weather (season, id) != NULL;
}

static gboolean
has_log (gconstpointer batch,
         const char   *id)
{
  return lw_batch_log (batch, id) != NULL;
}

char *
lw_import_leaf_id (const LwSeason *season,
                   const char     *name)
{
  return id_of (name, "leaf", has_leaf, season);
}

char *
lw_import_weather_id (const LwSeason *season,
                      const char     *name)
{
  return id_of (name, "weather", has_weather, season);
}

char *
lw_import_log_id (const LwBatch *batch,
                  const char    *name)
{
  return id_of (name, "log", has_log, batch);
}

char *
lw_import_name (const char *path)
{
  g_autofree char *base = g_path_get_basename (path);
  char *dot = strrchr (base, '.');
  g_autofree char *name = NULL;

  if (dot != NULL && dot != base)
    *dot = '\0';
  name = g_filename_display_name (base);

  return g_utf8_strlen (name, -1) > LW_MAX_TEXT ? g_utf8_substring (name, 0, LW_MAX_TEXT) : g_steal_pointer (&name);
}
