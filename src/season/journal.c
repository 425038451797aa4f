/* Lines of the journal: a check sum, the state of the run, the batch as a document; tabs between them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/journal.h"

#include <math.h>
#include <string.h>

#include "season/document.h"
#include "season/notation.h"
#include "season/problem.h"
#include "season/write-batch.h"

#define FORMAT "2"
#define NONE "-"
#define SUM 32     /* signs of the check sum */

/* The fields behind it. */
enum
{
  FORM,
  STATE,
  STEP,
  START,
  STEP_START,
  WAITED,
  PAUSED,
  PLANNED,
  WRITTEN,
  FILE_NAME,
  BASE,
  NAME,
  DOCUMENT,
  N_FIELDS
};

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
lw_journal_digest (const LwBatch *batch)
{
  g_autoptr (GString) text = g_string_new (NULL);

  lw_write_batch (text, batch);

  return sum_of (text->str);
}

char *
lw_journal_line (const LwRun    *run,
                 double          now_s,
                 const char     *file,
                 const LwSeason *filed,
                 const char     *name,
                 const LwSeason *season,
                 guint           batch)
{
  g_autoptr (LwSeason) kept = alone (season, batch);
  g_autofree char *document = write_whole (kept), *escaped = g_strescape (document, NULL);
  g_autofree char *escaped_name = g_strescape (name, NULL), *escaped_file = g_strescape (file, NULL);
  int in_file = filed != NULL ? lw_season_batch (filed, name) : -1;
  g_autofree char *base = in_file >= 0 ? lw_journal_digest (filed->batches[in_file]) : g_strdup (NONE);
  g_autofree char *start = lw_number_text (run->start_s), *step = lw_number_text (run->step_s);
  g_autofree char *waited = lw_number_text (run->waited_s), *written = lw_number_text (now_s);
  g_autofree char *paused = lw_run_is_paused (run) ? lw_number_text (run->paused_s) : g_strdup (NONE);
  g_autofree char *planned = !isnan (run->planned) ? lw_number_text (run->planned) : g_strdup (NONE);
  g_autofree char *text = g_strdup_printf (FORMAT "\t%s\t%u\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s", run->on ? "on" : "off",
                                           run->step, start, step, waited, paused, planned, written,
                                           escaped_file, base, escaped_name, escaped);
  g_autofree char *sum = sum_of (text);

  /* An end before it, too: what was left of a write that was cut short is a line of its own. */
  return g_strdup_printf ("\n%s\t%s\n", sum, text);
}

void
lw_journal_entry_clear (LwJournalEntry *entry)
{
  g_clear_pointer (&entry->name, g_free);
  g_clear_pointer (&entry->file, g_free);
  g_clear_pointer (&entry->base, g_free);
  g_clear_pointer (&entry->kept, lw_season_unref);
}

static gboolean
read_run (GStrv   fields,
          LwRun  *run,
          double *written_s)
{
  guint64 step;

  *run = (LwRun) { .on = g_str_equal (fields[STATE], "on"), .paused_s = NAN, .planned = NAN };
  if (!g_ascii_string_to_unsigned (fields[STEP], 10, 0, LW_MAX_STEPS, &step, NULL))
    return FALSE;

  run->step = (guint) step;

  return lw_number_parse (fields[START], &run->start_s) && lw_number_parse (fields[STEP_START], &run->step_s)
         && lw_number_parse (fields[WAITED], &run->waited_s)
         && lw_number_parse (fields[WRITTEN], written_s)
         && (g_str_equal (fields[PAUSED], NONE) || lw_number_parse (fields[PAUSED], &run->paused_s))
         && (g_str_equal (fields[PLANNED], NONE) || lw_number_parse (fields[PLANNED], &run->planned));
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
  if (g_strv_length (fields) != N_FIELDS || !g_str_equal (fields[FORM], FORMAT)
      || !read_run (fields, &entry->run, &entry->written_s))
    return FALSE;

  document = g_strcompress (fields[DOCUMENT]);
  entry->kept = lw_document_read (document, strlen (document), problems);
  if (entry->kept == NULL || entry->kept->n_batches != 1)
    {
      g_clear_pointer (&entry->kept, lw_season_unref);
      return FALSE;
    }

  entry->name = g_strcompress (fields[NAME]);
  entry->file = g_strcompress (fields[FILE_NAME]);
  entry->base = !g_str_equal (fields[BASE], NONE) ? g_strdup (fields[BASE]) : NULL;

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
