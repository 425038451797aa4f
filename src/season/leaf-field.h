/* What can be said of a leaf and of its parts: names, ranges, what each means, and whether a whole leaf
 * can stand in a document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/season.h"

typedef enum
{
  LW_LEAF_MOISTURE,
  LW_LEAF_GREEN,
  LW_PART_SHARE,
  LW_PART_EXPOSURE,
  LW_PART_AREA,
  LW_PART_SKIN,
  LW_PART_TORN,
} LwLeafField;

#define LW_N_LEAF_FIELDS (LW_PART_TORN + 1)
#define LW_N_PART_FIELDS (LW_N_LEAF_FIELDS - LW_PART_SHARE)

/* How far from 1 the sum of the parts' shares may be. */
#define LW_SHARE_SLACK 1e-6

typedef struct
{
  const char *id;      /* attribute in the document */
  const char *label;   /* N_() */
  const char *unit;    /* N_(), "" where it has none */
  const char *effect;  /* N_() what it means */
  gsize offset;        /* of the double, in LwProfile or LwPart */
} LwLeafFieldRow;

const LwLeafFieldRow *lw_leaf_field_row   (LwLeafField      field);
void                  lw_leaf_field_range (LwLeafField      field,
                                           double          *low,
                                           double          *high);
/* (transfer full) "0.01 to 10" */
char                 *lw_leaf_field_range_text (LwLeafField field);
gboolean              lw_leaf_field_fits  (LwLeafField      field,
                                           double           value);

double                lw_profile_share_sum (const LwProfile *profile);

/* Whether the leaf can stand in a document; else `error` says what is wrong and what would be right. */
gboolean              lw_profile_check    (const LwProfile *profile,
                                           GError         **error);

/* Scales `n` positive shares so that they add up to 1, to four digits where they have them. */
void                  lw_shares_add_up    (double          *shares,
                                           guint            n);
