/* Curves as comma-separated text (RFC 4180), numbers in the C locale. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/track.h"
#include "season/season.h"

typedef enum
{
  LW_CSV_MEAN = 0,
  LW_CSV_PARTS = 1 << 0, /* a row for each part besides the mean */
  LW_CSV_ENDS = 1 << 1,  /* step ends only */
} LwCsvFlags;

/* The names of the columns and a line end. */
void lw_csv_append_header (GString         *to);

/* A row for each sample of the track, the batch's start first; steps count from 1, minutes from
 * the batch's start. Units are in the header. */
void lw_csv_append_track  (GString         *to,
                           const LwBatch   *batch,
                           const LwProfile *profile,
                           const LwTrack   *track,
                           LwCsvFlags       flags);

/* One field: a text, quoted where it must be, or a number with the comma before it. */
void lw_csv_append_text   (GString         *to,
                           const char      *text);
void lw_csv_append_number (GString         *to,
                           double           value);
