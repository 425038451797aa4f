/* A claim: what the model says beside what was published of the same thing. Claims
 * are judged by the tests and make the table of comparisons in docs/model.md. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>

/* How well the published figure was seen. */
typedef enum
{
  SEEN_ABSTRACT,    /* in the paper's own abstract or record */
  SEEN_SECOND_HAND, /* on a trade or teaching page that gives no source */
  SEEN_CALCULATED,  /* our arithmetic from figures seen */
  SEEN_MEMORY,      /* not seen: remembered */
} Seen;

typedef struct
{
  const char *what;
  const char *conditions;
  const char *unit;
  int digits;         /* after the point */
  double model;
  double low;         /* published; -INFINITY: at most, equal to `high`: one figure */
  double high;        /* INFINITY: at least */
  double scatter;     /* how far beyond them still agrees: the source's own scatter, or rounding */
  double stated;      /* 0: the two agree. Else they do not, and this is what the model says instead */
  const char *source;
  Seen seen;
} Claim;

/* Notes the claim for the page, tells it, and judges it: it agrees within the scatter; or, if
 * `stated`, it does not, and the model still says what is stated, within a tenth
 * or one in the last digit. */
void     claim        (Claim claim);

/* All claims so far as a Markdown table. */
char    *claims_table (void);
gboolean claims_hold  (void);
