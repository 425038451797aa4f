/* A fit in a thread: it comes once, tells how far it is, and does not come when it is called off. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>

#include "bench/fit-job.h"
#include "../plain-season.h"

#define PATIENCE_S 60

typedef struct
{
  guint calls;
  LwFit *fit;
  GError *error;
} Came;

static LwSeason *
season_new (guint weights)
{
  static const LwKind kinds[] = { LW_KIND_WITHER };
  LwSeason *season = plain_season (kinds, G_N_ELEMENTS (kinds));
  LwBatch *batch = lw_batch_copy (season->batches[0]);

  batch->made = TRUE;
  lw_step_set (&batch->steps[0], LW_SET_MINUTES, 600);
  for (guint i = 0; i < weights; i++)
    lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 60.0 * (i + 1), LW_WEIGHED_KG, batch->fresh_kg * (0.99 - 0.01 * i), 0.02, 0, NULL });
  lw_season_put_batch (season, 0, batch);

  return season;
}

static void
came_cb (LwFit        *fit,
         const GError *error,
         gpointer      data)
{
  Came *came = data;

  came->calls++;
  came->fit = fit;
  came->error = error != NULL ? g_error_copy (error) : NULL;
}

static LwFitJob *
start (LwSeason *season,
       Came     *came)
{
  g_autoptr (GArray) batches = g_array_new (FALSE, FALSE, sizeof (guint));
  guint first = 0;

  g_array_append_val (batches, first);

  return lw_fit_job_start (season, batches, LW_FIT_BIT (LW_FIT_SKIN), FALSE, came_cb, came);
}

static gboolean
late_cb (gpointer data)
{
  *(gboolean *) data = TRUE;

  return G_SOURCE_REMOVE;
}

/* Until it came, or `ms` are over. */
static void
pass (const Came *came,
      guint       ms)
{
  gboolean late = FALSE;
  guint timer = g_timeout_add (ms, late_cb, &late);

  while (!late && came->calls == 0)
    g_main_context_iteration (NULL, TRUE);
  if (!late)
    g_source_remove (timer);
}

static void
test_comes (void)
{
  g_autoptr (LwSeason) season = season_new (5);
  Came came = { 0 };
  LwFitJob *job = start (season, &came);

  g_assert_cmpfloat (lw_fit_job_share (job), <=, 1);
  pass (&came, PATIENCE_S * 1000);
  g_assert_cmpuint (came.calls, ==, 1);
  g_assert_no_error (came.error);
  g_assert_true (came.fit->season == season);
  g_assert_cmpuint (came.fit->n_points, ==, 5);
  lw_fit_free (came.fit);
}

static void
test_fails (void)
{
  g_autoptr (LwSeason) season = season_new (0);
  Came came = { 0 };

  start (season, &came);
  pass (&came, PATIENCE_S * 1000);
  g_assert_null (came.fit);
  g_assert_error (came.error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_error_free (came.error);
}

/* Neither before nor after the thread is done; a second one is not hindered. */
static void
test_called_off (void)
{
  g_autoptr (LwSeason) season = season_new (5);
  Came off = { 0 }, on = { 0 };

  lw_fit_job_cancel (start (season, &off));
  start (season, &on);
  pass (&on, PATIENCE_S * 1000);
  g_assert_cmpuint (on.calls, ==, 1);
  pass (&off, 300);
  g_assert_cmpuint (off.calls, ==, 0);
  lw_fit_free (on.fit);
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-job/comes", test_comes);
  g_test_add_func ("/fit-job/fails", test_fails);
  g_test_add_func ("/fit-job/called-off", test_called_off);

  return g_test_run ();
}
