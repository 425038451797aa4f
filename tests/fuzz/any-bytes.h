/* What programs that are given any bytes share: a demand that ends them, and changes of a table by chance. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/problem.h"

/* What an engine calls, and the program itself without one. */
int  LLVMFuzzerTestOneInput (const guint8      *data,
                             size_t             size);

/* Ends the program with these words where it does not hold. */
void demand                 (gboolean           holds,
                             const char        *what);

/* Every problem can be told as text. */
void demand_told            (GPtrArray         *problems);

/* Gives the tables as they are and then `n_changed` seeded changes of them, by bytes and by scraps (ended by NULL).
 * `kept` counts what was usable. TRUE if that were all tables, and some but not all of the changed ones. */
gboolean give_changed_tables (const char *const *tables,
                              const char *const *scraps,
                              guint              n_changed,
                              const guint       *kept,
                              const char        *what);
