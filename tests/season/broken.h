/* The table of broken files in broken/, shared by the reader's and the schema's test. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Who can see that the file is broken. */
typedef enum
{
  NOT_XML,  /* the parser, or we before it */
  SCHEMA,   /* the schema and the reader */
  READER,   /* only the reader: a schema cannot express it */
} Seen;

typedef struct
{
  const char *name;
  guint line;
  Seen seen;
  const char *phrase;
} Broken;

extern const Broken broken[];
extern const guint n_broken;
