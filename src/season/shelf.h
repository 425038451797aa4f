/* A folder of season files: which there are, and the heads of their batches. Every call may take a while and is made
 * for a thread. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/head.h"
#include "season/problem.h"

/* So that a folder too deep or too full cannot hold the program up for ever. */
#define LW_SHELF_DEPTH 16
#define LW_SHELF_FILES 20000

/* A file as it was when it was read. Shared by an atomic reference count. */
typedef struct
{
  char *path;
  guint64 device;
  guint64 inode;
  guint64 size;
  gint64 changed_ns;
  GPtrArray *heads;    /* LwHead; NULL: not read yet */
  GPtrArray *problems; /* LwProblem; why there are none */
} LwShelved;

LwShelved *lw_shelved_ref   (LwShelved    *shelved);
void       lw_shelved_unref (LwShelved    *shelved);

/* (transfer full) the season files in the folder and those in it, none of them read; in each folder by name, links last.
 * Each is listed once, however many links lead to it. What cannot be looked into is listed with its problem. */
GPtrArray *lw_shelf_list    (const char   *folder,
                             GCancellable *cancel);

/* Reads the file with all checks: fills `heads` or `problems`. */
void       lw_shelf_read    (LwShelved    *shelved);

/* Whether the file that was listed is as it was when the other was read. */
gboolean   lw_shelved_same  (const LwShelved *listed,
                             const LwShelved *read);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwShelved, lw_shelved_unref)
