/* How steadily the batch in hand comes out, asked of a session: the answers are those of the study, they are told from
 * outdated ones, a change calls them off, and what is found is taken by one undo. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "bench/steady-memory.h"
#include "bench/steady-words.h"
#include "bench/steady.h"
#include "../plain-season.h"

#define SAMPLES 96

typedef struct
{
  LwSession *session;
  LwSteady *steady;
} Fixture;

/* A short batch whose roll is aimed at so tightly that many miss it. */
static void
set_up (Fixture      *f,
        gconstpointer data)
{
  static const LwKind kinds[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL };
  g_autoptr (LwSeason) season = plain_season (kinds, G_N_ELEMENTS (kinds));
  g_autoptr (LwSeason) aimed = NULL;
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  double moisture = lw_track_end (track, 1, -1).moisture_wb_pct;

  aimed = lw_edit_put_aim (season, 0, -1, (LwAim) { LW_MOISTURE, moisture - 0.2, moisture + 6, 1 });

  f->session = lw_session_new ();
  f->steady = lw_steady_of (f->session);
  lw_session_open (f->session, aimed, NULL);
  lw_session_compute (f->session);
  lw_steady_sample (f->steady, SAMPLES, 3);
}

static void
tear_down (Fixture      *f,
           gconstpointer data)
{
  g_object_unref (f->session);
}

static void
wait (Fixture *f)
{
  gint64 end = g_get_monotonic_time () + 300 * G_USEC_PER_SEC;

  while (lw_steady_work (f->steady) != LW_STEADY_RESTS)
    {
      g_assert_cmpint (g_get_monotonic_time (), <, end);
      g_main_context_iteration (NULL, TRUE);
    }
}

static void
set_minutes (Fixture *f,
             guint    step,
             double   minutes)
{
  lw_session_edit (f->session, lw_edit_set (lw_session_base (f->session), 0, step, LW_SET_MINUTES, minutes), "t", NULL);
  lw_session_compute (f->session);
}

/* The very numbers of the study, for the same amounts, samples and seed. */
static void
test_numbers (Fixture      *f,
              gconstpointer data)
{
  const LwSpread *ours;
  g_autoptr (LwSpread) theirs = NULL;
  LwSpreadAsk ask;

  lw_steady_vary (f->steady, LW_VARY_WALL, (LwVary) { 12, FALSE, TRUE });
  g_assert_null (lw_steady_result (f->steady));
  lw_steady_spread (f->steady);
  wait (f);
  ours = lw_steady_bands (f->steady);
  g_assert_nonnull (ours);

  lw_spread_ask_init (&ask);
  ask.varies[LW_VARY_WALL].sd = 12;
  ask.samples = SAMPLES;
  ask.seed = 3;
  theirs = lw_spread_new (lw_session_season (f->session), 0, &ask, NULL);
  g_assert_cmpuint (ours->n_aims, ==, 1);
  g_assert_cmpuint (ours->inside, ==, theirs->inside);
  g_assert_cmpfloat (ours->aims[0].ppk, ==, theirs->aims[0].ppk);
  for (guint s = 0; s < ours->n_sources; s++)
    g_assert_cmpfloat (lw_spread_index (ours, 0, LW_MOISTURE, s)->total, ==,
                       lw_spread_index (theirs, 0, LW_MOISTURE, s)->total);
}

/* An edit makes it outdated, undo right again; so does another amount. Another batch's is not shown. */
static void
test_outdated (Fixture      *f,
               gconstpointer data)
{
  LwVary was = lw_steady_ask (f->steady)->varies[LW_VARY_TIME];

  lw_steady_spread (f->steady);
  wait (f);
  set_minutes (f, 0, 12);
  g_assert_false (lw_steady_is_fresh (f->steady));
  g_assert_null (lw_steady_bands (f->steady));
  g_assert_nonnull (lw_steady_result (f->steady));
  lw_session_undo (f->session);
  lw_session_compute (f->session);
  g_assert_true (lw_steady_is_fresh (f->steady));

  lw_steady_vary (f->steady, LW_VARY_TIME, (LwVary) { 7, TRUE, TRUE });
  g_assert_false (lw_steady_is_fresh (f->steady));
  lw_steady_vary (f->steady, LW_VARY_TIME, was);
  g_assert_true (lw_steady_is_fresh (f->steady));

  lw_session_edit_batch (f->session, lw_edit_repeat_batch (lw_session_base (f->session), 0), "t", 1);
  lw_session_compute (f->session);
  g_assert_null (lw_steady_result (f->steady));
  lw_session_choose (f->session, 0);
  lw_session_compute (f->session);
  g_assert_true (lw_steady_is_fresh (f->steady));
}

/* What is under way is called off by hand and by a change; what was there stays. */
static void
test_called_off (Fixture      *f,
                 gconstpointer data)
{
  lw_steady_sample (f->steady, LW_SPREAD_MOST, 1);
  lw_steady_spread (f->steady);
  g_assert_cmpint (lw_steady_work (f->steady), ==, LW_STEADY_SPREADS);
  lw_steady_cancel (f->steady);
  g_assert_cmpint (lw_steady_work (f->steady), ==, LW_STEADY_RESTS);
  lw_steady_spread (f->steady);
  set_minutes (f, 1, 20);
  g_assert_cmpint (lw_steady_work (f->steady), ==, LW_STEADY_RESTS);
  g_assert_null (lw_steady_result (f->steady));
  g_assert_false (lw_steady_failed (f->steady));

  /* Nor does it go on while something is dragged. */
  lw_steady_sample (f->steady, SAMPLES, 1);
  lw_steady_spread (f->steady);
  wait (f);
  lw_steady_go_on (f->steady, TRUE);
  lw_session_drag_begin (f->session);
  lw_session_preview (f->session, lw_edit_set (lw_session_base (f->session), 0, 1, LW_SET_MINUTES, 25));
  lw_session_compute (f->session);
  g_assert_cmpint (lw_steady_work (f->steady), ==, LW_STEADY_RESTS);
  g_assert_null (lw_steady_bands (f->steady));
  lw_session_drag_commit (f->session, "t");
  lw_session_compute (f->session);
  g_assert_cmpint (lw_steady_work (f->steady), ==, LW_STEADY_SPREADS);
  wait (f);
  g_assert_true (lw_steady_is_fresh (f->steady));
}

/* The settings found are taken by one edit, and pinned ones are not among them. */
static void
test_steadier (Fixture      *f,
               gconstpointer data)
{
  double was = lw_step_get (&lw_session_batch (f->session)->steps[0], LW_SET_MINUTES);
  g_autoptr (GArray) changes = NULL;
  g_autofree char *told = NULL, *words = NULL;

  lw_session_pin (f->session, 0, LW_SET_MINUTES, TRUE);
  lw_steady_seek (f->steady);
  wait (f);
  g_assert_nonnull (lw_steady_found (f->steady));
  g_assert_true (lw_steady_found (f->steady)->better);
  changes = lw_steady_found_changes (f->steady);
  g_assert_cmpuint (changes->len, >, 0);
  for (guint i = 0; i < changes->len; i++)
    g_assert_false (g_array_index (changes, LwChange, i).step == 0
                    && g_array_index (changes, LwChange, i).setting == LW_SET_MINUTES);
  told = lw_steady_say_changes (lw_session_batch (f->session), changes);
  g_assert_true (g_str_has_prefix (told, "Step "));
  g_assert_nonnull (strstr (told, " → "));
  words = lw_steady_say_found (lw_steady_found (f->steady));
  g_assert_true (g_str_has_prefix (words, "Inside every aim: "));

  lw_steady_take (f->steady);
  lw_session_compute (f->session);
  g_assert_null (lw_steady_found (f->steady));
  g_assert_cmpstr (lw_session_undo_label (f->session), ==, "Make it steadier");
  for (guint i = 0; i < changes->len; i++)
    {
      const LwChange *change = &g_array_index (changes, LwChange, i);

      g_assert_cmpfloat (lw_step_get (&lw_session_batch (f->session)->steps[change->step], change->setting), ==,
                         change->value);
    }
  g_assert_cmpfloat (lw_step_get (&lw_session_batch (f->session)->steps[0], LW_SET_MINUTES), ==, was);
  lw_session_undo (f->session);
  g_assert_null (lw_session_undo_label (f->session));
}

/* In a run nothing of what has passed is turned, and what is taken is what was shown, whatever is locked. */
static void
test_steadier_in_a_run (Fixture      *f,
                        gconstpointer data)
{
  g_autoptr (GArray) changes = NULL;
  LwSeason *taken;

  lw_session_pass (f->session, 1);
  lw_session_compute (f->session);
  lw_session_lock (f->session, -1, LW_MOISTURE, TRUE);
  lw_steady_seek (f->steady);
  wait (f);
  g_assert_nonnull (lw_steady_found (f->steady));
  g_assert_true (lw_steady_found (f->steady)->better);
  changes = lw_steady_found_changes (f->steady);
  g_assert_cmpuint (changes->len, >, 0);
  for (guint i = 0; i < changes->len; i++)
    g_assert_cmpuint (g_array_index (changes, LwChange, i).step, >, 0);
  lw_steady_take (f->steady);
  taken = lw_session_base (f->session);
  g_assert_false (lw_session_seeks (f->session));
  g_assert_true (lw_session_base (f->session) == taken);
}

/* Amounts and samples come back in another session, the seed begins anew. */
static void
test_memory (Fixture      *f,
             gconstpointer data)
{
  g_autoptr (LwSession) other = lw_session_new ();

  lw_steady_vary (f->steady, LW_VARY_WALL, (LwVary) { 2.5, TRUE, FALSE });
  lw_steady_vary (f->steady, LW_VARY_AIR, (LwVary) { 0, FALSE, FALSE });
  lw_steady_memory_keep (f->steady);
  lw_steady_memory_recall (lw_steady_of (other));
  g_assert_cmpfloat (lw_steady_ask (lw_steady_of (other))->varies[LW_VARY_WALL].sd, ==, 2.5);
  g_assert_true (lw_steady_ask (lw_steady_of (other))->varies[LW_VARY_WALL].percent);
  g_assert_false (lw_steady_ask (lw_steady_of (other))->varies[LW_VARY_WALL].each_step);
  g_assert_cmpfloat (lw_steady_ask (lw_steady_of (other))->varies[LW_VARY_AIR].sd, ==, 0);
  g_assert_cmpfloat (lw_steady_ask (lw_steady_of (other))->varies[LW_VARY_TIME].sd, ==, 3);
  g_assert_cmpuint (lw_steady_ask (lw_steady_of (other))->samples, ==, SAMPLES);
  g_assert_cmpuint (lw_steady_ask (lw_steady_of (other))->seed, ==, 1);
}

static void
assert_sources (const LwIndex *indices,
                const char    *told)
{
  LwVarySource sources[] = { LW_VARY_WALL, LW_VARY_AIR, LW_VARY_LOAD };
  LwIndex all[LW_N_QUANTITIES * 3] = { 0 };
  LwSpread spread = { .n_sources = 3, .sources = sources, .indices = all, .n_ends = 1 };
  g_autofree char *words = NULL;

  memcpy (&all[LW_OXIDATION * 3], indices, 3 * sizeof *indices);
  words = lw_steady_say_sources (&spread, 0, LW_OXIDATION);
  g_assert_cmpstr (words, ==, told);
}

/* The sentence says no more than the numbers do. */
static void
test_sources (void)
{
  assert_sources ((LwIndex[]) { { 0.21, 0.03, 0.22, 0.03 }, { 0.02, 0.03, 0.03, 0.03 }, { 0.74, 0.05, 0.76, 0.05 } },
                  "Oxidation: most of the difference comes from load, 74 %; then from wall temperature, 21 %.");
  assert_sources ((LwIndex[]) { { 0.4, 0.01, 0.4, 0.03 }, { 0.35, 0.02, 0.36, 0.03 }, { 0.24, 0.05, 0.25, 0.05 } },
                  "Oxidation: the largest part of the difference comes from wall temperature, 40 %; then from air of room "
                  "and weather, 35 %.");
  assert_sources ((LwIndex[]) { { 0.38, 0.03, 0.4, 0.03 }, { 0.35, 0.03, 0.36, 0.03 }, { 0.24, 0.05, 0.25, 0.05 } },
                  "Oxidation: the largest parts of the difference come from wall temperature, 38 %, and from air of room "
                  "and weather, 35 %: too near to each other to tell which is larger.");
  /* By what it does alone, though another does more with others. */
  assert_sources ((LwIndex[]) { { 0.1, 0.02, 0.6, 0.05 }, { 0.3, 0.02, 0.35, 0.03 }, { -0.01, 0.02, 0.01, 0.01 } },
                  "Oxidation: the largest part of the difference comes from air of room and weather, 30 %; then from wall "
                  "temperature, 10 %. 60 % comes about only where several meet.");
  assert_sources ((LwIndex[]) { { 0.7, 0.03, 0.95, 0.03 }, { 0, 0.03, 0.3, 0.03 }, { 0, 0, 0, 0 } },
                  "Oxidation: most of the difference comes from wall temperature, 70 %. 30 % comes about only where several "
                  "meet.");
  assert_sources ((LwIndex[]) { { 0.1, 0.2, 0.5, 0.2 }, { 0.1, 0.2, 0.4, 0.2 }, { 0.1, 0.2, 0.3, 0.2 } },
                  "Oxidation: no source by itself stands out of what chance does.");
  assert_sources ((LwIndex[]) { { NAN, NAN, NAN, NAN }, { NAN, NAN, NAN, NAN }, { 0, 0, 0, 0 } },
                  "Oxidation: it does not vary.");
}

static void
assert_index (LwSpreadAim aim,
              const char *told)
{
  LwBatch batch = { .n_steps = 1 };
  g_autofree char *words = lw_steady_say_ppk (&batch, &aim);

  g_assert_cmpstr (words, ==, told);
}

/* Why there is none, or why it misleads. */
static void
test_index (void)
{
  LwWant all = { .of = LW_ENZYME, .low = 0, .high = 100 }, some = { .of = LW_ENZYME, .low = 0, .high = 2 };

  assert_index ((LwSpreadAim) { .want = some, .share = 0.9, .share_se = 0.01, .ppk = 0.42, .normal = 0.896 }, "Ppk 0.42");
  assert_index ((LwSpreadAim) { .want = some, .share = 0.9, .share_se = 0.01, .ppk = 0.28, .normal = 0.8 },
                "Ppk 0.28 misleads: not normally distributed, else 80.0 % would be inside");
  assert_index ((LwSpreadAim) { .want = some, .share = 1, .share_se = 0.01, .ppk = NAN, .normal = NAN },
                "no Ppk: it does not vary");
  assert_index ((LwSpreadAim) { .want = all, .share = 1, .share_se = 0.01, .ppk = NAN, .normal = NAN },
                "no Ppk: there is no limit to pass");
}

/* A batch without steps has nothing to be computed. */
static void
test_no_steps (Fixture      *f,
               gconstpointer data)
{
  g_assert_true (lw_steady_can (f->steady));
  for (guint i = 0; i < 2; i++)
    lw_session_edit (f->session, lw_edit_remove_step (lw_session_base (f->session), 0, 0), "t", NULL);
  lw_session_compute (f->session);
  g_assert_false (lw_steady_can (f->steady));
  lw_steady_spread (f->steady);
  g_assert_cmpint (lw_steady_work (f->steady), ==, LW_STEADY_RESTS);
  g_assert_false (lw_steady_failed (f->steady));
  lw_session_undo (f->session);
  lw_session_compute (f->session);
  g_assert_true (lw_steady_can (f->steady));
}

static void
test_words (void)
{
  g_autofree char *share = lw_steady_say_share (0.4321, 0.0111), *all = lw_steady_say_share (1, 0.0005);
  g_autofree char *step = lw_steady_say_amount (LW_VARY_WALL, (LwVary) { 5, FALSE, TRUE });
  g_autofree char *batch = lw_steady_say_amount (LW_VARY_TIME, (LwVary) { 3, TRUE, FALSE });
  g_autofree char *leaf = lw_steady_say_amount (LW_VARY_MOISTURE, (LwVary) { 1, FALSE, FALSE });
  LwSteadier none = { .looked = 40, .samples = 1024, .before = 0.5, .after = 0.51, .gain_se = 0.01 };
  g_autofree char *nothing = lw_steady_say_found (&none);

  g_assert_cmpstr (share, ==, "43.2 ± 1.1 %");
  g_assert_cmpstr (all, ==, "100.00 ± 0.05 %");
  g_assert_cmpstr (step, ==, "5 °C, in each step anew");
  g_assert_cmpstr (batch, ==, "3 %, in all steps alike");
  g_assert_cmpstr (leaf, ==, "1 % points");
  g_assert_true (g_str_has_prefix (nothing, "Nothing steadier was found among 40 "));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/steady/numbers", Fixture, NULL, set_up, test_numbers, tear_down);
  g_test_add ("/steady/no-steps", Fixture, NULL, set_up, test_no_steps, tear_down);
  g_test_add ("/steady/outdated", Fixture, NULL, set_up, test_outdated, tear_down);
  g_test_add ("/steady/called-off", Fixture, NULL, set_up, test_called_off, tear_down);
  g_test_add ("/steady/steadier", Fixture, NULL, set_up, test_steadier, tear_down);
  g_test_add ("/steady/steadier-in-a-run", Fixture, NULL, set_up, test_steadier_in_a_run, tear_down);
  g_test_add ("/steady/memory", Fixture, NULL, set_up, test_memory, tear_down);
  g_test_add_func ("/steady/sources", test_sources);
  g_test_add_func ("/steady/index", test_index);
  g_test_add_func ("/steady/words", test_words);

  return g_test_run ();
}
