/* Tracks and their segments: memory and reading between samples. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/track.h"

LwSegment *
lw_segment_new (double duration_s,
                guint  n,
                guint  n_parts)
{
  LwSegment *segment = g_atomic_rc_box_new0 (LwSegment);

  segment->duration_s = duration_s;
  segment->n = n;
  segment->n_parts = n_parts;
  segment->time_s = g_new0 (double, n);
  segment->states = g_new0 (LwState, (gsize) n * n_parts);

  return segment;
}

guint
lw_segment_jump (const LwSegment *segment)
{
  for (guint i = 1; i < segment->n; i++)
    if (segment->time_s[i] == segment->time_s[i - 1])
      return i;

  return 0;
}

LwSegment *
lw_segment_ref (LwSegment *segment)
{
  return g_atomic_rc_box_acquire (segment);
}

static void
segment_clear (LwSegment *segment)
{
  g_free (segment->time_s);
  g_free (segment->states);
  g_free (segment->turns);
}

void
lw_segment_unref (LwSegment *segment)
{
  g_atomic_rc_box_release_full (segment, (GDestroyNotify) segment_clear);
}

LwTrack *
lw_track_ref (LwTrack *track)
{
  return g_atomic_rc_box_acquire (track);
}

static void
track_clear (LwTrack *track)
{
  for (guint i = 0; i < track->n_steps; i++)
    lw_segment_unref (track->steps[i]);
  g_free (track->steps);
  g_free (track->parts);
}

void
lw_track_unref (LwTrack *track)
{
  g_atomic_rc_box_release_full (track, (GDestroyNotify) track_clear);
}

const LwState *
lw_track_state (const LwTrack *track,
                guint          step,
                guint          part,
                guint          i)
{
  return &track->steps[step]->states[(gsize) i * track->n_parts + part];
}

/* The sample at or before `t_s` and how far on to the next, 0..1. */
static guint
place (const LwSegment *segment,
       double           t_s,
       double          *on)
{
  guint low = 0, high = segment->n - 1;

  while (high - low > 1)
    {
      guint middle = (low + high) / 2;

      if (segment->time_s[middle] <= t_s)
        low = middle;
      else
        high = middle;
    }

  *on = 1;
  if (segment->time_s[high] > segment->time_s[low])
    *on = CLAMP ((t_s - segment->time_s[low]) / (segment->time_s[high] - segment->time_s[low]), 0, 1);

  return low;
}

static LwState
between (const LwState *a,
         const LwState *b,
         double         on)
{
  LwState s;

  for (gsize k = 0; k < LW_N_STATE; k++)
    {
      double from = ((const double *) a)[k], to = ((const double *) b)[k];

      ((double *) &s)[k] = from + on * (to - from);
    }

  return s;
}

LwState
lw_track_state_at (const LwTrack *track,
                   guint          step,
                   guint          part,
                   double         t_s)
{
  double on;
  guint i = place (track->steps[step], t_s, &on);

  return between (lw_track_state (track, step, part, i), lw_track_state (track, step, part, i + 1), on);
}

LwOutcome
lw_track_outcome (const LwTrack *track,
                  guint          step,
                  int            part,
                  guint          i)
{
  if (part < 0)
    return lw_outcome_mean (&track->leaf, lw_track_state (track, step, 0, i));

  return lw_outcome_part (lw_track_state (track, step, (guint) part, i), &track->parts[part],
                          track->leaf.fresh_water);
}

LwOutcome
lw_track_outcome_at (const LwTrack *track,
                     guint          step,
                     int            part,
                     double         t_s)
{
  g_autofree LwState *states = NULL;
  LwState one;

  if (part >= 0)
    {
      one = lw_track_state_at (track, step, (guint) part, t_s);
      return lw_outcome_part (&one, &track->parts[part], track->leaf.fresh_water);
    }

  states = g_new (LwState, track->n_parts);
  for (guint i = 0; i < track->n_parts; i++)
    states[i] = lw_track_state_at (track, step, i, t_s);

  return lw_outcome_mean (&track->leaf, states);
}

LwOutcome
lw_track_end (const LwTrack *track,
              guint          step,
              int            part)
{
  return lw_track_outcome (track, step, part, track->steps[step]->n - 1);
}
