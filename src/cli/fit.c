/* leafwend-cli fit: what of the leaf must differ for the model to say what was weighed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "season/document.h"
#include "season/listing.h"
#include "season/text.h"
#include "study/fit-words.h"

#define COLUMNS 5
#define CSV_COLUMNS 10

static const char told[] = N_ (
  "Finds by how much the leaf must differ from its profile for the model to come nearest to the weigh-ins of the batches\n"
  "that were made, and how sure that is. Batches of several leaves share every change but that of fresh moisture.\n"
  "With -o the season gets a new profile for each leaf; its batches stay as they are.\n"
  "Columns: the change, as a factor or in points, with its standard error; the share of it that the weigh-ins decided,\n"
  "the rest being what was expected before; the leaf's value before and after, with its standard error.\n"
  "What may differ, “*” where nobody says otherwise, and one standard deviation of what is expected:");
static const char statuses[] = N_ (
  "Exit status: 0 a leaf was fitted, 1 the file or the work failed, 2 wrong usage, 3 there is not enough data;\n"
  "nothing is then written.");

/* (transfer full) the text under the options. */
static char *
help_text (void)
{
  GString *text = g_string_new (_ (told));

  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    {
      const LwFitRow *row = lw_fit_row (i);

      g_string_append_printf (text, "\n%s %-15s %s (± %.2g %s)", row->usual ? "*" : " ", row->id, _ (row->label), row->spread,
                              row->factor ? _ ("of it") : lw_unit_words (row->unit));
    }
  g_string_append_printf (text, "\n\n%s", _ (statuses));

  return g_string_free (text, FALSE);
}

/* Only for somebody who looks at it. */
static void
show_progress (double   share,
               gpointer data)
{
  fprintf (stderr, "\r%3.0f %%%s", 100 * share, share >= 1 ? "\r     \r" : "");
}

/* FALSE and a complaint if a name is not right. */
static gboolean
parse_free (char **names,
            guint *bits)
{
  *bits = names == NULL ? lw_fit_usual () : 0;
  for (guint i = 0; names != NULL && names[i] != NULL; i++)
    {
      int what = lw_fit_find (names[i]);

      if (what < 0)
        {
          lw_complain (_ ("fit: “%s” is nothing that may differ; “leafwend-cli fit --help” lists what may"), names[i]);
          return FALSE;
        }
      *bits |= LW_FIT_BIT (what);
    }

  return TRUE;
}

static char *
number_text (double value)
{
  return isnan (value) ? g_strdup ("") : lw_listing_number (value);
}

static const char *
where_of (const LwFit      *fit,
          const LwFitParam *param,
          const LwProfile  *leaf)
{
  if (param->batch >= 0)
    return fit->season->batches[param->batch]->name;

  return leaf != NULL ? leaf->id : "";
}

static void
append_csv (GString          *to,
            const LwFit      *fit,
            const LwFitParam *param,
            const LwProfile  *leaf)
{
  const LwFitRow *row = lw_fit_row (param->what);
  double start = NAN, value = NAN, error = NAN, factor = exp (param->change);
  g_autofree char *change = number_text (row->factor ? factor : param->change);
  g_autofree char *change_error = number_text (row->factor ? factor * param->error : param->error);
  g_autofree char *decided = number_text (param->decided);
  g_autofree char *start_text = NULL, *value_text = NULL, *error_text = NULL;

  if (leaf != NULL)
    lw_fit_param_value (param, leaf, &start, &value, &error);
  start_text = number_text (start);
  value_text = number_text (value);
  error_text = number_text (error);

  lw_listing_append_row (to, TRUE, CSV_COLUMNS,
                         (const char *const[]) {
                           row->id, where_of (fit, param, leaf), row->factor ? "factor" : row->unit, change,
                           change_error, decided, isnan (start) ? "" : lw_fit_unit (param->what), start_text,
                           value_text, error_text });
}

/* A row for the change in `leaf`, which is NULL for one that no leaf keeps. */
static void
append_param (GString          *to,
              gboolean          csv,
              const LwFit      *fit,
              const LwFitParam *param,
              const LwProfile  *leaf)
{
  g_autofree char *change = NULL, *decided = NULL, *value = NULL;

  if (csv)
    {
      append_csv (to, fit, param, leaf);
      return;
    }

  change = lw_fit_param_say (param);
  decided = isnan (param->decided) ? g_strdup ("") : g_strdup_printf ("%.0f %%", 100 * param->decided);
  value = leaf != NULL ? lw_fit_param_say_value (param, leaf) : g_strdup ("");
  lw_listing_append_row (to, FALSE, COLUMNS,
                         (const char *const[]) { _ (lw_fit_row (param->what)->label), where_of (fit, param, leaf), change,
                                                 decided, value });
}

static void
append_params (GString     *to,
               gboolean     csv,
               const LwFit *fit)
{
  static const char *const head[CSV_COLUMNS] = { "parameter", "of", "change_unit", "change", "change_error", "decided",
                                                 "unit", "start", "value", "value_error" };
  g_autoptr (GArray) lines = lw_fit_lines (fit);

  if (csv)
    lw_listing_append_head (to, TRUE, CSV_COLUMNS, head);
  else
    lw_listing_append_head (to, FALSE, COLUMNS, (const char *const[]) { _ ("may differ"), _ ("of"), _ ("change"), _ ("decided"),
                                                                  _ ("value") });

  for (guint i = 0; i < lines->len; i++)
    {
      const LwFitLine *line = &g_array_index (lines, LwFitLine, i);

      append_param (to, csv, fit, line->param, line->leaf);
    }
}

static char *
miss_text (double value)
{
  return isnan (value) ? g_strdup ("") : g_strdup_printf ("%.2f", value);
}

static void
append_batch (GString    *to,
              const char *name,
              guint       n,
              double      before,
              double      after,
              double      rms,
              double      sd)
{
  g_autofree char *points = g_strdup_printf ("%u", n);
  g_autofree char *was = g_strdup_printf ("%.1f", before), *is = g_strdup_printf ("%.1f", after);
  g_autofree char *miss = miss_text (rms), *of_foretold = miss_text (sd);

  lw_listing_append_row (to, FALSE, isnan (rms) ? 4 : 6, (const char *const[]) { name, points, was, is, miss, of_foretold });
}

/* How far the model is from the weigh-ins, by batch. */
static void
append_batches (GString     *to,
                const LwFit *fit)
{
  guint columns = isnan (fit->unseen_rms) ? 4 : 6;

  g_string_append_c (to, '\n');
  lw_listing_append_head (to, FALSE, columns, (const char *const[]) {
                            _ ("batch"), _ ("weigh-ins"), _ ("chi-square before"), _ ("after"),
                            _ ("foretold by the others: miss in errors of the weigh-ins"), _ ("in errors foretold") });
  for (guint k = 0; k < fit->n_batches; k++)
    {
      const LwFitBatch *batch = &fit->batches[k];

      append_batch (to, fit->season->batches[batch->batch]->name, batch->n_points, batch->before, batch->after,
                    batch->unseen_rms, batch->unseen_sd);
    }
  append_batch (to, _ ("all"), fit->n_points, fit->before, fit->after, fit->unseen_rms, fit->unseen_sd);
}

/* Beside a CSV, which has the changes only. */
static void
complain_unseen (const LwFit *fit)
{
  g_autofree char *all = lw_fit_unseen_say (fit, NULL);

  if (all != NULL)
    lw_complain ("%s", all);
  for (guint k = 0; k < fit->n_batches; k++)
    {
      g_autofree char *said = lw_fit_unseen_say (fit, &fit->batches[k]);

      if (said != NULL)
        lw_complain ("%s: %s", fit->season->batches[fit->batches[k].batch]->name, said);
    }
}

/* The exit status. */
static int
tell (const LwFit *fit,
      gboolean     csv,
      const char  *output)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (LwSeason) next = NULL;
  g_autoptr (GError) error = NULL;

  append_params (text, csv, fit);
  if (csv)
    complain_unseen (fit);
  else
    append_batches (text, fit);
  for (guint i = 0; i < fit->n_warnings; i++)
    {
      g_autofree char *said = lw_fit_warning_say (fit, &fit->warnings[i]);

      if (csv)
        lw_complain ("%s", said);
      else
        g_string_append_printf (text, "%s%s\n", i == 0 ? "\n" : "", said);
    }
  if (!lw_command_output (NULL, text->str, text->len))
    return LW_EXIT_WRONG;
  if (!fit->enough)
    return LW_EXIT_MISSED;

  next = output != NULL ? lw_fit_save (fit, fit->season, NULL) : NULL;
  if (next != NULL && !lw_document_save (next, output, &error))
    {
      lw_complain ("%s", error->message);
      return LW_EXIT_WRONG;
    }

  return 0;
}

int
lw_command_fit (int    argc,
                char **argv)
{
  g_auto (GStrv) names = NULL, freed = NULL;
  g_autofree char *leaf = NULL, *output = NULL, *help = help_text ();
  gboolean leave_one_out = FALSE, csv = FALSE;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING_ARRAY, &names, N_ ("Only this batch; its name or the name's first word"),
      N_ ("NAME") },
    { "leaf", 'l', 0, G_OPTION_ARG_STRING, &leaf, N_ ("Only batches of this leaf"), N_ ("ID") },
    { "free", 'f', 0, G_OPTION_ARG_STRING_ARRAY, &freed, N_ ("Let this differ, and only those named so"), N_ ("NAME") },
    { "leave-one-out", 0, 0, G_OPTION_ARG_NONE, &leave_one_out, N_ ("Foretell every batch from the others"), NULL },
    { "csv", 'c', 0, G_OPTION_ARG_NONE, &csv, N_ ("CSV instead of Markdown, and of the changes only"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write the season with the fitted leaf here"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GArray) batches = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (LwFit) fit = NULL;
  LwFitAsk ask = { 0 };

  if (!lw_command_options_told ("fit", help, entries, &argc, &argv, &path) || !parse_free (freed, &ask.free))
    return LW_EXIT_USAGE;

  season = lw_command_season (path);
  if (season == NULL)
    return LW_EXIT_WRONG;
  if (leaf != NULL && lw_season_profile (season, leaf) == NULL)
    {
      lw_complain (_ ("fit: the season has no leaf “%s”; its leaves are:"), leaf);
      for (guint i = 0; i < season->n_profiles; i++)
        fprintf (stderr, "  %s\n", season->profiles[i]->id);
      return LW_EXIT_WRONG;
    }
  if (names != NULL && (batches = lw_command_batches (season, names)) == NULL)
    return LW_EXIT_WRONG;

  ask.batches = batches;
  ask.leaf = leaf;
  ask.leave_one_out = leave_one_out;
  if (isatty (STDERR_FILENO))
    ask.progress = show_progress;
  fit = lw_fit_new (season, &ask, NULL, &error);
  if (fit == NULL)
    {
      if (ask.progress != NULL)
        fputs ("\r     \r", stderr);
      lw_complain ("%s", error->message);
      return g_error_matches (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND) ? LW_EXIT_MISSED : LW_EXIT_WRONG;
    }

  return tell (fit, csv, output);
}
