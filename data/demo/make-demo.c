/* make-demo FOLDER: writes the two invented seasons and the lessons of Ondry Ridge that ship with the
 * program. Always the same bytes: no clock, no locale, seeded chance. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gio/gio.h>

#include "demo/stage.h"
#include "season/document.h"

static gboolean
write_season (const DemoSeason *script,
              const char       *folder,
              GError          **error)
{
  g_autoptr (LwSeason) season = demo_stage (script);
  g_autofree char *path = g_build_filename (folder, script->file, NULL);
  g_autofree char *text = NULL;
  gsize length;

  text = lw_document_write (season, &length);

  return g_file_set_contents (path, text, (gssize) length, error);
}

int
main (int argc, char **argv)
{
  const DemoSeason *const scripts[] = { &demo_spring_2025, &demo_spring_2026, &demo_lessons };

  if (argc != 2)
    {
      g_printerr ("usage: make-demo FOLDER\n");
      return 2;
    }

  for (guint i = 0; i < G_N_ELEMENTS (scripts); i++)
    {
      g_autoptr (GError) error = NULL;

      if (!write_season (scripts[i], argv[1], &error))
        {
          g_printerr ("make-demo: %s\n", error->message);
          return 1;
        }
    }

  return 0;
}
