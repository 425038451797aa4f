/* The lessons that ship: every word that they say is borne out by what the model computes of their batches. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-test.h"

#include <string.h>

#include "leaf/air.h"
#include "season/lesson.h"
#include "study/turning.h"

#define N_LESSONS 6

typedef struct
{
  LwSeason *season;
  const LwBatch *batch[2];
  LwTrack *track[2];
} Pair;

static LwOutcome
end (const Pair *pair,
     guint       i,
     guint       step)
{
  return lw_track_end (pair->track[i], step - 1, -1);
}

/* The two differ in that step alone; the other steps, leaf, weather and start are the same. */
static void
differ_in (const Pair *pair,
           guint       step)
{
  const LwBatch *a = pair->batch[0], *b = pair->batch[1];

  g_assert_cmpuint (a->n_steps, ==, b->n_steps);
  g_assert_cmpstr (a->leaf, ==, b->leaf);
  g_assert_cmpstr (a->weather, ==, b->weather);
  g_assert_cmpint (a->when_s, ==, b->when_s);
  g_assert_cmpfloat (a->fresh_kg, ==, b->fresh_kg);
  for (guint i = 0; i < a->n_steps; i++)
    {
      g_assert_cmpint (a->steps[i].kind, ==, b->steps[i].kind);
      g_assert_cmpuint (a->steps[i].given, ==, b->steps[i].given);
      g_assert_true ((memcmp (a->steps[i].value, b->steps[i].value, sizeof a->steps[i].value) == 0) == (i != step - 1));
    }
}

static void
same_pan (const Pair *pair)
{
  differ_in (pair, 1);
}

static void
less_to_boil (const Pair *pair)
{
  g_assert_cmpfloat (end (pair, 0, 1).kg_per_kg_fresh, <, end (pair, 1, 1).kg_per_kg_fresh - 0.1);
}

static void
same_fire_hotter (const Pair *pair)
{
  g_assert_cmpfloat (end (pair, 0, 2).leaf_temp_c, >, end (pair, 1, 2).leaf_temp_c + 1);
}

static void
same_rolling (const Pair *pair)
{
  differ_in (pair, 2);
}

static void
pan_ruptures (const Pair *pair)
{
  g_assert_cmpfloat (end (pair, 0, 2).rupture_heat_pct, >, end (pair, 1, 2).rupture_heat_pct + 5);
}

static void
rolling_adds_alike (const Pair *pair)
{
  double added[2];

  for (guint i = 0; i < 2; i++)
    added[i] = end (pair, i, 3).rupture_pct - end (pair, i, 2).rupture_pct;
  g_test_message ("rolling adds %.1f and %.1f points", added[0], added[1]);
  g_assert_cmpfloat_with_epsilon (added[0], added[1], 1.5);
  g_assert_cmpfloat (added[0], >, 5);
  g_assert_cmpfloat (end (pair, 0, 3).rupture_pct, >, end (pair, 1, 3).rupture_pct + 5);
}

static void
drum_leaves_whole (const Pair *pair)
{
  differ_in (pair, 3);
  g_assert_cmpfloat (end (pair, 0, 2).enzyme_left_pct, <, 1);
  g_assert_cmpfloat (end (pair, 0, 2).rupture_pct, <, 25);
  g_assert_cmpfloat (lw_step_get (&pair->batch[0]->steps[1], LW_SET_MINUTES), <, 8);
}

static void
three_times (const Pair *pair)
{
  g_assert_cmpfloat (lw_step_get (&pair->batch[0]->steps[2], LW_SET_MINUTES), ==,
                     3 * lw_step_get (&pair->batch[1]->steps[2], LW_SET_MINUTES));
}

static void
not_three_times (const Pair *pair)
{
  double added[2];

  for (guint i = 0; i < 2; i++)
    added[i] = end (pair, i, 3).rupture_pct - end (pair, i, 2).rupture_pct;
  g_assert_cmpfloat (added[0], >, added[1]);
  g_assert_cmpfloat (added[0], <, 2.5 * added[1]);
}

static void
only_pressure (const Pair *pair)
{
  differ_in (pair, 3);
  for (LwSetting i = 0; i < LW_N_SETTINGS; i++)
    if (lw_kind_setting (LW_KIND_ROLL, i) != NULL && i != LW_SET_PRESS_KPA)
      g_assert_cmpfloat (lw_step_get (&pair->batch[0]->steps[2], i), ==, lw_step_get (&pair->batch[1]->steps[2], i));
}

static void
more_ruptured (const Pair *pair)
{
  g_assert_cmpfloat (end (pair, 0, 3).rupture_pct, >, end (pair, 1, 3).rupture_pct + 20);
}

/* Also with the head start taken off that rolling gives: what goes in this hour. */
static void
ahead_on_the_mat (const Pair *pair)
{
  LwOutcome begin[2], now[2];

  for (guint i = 0; i < 2; i++)
    {
      begin[i] = end (pair, i, 3);
      now[i] = lw_track_outcome_at (pair->track[i], 3, -1, 60 * 60);
    }
  g_test_message ("moisture after an hour: %.1f and %.1f %%", now[0].moisture_wb_pct, now[1].moisture_wb_pct);
  g_assert_cmpfloat (now[0].moisture_wb_pct, <, now[1].moisture_wb_pct - 1);
  g_assert_cmpfloat (begin[0].kg_per_kg_fresh - now[0].kg_per_kg_fresh, >,
                     begin[1].kg_per_kg_fresh - now[1].kg_per_kg_fresh);
}

static void
gentle (const Pair *pair)
{
  differ_in (pair, 2);
  g_assert_cmpfloat (lw_step_get (&pair->batch[0]->steps[1], LW_SET_WALL_C), <,
                     lw_step_get (&pair->batch[1]->steps[1], LW_SET_WALL_C));
  g_assert_cmpfloat (lw_step_get (&pair->batch[0]->steps[1], LW_SET_MINUTES), >,
                     lw_step_get (&pair->batch[1]->steps[1], LW_SET_MINUTES));
}

static double
minute_of (const Pair *pair,
           guint       i,
           LwTurnKind  kind)
{
  g_autoptr (GArray) turns = lw_turns_of (pair->track[i]);

  for (guint k = 0; k < turns->len; k++)
    if (g_array_index (turns, LwTurnAt, k).kind == kind)
      return g_array_index (turns, LwTurnAt, k).minute;

  g_assert_not_reached ();
}

static void
warm_while_it_lived (const Pair *pair)
{
  double slow = minute_of (pair, 0, LW_TURN_ENZYME_HALF), strong = minute_of (pair, 1, LW_TURN_ENZYME_HALF);

  g_test_message ("half of the enzyme is gone after %.1f and %.1f min", slow, strong);
  g_assert_cmpfloat (slow, >, 1.5 * strong);
  g_assert_cmpfloat (lw_track_outcome_at (pair->track[0], 1, -1, 60 * slow).leaf_temp_c, >, 35);
  g_assert_cmpfloat (end (pair, 0, 2).oxidation_pct - end (pair, 0, 1).oxidation_pct, >,
                     2 * (end (pair, 1, 2).oxidation_pct - end (pair, 1, 1).oxidation_pct));
}

static void
bare_and_covered (const Pair *pair)
{
  differ_in (pair, 1);
  g_assert_cmpfloat (lw_step_get (&pair->batch[0]->steps[0], LW_SET_COVER_PCT), ==, 0);
  g_assert_cmpfloat (lw_step_get (&pair->batch[1]->steps[0], LW_SET_COVER_PCT), >, 50);
}

static void
part_nearly_dry (const Pair *pair)
{
  g_test_message ("nearly dry: %.1f and %.2f %%", end (pair, 0, 1).nearly_dry_pct, end (pair, 1, 1).nearly_dry_pct);
  g_assert_cmpfloat (end (pair, 0, 1).nearly_dry_pct, >, 5);
  g_assert_cmpfloat (end (pair, 0, 1).nearly_dry_pct, <, 60);
  g_assert_cmpfloat (end (pair, 1, 1).nearly_dry_pct, <, 0.1);
}

/* At the end of the pan: what was nearly dry is above the boiling point, and nothing of the other batch is. */
static void
dry_roasts (const Pair *pair)
{
  double boils_c = lw_air_boiling_c (lw_air_pressure_pa (pair->season->altitude_m)), hottest[2] = { 0 };

  for (guint i = 0; i < 2; i++)
    for (guint part = 0; part < pair->track[i]->n_parts; part++)
      {
        LwOutcome before = lw_track_end (pair->track[i], 0, (int) part), after = lw_track_end (pair->track[i], 1, (int) part);

        hottest[i] = MAX (hottest[i], after.leaf_temp_c);
        if (after.leaf_temp_c > boils_c)
          g_assert_cmpfloat (before.moisture_wb_pct, <, 30);
      }
  g_test_message ("boils at %.1f °C; hottest %.1f and %.1f °C", boils_c, hottest[0], hottest[1]);
  g_assert_cmpfloat (hottest[0], >, boils_c + 3);
  g_assert_cmpfloat (hottest[1], <, boils_c);
  g_assert_cmpfloat (end (pair, 0, 2).roast_min, >, 20 * end (pair, 1, 2).roast_min);
  g_assert_cmpfloat (end (pair, 0, 2).roasted_pct, >, 5);
}

/* Only asks, of what the caption after it answers. */
static void
asks (const Pair *pair)
{
}

static const struct
{
  const char *begins; /* of what is said */
  void (*holds) (const Pair *pair);
} claims[] = {
  { "The same pan for both.", same_pan },
  { "The long wither has left less water", less_to_boil },
  { "So the same fire made this leaf hotter", same_fire_hotter },
  { "The same rolling for both.", same_rolling },
  { "The long pan has ruptured more cells", pan_ruptures },
  { "The rolling begins. Where", asks },
  { "Rolling added about as much to both", rolling_adds_alike },
  { "A short hot drum kills the enzyme", drum_leaves_whole },
  { "The enzyme is gone, and most cells are still whole", drum_leaves_whole },
  { "One batch is rolled three times as long.", three_times },
  { "Not three times as much", not_three_times },
  { "A race: two batches on the same mat in the same sun.", only_pressure },
  { "Both go on the mat. One has more ruptured cells.", more_ruptured },
  { "Where does the moisture of the firmly", asks },
  { "Through ruptured cells water leaves more easily", ahead_on_the_mat },
  { "A gentle fire takes its time. So does the enzyme.", gentle },
  { "The pan begins. Where does the oxidation", asks },
  { "In the slow pan the leaf was warm while the enzyme lived", warm_while_it_lived },
  { "One mat lay bare in the dry night, one was covered.", bare_and_covered },
  { "On the bare mat part of the leaf is nearly dry; under the cloth none is.", part_nearly_dry },
  { "The pan begins. Where does the roast", asks },
  { "Moist leaf stays below the boiling point; dry leaf does not", dry_roasts },
};

static void
hold (const Pair *pair,
      const char *said,
      guint      *n)
{
  for (guint i = 0; i < G_N_ELEMENTS (claims); i++)
    if (g_str_has_prefix (said, claims[i].begins))
      {
        claims[i].holds (pair);
        (*n)++;
        return;
      }

  g_error ("nothing holds “%s” to the model", said);
}

/* As the lesson's window does. */
static LwTrack *
march (LwSeason *season,
       guint     at)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, at);
  g_autoptr (LwMarch) own = lw_march_new ();
  LwTrack *track = lw_plan_march (plan, own, (LwSampling) { .samples = 160, .turns = TRUE });

  g_assert_false (track->failure.failed);

  return track;
}

static void
test_claims (void)
{
  g_autoptr (LwSeason) season = demo_load (DEMO_LESSONS);
  guint n = 0;

  g_assert_cmpuint (season->n_lessons, ==, N_LESSONS);
  for (guint i = 0; i < season->n_lessons; i++)
    {
      const LwLesson *lesson = season->lessons[i];
      Pair pair = { .season = season };

      g_assert_cmpuint (lesson->n_shown, ==, 2);
      for (guint k = 0; k < 2; k++)
        {
          guint at = (guint) lw_season_batch (season, lesson->shown[k]);

          pair.batch[k] = season->batches[at];
          pair.track[k] = march (season, at);
        }

      g_test_message ("%s", lesson->name);
      hold (&pair, lesson->note, &n);
      for (guint k = 0; k < lesson->n_moments; k++)
        {
          const LwLessonMoment *moment = &lesson->moments[k];

          g_assert_cmpuint (moment->step, <, pair.batch[0]->n_steps);
          g_assert_cmpfloat (moment->minute, <=, lw_step_get (&pair.batch[0]->steps[moment->step], LW_SET_MINUTES));
          hold (&pair, moment->text, &n);
        }
      for (guint k = 0; k < 2; k++)
        lw_track_unref (pair.track[k]);
    }
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (claims));
}

/* A number that is written is not one that is computed. */
static void
test_no_figures (void)
{
  g_autoptr (LwSeason) season = demo_load (DEMO_LESSONS);

  for (guint i = 0; i < season->n_lessons; i++)
    for (guint k = 0; k < season->lessons[i]->n_moments; k++)
      g_assert_null (strpbrk (season->lessons[i]->moments[k].text, "0123456789"));
}

void
demo_add_lessons (void)
{
  g_test_add_func ("/demo/lessons/claims", test_claims);
  g_test_add_func ("/demo/lessons/no-figures", test_no_figures);
}
