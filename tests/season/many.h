/* A folder of many seasons, made from the demo season: for the tests of searching, and to measure it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/document.h"

/* Writes `files` seasons of `batches` each, as "f0000.leafwend" and so on; batch k of file f is called "f-k", begins on
 * day f of 2020 and what follows, and withers a few minutes longer than the one before. */
void many_write (const char *folder,
                 guint       files,
                 guint       batches);
/* Removes the folder and all in it. */
void many_remove (const char *folder);
