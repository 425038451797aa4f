/* leafwend-cli spread: how steadily a batch meets its aims. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "cli/spread-table.h"
#include "season/document.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/steadier.h"

#define BAND_POINTS 24

static const char told[] = N_ (
  "Computes the batch many times while leaf, weather and hand vary around what is written down. Tells how the\n"
  "outcomes scatter, how many samples are inside the aims, the process performance index Ppk of each aim\n"
  "(ISO 22514-4, for a normal distribution), and the share of the variation that each source brings: alone, and\n"
  "together with others. The same seed gives the same numbers.\n"
  "  SOURCE=AMOUNT        a standard deviation in the source's unit: wall=5\n"
  "  SOURCE=AMOUNT%       the same as a share of the value: time=3%\n"
  "  .../step, .../batch  by itself in every step, or the same luck in all: wall=5/batch\n"
  "  .../step2            in step 2 alone: wall=8/step2\n"
  "  SOURCE=0, all=0      does not vary; what is named after all=0 does\n"
  "Values stay within the ranges of a season's file. With --steadier settings are turned by notches until more\n"
  "samples are inside, and judged by samples that were not used to find them. With --csv there is a row for each\n"
  "figure: step, outcome, source, figure, value; and one for each setting that --steadier turned.\n"
  "Exit status: 0 all went well, 1 the file or the work failed, 2 wrong usage, 3 nothing steadier was found.\n"
  "Sources and their usual amounts:");

static char *
help_text (void)
{
  GString *text = g_string_new (_ (told));
  LwVary usual[LW_N_VARY];
  LwVarySource all[LW_N_VARY];

  lw_vary_usual (usual);
  for (guint i = 0; i < LW_N_VARY; i++)
    all[i] = i;
  g_string_append_c (text, '\n');
  lw_spread_tell_amounts (text, usual, all, LW_N_VARY);

  return g_string_free (text, FALSE);
}

/* Only for somebody who looks at it. */
static void
show_progress (guint    done,
               guint    total,
               gpointer data)
{
  guint *shown = data, now = (guint) (100.0 * done / MAX (total, 1));

  if (now != *shown)
    fprintf (stderr, "\r%3u %%%s", now, done == total ? "\r     \r" : "");
  *shown = now;
}

static void
tell_steadier (GString          *to,
               const LwBatch    *before,
               const LwSteadier *steadier,
               guint             batch)
{
  const LwBatch *after = steadier->season->batches[batch];

  g_string_append_printf (to, "\n%s\n", _ ("Inside every aim, of samples that were not used to choose:"));
  g_string_append_printf (to, _ ("  as it is               %5.1f %%\n"), 100 * steadier->before);
  g_string_append_printf (to, _ ("  steadiest that was met %5.1f %%, the difference ± %.1f\n"), 100 * steadier->after,
                          100 * steadier->gain_se);
  if (!steadier->better)
    {
      g_string_append (to, _ ("Nothing steadier was found.\n"));
      return;
    }

  for (guint i = 0; i < before->n_steps; i++)
    for (guint s = 0; s < LW_N_SETTINGS; s++)
      if (lw_kind_setting (before->steps[i].kind, s) != NULL
          && lw_step_get (&before->steps[i], s) != lw_step_get (&after->steps[i], s))
        {
          g_autofree char *was = lw_say_setting (s, lw_step_get (&before->steps[i], s));
          g_autofree char *is = lw_say_setting (s, lw_step_get (&after->steps[i], s));

          const char *kind = _ (lw_kind_row (before->steps[i].kind)->label);

          g_string_append_printf (to, "  %u  %s  %s: %s → %s\n", i + 1, kind, _ (lw_setting_row (s)->label), was, is);
        }
}

static void
csv_steadier (GString          *to,
              const LwBatch    *before,
              const LwSteadier *steadier,
              guint             batch)
{
  const LwBatch *after = steadier->season->batches[batch];
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (to, ",,,steadier-before,%s\n", g_ascii_dtostr (digits, sizeof digits, steadier->before));
  g_string_append_printf (to, ",,,steadier-after,%s\n", g_ascii_dtostr (digits, sizeof digits, steadier->after));
  g_string_append_printf (to, ",,,steadier-found,%d\n", steadier->better);
  for (guint i = 0; i < before->n_steps; i++)
    for (guint s = 0; s < LW_N_SETTINGS; s++)
      if (lw_kind_setting (before->steps[i].kind, s) != NULL
          && lw_step_get (&before->steps[i], s) != lw_step_get (&after->steps[i], s))
        g_string_append_printf (to, "%u,,,%s,%s\n", i + 1, lw_setting_row (s)->id,
                                g_ascii_dtostr (digits, sizeof digits, lw_step_get (&after->steps[i], s)));
}

typedef struct
{
  gboolean csv;
  gboolean bands;
  gboolean steadier;
  const char *found;   /* where the season found is written, (nullable) */
  const char *output;  /* (nullable) */
} Wanted;

/* The exit status. */
static int
answer (LwSeason          *season,
        guint              at,
        const LwSpreadAsk *ask,
        const Wanted      *wanted)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (LwSpread) spread = lw_spread_new (season, at, ask, NULL);
  g_autoptr (LwSteadier) steadier = NULL;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  if (spread != NULL && wanted->steadier)
    {
      g_autoptr (GArray) free = lw_reach_free (season, at, 0);

      if (spread->n_aims == 0)
        {
          lw_complain (_ ("%s: neither the batch nor one of its steps has an aim"), batch->name);
          return LW_EXIT_WRONG;
        }
      steadier = lw_steadier_new (season, at, ask, free, NULL);
    }
  if (spread == NULL || (wanted->steadier && steadier == NULL))
    {
      lw_complain (_ ("%s: the batch cannot be computed; “leafwend-cli run” tells why"), batch->name);
      return LW_EXIT_WRONG;
    }

  if (wanted->bands)
    lw_spread_bands (text, spread);
  else if (wanted->csv)
    lw_spread_csv (text, spread);
  else
    lw_spread_tell (text, batch, spread, ask);

  if (steadier != NULL && wanted->csv)
    csv_steadier (text, batch, steadier, at);
  else if (steadier != NULL)
    tell_steadier (text, batch, steadier, at);

  if (!lw_command_output (wanted->output, text->str, text->len))
    return LW_EXIT_WRONG;
  if (steadier != NULL && wanted->found != NULL && !lw_document_save (steadier->season, wanted->found, &error))
    {
      lw_complain ("%s", error->message);
      return LW_EXIT_WRONG;
    }

  return steadier != NULL && !steadier->better ? LW_EXIT_MISSED : 0;
}

/* FALSE and a complaint where an option does not fit. */
static gboolean
ask_of (LwSpreadAsk *ask,
        gint64       samples,
        gint64       rows,
        gint64       seed,
        char       **varies)
{
  g_autoptr (GError) error = NULL;

  if (samples < 2 || samples > LW_SPREAD_MOST)
    lw_complain (_ ("spread: --samples takes 2 to %d"), LW_SPREAD_MOST);
  else if (rows < 0 || rows > LW_SPREAD_MOST)
    lw_complain (_ ("spread: --rows takes 0 to %d"), LW_SPREAD_MOST);
  else if (seed < 1 || seed > G_MAXUINT32)
    lw_complain (_ ("spread: --seed takes 1 to %u"), G_MAXUINT32);
  else
    {
      ask->samples = (guint) samples;
      ask->rows = (guint) rows;
      ask->seed = (guint32) seed;
      for (guint i = 0; varies != NULL && varies[i] != NULL && error == NULL; i++)
        lw_vary_parse (varies[i], ask->varies, &error);
      if (error == NULL)
        return TRUE;
      lw_complain (_ ("spread: %s; try “leafwend-cli spread --help”"), error->message);
    }

  return FALSE;
}

/* FALSE and a complaint where a source is held to a step that has nothing of it. */
static gboolean
steps_fit (const LwSeason    *season,
           guint              at,
           const LwSpreadAsk *ask)
{
  for (guint i = 0; i < LW_N_VARY; i++)
    if (ask->varies[i].only > 0 && !lw_chance_has (season, at, i, ask->varies[i].only))
      {
        lw_complain (_ ("spread: step %u of “%s” has no %s that could vary"), ask->varies[i].only,
                     season->batches[at]->name, _ (lw_vary_row (i)->label));
        return FALSE;
      }

  return TRUE;
}

int
lw_command_spread (int    argc,
                   char **argv)
{
  LwSpreadAsk ask;
  Wanted wanted = { 0 };
  g_auto (GStrv) varies = NULL;
  g_autofree char *name = NULL, *output = NULL, *found = NULL, *help = help_text ();
  gint64 samples, rows, seed;
  guint shown = 0, at;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING, &name, N_ ("The batch; its name or the name's first word"), N_ ("NAME") },
    { "vary", 0, 0, G_OPTION_ARG_STRING_ARRAY, &varies, N_ ("By how much a source varies. May be given again."),
      N_ ("SOURCE=AMOUNT") },
    { "samples", 'n', 0, G_OPTION_ARG_INT64, &samples, N_ ("So many samples (2000)"), N_ ("N") },
    { "rows", 0, 0, G_OPTION_ARG_INT64, &rows, N_ ("Tell the sources apart by so many of them (128); 0 does not"),
      N_ ("N") },
    { "seed", 0, 0, G_OPTION_ARG_INT64, &seed, N_ ("Other luck (1)"), N_ ("N") },
    { "steadier", 0, 0, G_OPTION_ARG_NONE, &wanted.steadier, N_ ("Look for steadier settings"), NULL },
    { "season", 0, 0, G_OPTION_ARG_FILENAME, &found, N_ ("With --steadier, write the season with them here"),
      N_ ("FILE") },
    { "bands", 0, 0, G_OPTION_ARG_NONE, &wanted.bands,
      N_ ("Instead, 5, 50 and 95 % of every outcome along the steps, as CSV"), NULL },
    { "csv", 'c', 0, G_OPTION_ARG_NONE, &wanted.csv, N_ ("CSV instead of Markdown"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;

  lw_spread_ask_init (&ask);
  samples = ask.samples;
  rows = ask.rows;
  seed = ask.seed;
  if (!lw_command_options_told ("spread", help, entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (name == NULL || (wanted.bands && wanted.steadier) || (found != NULL && !wanted.steadier))
    {
      lw_complain (name == NULL    ? _ ("spread: name a batch with --batch; try “leafwend-cli spread --help”")
                   : found == NULL ? _ ("spread: --bands and --steadier do not go together")
                                   : _ ("spread: --season goes with --steadier"));
      return LW_EXIT_USAGE;
    }
  if (!ask_of (&ask, samples, rows, seed, varies))
    return LW_EXIT_USAGE;

  season = lw_command_season (path);
  if (season == NULL || !lw_command_batch (season, name, &at))
    return LW_EXIT_WRONG;
  if (!steps_fit (season, at, &ask))
    return LW_EXIT_USAGE;

  if (wanted.bands)
    ask.points = BAND_POINTS, ask.rows = 0;
  if (isatty (STDERR_FILENO))
    ask.progress = show_progress, ask.progress_data = &shown;
  wanted.output = output;
  wanted.found = found;

  return answer (season, at, &ask, &wanted);
}
