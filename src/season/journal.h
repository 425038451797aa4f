/* The journal of a running batch: one line for every change, each with all that there is to know, so that the last whole
 * line is enough and to read a line twice does nothing. docs/document.md tells the format. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/run.h"

/* What a line says. */
typedef struct
{
  LwRun run;
  char *name;      /* of the batch in the season's file */
  LwSeason *kept;  /* a season of one batch, as it was, with its leaf; of its weather only the id */
} LwJournalEntry;

/* (transfer full) the line, an end before and behind it, for `batch` of the season; `name` is what the season's file calls it. */
char     *lw_journal_line     (const LwRun          *run,
                               const char           *name,
                               const LwSeason       *season,
                               guint                 batch);

/* The last line that is whole. FALSE if there is none. `damaged`: set to the lines after it, which are not. */
gboolean  lw_journal_read     (const char           *data,
                               gsize                 length,
                               LwJournalEntry       *entry,
                               guint                *damaged);
void      lw_journal_entry_clear (LwJournalEntry    *entry);

/* (transfer full) the season with the batch as the entry has it, `batch` its index. `n_entries`: how many weigh-ins of it
 * the season did not have, `changed`: whether it is another season at all. A leaf that the season does not have comes
 * along, a weather that it does not have is left out. */
LwSeason *lw_journal_put_back (const LwSeason       *season,
                               const LwJournalEntry *entry,
                               guint                *batch,
                               guint                *n_entries,
                               gboolean             *changed);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LwJournalEntry, lw_journal_entry_clear)
