/* A row of the list: made once from a batch, never changed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/batch-item.h"

#include <string.h>

#include "season/text.h"
#include "season/wording.h"

struct _LwBatchItem
{
  GObject parent_instance;

  guint index;
  char *name;
  char *detail;
  char *state;
  char *folded; /* all of it, for searching */
};

G_DEFINE_FINAL_TYPE (LwBatchItem, lw_batch_item, G_TYPE_OBJECT)

static void
lw_batch_item_finalize (GObject *object)
{
  LwBatchItem *self = LW_BATCH_ITEM (object);

  g_free (self->name);
  g_free (self->detail);
  g_free (self->state);
  g_free (self->folded);

  G_OBJECT_CLASS (lw_batch_item_parent_class)->finalize (object);
}

static void
lw_batch_item_class_init (LwBatchItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lw_batch_item_finalize;
}

static void
lw_batch_item_init (LwBatchItem *self)
{
}

LwBatchItem *
lw_batch_item_new (const LwSeason *season,
                   guint           at)
{
  LwBatchItem *self = g_object_new (LW_TYPE_BATCH_ITEM, NULL);
  const LwBatch *batch = season->batches[at];
  const LwProfile *leaf = lw_season_profile (season, batch->leaf);
  g_autofree char *date = lw_say_date (batch->when_s);
  g_autofree char *all = NULL;

  self->index = at;
  self->name = g_strdup (batch->name);
  /* Translators: date, leaf */
  self->detail = g_strdup_printf (_ ("%s · %s"), date, leaf != NULL ? leaf->name : batch->leaf);
  /* Translators: made or planned, kind of tea */
  self->state = batch->tea != NULL ? g_strdup_printf (_ ("%s · %s"), batch->made ? _ ("made") : _ ("planned"), batch->tea)
                                   : g_strdup (batch->made ? _ ("made") : _ ("planned"));
  all = g_strjoin (" ", self->name, self->detail, self->state, batch->note, NULL);
  self->folded = g_utf8_casefold (all, -1);

  return self;
}

guint
lw_batch_item_index (LwBatchItem *self)
{
  return self->index;
}

const char *
lw_batch_item_name (LwBatchItem *self)
{
  return self->name;
}

const char *
lw_batch_item_detail (LwBatchItem *self)
{
  return self->detail;
}

const char *
lw_batch_item_state (LwBatchItem *self)
{
  return self->state;
}

gboolean
lw_batch_item_matches (LwBatchItem *self,
                       const char  *words)
{
  g_autofree char *folded = g_utf8_casefold (words, -1);
  g_auto (GStrv) word = g_strsplit_set (folded, " \t", -1);

  for (guint i = 0; word[i] != NULL; i++)
    if (strstr (self->folded, word[i]) == NULL)
      return FALSE;

  return TRUE;
}

gboolean
lw_batch_item_same (LwBatchItem *self,
                    LwBatchItem *other)
{
  return self->index == other->index && strcmp (self->folded, other->folded) == 0;
}
