/* The planned side of the batch sheet, and how what was made differs from it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/card-private.h"
#include "draw/words.h"
#include "season/text.h"
#include "season/wording.h"

#define SAMPLES 8 /* of a step: only ends are told */

LwRecordPlan *
lw_record_plan_new (const LwCard *card)
{
  LwBatch *planned = lw_batch_as_planned (card->batch);
  g_autoptr (LwMarch) march = NULL;
  g_autoptr (LwPlan) computed = NULL;
  LwRecordPlan *plan;

  if (planned == NULL)
    return NULL;

  plan = g_new0 (LwRecordPlan, 1);
  plan->side.season = lw_season_copy (card->season);
  lw_season_put_batch (plan->side.season, card->at, planned);
  plan->side.at = card->at;
  plan->side.batch = planned;
  march = lw_march_new ();
  computed = lw_plan_new (plan->side.season, card->at);
  plan->side.track = lw_plan_march (computed, march, (LwSampling) { .samples = SAMPLES });
  plan->side.wish = card->wish;
  plan->side.wish.load_kg *= planned->fresh_kg / card->batch->fresh_kg;
  plan->pairs = lw_compare_pairs (planned, card->batch);

  return plan;
}

void
lw_record_plan_free (LwRecordPlan *plan)
{
  lw_track_unref (plan->side.track);
  lw_season_unref (plan->side.season);
  g_array_unref (plan->pairs);
  g_free (plan);
}

char *
lw_record_say_step (const LwCard *side,
                    guint         step)
{
  g_auto (LwCardRow) row = lw_card_row (side, step);
  g_autofree char *moisture = NULL, *then = NULL;

  if (step < side->track->n_steps)
    {
      moisture = lw_words_value (LW_MOISTURE, lw_track_end (side->track, step, -1).moisture_wb_pct);
      /* Translators: at a step's end: weight, moisture */
      then = g_strdup_printf (_ ("then %s, %s"), row.weight, moisture);
    }

  return g_strdup_printf ("%s · %s\n%s\n%s", row.time, row.leading, row.settings, then != NULL ? then : "");
}

char *
lw_record_say_finished (const LwCard  *side,
                        const LwBatch *aimed)
{
  GString *text = g_string_new (NULL);
  LwOutcome end;

  if (side->track->n_steps == 0 || side->track->n_steps < side->batch->n_steps)
    return g_string_free (g_string_append (text, _ ("not computed")), FALSE);

  end = lw_track_end (side->track, side->track->n_steps - 1, -1);
  for (guint i = 0; i < aimed->n_aims; i++)
    {
      LwQuantity of = aimed->aims[i].of;
      g_autofree char *value = lw_words_value (of, lw_quantity_of (of, &end));

      g_string_append_printf (text, "%s%s %s", i > 0 ? "\n" : "", _ (lw_quantity_row (of)->label), value);
    }

  return g_string_free (text, FALSE);
}

static void
add_line (GString    *text,
          const char *what,
          double      change,
          const char *size)
{
  g_string_append_printf (text, "%s%s %s%s", text->len > 0 ? "\n" : "", what, change < 0 ? "−" : "+", size);
}

/* Whether both sides have a value of it: neither follows weather or a log. */
static gboolean
is_set (const LwKindSetting *range,
        const LwStep        *planned,
        const LwStep        *made)
{
  return (!range->weather || (lw_step_is_given (planned, range->setting) && lw_step_is_given (made, range->setting)))
         && lw_step_log (planned, range->setting) == NULL && lw_step_log (made, range->setting) == NULL;
}

static void
say_settings (GString      *text,
              const LwStep *planned,
              const LwStep *made)
{
  const LwKindRow *row = lw_kind_row (made->kind);

  for (guint i = 0; i < row->n_settings; i++)
    {
      LwSetting setting = row->settings[i].setting;
      double change = lw_step_get (made, setting) - lw_step_get (planned, setting);
      g_autofree char *size = setting == LW_SET_MINUTES ? lw_say_minutes (fabs (change))
                                                        : lw_say_setting (setting, fabs (change));

      if (change != 0 && is_set (&row->settings[i], planned, made))
        add_line (text, _ (lw_setting_row (setting)->label), change, size);
    }
}

char *
lw_record_say_change (const LwRecordPlan *plan,
                      const LwCard       *card,
                      const LwPair       *pair)
{
  guint was = (guint) pair->of[0], is = (guint) pair->of[1];
  GString *text = g_string_new (NULL);

  say_settings (text, &plan->side.batch->steps[was], &card->batch->steps[is]);
  if (was < plan->side.track->n_steps && is < card->track->n_steps)
    {
      LwOutcome planned = lw_track_end (plan->side.track, was, -1), made = lw_track_end (card->track, is, -1);
      double kg = made.kg_per_kg_fresh * card->wish.load_kg - planned.kg_per_kg_fresh * plan->side.wish.load_kg;
      double points = made.moisture_wb_pct - planned.moisture_wb_pct;
      g_autofree char *size = lw_say_kg (fabs (kg)), *moisture = lw_words_change (LW_MOISTURE, points);
      g_autofree char *weight = g_strdup_printf ("%s%s", kg < 0 ? "−" : "+", size);
      g_autofree char *water = g_strdup_printf ("%s %s", moisture, lw_words_change_unit (LW_MOISTURE));
      g_autofree char *then = g_strdup_printf (_ ("then %s, %s"), weight, water);

      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", then);
    }

  return g_string_free (text, FALSE);
}
