/* What a list of batches needs to know of each, so that whole folders of seasons can be searched. Made once from a
 * season, then never changed; shared by an atomic reference count. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef struct
{
  guint index;     /* in its season */
  char *name;
  char *tea;       /* "" where none is said */
  char *leaf;      /* the leaf's name */
  gint64 when_s;   /* as LwBatch.when_s */
  gboolean made;
  double fresh_kg;
  char *name_key;  /* to sort by: letters by the user's language, numbers by size */
  char *tea_key;
  char *leaf_key;
  char *tea_folded;
  char *leaf_folded;
  char *folded;    /* name, leaf, tea, date and notes, to search in */
  char *digest;    /* of all that the model makes its outcomes from */
} LwHead;

/* (transfer full) of all its batches. */
GPtrArray *lw_heads_new (const LwSeason *season);
LwHead *lw_head_ref   (LwHead         *head);
void    lw_head_unref (LwHead         *head);

/* (transfer full) the text as searches compare it: any case, any way to write an accent. */
char   *lw_head_fold  (const char     *text);

/* (transfer full) the same for batches that come to the same, whatever they are called. */
char   *lw_head_digest (const LwSeason *season,
                        guint           batch);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwHead, lw_head_unref)
