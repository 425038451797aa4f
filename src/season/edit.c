/* The edits. Each copies the one batch it changes and shares the rest. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"

#include <math.h>

#include "season/correction.h"
#include "season/document.h"
#include "season/lesson.h"
#include "season/text.h"
#include "season/wording.h"

#define NAME_ENDS 40 /* characters that are put behind a name, in any language */

/* What is set by hand no longer follows a log: a maker who drags the heat wants that heat. */
static void
set_by_hand (LwStep   *step,
             LwSetting setting,
             double    value)
{
  lw_step_set (step, setting, value);
  if (lw_step_log (step, setting) != NULL)
    lw_step_set_log (step, setting, NULL);
}

LwSeason *
lw_edit_set_all (const LwSeason *season,
                 guint           batch,
                 const LwChange *changes,
                 guint           n)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  for (guint i = 0; i < n; i++)
    set_by_hand (&own->steps[changes[i].step], changes[i].setting, changes[i].value);

  return next;
}

LwSeason *
lw_edit_set (const LwSeason *season,
             guint           batch,
             guint           step,
             LwSetting       setting,
             double          value)
{
  return lw_edit_set_all (season, batch, &(LwChange) { step, setting, value }, 1);
}

LwSeason *
lw_edit_unset (const LwSeason *season,
               guint           batch,
               guint           step,
               LwSetting       setting)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_step_unset (&own->steps[step], setting);
  if (lw_step_log (&own->steps[step], setting) != NULL)
    lw_step_set_log (&own->steps[step], setting, NULL);

  return next;
}

LwSeason *
lw_edit_set_sign (const LwSeason *season,
                  guint           batch,
                  guint           step,
                  const char     *sign)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  g_free (own->steps[step].sign);
  own->steps[step].sign = sign != NULL && *sign != '\0' ? g_strdup (sign) : NULL;

  return next;
}

LwSeason *
lw_edit_put_aim (const LwSeason *season,
                 guint           batch,
                 int             step,
                 LwAim           aim)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  aim.note = g_strdup (aim.note);
  lw_batch_remove_aim (own, step, aim.of);
  lw_batch_add_aim (own, step, aim);

  return next;
}

LwSeason *
lw_edit_remove_aim (const LwSeason *season,
                    guint           batch,
                    int             step,
                    LwQuantity      of)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_remove_aim (own, step, of);

  return next;
}

LwSeason *
lw_edit_take_tea (const LwSeason *season,
                  guint           batch,
                  const char     *tea,
                  const LwAim    *aims,
                  guint           n)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  g_free (own->tea);
  own->tea = g_strdup (tea);
  lw_aims_clear (&own->aims, &own->n_aims);
  own->aims = lw_aims_copy (aims, n);
  own->n_aims = n;

  return next;
}

/* (transfer full) short enough for what is put behind it to keep within what a document takes. */
static char *
cut_name (const char *name)
{
  return g_utf8_substring (name, 0, MIN (g_utf8_strlen (name, -1), LW_MAX_TEXT - NAME_ENDS));
}

static char *
unused_name (const LwSeason *season,
             const char     *like)
{
  g_autofree char *cut = cut_name (like);

  for (guint i = 2;; i++)
    {
      /* Translators: the name of a repeated batch, then a counting number */
      g_autofree char *name = g_strdup_printf (_ ("%s (%u)"), cut, i);

      if (lw_season_batch (season, name) < 0)
        return g_steal_pointer (&name);
    }
}

LwSeason *
lw_edit_repeat_batch (const LwSeason *season,
                      guint           batch)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_copy (season->batches[batch]);

  g_free (own->name);
  own->name = unused_name (season, season->batches[batch]->name);
  lw_batch_forget_made (own);
  lw_season_insert_batch (next, batch + 1, own);

  return next;
}

LwSeason *
lw_edit_add_planned (const LwSeason *season,
                     guint           batch)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_as_planned (season->batches[batch]);
  g_autofree char *cut = cut_name (own->name);
  /* Translators: the name of a batch */
  g_autofree char *name = g_strdup_printf (_ ("%s, as planned"), cut);

  g_free (own->name);
  own->name = lw_season_batch (season, name) < 0 ? g_steal_pointer (&name) : unused_name (season, name);
  lw_season_insert_batch (next, batch + 1, own);

  return next;
}

LwSeason *
lw_edit_add_weather (const LwSeason *season,
                     LwWeather      *weather)
{
  LwSeason *next = lw_season_copy (season);

  lw_season_put_weather (next, weather);

  return next;
}

LwSeason *
lw_edit_set_batch_weather (const LwSeason *season,
                           guint           batch,
                           const char     *id)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);
  char *weather = g_strdup (id);

  g_free (own->weather);
  own->weather = weather;

  return next;
}

LwSeason *
lw_edit_put_profile (const LwSeason *season,
                     LwProfile      *profile)
{
  LwSeason *next = lw_season_copy (season);

  lw_season_put_profile (next, profile);

  return next;
}

LwSeason *
lw_edit_set_leaves (const LwSeason    *season,
                    const char *const *ids)
{
  LwSeason *next = lw_season_copy (season);

  for (guint i = 0; i < season->n_batches; i++)
    if (ids[i] != NULL)
      {
        LwBatch *own = lw_batch_copy (season->batches[i]);

        g_free (own->leaf);
        own->leaf = g_strdup (ids[i]);
        lw_batch_drop_corrections (own); /* reckoned for the parts of another leaf */
        lw_season_put_batch (next, i, own);
      }

  return next;
}

LwSeason *
lw_edit_add_leaf (const LwSeason *season,
                  guint           batch,
                  const char     *id,
                  const char     *name)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);
  LwProfile *leaf = lw_profile_copy (lw_season_profile (season, own->leaf));

  g_free (leaf->id);
  g_free (leaf->name);
  leaf->id = g_strdup (id);
  leaf->name = g_strdup (name);
  lw_season_add_profile (next, leaf);
  g_free (own->leaf);
  own->leaf = g_strdup (id);

  return next;
}

LwSeason *
lw_edit_uncorrect (const LwSeason *season,
                   guint           batch)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_drop_corrections (own);

  return next;
}

LwSeason *
lw_edit_correct (const LwSeason *season,
                 guint           batch,
                 guint           step,
                 LwCorrection   *correction)
{
  LwSeason *next = lw_edit_uncorrect (season, batch);

  lw_batch_set_correction (next->batches[batch], step, correction);

  return next;
}

LwSeason *
lw_edit_set_fresh_moisture (const LwSeason *season,
                            guint           batch,
                            double          moisture_pct)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  own->fresh_moisture_pct = moisture_pct;

  return next;
}

gboolean
lw_edit_check (LwKind    kind,
               LwSetting setting,
               double    value,
               GError  **error)
{
  const LwKindSetting *range = lw_kind_setting (kind, setting);
  g_autofree char *low = NULL, *high = NULL;

  if (range == NULL)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, _ ("A step “%s” has no setting “%s”."),
                   _ (lw_kind_row (kind)->label), _ (lw_setting_row (setting)->label));
      return FALSE;
    }

  if (isfinite (value) && value >= range->low && value <= range->high)
    return TRUE;

  low = lw_say_setting (setting, range->low);
  high = lw_say_setting (setting, range->high);
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, _ ("“%s” must be a number from %s to %s."),
               _ (lw_setting_row (setting)->label), low, high);

  return FALSE;
}

LwSeason *
lw_edit_new_season (gint64 when_s)
{
  LwSeason *season = lw_season_new (_ ("New season"));
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new (_ ("1 first batch"));

  batch->when_s = when_s;
  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->fresh_kg = 4;
  for (guint i = 0; i < 4; i++)
    {
      static const LwKind usual[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_SUN };

      lw_batch_insert_step (batch, i, lw_step_new (usual[i]));
    }

  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  return season;
}
