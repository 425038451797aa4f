/* Computing the batches of a lesson. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cast.h"

#include "season/surround.h"
#include "season/text.h"

#define SAMPLES 160 /* a step */

void
lw_cast_set_of (LwCast    *cast,
                guint      curve,
                LwQuantity of)
{
  cast->of[curve] = of;
  for (guint i = 0; i < cast->n; i++)
    {
      LwCurves **curves = &cast->curves[i * LW_LESSON_CURVES + curve];

      g_clear_pointer (curves, lw_curves_unref);
      *curves = lw_curves_new (cast->tracks[i], of);
    }
}

/* (transfer full) with its turning points; NULL, and `failure` says why, where it cannot be computed to its end. */
static LwTrack *
march (LwCast *cast,
       guint   at)
{
  g_autoptr (LwMarch) own = lw_march_new ();
  g_autoptr (LwPlan) plan = lw_plan_new (cast->season, at);
  g_autoptr (LwTrack) track = NULL;

  g_return_val_if_fail (own != NULL && plan != NULL, NULL);
  track = lw_plan_march (plan, own, (LwSampling) { .samples = SAMPLES, .turns = TRUE });
  if (!track->failure.failed)
    return g_steal_pointer (&track);

  cast->failure = lw_plan_failure_text (plan, cast->season->batches[at], track);

  return NULL;
}

/* FALSE where it cannot be computed. */
static gboolean
add (LwCast *cast,
     guint   at)
{
  const LwBatch *batch = cast->season->batches[at];
  guint i = cast->n;

  if (batch->n_steps == 0)
    {
      /* Translators: %s is the name of a batch */
      cast->failure = g_strdup_printf (_ ("%s has no steps yet."), batch->name);
      return FALSE;
    }

  cast->tracks[i] = march (cast, at);
  if (cast->tracks[i] == NULL)
    return FALSE;

  if (i > 0)
    {
      cast->columns[i] = g_new (int, batch->n_steps);
      lw_compare_columns (cast->shown[0].batch, batch, cast->columns[i]);
    }
  cast->shown[i] = (LwShown) { batch, cast->tracks[i], cast->columns[i] };
  cast->n++;

  return TRUE;
}

LwCast *
lw_cast_new (LwSeason         *season,
             const guint      *batches,
             guint             n,
             const LwQuantity *of)
{
  LwCast *cast = g_new0 (LwCast, 1);

  cast->season = lw_season_ref (season);
  for (guint i = 0; i < MIN (n, LW_LESSON_MOST_SHOWN); i++)
    if (!add (cast, batches[i]) && i == 0)
      break;
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lw_cast_set_of (cast, i, of[i]);

  return cast;
}

void
lw_cast_free (LwCast *cast)
{
  if (cast == NULL)
    return;

  for (guint i = 0; i < cast->n * LW_LESSON_CURVES; i++)
    lw_curves_unref (cast->curves[i]);
  for (guint i = 0; i < cast->n; i++)
    {
      lw_track_unref (cast->tracks[i]);
      g_free (cast->columns[i]);
    }
  lw_season_unref (cast->season);
  g_free (cast->failure);
  g_free (cast);
}
