/* The digest of a batch, by which outcomes are kept: whatever number of the document changes the finished tea changes the
 * digest, too. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "season/correction.h"
#include "season/document.h"
#include "season/edit.h"
#include "season/head.h"
#include "season/shipped.h"
#include "study/finished.h"

#define HOURS 8

/* One made batch, in weather; its first step's air and its pan's wall follow logs, and two weigh-ins corrected it. */
static LwSeason *
season_new (void)
{
  static const double time_s[] = { 0, 120, 300, 900, 40000 }, wall_c[] = { 260, 230, 240, 210, 190 },
                      air_c[] = { 18, 19, 24, 26, 21 };
  g_autofree char *path = lw_shipped_path ("ondry-ridge-2026" LW_SEASON_SUFFIX);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) demo = lw_document_load (path, problems);
  const LwWeather *record;
  LwSeason *season;
  LwBatch *batch;
  guint since;
  LwLog *pan = lw_log_new ("pan", "Pan"), *room = lw_log_new ("room", "Room");
  LwState shifts[4] = { { .water = 0.05, .oxidation = 0.01 }, { .water = -0.02 }, { .green = 0.01 }, { .heat = 0.01 } };

  g_assert_nonnull (demo);
  season = lw_season_copy (demo);
  while (season->n_lessons > 0)
    {
      g_autoptr (LwSeason) before = season;

      season = lw_edit_remove_lesson (before, 0);
    }
  while (season->n_batches > 1)
    lw_season_remove_batch (season, 1);
  batch = lw_batch_copy (season->batches[0]);
  g_assert_cmpint (batch->steps[1].kind, ==, LW_KIND_FIX_PAN);
  record = lw_season_weather (season, batch->weather);
  g_assert_cmpint (record->form, ==, LW_WEATHER_HOURS);
  since = (guint) ((batch->when_s - record->start_s) / 3600);
  lw_season_put_weather (season, lw_weather_new (record->id, record->name, record->start_s + since * 3600,
                                                 record->hours + since, HOURS));
  lw_log_add_curve (pan, LW_LOG_WALL, NULL, 0, time_s, wall_c, G_N_ELEMENTS (time_s));
  lw_log_add_curve (room, LW_LOG_AIR, NULL, 0, time_s, air_c, G_N_ELEMENTS (time_s));
  pan->rows = room->rows = pan->first_line = room->first_line = pan->last_line = room->last_line = 5;
  lw_batch_add_log (batch, (LwBatchLog) { pan, 1, -0.5 });
  lw_batch_add_log (batch, (LwBatchLog) { room, -1, 5 });
  lw_step_set_log (&batch->steps[1], LW_SET_WALL_C, "pan");
  lw_step_set_log (&batch->steps[0], LW_SET_AIR_C, "room");
  for (guint step = 0; step < 2; step++)
    {
      lw_batch_add_weigh_in (batch, step, (LwWeighIn) { 3, LW_JUDGED_OXIDATION_PCT, 7, 5, 0, NULL });
      lw_batch_set_correction (batch, step, lw_correction_new (batch, step, 3, 0.3 + step, shifts, G_N_ELEMENTS (shifts)));
    }
  lw_season_put_batch (season, 0, batch);

  return season;
}

/* FALSE if that is no season any more, or its batch comes to nothing. */
static gboolean
look (const char *text,
      LwMarch    *march,
      LwOutcome  *outcome,
      char      **digest)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_read (text, strlen (text), problems);

  if (season == NULL || !lw_finished (season, 0, march, outcome))
    return FALSE;

  *digest = lw_head_digest (season, 0);

  return TRUE;
}

/* A number's characters that stand alone between quotes or blanks, from `at` on; NULL if there are no more. */
static const char *
next_number (const char *at,
             gsize      *length)
{
  for (; *at != '\0'; at++)
    {
      *length = strspn (at, "-.0123456789e");
      if (*length == 0)
        continue;
      if (strchr ("\" \n>", at[-1]) != NULL && strchr ("\" \n<", at[*length]) != NULL)
        return at;
      at += *length - 1;
    }

  return NULL;
}

static void
test_all (void)
{
  static const struct { double factor, more; } ways[] = { { 1.01, 0.001 }, { 0.99, -0.001 }, { 1, 1 }, { 1, -1 } };
  g_autoptr (LwSeason) season = season_new ();
  g_autoptr (LwMarch) march = lw_march_new ();
  gsize length;
  g_autofree char *text = lw_document_write (season, &length), *first = NULL;
  LwOutcome outcome;
  guint changed = 0, same = 0;

  g_assert_true (look (text, march, &outcome, &first));
  for (const char *at = strstr (text, "<place"); (at = next_number (at, &length)) != NULL; at += length)
    for (guint way = 0; way < G_N_ELEMENTS (ways); way++)
      {
        double number = g_ascii_strtod (at, NULL) * ways[way].factor + ways[way].more;
        g_autofree char *other = g_strdup_printf ("%.*s%.12g%s", (int) (at - text), text, number, at + length);
        g_autofree char *digest = NULL;
        LwOutcome then;

        if (!look (other, march, &then, &digest))
          continue;
        if (memcmp (&then, &outcome, sizeof then) == 0)
          {
            same++;
            break;
          }
        if (g_str_equal (digest, first))
          g_error ("“%.60s” changes the tea, and not the digest", at - MIN (at - text, 30));
        changed++;
        break;
      }

  g_test_message ("%u numbers change the tea, %u do not", changed, same);
  g_assert_cmpuint (changed, >, 60);
  g_assert_cmpuint (same, >, 10);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/digest/all", test_all);

  return g_test_run ();
}
