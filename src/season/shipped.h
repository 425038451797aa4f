/* Files that ship beside the program. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/document.h"

/* A season of kinds of tea: each batch is one, with its name and the finished tea's aims, and no steps. */
#define LW_SHIPPED_TEAS "kinds-of-tea" LW_SEASON_SUFFIX

/* (transfer full) path of the file `name`: in the folder that $LEAFWEND_DATA names, else where it was installed. */
char *lw_shipped_path (const char *name);

/* (transfer full) path of the page `name` of the documentation in HTML: in the folder that $LEAFWEND_DOCS names, else where
 * it was installed. */
char *lw_shipped_docs_path (const char *name);
