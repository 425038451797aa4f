/* What the header of a table of hours says: which column holds what, in which unit.
 * Words and units are those of docs/document.md, "Tables of hours". */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef enum
{
  LW_COLUMN_TIME,
  LW_COLUMN_DATE,
  LW_COLUMN_TEMP,
  LW_COLUMN_HUMIDITY,
  LW_COLUMN_SUN,
  LW_COLUMN_CLOUD,
  LW_COLUMN_WIND,
  LW_COLUMN_RAIN,
} LwColumnKind;

#define LW_N_COLUMNS (LW_COLUMN_RAIN + 1)

typedef struct
{
  LwColumnKind kind;
  gboolean unit_known;
  double factor;       /* value of the document = factor * cell + offset */
  double offset;
} LwColumn;

/* FALSE if the header names nothing that a record holds. */
gboolean    lw_column_named  (const char  *header,
                              LwColumn    *column);

/* The place behind `word` in `text`, both in small letters, as a whole word; NULL if it is not there. */
const char *lw_column_word   (const char  *text,
                              const char  *word);

/* "air temperature", translated. */
const char *lw_column_label  (LwColumnKind kind);

/* "Air temperature (°C)": how a header may say it, not translated. */
const char *lw_column_sample (LwColumnKind kind);
