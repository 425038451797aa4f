/* The journal's file: in the user's own data folder, one for each season's file, so that the season is changed by a save
 * alone and a folder that cannot be written to loses nothing. A line is on the disk before the call returns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef struct _LwJournalFile LwJournalFile;

/* (transfer full) where the journal of the season's file `path` is. `folder` NULL: the user's. */
char          *lw_journal_file_path   (const char     *folder,
                                       const char     *path);

/* (transfer full) the paths of all other journals in its folder. */
GStrv          lw_journal_file_others (const char     *journal);

/* Opens it for this program alone, made if it is not there; NULL and `error` if that cannot be, G_FILE_ERROR_AGAIN where
 * another has it. */
LwJournalFile *lw_journal_file_open   (const char     *journal,
                                       GError        **error);
void           lw_journal_file_close  (LwJournalFile  *self);
gboolean       lw_journal_file_is_empty (LwJournalFile *self);

/* (transfer full) all that it holds; NULL and `error` if it cannot be read. */
char          *lw_journal_file_load   (LwJournalFile  *self,
                                       gsize          *length,
                                       GError        **error);

/* Writes behind all, or, in a file that has grown long, in the place of all, and makes sure that it is on the disk. On
 * failure the file is as it was, and `error` says what to do. */
gboolean       lw_journal_file_add    (LwJournalFile  *self,
                                       const char     *line,
                                       GError        **error);

/* It has served: takes the file away and closes it. */
void           lw_journal_file_remove (LwJournalFile  *self);

/* It is not to be taken up again, but nothing in it is to be lost: gives the file another name, which is returned (transfer
 * full), and closes it. NULL: it could not be renamed, and is there as before. */
char          *lw_journal_file_set_aside (LwJournalFile *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwJournalFile, lw_journal_file_close)
