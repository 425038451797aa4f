/* leafwend-cli model: the model's numbers, as docs/model.md shows them. English, like the law's
 * own table: symbols and settings are named as in documents. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include "season/listing.h"
#include "season/text.h"

static void
append_law (GString *table,
            gboolean csv)
{
  static const char *const head[] = { "symbol", "value", "unit", "lowest", "highest", "meaning", "source" };
  const LwLawField *row = lw_law_fields ();

  lw_listing_append_head (table, csv, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < LW_N_LAW; i++)
    {
      g_autofree char *value = lw_listing_number (row[i].value);
      g_autofree char *low = lw_listing_number (row[i].low);
      g_autofree char *high = lw_listing_number (row[i].high);
      const char *cells[] = { row[i].symbol, value, row[i].unit, low, high, row[i].meaning, row[i].source };

      lw_listing_append_row (table, csv, G_N_ELEMENTS (cells), cells);
    }
}

static void
append_steps (GString *table,
              gboolean csv)
{
  static const char *const head[] = { "step", "setting", "start", "lowest", "highest", "unit", "weather" };

  lw_listing_append_head (table, csv, G_N_ELEMENTS (head), head);
  for (guint kind = 0; kind < LW_N_KINDS; kind++)
    {
      const LwKindRow *row = lw_kind_row ((LwKind) kind);

      for (guint i = 0; i < row->n_settings; i++)
        {
          const LwKindSetting *set = &row->settings[i];
          const LwSettingRow *setting = lw_setting_row (set->setting);
          g_autofree char *start = lw_listing_number (set->start);
          g_autofree char *low = lw_listing_number (set->low);
          g_autofree char *high = lw_listing_number (set->high);
          const char *weather = set->weather ? "follows" : "";
          const char *cells[] = { row->id, setting->id, start, low, high, setting->unit, weather };

          lw_listing_append_row (table, csv, G_N_ELEMENTS (cells), cells);
        }
    }
}

int
lw_command_model (int    argc,
                  char **argv)
{
  gboolean csv = FALSE, steps = FALSE;
  g_autofree char *output = NULL;
  const GOptionEntry entries[] = {
    { "steps", 's', 0, G_OPTION_ARG_NONE, &steps,
      N_ ("The kinds of step and their settings instead of the law"), NULL },
    { "csv", 'c', 0, G_OPTION_ARG_NONE, &csv, N_ ("CSV instead of Markdown"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) table = g_string_new (NULL);

  g_set_prgname ("leafwend-cli model");
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (!g_option_context_parse (context, &argc, &argv, &error))
    {
      lw_complain (_ ("%s: %s; try “leafwend-cli %s --help”"), "model", error->message, "model");
      return LW_EXIT_USAGE;
    }
  if (argc > 1)
    {
      lw_complain (_ ("model: takes no file; try “leafwend-cli model --help”"));
      return LW_EXIT_USAGE;
    }

  if (steps)
    append_steps (table, csv);
  else
    append_law (table, csv);

  return lw_command_output (output, table->str, table->len) ? 0 : LW_EXIT_WRONG;
}
