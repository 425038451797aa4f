/* leafwend-cli heat: what the steps cost, as CSV. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include "season/csv.h"
#include "season/text.h"
#include "study/heat.h"

#define SAMPLES 160 /* a step, as in the window; the sums do not hang on it */

static const char told[] = N_ (
  "Columns:\n"
  "  batch, step, kind     a row for each step, from 1; then step 0, kind “batch”, with the sums\n"
  "  minutes               of one load\n"
  "  loads                 fresh leaf over the vessel's load, at least 1; for the batch, the most of any step\n"
  "  heat_kwh              into the leaf from wall, steam and heated air\n"
  "  free_heat_kwh         from sun and room air; negative where the leaf warms the room\n"
  "  fuel_kwh              heat_kwh over the hearth's efficiency\n"
  "  water_kg              driven off, less what condensed\n"
  "  hands_h               hours for which one person is bound\n"
  "  made_kg               weight of the leaf at the step's end\n"
  "  fuel_kwh_per_kg_made  of the batch only\n"
  "Heat into the leaf for each unit of fuel, and the share of its time that a step binds a person:");

/* The efficiencies and their sources stand in one place, the table of hearths. */
static char *
help_text (void)
{
  GString *text = g_string_new (_ (told));

  for (int kind = 0; kind < LW_N_KINDS; kind++)
    {
      const LwHearth *hearth = lw_hearth ((LwKind) kind);

      g_string_append_printf (text, "\n  %-10s %4.2f  %4.2f  %s", lw_kind_row ((LwKind) kind)->id, hearth->efficiency,
                              hearth->hands, hearth->source);
    }
  g_string_append_printf (text, "\n%s",
                          _ ("Turning binds a quarter of a minute for each kg of fresh leaf and turn (assumed)."));

  return g_string_free (text, FALSE);
}

static void
append_row (GString          *csv,
            const LwBatch    *batch,
            guint             step,
            const LwHeatStep *heat,
            double            made_kg)
{
  const double cells[] = {
    heat->minutes, heat->loads, heat->heat_j / LW_J_PER_KWH, heat->free_j / LW_J_PER_KWH, heat->fuel_j / LW_J_PER_KWH,
    heat->water_kg, heat->hands_h, made_kg,
  };

  lw_csv_append_text (csv, batch->name);
  g_string_append_printf (csv, ",%u,%s", step, step > 0 ? lw_kind_row (batch->steps[step - 1].kind)->id : "batch");
  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    lw_csv_append_number (csv, cells[i]);
}

static gboolean
heat_batch (LwSeason *season,
            guint     at,
            LwMarch  *march,
            GString  *csv)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (LwPlan) plan = lw_plan_new (season, at);
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES });
  g_autoptr (LwHeat) heat = NULL;

  /* Sums over half a batch would mislead. */
  if (track->failure.failed)
    {
      g_autofree char *text = lw_plan_failure_text (plan, batch, track);

      lw_complain ("%s: %s", batch->name, text);
      return FALSE;
    }

  heat = lw_heat_new (plan, batch, track);
  for (guint i = 0; i < heat->n_steps; i++)
    {
      append_row (csv, batch, i + 1, &heat->steps[i], lw_track_end (track, i, -1).kg_per_kg_fresh * batch->fresh_kg);
      g_string_append (csv, ",\n");
    }
  append_row (csv, batch, 0, &heat->batch, heat->made_kg);
  lw_csv_append_number (csv, lw_heat_fuel_kwh_per_kg (heat));
  g_string_append_c (csv, '\n');

  return TRUE;
}

int
lw_command_heat (int    argc,
                 char **argv)
{
  g_auto (GStrv) names = NULL;
  g_autofree char *output = NULL, *help = help_text ();
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING_ARRAY, &names,
      N_ ("Only this batch; its name or the name's first word. May be given again."), N_ ("NAME") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  gboolean whole = TRUE;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GArray) batches = NULL;
  g_autoptr (LwMarch) march = NULL;
  g_autoptr (GString) csv = g_string_new ("batch,step,kind,minutes,loads,heat_kwh,free_heat_kwh,fuel_kwh,water_kg,"
                                          "hands_h,made_kg,fuel_kwh_per_kg_made\n");

  if (!lw_command_options_told ("heat", help, entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  season = lw_command_season (path);
  if (season == NULL)
    return LW_EXIT_WRONG;
  batches = lw_command_batches (season, names);
  if (batches == NULL)
    return LW_EXIT_WRONG;

  march = lw_march_new ();
  g_assert (march != NULL);
  for (guint i = 0; i < batches->len; i++)
    whole &= heat_batch (season, g_array_index (batches, guint, i), march, csv);

  if (!lw_command_output (output, csv->str, csv->len) || !whole)
    return LW_EXIT_WRONG;

  return 0;
}
