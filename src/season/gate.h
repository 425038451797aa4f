/* From bytes to an XML tree, for text that nobody vouches for: UTF-8 only, no DTD,
 * no entities, no network, bounded in size, depth and attributes. Knows where text may
 * stand, and tells of comments and stray text, which a save would lose. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/reader.h"

/* Size, encoding and crowded elements; the first thing lw_gate_read does. */
gboolean lw_gate_check_bytes (LwReader   *reader,
                              const char *data,
                              gsize       length);

/* Returns (transfer full) (nullable) the tree, without comments and stray text; NULL if the
 * text is no XML that is let in. Tells of problems in both cases. */
xmlDoc  *lw_gate_read        (LwReader   *reader,
                              const char *data,
                              gsize       length);

/* The line of an element of such a tree, also past 65535. */
guint    lw_gate_line        (const xmlNode *node);
