/* Searching and sorting heads of batches. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/head.h"

/* Beside the quantities: the weight of the finished tea, kg. */
#define LW_FINISHED_KG LW_N_QUANTITIES

/* What is looked for; a batch must be all of it. Text is compared folded (lw_head_fold). */
typedef struct
{
  char **words;    /* (nullable) each somewhere in name, leaf, tea, date or notes */
  char *leaf;      /* (nullable) part of the leaf's name */
  char *tea;       /* (nullable) part of the kind of tea */
  gint64 from_s;   /* on or after; G_MININT64: any */
  gint64 until_s;  /* before; G_MAXINT64: any */
  int made;        /* 1 made, 0 planned, -1 any */
  int outcome;     /* -1: any; else that of the finished tea, an LwQuantity or LW_FINISHED_KG, is ... */
  double low;      /* at least this: -INFINITY: any */
  double high;     /* at most this: INFINITY: any */
} LwFind;

typedef enum
{
  LW_FIND_NO,
  LW_FIND_YES,
  LW_FIND_LATER, /* its outcome must be known first */
} LwFindAnswer;

typedef enum
{
  LW_SORT_DATE,
  LW_SORT_NAME,
  LW_SORT_LEAF,
  LW_SORT_TEA,
  LW_SORT_MADE,
  LW_SORT_OUTCOME,
} LwSortBy;

typedef struct
{
  LwSortBy by;
  int outcome;        /* of LW_SORT_OUTCOME, as LwFind.outcome */
  gboolean downwards; /* the largest first */
} LwSort;

/* Looks for nothing in particular. */
void         lw_find_init    (LwFind          *find);
void         lw_find_clear   (LwFind          *find);
/* Folds and takes over what was typed. */
void         lw_find_set     (LwFind          *find,
                              const char      *words,
                              const char      *leaf,
                              const char      *tea);

/* `outcome` NULL: not known yet. */
LwFindAnswer lw_find_match   (const LwFind    *find,
                              const LwHead    *head,
                              const LwOutcome *outcome);

/* As for qsort. An unknown outcome comes last in both directions. Equal ones are equal: sort by a stable sort. */
int          lw_find_compare (const LwSort    *sort,
                              const LwHead    *a,
                              const LwOutcome *outcome_a,
                              const LwHead    *b,
                              const LwOutcome *outcome_b);

/* The number of an outcome, an LwQuantity or LW_FINISHED_KG. */
double       lw_find_number  (int              outcome,
                              const LwHead    *head,
                              const LwOutcome *of);

/* Reads "2026", "2026-04" or "2026-04-12": the first second of it, and that after it. */
gboolean     lw_find_date    (const char      *text,
                              gint64          *from_s,
                              gint64          *until_s);
