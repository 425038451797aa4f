/* What the reading of every element needs: its attributes and children checked
 * against the grammar's tables, each problem told once. Private to reading. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"
#include "season/shape.h"
#include "season/xml.h"

typedef struct
{
  GPtrArray *problems;
  GStringChunk *strings;  /* the attributes' texts */
} LwReader;

/* An attribute that is there and right, else `given` is FALSE. */
typedef struct
{
  gboolean given;
  double number;
  gint64 time_s;
  int word;
  const char *text;
} LwValue;

/* The text as it stands, "" where it lacks. */
static inline const char *
lw_value_text (const LwValue *value)
{
  return value->text != NULL ? value->text : "";
}

/* Takes one child into `into`. */
typedef void (*LwTake) (LwReader *reader,
                        xmlNode  *node,
                        LwElement element,
                        gpointer  into);

void     lw_reader_tell     (LwReader   *reader,
                             guint       line,
                             const char *remedy,
                             const char *format,
                             ...) G_GNUC_PRINTF (4, 5);

/* (transfer full) `text` fit to stand in a message: one line, not long. */
char    *lw_reader_quote    (const char *text);

/* (transfer full) "Did you mean “x”?" or else `otherwise`. */
char    *lw_reader_advice   (const char *typed,
                             GPtrArray  *names,
                             const char *otherwise);

/* Reads into `values` in the order of lw_shape_attrs. */
void     lw_reader_attrs    (LwReader   *reader,
                             xmlNode    *node,
                             LwElement   element,
                             LwValue     values[LW_MAX_ATTRS]);

/* Hands each child that may be there to `take`. */
void     lw_reader_children (LwReader   *reader,
                             xmlNode    *node,
                             LwElement   element,
                             LwTake      take,
                             gpointer    into);

/* (transfer full) (nullable) the text of an element that holds text. */
char    *lw_reader_text     (LwReader   *reader,
                             xmlNode    *node);

/* As above for an element that holds nothing but text; frees `old`, which one too many would leave. */
char    *lw_reader_note     (LwReader   *reader,
                             xmlNode    *node,
                             LwElement   element,
                             char       *old);

/* Each in a file of its own: read-leaf.c, read-weather.c, read-batch.c, read-log.c. */
LwProfile *lw_read_profile  (LwReader   *reader,
                             xmlNode    *node);
/* NULL if nothing says what it is like. */
LwWeather *lw_read_weather  (LwReader   *reader,
                             xmlNode    *node);
LwBatch   *lw_read_batch    (LwReader   *reader,
                             xmlNode    *node);
/* `step` -1: of the batch. */
LwBatchLog lw_read_log      (LwReader   *reader,
                             xmlNode    *node,
                             int         step);
/* Whether the batch of `node` has the logs that its steps follow, each once. */
void       lw_read_check_logs (LwReader *reader,
                               xmlNode  *node,
                               const LwBatch *batch);
