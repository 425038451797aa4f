/* Edits make the next season and leave the one before as it was, sharing what stayed the same. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <math.h>

#include "season/edit.h"

#define FULL 0  /* of the sample: wither and fix-pan, with aims and weigh-ins */
#define PLAIN 1 /* a step of each kind */

static LwSeason *
set (const LwSeason *season)
{
  return lw_edit_set (season, FULL, 0, LW_SET_MINUTES, 17);
}

static LwSeason *
unset (const LwSeason *season)
{
  return lw_edit_unset (season, FULL, 1, LW_SET_WALL_C);
}

static LwSeason *
add_step (const LwSeason *season)
{
  return lw_edit_add_step (season, FULL, 2, LW_KIND_ROLL);
}

static LwSeason *
remove_step (const LwSeason *season)
{
  return lw_edit_remove_step (season, FULL, 1);
}

static LwSeason *
move_step (const LwSeason *season)
{
  return lw_edit_move_step (season, FULL, 1, 0);
}

static LwSeason *
set_kind (const LwSeason *season)
{
  return lw_edit_set_kind (season, FULL, 1, LW_KIND_FIX_DRUM);
}

static LwSeason *
rename_batch (const LwSeason *season)
{
  return lw_edit_rename_batch (season, FULL, "Batch № 14");
}

static LwSeason *
repeat_batch (const LwSeason *season)
{
  return lw_edit_repeat_batch (season, FULL);
}

static LwSeason *
put_aim (const LwSeason *season)
{
  return lw_edit_put_aim (season, FULL, 1, (LwAim) { LW_MOISTURE, 50, 60, 1, NULL });
}

static LwSeason *
remove_aim (const LwSeason *season)
{
  return lw_edit_remove_aim (season, FULL, 1, LW_ROAST);
}

static LwSeason *
take_tea (const LwSeason *season)
{
  char note[] = "our own";
  const LwAim aims[] = { { LW_MOISTURE, 3, 6, 1, note }, { LW_GREEN, 1, INFINITY, 2, NULL } };

  return lw_edit_take_tea (season, FULL, "green", aims, G_N_ELEMENTS (aims));
}

static LwSeason *
remove_batch (const LwSeason *season)
{
  return lw_edit_remove_batch (season, FULL);
}

typedef struct
{
  const char *name;
  LwSeason *(*edit) (const LwSeason *season);
  guint batches; /* that there are then */
  guint shared;  /* of them */
} Edit;

static const Edit edits[] = {
  { "set", set, 2, 1 },
  { "unset", unset, 2, 1 },
  { "add-step", add_step, 2, 1 },
  { "remove-step", remove_step, 2, 1 },
  { "move-step", move_step, 2, 1 },
  { "set-kind", set_kind, 2, 1 },
  { "rename-batch", rename_batch, 2, 1 },
  { "repeat-batch", repeat_batch, 3, 2 },
  { "remove-batch", remove_batch, 1, 1 },
  { "put-aim", put_aim, 2, 1 },
  { "remove-aim", remove_aim, 2, 1 },
  { "take-tea", take_tea, 2, 1 },
};

static guint
count_shared (const LwSeason *a,
              const LwSeason *b)
{
  guint shared = 0;

  for (guint i = 0; i < a->n_batches; i++)
    for (guint k = 0; k < b->n_batches; k++)
      shared += a->batches[i] == b->batches[k];

  return shared;
}

static void
test_leaves_the_old (gconstpointer data)
{
  const Edit *row = data;
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) untouched = sample_season ();
  g_autoptr (LwSeason) next = row->edit (season);

  sample_assert_same (season, untouched);
  g_assert_true (next != season);
  g_assert_cmpuint (next->n_batches, ==, row->batches);
  g_assert_cmpuint (count_shared (season, next), ==, row->shared);
  for (guint i = 0; i < season->n_profiles; i++)
    g_assert_true (next->profiles[i] == season->profiles[i]);
  for (guint i = 0; i < season->n_weathers; i++)
    g_assert_true (next->weathers[i] == season->weathers[i]);
}

/* What an edit shares outlives the season that it was shared from. */
static void
test_outlives_the_old (gconstpointer data)
{
  const Edit *row = data;
  LwSeason *season = sample_season ();
  g_autoptr (LwSeason) next = row->edit (season);

  lw_season_unref (season);
  g_assert_cmpstr (next->batches[next->n_batches - 1]->name, ==, "Batch & 13");
  g_assert_cmpuint (next->batches[next->n_batches - 1]->n_steps, ==, LW_N_KINDS);
}

static void
test_set_and_unset (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) hot = lw_edit_set (season, PLAIN, LW_KIND_FIX_PAN, LW_SET_WALL_C, 310);
  g_autoptr (LwSeason) usual = lw_edit_unset (hot, PLAIN, LW_KIND_FIX_PAN, LW_SET_WALL_C);
  const LwStep *step = &hot->batches[PLAIN]->steps[LW_KIND_FIX_PAN];

  g_assert_true (lw_step_is_given (step, LW_SET_WALL_C));
  g_assert_cmpfloat (lw_step_get (step, LW_SET_WALL_C), ==, 310);
  sample_assert_same (usual, season);
}

static void
test_repeat (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) twice = lw_edit_repeat_batch (season, FULL);
  g_autoptr (LwSeason) thrice = lw_edit_repeat_batch (twice, FULL);
  const LwBatch *old = season->batches[FULL], *copy = twice->batches[FULL + 1];

  g_assert_cmpstr (copy->name, ==, "Batch № 12 (2)");
  g_assert_cmpstr (thrice->batches[FULL + 1]->name, ==, "Batch № 12 (3)");
  g_assert_cmpstr (thrice->batches[FULL + 2]->name, ==, "Batch № 12 (2)");
  g_assert_true (old->made);
  g_assert_false (copy->made);
  g_assert_cmpuint (copy->n_steps, ==, old->n_steps);
  g_assert_cmpuint (copy->n_aims, ==, old->n_aims);
  for (guint i = 0; i < copy->n_steps; i++)
    {
      g_assert_cmpuint (copy->steps[i].n_weigh_ins, ==, 0);
      g_assert_cmpuint (copy->steps[i].n_aims, ==, old->steps[i].n_aims);
      g_assert_cmphex (copy->steps[i].given, ==, old->steps[i].given);
    }
}

static void
test_rename_and_remove (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) renamed = rename_batch (season);
  g_autoptr (LwSeason) back = lw_edit_rename_batch (renamed, FULL, "Batch № 12");
  g_autoptr (LwSeason) removed = remove_batch (season);

  g_assert_cmpstr (renamed->batches[FULL]->name, ==, "Batch № 14");
  sample_assert_same (back, season);
  g_assert_true (removed->batches[0] == season->batches[PLAIN]);
}

/* A sign comes, changes and goes; a repeated batch keeps it. */
static void
test_sign (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) said = lw_edit_set_sign (season, FULL, 0, "soft, smells of apples");
  g_autoptr (LwSeason) other = lw_edit_set_sign (said, FULL, 0, "limp");
  g_autoptr (LwSeason) none = lw_edit_set_sign (said, FULL, 0, "");
  g_autoptr (LwSeason) repeated = lw_edit_repeat_batch (said, FULL);

  g_assert_cmpstr (said->batches[FULL]->steps[0].sign, ==, "soft, smells of apples");
  g_assert_cmpstr (other->batches[FULL]->steps[0].sign, ==, "limp");
  g_assert_null (none->batches[FULL]->steps[0].sign);
  g_assert_cmpstr (repeated->batches[FULL + 1]->steps[0].sign, ==, "soft, smells of apples");
  g_assert_cmpstr (said->batches[FULL]->steps[1].sign, ==, season->batches[FULL]->steps[1].sign);
}

/* One aim at an outcome at one place; a note stays with its aim. */
static void
test_aims (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) put = put_aim (season);
  g_autoptr (LwSeason) removed = remove_aim (put);
  g_autoptr (LwSeason) taken = take_tea (season);
  g_autoptr (LwSeason) last = lw_edit_remove_aim (season, FULL, -1, LW_OXIDATION);
  const LwBatch *tea = taken->batches[FULL];

  g_assert_cmpstr (lw_batch_aim (season->batches[FULL], 1, LW_MOISTURE)->note, ==, "so that it <rolls>");
  g_assert_cmpuint (put->batches[FULL]->steps[1].n_aims, ==, 2);
  g_assert_cmpfloat (lw_batch_aim (put->batches[FULL], 1, LW_MOISTURE)->low, ==, 50);
  g_assert_null (lw_batch_aim (put->batches[FULL], 1, LW_MOISTURE)->note);
  g_assert_null (lw_batch_aim (put->batches[FULL], 0, LW_MOISTURE));

  g_assert_cmpuint (removed->batches[FULL]->steps[1].n_aims, ==, 1);
  g_assert_null (lw_batch_aim (removed->batches[FULL], 1, LW_ROAST));
  g_assert_nonnull (lw_batch_aim (removed->batches[FULL], 1, LW_MOISTURE));
  g_assert_null (lw_batch_aim (last->batches[FULL], -1, LW_OXIDATION));

  g_assert_cmpstr (tea->tea, ==, "green");
  g_assert_cmpuint (tea->n_aims, ==, 2);
  g_assert_cmpstr (lw_batch_aim (tea, -1, LW_MOISTURE)->note, ==, "our own");
  g_assert_null (lw_batch_aim (tea, -1, LW_OXIDATION));
  g_assert_cmpuint (tea->steps[1].n_aims, ==, season->batches[FULL]->steps[1].n_aims);
}

/* A weather of a known id takes the place of the old one; a batch follows one or none. */
static void
test_weather (void)
{
  static const LwHour hours[] = { { 20, 60, 500, 1 } };
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) more = lw_edit_add_weather (season, lw_weather_new ("new", "New", 0, hours, 1));
  g_autoptr (LwSeason) other = lw_edit_add_weather (more, lw_weather_new ("march", "Other", 0, hours, 1));
  g_autoptr (LwSeason) none = lw_edit_set_batch_weather (more, FULL, NULL);
  g_autoptr (LwSeason) set_new = lw_edit_set_batch_weather (none, FULL, "new");

  g_assert_cmpuint (more->n_weathers, ==, season->n_weathers + 1);
  g_assert_null (lw_season_weather (season, "new"));
  g_assert_true (lw_season_weather (more, "march") == lw_season_weather (season, "march"));

  g_assert_cmpuint (other->n_weathers, ==, more->n_weathers);
  g_assert_true (other->weathers[0] == lw_season_weather (other, "march"));
  g_assert_cmpstr (other->weathers[0]->name, ==, "Other");
  g_assert_cmpstr (lw_season_weather (more, "march")->name, ==, "März");

  g_assert_null (none->batches[FULL]->weather);
  g_assert_true (none->batches[PLAIN] == more->batches[PLAIN]);
  g_assert_cmpstr (set_new->batches[FULL]->weather, ==, "new");
  g_assert_cmpstr (more->batches[FULL]->weather, ==, "march");
}

static void
test_check (void)
{
  static const struct
  {
    LwKind kind;
    LwSetting setting;
    double value;
    const char *said; /* NULL: it may be set */
  } rows[] = {
    { LW_KIND_FIX_PAN, LW_SET_WALL_C, 80, NULL },
    { LW_KIND_FIX_PAN, LW_SET_WALL_C, 400, NULL },
    { LW_KIND_FIX_PAN, LW_SET_WALL_C, 79.999, "“wall” must be a number from 80 °C to 400 °C." },
    { LW_KIND_FIX_PAN, LW_SET_WALL_C, 400.001, "“wall” must be a number from 80 °C to 400 °C." },
    { LW_KIND_FIX_PAN, LW_SET_WALL_C, NAN, "“wall” must be a number from 80 °C to 400 °C." },
    { LW_KIND_FIX_PAN, LW_SET_WALL_C, INFINITY, "“wall” must be a number from 80 °C to 400 °C." },
    { LW_KIND_FIX_PAN, LW_SET_MINUTES, 91, "“time” must be a number from 30 s to 1 h 30 min." },
    { LW_KIND_ROLL, LW_SET_PRESS_KPA, 0, "“pressure” must be a number from 0.1 kPa to 15.0 kPa." },
    { LW_KIND_WITHER, LW_SET_WALL_C, 200, "A step “wither” has no setting “wall”." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      gboolean may = lw_edit_check (rows[i].kind, rows[i].setting, rows[i].value, &error);

      g_assert_cmpint (may, ==, rows[i].said == NULL);
      g_assert_cmpstr (error != NULL ? error->message : NULL, ==, rows[i].said);
    }
  g_assert_false (lw_edit_check (LW_KIND_ROAST, LW_SET_AIR_C, 0, NULL));
}

/* It has a batch with steps, and the reader takes what the writer makes of it. */
static void
test_new_season (void)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (12 * 3600);
  g_autoptr (LwSeason) read = NULL;
  gsize length;
  g_autofree char *text = lw_document_write (season, &length);

  g_assert_cmpuint (season->n_batches, ==, 1);
  g_assert_cmpuint (season->batches[0]->n_steps, ==, 4);
  g_assert_cmpint (season->batches[0]->when_s, ==, 12 * 3600);
  g_assert_nonnull (lw_season_profile (season, season->batches[0]->leaf));
  read = sample_read (text);
  sample_assert_same (read, season);
}

/* A step made shorter than a weigh-in keeps it, and the season can still be saved and read. */
static void
test_weigh_in_kept (void)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (0);
  LwBatch *batch = lw_batch_copy (season->batches[0]);
  g_autoptr (LwSeason) shorter = NULL, read = NULL;
  g_autofree char *text = NULL;
  gsize length;

  lw_batch_add_weigh_in (batch, 1, (LwWeighIn) { .minute = 12, .of = LW_LEAF_C, .value = 80, .sd = 2 });
  lw_season_put_batch (season, 0, batch);
  shorter = lw_edit_set (season, 0, 1, LW_SET_MINUTES, 3);
  text = lw_document_write (shorter, &length);
  read = sample_read (text);
  g_assert_cmpuint (read->batches[0]->steps[1].n_weigh_ins, ==, 1);
  g_assert_cmpfloat (read->batches[0]->steps[1].weigh_ins[0].minute, ==, 12);
  g_assert_cmpfloat (lw_step_get (&read->batches[0]->steps[1], LW_SET_MINUTES), ==, 3);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (edits); i++)
    {
      g_autofree char *old = g_strconcat ("/edit/leaves-the-old/", edits[i].name, NULL);
      g_autofree char *lives = g_strconcat ("/edit/outlives-the-old/", edits[i].name, NULL);

      g_test_add_data_func (old, &edits[i], test_leaves_the_old);
      g_test_add_data_func (lives, &edits[i], test_outlives_the_old);
    }
  g_test_add_func ("/edit/set-and-unset", test_set_and_unset);
  g_test_add_func ("/edit/repeat", test_repeat);
  g_test_add_func ("/edit/aims", test_aims);
  g_test_add_func ("/edit/sign", test_sign);
  g_test_add_func ("/edit/rename-and-remove", test_rename_and_remove);
  g_test_add_func ("/edit/weather", test_weather);
  g_test_add_func ("/edit/check", test_check);
  g_test_add_func ("/edit/new-season", test_new_season);
  g_test_add_func ("/edit/weigh-in-kept", test_weigh_in_kept);

  return g_test_run ();
}
