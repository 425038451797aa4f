/* A batch that was found. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/found.h"

struct _LwFound
{
  GObject parent_instance;

  LwHead *head;
  char *path; /* (nullable) */
  LwFoundState state;
  LwOutcome outcome;
};

G_DEFINE_FINAL_TYPE (LwFound, lw_found, G_TYPE_OBJECT)

static guint known_signal;

static void
lw_found_finalize (GObject *object)
{
  LwFound *self = LW_FOUND (object);

  lw_head_unref (self->head);
  g_free (self->path);

  G_OBJECT_CLASS (lw_found_parent_class)->finalize (object);
}

static void
lw_found_class_init (LwFoundClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lw_found_finalize;
  known_signal = g_signal_new ("known", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
}

static void
lw_found_init (LwFound *self)
{
}

LwFound *
lw_found_new (LwHead     *head,
              const char *path)
{
  LwFound *self = g_object_new (LW_TYPE_FOUND, NULL);

  self->head = lw_head_ref (head);
  self->path = g_strdup (path);

  return self;
}

const LwHead *
lw_found_head (LwFound *self)
{
  return self->head;
}

const char *
lw_found_path (LwFound *self)
{
  return self->path;
}

LwFoundState
lw_found_state (LwFound *self)
{
  return self->state;
}

const LwOutcome *
lw_found_outcome (LwFound *self)
{
  return self->state == LW_FOUND_KNOWN ? &self->outcome : NULL;
}

void
lw_found_tell (LwFound         *self,
               LwFoundState     state,
               const LwOutcome *outcome)
{
  self->state = state;
  if (outcome != NULL)
    self->outcome = *outcome;
  if (state == LW_FOUND_KNOWN || state == LW_FOUND_FAILED)
    g_signal_emit (self, known_signal, 0);
}
