/* Lines of the journal: a check sum, the state of the run, the batch as a document; blanks between them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/journal.h"

#include <math.h>
#include <string.h>

#include "season/document.h"
#include "season/lesson.h"
#include "season/notation.h"
#include "season/problem.h"
#include "season/weigh-in.h"

#define FORMAT "1"
#define SUM 32     /* signs of the check sum */
#define N_FIELDS 10 /* behind it */

/* (transfer full) the batch alone, with what the reader asks for. A weather may be long and is in the season's file. */
static LwSeason *
alone (const LwSeason *season,
       guint           batch)
{
  LwSeason *kept = lw_season_new (season->name);
  LwBatch *own = season->batches[batch];
  LwProfile *leaf = lw_season_profile (season, own->leaf);

  kept->altitude_m = season->altitude_m;
  kept->latitude_deg = season->latitude_deg;
  if (leaf != NULL)
    lw_season_add_profile (kept, lw_profile_ref (leaf));
  if (own->weather != NULL)
    lw_season_add_weather (kept, lw_weather_new_constant (own->weather, own->weather,
                                                          &(LwHour) { .temp_c = 20, .humidity_pct = 70,
                                                                      .sun_w_m2 = NAN }));
  lw_season_insert_batch (kept, 0, lw_batch_ref (own));

  return kept;
}

static char *
write_whole (const LwSeason *season)
{
  gsize length;

  return lw_document_write (season, &length);
}

static char *
sum_of (const char *text)
{
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);

  return g_strndup (sum, SUM);
}

char *
lw_journal_line (const LwRun    *run,
                 const char     *name,
                 const LwSeason *season,
                 guint           batch)
{
  g_autoptr (LwSeason) kept = alone (season, batch);
  g_autofree char *document = write_whole (kept), *escaped = g_strescape (document, NULL);
  g_autofree char *escaped_name = g_strescape (name, NULL);
  g_autofree char *start = lw_number_text (run->start_s), *step = lw_number_text (run->step_s);
  g_autofree char *waited = lw_number_text (run->waited_s);
  g_autofree char *paused = lw_run_is_paused (run) ? lw_number_text (run->paused_s) : g_strdup ("-");
  g_autofree char *planned = !isnan (run->planned) ? lw_number_text (run->planned) : g_strdup ("-");
  g_autofree char *text = g_strdup_printf (FORMAT "\t%s\t%u\t%s\t%s\t%s\t%s\t%s\t%s\t%s", run->on ? "on" : "off",
                                           run->step, start, step, waited, paused, planned, escaped_name, escaped);
  g_autofree char *sum = sum_of (text);

  /* An end before it, too: what was left of a write that was cut short is a line of its own. */
  return g_strdup_printf ("\n%s\t%s\n", sum, text);
}

void
lw_journal_entry_clear (LwJournalEntry *entry)
{
  g_clear_pointer (&entry->name, g_free);
  g_clear_pointer (&entry->kept, lw_season_unref);
}

static gboolean
read_run (GStrv  fields,
          LwRun *run)
{
  guint64 step;

  *run = (LwRun) { .on = g_str_equal (fields[1], "on"), .paused_s = NAN, .planned = NAN };
  if (!g_ascii_string_to_unsigned (fields[2], 10, 0, LW_MAX_STEPS, &step, NULL))
    return FALSE;

  run->step = (guint) step;

  return lw_number_parse (fields[3], &run->start_s) && lw_number_parse (fields[4], &run->step_s)
         && lw_number_parse (fields[5], &run->waited_s)
         && (g_str_equal (fields[6], "-") || lw_number_parse (fields[6], &run->paused_s))
         && (g_str_equal (fields[7], "-") || lw_number_parse (fields[7], &run->planned));
}

/* `line` has NUL in the place of its end. */
static gboolean
read_line (const char     *line,
           LwJournalEntry *entry)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *sum = strlen (line) > SUM && line[SUM] == '\t' ? sum_of (line + SUM + 1) : NULL;
  g_auto (GStrv) fields = NULL;
  g_autofree char *document = NULL;

  if (sum == NULL || strncmp (sum, line, SUM) != 0)
    return FALSE;

  fields = g_strsplit (line + SUM + 1, "\t", -1);
  if (g_strv_length (fields) != N_FIELDS || !g_str_equal (fields[0], FORMAT) || !read_run (fields, &entry->run))
    return FALSE;

  document = g_strcompress (fields[9]);
  entry->kept = lw_document_read (document, strlen (document), problems);
  if (entry->kept == NULL || entry->kept->n_batches != 1)
    {
      g_clear_pointer (&entry->kept, lw_season_unref);
      return FALSE;
    }

  entry->name = g_strcompress (fields[8]);

  return TRUE;
}

gboolean
lw_journal_read (const char     *data,
                 gsize           length,
                 LwJournalEntry *entry,
                 guint          *damaged)
{
  g_autofree char *text = g_malloc (length + 1); /* a disk may leave zeros where it did not get to write */
  gboolean found = FALSE;
  gsize end = length;

  *damaged = 0;
  memcpy (text, data, length);
  while (end > 0 && !found)
    {
      gsize begin;

      end -= text[end - 1] == '\n';
      for (begin = end; begin > 0 && text[begin - 1] != '\n'; begin--)
        ;
      text[end] = '\0';
      found = end > begin && read_line (text + begin, entry);
      *damaged += !found && end > begin;
      end = begin;
    }

  return found;
}

static gboolean
has (const LwBatch   *batch,
     guint            step,
     const LwWeighIn *weigh_in)
{
  for (guint i = 0; batch != NULL && step < batch->n_steps && i < batch->steps[step].n_weigh_ins; i++)
    if (lw_weigh_in_same (&batch->steps[step].weigh_ins[i], weigh_in))
      return TRUE;

  return FALSE;
}

static guint
count_new (const LwBatch *batch,
           const LwBatch *kept)
{
  guint n = 0;

  for (guint step = 0; step < kept->n_steps; step++)
    for (guint i = 0; i < kept->steps[step].n_weigh_ins; i++)
      n += !has (batch, step, &kept->steps[step].weigh_ins[i]);

  return n;
}

/* Whether the document would say the same of the two. */
static gboolean
is_same (const LwSeason *season,
         guint           a,
         const LwSeason *other,
         guint           b)
{
  g_autoptr (LwSeason) one = alone (season, a), two = alone (other, b);
  g_autofree char *says = NULL, *other_says = NULL;

  g_free (two->name);
  two->name = g_strdup (one->name);
  two->altitude_m = one->altitude_m;
  two->latitude_deg = one->latitude_deg;
  /* The leaf is the season's own. */
  for (guint i = 0; i < two->n_profiles && i < one->n_profiles; i++)
    lw_season_put_profile (two, lw_profile_ref (one->profiles[i]));
  says = write_whole (one);
  other_says = write_whole (two);

  return g_str_equal (says, other_says);
}

LwSeason *
lw_journal_put_back (const LwSeason       *season,
                     const LwJournalEntry *entry,
                     guint                *batch,
                     guint                *n_entries,
                     gboolean             *changed)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_copy (entry->kept->batches[0]);
  int at = lw_season_batch (season, entry->name);

  if (at < 0)
    at = lw_season_batch (season, own->name);
  if (lw_season_profile (season, own->leaf) == NULL)
    for (guint i = 0; i < entry->kept->n_profiles; i++)
      lw_season_put_profile (next, lw_profile_ref (entry->kept->profiles[i]));
  if (own->weather != NULL && lw_season_weather (season, own->weather) == NULL)
    g_clear_pointer (&own->weather, g_free);

  /* Another batch may have that name by now. */
  if (at >= 0 && lw_season_batch (season, own->name) >= 0 && lw_season_batch (season, own->name) != at)
    {
      g_free (own->name);
      own->name = g_strdup (season->batches[at]->name);
    }

  *n_entries = count_new (at >= 0 ? season->batches[at] : NULL, own);
  *batch = at >= 0 ? (guint) at : season->n_batches;
  if (at >= 0 && !g_str_equal (season->batches[at]->name, own->name))
    lw_season_lessons_follow (next, season->batches[at]->name, own->name);
  if (at >= 0)
    lw_season_put_batch (next, *batch, own);
  else
    lw_season_insert_batch (next, *batch, own);
  *changed = at < 0 || !is_same (season, *batch, next, *batch);

  return next;
}
