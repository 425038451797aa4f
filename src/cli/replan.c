/* leafwend-cli replan: a batch under way, corrected by what was weighed, and its rest planned anew. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <stdio.h>

#include "season/listing.h"
#include "season/document.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/replan.h"

static const char told[] = N_ (
  "Corrects what is known of the leaf by the weigh-ins, each weighed by its own uncertainty and the model's, and turns\n"
  "what is still ahead by as little as meets the aims that are still ahead. Steps that have passed stay as they are; of\n"
  "the step under way only the time may change, and not below what has passed.\n"
  "  WHEN  \"step 2 minute 4.5\"; left out, the moment of the last weigh-in\n"
  "Exit status: 0 every aim ahead is met, 1 the file or the work failed, 2 wrong usage, 3 an aim is missed.");

/* FALSE and a complaint unless `text` says a moment of the batch. */
static gboolean
parse_moment (const LwBatch *batch,
              const char    *text,
              LwInstant      *moment)
{
  g_autoptr (GRegex) form = g_regex_new ("^\\s*step\\s+([0-9]{1,2})\\s+minute\\s+([0-9]+(\\.[0-9]+)?)\\s*$", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;

  if (g_regex_match (form, text, 0, &match))
    {
      g_autofree char *step = g_match_info_fetch (match, 1), *minute = g_match_info_fetch (match, 2);
      guint64 number = g_ascii_strtoull (step, NULL, 10);

      *moment = (LwInstant) { (guint) number - 1, g_ascii_strtod (minute, NULL) };
      if (number >= 1 && number <= batch->n_steps
          && moment->minute <= lw_kind_setting (batch->steps[moment->step].kind, LW_SET_MINUTES)->high)
        return TRUE;
    }

  lw_complain (_ ("replan: “%s” is no moment of the batch, such as \"step 2 minute 4.5\""), text);
  return FALSE;
}

static void
print_points (const LwReplan *replan)
{
  printf ("%s\n", _ ("Weigh-ins:"));
  for (guint i = 0; i < replan->correct->n; i++)
    {
      g_autofree char *said = lw_replan_say_point (&replan->correct->points[i]);
      g_autofree char *far = lw_replan_say_far (&replan->correct->points[i]);

      printf ("  %s\n", said);
      if (far != NULL)
        lw_complain ("replan: %s", far);
    }
  printf ("%s\n", replan->finding);
}

static void
print_rows (const LwReplan *replan,
            const LwBatch  *batch)
{
  printf ("%s\n", replan->n_changed > 0 ? _ ("Settings, was, now and why:") : _ ("No setting need change."));
  for (guint i = 0; i < replan->n_rows; i++)
    {
      const LwReplanRow *row = &replan->rows[i];
      g_autofree char *step = g_strdup_printf ("%u", row->handle.step + 1);
      g_autofree char *was = lw_say_setting (row->handle.setting, row->was);
      g_autofree char *now = lw_say_setting (row->handle.setting, row->now);

      if (row->was == row->now)
        continue;
      lw_listing_cell (step, 3);
      lw_listing_cell (_ (lw_kind_row (batch->steps[row->handle.step].kind)->label), 16);
      lw_listing_cell (_ (lw_setting_row (row->handle.setting)->label), 16);
      lw_listing_cell (was, 14);
      lw_listing_cell (now, 14);
      printf ("  %s\n", row->why);
    }
}

static void
print_aims (const LwReplan *replan)
{
  if (replan->n_aims > 0)
    printf ("%s\n", _ ("Aims ahead: foretold before, with the weigh-ins, and with the new plan:"));
  for (guint i = 0; i < replan->n_aims; i++)
    {
      const LwReplanAim *aim = &replan->aims[i];
      const LwQuantityRow *row = lw_quantity_row (aim->want.of);
      g_autofree char *step = aim->of_tea ? g_strdup (_ ("tea")) : g_strdup_printf ("%u", aim->want.step + 1);
      g_autofree char *planned = g_strdup_printf ("%.*f", row->digits, aim->planned.value);
      g_autofree char *before = g_strdup_printf ("%.*f", row->digits, aim->before.value);
      g_autofree char *after = g_strdup_printf ("%.*f", row->digits, aim->after.value);
      g_autofree char *missed = lw_replan_say_missed (aim);

      lw_listing_cell (step, 3);
      lw_listing_cell (_ (row->label), 16);
      lw_listing_cell (lw_unit_words (row->unit), 14);
      lw_listing_cell (planned, 7);
      lw_listing_cell (before, 7);
      lw_listing_cell (after, 7);
      printf ("  %s\n", missed != NULL ? missed : _ ("met"));
    }
}

/* The exit status. */
static int
replan (LwSeason   *season,
        guint       batch,
        const char *when,
        const char *output)
{
  const LwBatch *here = season->batches[batch];
  LwReplanAsk ask = { 0 };
  g_autoptr (LwReplan) answer = NULL;
  g_autoptr (GError) error = NULL;

  if (when != NULL && !parse_moment (here, when, &ask.now))
    return LW_EXIT_USAGE;
  if (when == NULL && !lw_replan_last (here, &ask.now))
    {
      lw_complain (_ ("%s: nothing that tells of the leaf was weighed or judged"), here->name);
      return LW_EXIT_WRONG;
    }

  answer = lw_replan_new (season, batch, &ask, NULL, &error);
  if (answer == NULL)
    {
      lw_complain ("%s", error->message);
      return LW_EXIT_WRONG;
    }

  print_points (answer);
  print_rows (answer, here);
  print_aims (answer);
  printf ("%s\n", lw_replan_caution ());
  if (output != NULL && !lw_document_save (answer->season, output, &error))
    {
      lw_complain ("%s", error->message);
      return LW_EXIT_WRONG;
    }

  return answer->all_met ? 0 : LW_EXIT_MISSED;
}

int
lw_command_replan (int    argc,
                   char **argv)
{
  g_autofree char *name = NULL, *when = NULL, *output = NULL;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING, &name, N_ ("The batch; its name or the name's first word"), N_ ("NAME") },
    { "at", 'a', 0, G_OPTION_ARG_STRING, &when, N_ ("How far the batch has come"), N_ ("WHEN") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write the season with the correction and the new plan"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  guint at;

  if (!lw_command_options_told ("replan", _ (told), entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (name == NULL)
    {
      lw_complain (_ ("replan: name a batch with --batch; try “leafwend-cli replan --help”"));
      return LW_EXIT_USAGE;
    }

  season = lw_command_season (path);
  if (season == NULL || !lw_command_batch (season, name, &at))
    return LW_EXIT_WRONG;

  return replan (season, at, when, output);
}
