/* The season document: reading with every problem told, writing the same bytes
 * for the same season, saving so that nothing is lost. XML, namespace LW_SEASON_NS;
 * the schema is data/leafwend-season.rng, the format docs/document.md. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/problem.h"
#include "season/season.h"

#define LW_SEASON_NS "urn:leafwend:season"
#define LW_SEASON_VERSION "1"
#define LW_SEASON_SUFFIX ".leafwend"
#define LW_SEASON_MIME "application/x-leafwend-season+xml"

/* Limits against hostile or mistaken files. */
#define LW_MAX_FILE_BYTES (8 * 1024 * 1024)
#define LW_MAX_BATCHES 2000
#define LW_MAX_STEPS 40
#define LW_MAX_PARTS 64
#define LW_MAX_PROFILES 200
#define LW_MAX_WEATHERS 50
#define LW_MAX_HOURS 20000
#define LW_MAX_WEIGH_INS 1000 /* per step */
#define LW_MAX_AIMS 50        /* per step, and per batch */
#define LW_MAX_LOGS 20        /* of a batch, and of a step */
#define LW_MAX_LESSONS 100
#define LW_MAX_MOMENTS 100    /* of a lesson */
#define LW_MAX_TEXT 4000      /* characters of a name or note */

/* Reads `length` bytes. Returns (transfer full) the season, or NULL with at least one problem
 * added to `problems`. */
LwSeason *lw_document_read  (const char     *data,
                             gsize           length,
                             GPtrArray      *problems);

/* (transfer full) the document's text, UTF-8, `length` set to its bytes. */
char     *lw_document_write (const LwSeason *season,
                             gsize          *length);

/* Reads the file; a file that cannot be read at all is one problem with line 0. */
LwSeason *lw_document_load  (const char     *path,
                             GPtrArray      *problems);

/* (transfer full) what the file holds, at most a little more than LW_MAX_FILE_BYTES of it; NULL, and one
 * problem added, if it cannot be read. */
GByteArray *lw_document_bytes (const char   *path,
                               GPtrArray    *problems);

/* Writes beside the file, flushes to disk, and only then takes its place; follows a symbolic
 * link, keeps the mode. On failure the old file is whole and `error` says why and what to do. */
gboolean  lw_document_save  (const LwSeason *season,
                             const char     *path,
                             GError        **error);
