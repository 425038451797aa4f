/* What is asked, what is under way, and what was answered. A change of the batch calls off what is under way. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady.h"

#include <string.h>

#include "bench/steady-job.h"
#include "season/text.h"

#define LOOK_MS 100 /* how often it is looked how far the work has come */

struct _LwSteady
{
  GObject parent_instance;

  LwSession *session;      /* not owned: it owns this */
  LwSpreadAsk ask;
  gboolean goes_on;
  gboolean can;            /* as of the last track: a session that is not open yet cannot be asked */

  LwSteadyJob *job;        /* (nullable) */
  guint timer;
  LwAsked failed;          /* what could not be computed; no season: nothing */

  LwSpread *spread;        /* (nullable) */
  LwSpreadAsk spread_ask;
  LwAsked spread_of;
  gboolean fresh;          /* as it was told last: */
  gboolean shown;          /* whether there is one of the batch in hand */

  LwSteadier *found;       /* (nullable) */
  LwAsked found_for;
};

enum { ASKED, WORK, RESULT, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LwSteady, lw_steady, G_TYPE_OBJECT)

gboolean
lw_steady_is_fresh (LwSteady *self)
{
  return self->spread != NULL && lw_asked_holds (&self->spread_of, self->session) && lw_asked_same (&self->ask, &self->spread_ask);
}

/* Tells if the result's standing has changed. */
static void
look_again (LwSteady *self)
{
  gboolean fresh = lw_steady_is_fresh (self), shown = lw_steady_result (self) != NULL;

  if (fresh != self->fresh || shown != self->shown)
    {
      self->fresh = fresh;
      self->shown = shown;
      g_signal_emit (self, signals[RESULT], 0);
    }
}

static void
drop_found (LwSteady *self)
{
  if (self->found == NULL)
    return;

  g_clear_pointer (&self->found, lw_steadier_free);
  lw_asked_clear (&self->found_for);
  g_signal_emit (self, signals[RESULT], 0);
}

/* The work */

static gboolean
timer_cb (gpointer data)
{
  g_signal_emit (data, signals[WORK], 0);

  return G_SOURCE_CONTINUE;
}

/* No longer under way, whatever comes of it. */
static void
put_job_away (LwSteady *self)
{
  g_clear_pointer (&self->job, lw_steady_job_unref);
  g_clear_handle_id (&self->timer, g_source_remove);
}

void
lw_steady_cancel (LwSteady *self)
{
  if (self->job == NULL)
    return;

  lw_steady_job_cancel (self->job);
  put_job_away (self);
  g_signal_emit (self, signals[WORK], 0);
}

static void
done_cb (LwSteadyJob *job,
         gpointer     data)
{
  LwSteady *self = data;
  gboolean spreads = lw_steady_job_work (job) == LW_STEADY_SPREADS;
  LwSpread *spread = spreads ? lw_steady_job_take_spread (job) : NULL;
  LwSteadier *found = spreads ? NULL : lw_steady_job_take_steadier (job);

  if (spread == NULL && found == NULL)
    lw_asked_take (&self->failed, lw_steady_job_of (job));
  if (spread != NULL)
    {
      g_clear_pointer (&self->spread, lw_spread_free);
      self->spread = spread;
      self->spread_ask = *lw_steady_job_ask (job);
      lw_asked_take (&self->spread_of, lw_steady_job_of (job));
      self->fresh = lw_steady_is_fresh (self);
      self->shown = TRUE;
    }
  if (found != NULL)
    {
      g_clear_pointer (&self->found, lw_steadier_free);
      self->found = found;
      lw_asked_take (&self->found_for, lw_steady_job_of (job));
    }
  put_job_away (self);
  g_signal_emit (self, signals[WORK], 0);
  g_signal_emit (self, signals[RESULT], 0);
}

static void
start (LwSteady    *self,
       LwSteadyWork work)
{
  guint at = (guint) lw_session_batch_index (self->session);
  LwSeason *season = lw_session_season (self->session);
  g_autoptr (GArray) free = NULL;

  lw_steady_cancel (self);
  if (!lw_steady_can (self))
    return;

  free = lw_reach_free (season, at, 0);
  for (guint i = free->len; i-- > 0;)
    {
      const LwHandle *handle = &g_array_index (free, LwHandle, i);

      if (lw_session_stays (self->session, handle->step, handle->setting))
        g_array_remove_index (free, i);
    }
  lw_asked_clear (&self->failed);
  self->job = lw_steady_job_start (work, season, at, &self->ask, free, done_cb, self);
  self->timer = g_timeout_add (LOOK_MS, timer_cb, self);
  g_signal_emit (self, signals[WORK], 0);
}

void
lw_steady_spread (LwSteady *self)
{
  start (self, LW_STEADY_SPREADS);
}

void
lw_steady_seek (LwSteady *self)
{
  drop_found (self);
  start (self, LW_STEADY_SEEKS);
}

LwSteadyWork
lw_steady_work (LwSteady *self)
{
  return self->job != NULL ? lw_steady_job_work (self->job) : LW_STEADY_RESTS;
}

double
lw_steady_done (LwSteady *self)
{
  return self->job != NULL ? lw_steady_job_done (self->job) : 0;
}

gboolean
lw_steady_can (LwSteady *self)
{
  return self->can;
}

gboolean
lw_steady_failed (LwSteady *self)
{
  return lw_asked_holds (&self->failed, self->session);
}

/* What is under way is of a batch that is no more; a drag has all cores to itself. */
static void
track_cb (LwSteady *self)
{
  const LwBatch *batch = lw_session_batch (self->session);

  self->can = batch != NULL && batch->n_steps > 0;
  if (self->job != NULL && !lw_asked_holds (lw_steady_job_of (self->job), self->session))
    lw_steady_cancel (self);
  if (self->found != NULL && !lw_asked_holds (&self->found_for, self->session))
    drop_found (self);
  look_again (self);
  if (self->goes_on && self->job == NULL && self->spread != NULL && !lw_session_is_dragging (self->session)
      && !lw_steady_is_fresh (self))
    lw_steady_spread (self);
}

/* The result */

const LwSpread *
lw_steady_result (LwSteady *self)
{
  /* A session that is not open yet has no batch to be asked for. */
  const LwBatch *batch = self->spread != NULL ? lw_session_batch (self->session) : NULL;

  /* A name is one batch's own, and goes with it through most edits. */
  if (batch == NULL
      || strcmp (batch->name, self->spread_of.season->batches[self->spread_of.batch]->name) != 0)
    return NULL;

  return self->spread;
}

const LwSpread *
lw_steady_bands (LwSteady *self)
{
  return lw_steady_is_fresh (self) ? self->spread : NULL;
}

const LwSteadier *
lw_steady_found (LwSteady *self)
{
  return self->found;
}

GArray *
lw_steady_found_changes (LwSteady *self)
{
  return self->found != NULL ? lw_asked_changes (&self->found_for, self->found->season) : NULL;
}

void
lw_steady_take (LwSteady *self)
{
  g_autoptr (GArray) changes = NULL;
  guint batch = self->found_for.batch;

  if (self->found == NULL || !self->found->better || lw_session_is_dragging (self->session))
    return;

  changes = lw_asked_changes (&self->found_for, self->found->season);
  lw_session_put (self->session,
                  lw_edit_set_all (lw_session_base (self->session), batch, (const LwChange *) (gpointer) changes->data,
                                   changes->len),
                  _ ("Make it steadier"));
  drop_found (self);
}

void
lw_steady_leave (LwSteady *self)
{
  drop_found (self);
}

/* What is asked */

const LwSpreadAsk *
lw_steady_ask (LwSteady *self)
{
  return &self->ask;
}

static void
asked_other (LwSteady          *self,
             const LwSpreadAsk *before)
{
  if (lw_asked_same (before, &self->ask))
    return;

  lw_steady_cancel (self);
  drop_found (self);
  g_signal_emit (self, signals[ASKED], 0);
  look_again (self);
}

void
lw_steady_vary (LwSteady    *self,
                LwVarySource source,
                LwVary       vary)
{
  LwSpreadAsk before = self->ask;

  self->ask.varies[source] = vary;
  asked_other (self, &before);
}

void
lw_steady_sample (LwSteady *self,
                  guint     samples,
                  guint32   seed)
{
  LwSpreadAsk before = self->ask;

  self->ask.samples = CLAMP (samples, 2, LW_SPREAD_MOST);
  self->ask.seed = MAX (seed, 1);
  asked_other (self, &before);
}

gboolean
lw_steady_goes_on (LwSteady *self)
{
  return self->goes_on;
}

void
lw_steady_go_on (LwSteady *self,
                 gboolean  goes_on)
{
  if (self->goes_on == goes_on)
    return;

  self->goes_on = goes_on;
  g_signal_emit (self, signals[ASKED], 0);
  track_cb (self);
}

/* The object */

static void
lw_steady_finalize (GObject *object)
{
  LwSteady *self = LW_STEADY (object);

  if (self->job != NULL)
    lw_steady_job_cancel (self->job);
  put_job_away (self);
  g_clear_pointer (&self->spread, lw_spread_free);
  g_clear_pointer (&self->found, lw_steadier_free);
  lw_asked_clear (&self->spread_of);
  lw_asked_clear (&self->found_for);
  lw_asked_clear (&self->failed);

  G_OBJECT_CLASS (lw_steady_parent_class)->finalize (object);
}

static void
lw_steady_class_init (LwSteadyClass *klass)
{
  static const char *const names[N_SIGNALS] = { "asked", "work", "result" };

  G_OBJECT_CLASS (klass)->finalize = lw_steady_finalize;
  for (guint i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
}

static void
lw_steady_init (LwSteady *self)
{
  lw_spread_ask_init (&self->ask);
  self->ask.points = LW_STEADY_POINTS;
}

LwSteady *
lw_steady_of (LwSession *session)
{
  LwSteady *self = g_object_get_data (G_OBJECT (session), "steady");

  if (self == NULL)
    {
      self = g_object_new (LW_TYPE_STEADY, NULL);
      self->session = session;
      g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
      g_object_set_data_full (G_OBJECT (session), "steady", self, g_object_unref);
    }

  return self;
}
