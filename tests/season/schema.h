/* The document's RELAX NG schema, made from the tables of its grammar. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* (transfer full) the text of data/leafwend-season.rng. */
char *schema_text (void);
