/* leafwend-cli teas: kinds of tea, their aims and where each window comes from. Outcomes are named
 * as in documents, and the words are the file's own. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <math.h>
#include <string.h>

#include "season/listing.h"
#include "season/shipped.h"
#include "season/text.h"

static char *
side_text (double side)
{
  return isfinite (side) ? lw_listing_number (side) : g_strdup ("");
}

static void
append_aim (GString       *to,
            gboolean       csv,
            const LwBatch *kind,
            const LwAim   *aim)
{
  const LwQuantityRow *row = lw_quantity_row (aim->of);
  g_autofree char *low = side_text (aim->low);
  g_autofree char *high = side_text (aim->high);
  const char *source = aim->note != NULL ? aim->note : "";
  const char *cells[] = { kind->name, row->id, low, high, row->unit, source };
  guint skip = csv ? 0 : 1; /* its name is the heading */

  lw_listing_append_row (to, csv, G_N_ELEMENTS (cells) - skip, cells + skip);
}

static void
append_kind (GString       *to,
             gboolean       csv,
             const LwBatch *kind)
{
  static const char *const head[] = { "aim", "low", "high", "unit", "source" };

  if (!csv)
    {
      g_string_append_printf (to, "%s## %s\n\n", to->len > 0 ? "\n" : "", kind->name);
      if (kind->note != NULL)
        g_string_append_printf (to, "%s\n\n", kind->note);
      if (kind->n_aims > 0)
        lw_listing_append_head (to, csv, G_N_ELEMENTS (head), head);
    }

  for (guint i = 0; i < kind->n_aims; i++)
    append_aim (to, csv, kind, &kind->aims[i]);
}

static char *
list_text (const LwSeason *teas,
           gboolean        csv)
{
  static const char *const head[] = { "tea", "aim", "low", "high", "unit", "source" };
  g_autoptr (GString) list = g_string_new (NULL);

  if (csv)
    lw_listing_append_head (list, csv, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < teas->n_batches; i++)
    append_kind (list, csv, teas->batches[i]);

  return g_string_free (g_steal_pointer (&list), FALSE);
}

int
lw_command_teas (int    argc,
                 char **argv)
{
  gboolean csv = FALSE;
  g_autofree char *output = NULL, *path = NULL, *list = NULL;
  const GOptionEntry entries[] = {
    { "csv", 'c', 0, G_OPTION_ARG_NONE, &csv, N_ ("CSV instead of Markdown"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  g_autoptr (GOptionContext) context = g_option_context_new (_ ("[SEASON]"));
  g_autoptr (GError) error = NULL;
  g_autoptr (LwSeason) teas = NULL;

  g_set_prgname ("leafwend-cli teas");
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  g_option_context_set_description (context, _ ("A season's batches are taken as kinds of tea, with the aims of their finished tea;\n"
                                                "without a season, those that ship with the program."));
  if (!g_option_context_parse (context, &argc, &argv, &error))
    {
      lw_complain (_ ("%s: %s; try “leafwend-cli %s --help”"), "teas", error->message, "teas");
      return LW_EXIT_USAGE;
    }
  if (argc > 2)
    {
      lw_complain (_ ("%s: one season's file at a time; try “leafwend-cli %s --help”"), "teas", "teas");
      return LW_EXIT_USAGE;
    }

  path = argc == 2 ? g_strdup (argv[1]) : lw_shipped_path (LW_SHIPPED_TEAS);
  teas = lw_command_season (path);
  if (teas == NULL)
    return LW_EXIT_WRONG;

  list = list_text (teas, csv);

  return lw_command_output (output, list, strlen (list)) ? 0 : LW_EXIT_WRONG;
}
