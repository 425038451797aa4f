/* Edits of which steps there are, in which order and of which kind: lessons that stop in them follow. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"

#include <string.h>

#include "season/lesson.h"

LwSeason *
lw_edit_add_step (const LwSeason *season,
                  guint           batch,
                  guint           at,
                  LwKind          kind)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_insert_step (own, at, lw_step_new (kind));
  lw_season_lessons_step (next, own->name, season->batches[batch]->n_steps, -1, (int) at);

  return next;
}

LwSeason *
lw_edit_remove_step (const LwSeason *season,
                     guint           batch,
                     guint           step)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_remove_step (own, step);
  lw_season_lessons_step (next, own->name, season->batches[batch]->n_steps, (int) step, -1);

  return next;
}

LwSeason *
lw_edit_move_step (const LwSeason *season,
                   guint           batch,
                   guint           from,
                   guint           to)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_move_step (own, from, to);
  lw_season_lessons_step (next, own->name, season->batches[batch]->n_steps, (int) from, (int) to);

  return next;
}

/* What was set of a step, as far as another kind has it, in that kind's range. Time and what leads begin anew: a pan's
 * minutes would burn the leaf in a drum. */
static void
carry_settings (LwStep       *into,
                const LwStep *from)
{
  const LwKindRow *row = lw_kind_row (from->kind);

  for (guint i = 0; i < row->n_settings; i++)
    {
      LwSetting setting = row->settings[i].setting;
      const LwKindSetting *range = lw_kind_setting (into->kind, setting);

      if (range == NULL || setting == LW_SET_MINUTES || setting == lw_kind_row (into->kind)->leading)
        continue;
      if (lw_step_is_given (from, setting))
        lw_step_set (into, setting, CLAMP (lw_step_get (from, setting), range->low, range->high));
      if (lw_step_log (from, setting) != NULL)
        lw_step_set_log (into, setting, lw_step_log (from, setting));
    }
}

LwSeason *
lw_edit_set_kind (const LwSeason *season,
                  guint           batch,
                  guint           step,
                  LwKind          kind)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);
  const LwStep usual = lw_step_new (kind);
  LwStep other = lw_step_copy (&own->steps[step]);

  other.kind = kind;
  other.given = usual.given;
  memcpy (other.value, usual.value, sizeof other.value);
  for (guint i = 0; i < LW_N_LOG_OF; i++)
    g_clear_pointer (&other.log[i], g_free);
  g_clear_pointer (&other.sign, g_free);
  carry_settings (&other, &own->steps[step]);
  lw_step_clear (&own->steps[step]);
  own->steps[step] = other;

  return next;
}
