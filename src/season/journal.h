/* The journal of a running batch: one line for every change, each with all that there is to know, so that the last whole
 * line is enough and to read a line twice does nothing. docs/document.md tells the format. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/run.h"

/* What a line says. */
typedef struct
{
  LwRun run;
  double written_s; /* when, by the same clock */
  char *file;      /* path of the season's file */
  char *name;      /* of the batch in it */
  char *base;      /* (nullable) digest of the batch in it as it was last read or saved here; NULL: it had none */
  LwSeason *kept;  /* a season of one batch, as it was, with its leaf; of its weather only the id */
} LwJournalEntry;

/* How the season, as its file has it, stands to the journal. */
typedef enum
{
  LW_JOURNAL_SAME,     /* its batch is that of the journal */
  LW_JOURNAL_AHEAD,    /* it is what the run began with or was saved as: the journal has more */
  LW_JOURNAL_APART,    /* somebody else changed the batch since */
  LW_JOURNAL_NO_BATCH, /* somebody else took the batch out, or this is another season */
} LwJournalStand;

/* (transfer full) tells whether two batches are written alike. */
char     *lw_journal_digest   (const LwBatch        *batch);

/* (transfer full) the line, an end before and behind it, for `batch` of the season, written at `now_s`. `file` is the season's
 * file, `name` what the batch is called in it, `filed` (nullable) the season as the file has it. */
char     *lw_journal_line     (const LwRun          *run,
                               double                now_s,
                               const char           *file,
                               const LwSeason       *filed,
                               const char           *name,
                               const LwSeason       *season,
                               guint                 batch);

/* The last line that is whole. FALSE if there is none. `damaged`: set to the lines after it, which are not. */
gboolean  lw_journal_read     (const char           *data,
                               gsize                 length,
                               LwJournalEntry       *entry,
                               guint                *damaged);
void      lw_journal_entry_clear (LwJournalEntry    *entry);

LwJournalStand lw_journal_stand (const LwSeason      *season,
                                 const LwJournalEntry *entry);

/* (transfer full) the season with the batch as the entry has it, `batch` its index. `n_entries`: how many weigh-ins of it
 * the season did not have, `changed`: whether it is another season at all. A leaf that the season does not have comes
 * along; a weather that it does not have is left out, `no_weather`. */
LwSeason *lw_journal_put_back (const LwSeason       *season,
                               const LwJournalEntry *entry,
                               guint                *batch,
                               guint                *n_entries,
                               gboolean             *no_weather,
                               gboolean             *changed);

/* (transfer full) (nullable) the season with its batch as it is, but for what was done and measured in the run: start, times
 * of steps that began, weigh-ins, corrections by them, logs; where the run has ended, steps after its last go. NULL where the
 * steps are others, so that these have no place, or where a file could not hold it all. */
LwSeason *lw_journal_join     (const LwSeason       *season,
                               const LwJournalEntry *entry,
                               guint                *batch,
                               guint                *n_entries);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LwJournalEntry, lw_journal_entry_clear)
