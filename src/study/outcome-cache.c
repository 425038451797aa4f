/* The file: a digest of the model, records, and a digest of all that. Written beside and put in place at once, under a
 * lock on its folder; not made sure on the disk, for a file that a crash cut short is told by its digest. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/outcome-cache.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "study/model-digest.h"

#define DIGEST_BYTES 32
#define TRIES 20
#define TRY_US 50000

/* Bytes and doubles, without holes. */
typedef struct
{
  guint8 batch[DIGEST_BYTES];
  LwOutcome outcome;
} Record;

typedef struct
{
  Record record;
  gboolean used;    /* asked for or added in this run */
} Entry;

struct _LwOutcomeCache
{
  char *path;
  GMutex saving;
  GMutex mutex;     /* of what follows */
  GHashTable *all;  /* Entry by its record's batch */
  gboolean added;   /* since it was last written */
};

static guint
batch_hash (gconstpointer batch)
{
  guint hash;

  memcpy (&hash, batch, sizeof hash);

  return hash;
}

static gboolean
batch_equal (gconstpointer a,
             gconstpointer b)
{
  return memcmp (a, b, DIGEST_BYTES) == 0;
}

/* FALSE if it is no digest. */
static gboolean
batch_of (const char *digest,
          guint8     *batch)
{
  for (guint i = 0; i < DIGEST_BYTES; i++)
    {
      int high = g_ascii_xdigit_value (digest[2 * i]);
      int low = high < 0 ? -1 : g_ascii_xdigit_value (digest[2 * i + 1]);

      if (low < 0)
        return FALSE;
      batch[i] = (guint8) (16 * high + low);
    }

  return digest[2 * DIGEST_BYTES] == '\0';
}

static void
sum_of (const void *data,
        gsize       length,
        guint8     *sum)
{
  g_autoptr (GChecksum) all = g_checksum_new (G_CHECKSUM_SHA256);
  gsize bytes = DIGEST_BYTES;

  g_checksum_update (all, data, (gssize) length);
  g_checksum_get_digest (all, sum, &bytes);
}

/* What the file begins with: of this model, on a machine that writes numbers this way. */
static void
model_sum (guint8 *sum)
{
  const struct
  {
    char model[2 * DIGEST_BYTES + sizeof (double)]; /* so that there is no hole behind it */
    double number;
  } of = { LW_MODEL_DIGEST, 1.5 };

  sum_of (&of, sizeof of, sum);
}

char *
lw_outcome_cache_path (void)
{
  return g_build_filename (g_get_user_cache_dir (), "leafwend", "outcomes", NULL);
}

LwOutcomeCache *
lw_outcome_cache_new (const char *path)
{
  LwOutcomeCache *self = g_atomic_rc_box_new0 (LwOutcomeCache);

  self->path = g_strdup (path);
  g_mutex_init (&self->saving);
  g_mutex_init (&self->mutex);
  self->all = g_hash_table_new_full (batch_hash, batch_equal, NULL, g_free);

  return self;
}

LwOutcomeCache *
lw_outcome_cache_ref (LwOutcomeCache *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
cache_clear (LwOutcomeCache *self)
{
  g_free (self->path);
  g_mutex_clear (&self->saving);
  g_mutex_clear (&self->mutex);
  g_hash_table_unref (self->all);
}

void
lw_outcome_cache_unref (LwOutcomeCache *self)
{
  g_atomic_rc_box_release_full (self, (GDestroyNotify) cache_clear);
}

/* (nullable) the file's bytes, if it is sound and of this model; `*records` of them, behind the model's. */
static char *
read_file (const char    *path,
           const Record **records,
           gsize         *n)
{
  g_autofree char *data = NULL;
  guint8 model[DIGEST_BYTES], sum[DIGEST_BYTES];
  struct stat about;
  gsize length;

  *n = 0;
  /* Anything else would be of no use, and might never end. */
  if (stat (path, &about) < 0 || !S_ISREG (about.st_mode)
      || about.st_size > 2 * DIGEST_BYTES + (goffset) (LW_OUTCOME_CACHE_MOST * sizeof (Record))
      || !g_file_get_contents (path, &data, &length, NULL)
      || length < 2 * DIGEST_BYTES || (length - 2 * DIGEST_BYTES) % sizeof (Record) != 0)
    return NULL;

  model_sum (model);
  sum_of (data, length - DIGEST_BYTES, sum);
  if (memcmp (data, model, DIGEST_BYTES) != 0
      || memcmp (data + length - DIGEST_BYTES, sum, DIGEST_BYTES) != 0)
    return NULL;

  *records = (const Record *) (gpointer) (data + DIGEST_BYTES);
  *n = (length - 2 * DIGEST_BYTES) / sizeof (Record);

  return g_steal_pointer (&data);
}

/* With the mutex held. */
static void
put (LwOutcomeCache *self,
     const Record   *record,
     gboolean        used)
{
  Entry *entry = g_new (Entry, 1);

  *entry = (Entry) { *record, used };
  g_hash_table_replace (self->all, entry->record.batch, entry);
}

void
lw_outcome_cache_load (LwOutcomeCache *self)
{
  const Record *records;
  gsize n;
  g_autofree char *data = read_file (self->path, &records, &n);

  g_mutex_lock (&self->mutex);
  for (gsize i = 0; i < n; i++)
    if (!g_hash_table_contains (self->all, records[i].batch))
      put (self, &records[i], FALSE);
  g_mutex_unlock (&self->mutex);
}

gboolean
lw_outcome_cache_find (LwOutcomeCache *self,
                       const char     *digest,
                       LwOutcome      *outcome)
{
  guint8 batch[DIGEST_BYTES];
  Entry *entry;

  if (!batch_of (digest, batch))
    return FALSE;

  g_mutex_lock (&self->mutex);
  entry = g_hash_table_lookup (self->all, batch);
  if (entry != NULL)
    {
      entry->used = TRUE;
      *outcome = entry->record.outcome;
    }
  g_mutex_unlock (&self->mutex);

  return entry != NULL;
}

void
lw_outcome_cache_add (LwOutcomeCache  *self,
                      const char      *digest,
                      const LwOutcome *outcome)
{
  Record record = { .outcome = *outcome };

  if (!batch_of (digest, record.batch))
    return;

  g_mutex_lock (&self->mutex);
  put (self, &record, TRUE);
  self->added = TRUE;
  g_mutex_unlock (&self->mutex);
}

/* (transfer full) (nullable) the records of this run, after the model's digest; NULL if none is new. */
static GByteArray *
take_used (LwOutcomeCache *self)
{
  guint8 model[DIGEST_BYTES];
  GByteArray *bytes = NULL;
  GHashTableIter iter;
  gpointer value;

  model_sum (model);
  g_mutex_lock (&self->mutex);
  if (self->added)
    {
      bytes = g_byte_array_append (g_byte_array_new (), model, DIGEST_BYTES);
      g_hash_table_iter_init (&iter, self->all);
      while (g_hash_table_iter_next (&iter, NULL, &value))
        if (((const Entry *) value)->used)
          g_byte_array_append (bytes, (const guint8 *) &((const Entry *) value)->record, sizeof (Record));
    }
  self->added = FALSE;
  g_mutex_unlock (&self->mutex);

  return bytes;
}

/* Behind them what the file holds besides, another program's too, as far as there is room; then the digest. */
static void
add_others (const char *path,
            GByteArray *bytes)
{
  const gsize most = DIGEST_BYTES + LW_OUTCOME_CACHE_MOST * sizeof (Record);
  g_autoptr (GHashTable) here = g_hash_table_new (batch_hash, batch_equal);
  g_autofree guint8 *own = g_memdup2 (bytes->data, bytes->len);
  const Record *others;
  guint8 sum[DIGEST_BYTES];
  gsize n;
  g_autofree char *data = read_file (path, &others, &n);

  for (gsize at = DIGEST_BYTES; at < bytes->len; at += sizeof (Record))
    g_hash_table_add (here, own + at);
  for (gsize i = 0; i < n && bytes->len < most; i++)
    if (!g_hash_table_contains (here, others[i].batch))
      g_byte_array_append (bytes, (const guint8 *) &others[i], sizeof (Record));
  if (bytes->len > most)
    g_byte_array_set_size (bytes, (guint) most);
  sum_of (bytes->data, bytes->len, sum);
  g_byte_array_append (bytes, sum, DIGEST_BYTES);
}

/* The folder, open and locked, so that one program at a time writes in it; -1 if that cannot be had in a second. */
static int
lock_folder (const char *folder)
{
  int fd = g_mkdir_with_parents (folder, 0700) == 0 ? open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC) : -1;
  guint tries = 0;

  while (fd >= 0 && flock (fd, LOCK_EX | LOCK_NB) < 0)
    {
      if (++tries == TRIES)
        {
          close (fd);
          return -1;
        }
      g_usleep (TRY_US);
    }

  return fd;
}

static gboolean
save (LwOutcomeCache *self)
{
  g_autofree char *folder = g_path_get_dirname (self->path), *beside = g_strconcat (self->path, ".new", NULL);
  g_autoptr (GByteArray) bytes = take_used (self);
  gboolean done;
  int lock;

  if (bytes == NULL)
    return TRUE;
  lock = lock_folder (folder);
  if (lock < 0)
    return FALSE;

  add_others (self->path, bytes);
  g_unlink (beside); /* what a save that was cut off has left; it would not be shortened */
  done = g_file_set_contents_full (beside, (const char *) bytes->data, (gssize) bytes->len, G_FILE_SET_CONTENTS_NONE, 0600,
                                   NULL)
         && g_rename (beside, self->path) == 0;
  if (!done)
    g_unlink (beside);
  close (lock);

  return done;
}

gboolean
lw_outcome_cache_save (LwOutcomeCache *self)
{
  gboolean done;

  /* One that ends the program waits for one that is writing. */
  g_mutex_lock (&self->saving);
  done = save (self);
  if (!done)
    {
      g_mutex_lock (&self->mutex);
      self->added = TRUE;
      g_mutex_unlock (&self->mutex);
    }
  g_mutex_unlock (&self->saving);

  return done;
}
