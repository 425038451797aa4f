/* Heads of batches, and the digest of what a batch comes from. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/head.h"

#include "season/correction.h"
#include "season/text.h"
#include "season/wording.h"

char *
lw_head_fold (const char *text)
{
  g_autofree char *plain = g_utf8_normalize (text, -1, G_NORMALIZE_ALL);

  return g_utf8_casefold (plain != NULL ? plain : "", -1);
}

#define ADD(sum, value) g_checksum_update (sum, (const guchar *) &(value), sizeof (value))
#define ADD_ALL(sum, values, n) g_checksum_update (sum, (const guchar *) (values), (gssize) ((n) * sizeof *(values)))

static void
add_step (GChecksum    *sum,
          const LwStep *step)
{
  ADD (sum, step->kind);
  ADD (sum, step->given);
  for (int setting = 0; setting < LW_N_SETTINGS; setting++)
    if (step->given & 1u << setting)
      ADD (sum, step->value[setting]);
}

/* The log that wall or air follows, and where in it the step begins. */
static void
add_followed (GChecksum     *sum,
              const LwBatch *batch,
              guint          step,
              LwSetting      setting)
{
  double from_s = 0;
  const LwFollowed *followed = lw_batch_followed (batch, step, setting, &from_s);
  guint n = 0;

  if (followed != NULL)
    lw_course_times (followed->course, &n);
  ADD (sum, n);
  if (n == 0)
    return;

  ADD (sum, from_s);
  ADD_ALL (sum, lw_course_times (followed->course, &n), n);
  ADD_ALL (sum, lw_course_values (followed->course), n);
}

/* What a measurement corrected. */
static void
add_jump (GChecksum    *sum,
          const LwJump *jump)
{
  guint n = jump != NULL ? jump->n_parts : 0;

  ADD (sum, n);
  if (n == 0)
    return;

  ADD (sum, jump->time_s);
  ADD_ALL (sum, jump->shifts, n);
}

static void
add_leaf (GChecksum       *sum,
          const LwProfile *leaf)
{
  ADD (sum, leaf->fresh_green);
  ADD (sum, leaf->law);
  ADD (sum, leaf->n_parts);
  ADD_ALL (sum, leaf->parts, leaf->n_parts);
}

static char *
weather_digest (const LwWeather *weather)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);

  ADD (sum, weather->form);
  ADD (sum, weather->start_s);
  ADD (sum, weather->day);
  ADD_ALL (sum, weather->hours, weather->n_hours);

  return g_strdup (g_checksum_get_string (sum));
}

/* A season of hours takes longer than all else, and its batches share it: `weathers` has the digests that are made. */
static void
add_weather (GChecksum       *sum,
             const LwWeather *weather,
             GHashTable      *weathers)
{
  char *digest = g_hash_table_lookup (weathers, weather);

  if (digest == NULL)
    g_hash_table_insert (weathers, (gpointer) weather, digest = weather_digest (weather));
  g_checksum_update (sum, (const guchar *) digest, -1);
}

static GHashTable *
weathers_new (void)
{
  return g_hash_table_new_full (NULL, NULL, NULL, g_free);
}

static char *
digest_new (const LwSeason *season,
            guint           batch,
            GHashTable     *weathers)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  const LwBatch *of = season->batches[batch];
  const LwProfile *leaf = lw_season_profile (season, of->leaf);
  const LwWeather *weather = of->weather != NULL ? lw_season_weather (season, of->weather) : NULL;
  double moisture_pct = lw_batch_fresh_moisture (of, leaf);

  ADD (sum, season->altitude_m);
  ADD (sum, season->latitude_deg);
  ADD (sum, of->when_s);
  ADD (sum, of->fresh_kg);
  ADD (sum, moisture_pct);
  ADD (sum, of->n_steps);
  for (guint i = 0; i < of->n_steps; i++)
    {
      const LwCorrection *correction = lw_correction_of (of, i);

      add_step (sum, &of->steps[i]);
      add_followed (sum, of, i, LW_SET_WALL_C);
      add_followed (sum, of, i, LW_SET_AIR_C);
      add_jump (sum, correction != NULL ? correction->jump : NULL);
    }
  if (leaf != NULL)
    add_leaf (sum, leaf);
  if (weather != NULL)
    add_weather (sum, weather, weathers);

  return g_strdup (g_checksum_get_string (sum));
}

char *
lw_head_digest (const LwSeason *season,
                guint           batch)
{
  g_autoptr (GHashTable) weathers = weathers_new ();

  return digest_new (season, batch, weathers);
}

static void
add_note (GString    *all,
          const char *note)
{
  if (note != NULL)
    g_string_append_printf (all, " %s", note);
}

/* Notes of the batch, its steps and weigh-ins too: a remark is often all that is remembered. */
static char *
all_text (const LwHead  *head,
          const LwBatch *batch)
{
  g_autofree char *date = lw_say_date (batch->when_s);
  g_autoptr (GString) all = g_string_new (head->name);

  g_string_append_printf (all, " %s %s %s", head->leaf, head->tea, date);
  add_note (all, batch->note);
  for (guint i = 0; i < batch->n_steps; i++)
    {
      add_note (all, batch->steps[i].note);
      for (guint k = 0; k < batch->steps[i].n_weigh_ins; k++)
        add_note (all, batch->steps[i].weigh_ins[k].note);
    }

  return lw_head_fold (all->str);
}

static LwHead *
head_new (const LwSeason *season,
          guint           batch,
          GHashTable     *weathers)
{
  LwHead *head = g_atomic_rc_box_new0 (LwHead);
  const LwBatch *of = season->batches[batch];
  const LwProfile *leaf = lw_season_profile (season, of->leaf);

  head->index = batch;
  head->name = g_strdup (of->name);
  head->tea = g_strdup (of->tea != NULL ? of->tea : "");
  head->leaf = g_strdup (leaf != NULL ? leaf->name : of->leaf);
  head->when_s = of->when_s;
  head->made = of->made;
  head->fresh_kg = of->fresh_kg;
  head->tea_folded = lw_head_fold (head->tea);
  head->leaf_folded = lw_head_fold (head->leaf);
  head->name_key = g_utf8_collate_key_for_filename (head->name, -1);
  head->tea_key = g_utf8_collate_key_for_filename (head->tea_folded, -1);
  head->leaf_key = g_utf8_collate_key_for_filename (head->leaf_folded, -1);
  head->folded = all_text (head, of);
  head->digest = digest_new (season, batch, weathers);

  return head;
}

GPtrArray *
lw_heads_new (const LwSeason *season)
{
  GPtrArray *heads = g_ptr_array_new_full (season->n_batches, (GDestroyNotify) lw_head_unref);
  g_autoptr (GHashTable) weathers = weathers_new ();

  for (guint i = 0; i < season->n_batches; i++)
    g_ptr_array_add (heads, head_new (season, i, weathers));

  return heads;
}

LwHead *
lw_head_ref (LwHead *head)
{
  return g_atomic_rc_box_acquire (head);
}

static void
head_clear (LwHead *head)
{
  g_free (head->name);
  g_free (head->tea);
  g_free (head->leaf);
  g_free (head->name_key);
  g_free (head->tea_key);
  g_free (head->leaf_key);
  g_free (head->tea_folded);
  g_free (head->leaf_folded);
  g_free (head->folded);
  g_free (head->digest);
}

void
lw_head_unref (LwHead *head)
{
  g_atomic_rc_box_release_full (head, (GDestroyNotify) head_clear);
}
