/* Last year's batch of the same kind: which of many it is, and why. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* Calendar year of a moment, by the place's own clock. */
int      lw_year_of       (gint64         when_s);

typedef struct
{
  guint season;     /* which of those given */
  guint batch;      /* and in it */
  gboolean by_tea;  /* the kind of tea is the same; else the kinds of step */
  guint n;          /* how many such there are */
  guint n_near;     /* how many of them are as near in date as it is, itself among them */
  int days;         /* later in its year than the batch in its own; negative: earlier */
} LwSameKind;

/* Finds it among all batches of `n` seasons. FALSE if there is none. docs/study.md tells the rule. */
gboolean lw_same_kind     (const LwBatch         *batch,
                           LwSeason *const       *seasons,
                           guint                  n,
                           LwSameKind            *found);
