/* The tables in docs/model.md that programs write: each stands between
 * <!-- begin NAME --> and <!-- end NAME -->, each mark on a line of its own. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What stands there; NULL if the page has no such marks. */
char    *page_table   (const char *page,
                       const char *name);

/* The page with `table` there instead. */
char    *page_with    (const char *page,
                       const char *name,
                       const char *table);

/* NULL if two tables say the same, else what differs first. Cells that are numbers may differ by one in
 * their last digit: another machine's rounding is no change of the model. */
char    *page_differs (const char *found,
                       const char *expected);
