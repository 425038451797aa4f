/* Temperature logs: what is read in which dress, what is told of the rest, how little is kept. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "../leaf/near.h"
#include "season/document.h"
#include "season/log-csv.h"
#include "season/log-say.h"
#include "season/table.h"

static LwLogTable *
table_of (const char *text)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwLogTable *table = lw_log_table_read (text, strlen (text), problems);

  if (table == NULL)
    g_error ("%s", ((LwProblem *) g_ptr_array_index (problems, 0))->what);

  return table;
}

static LwLogTaken *
take (const char *text)
{
  g_autoptr (LwLogTable) table = table_of (text);

  return lw_log_take (table, "log", "Log");
}

/* The same three moments of a wall in different clothes. */
static const struct
{
  const char *text;
  double start_s;   /* where they have dates */
} alike[] = {
  { "time,wall\n0,20.5\n60,21\n120,250\n" },
  { "\xef\xbb\xbf" "Elapsed time (s);Pan [°C]\r\n0;20,5\r\n\r\n# stop\r\n60;21,0\r\n120;250\r\n" },
  { "Minutes\tDrum (°F)\n0\t68.9\n1\t69.8\n2\t482\n" },
  { "Wall_k,Time (h)\n293.65,0\n294.15,0.016666666666666666\n523.15,0.03333333333333333\n" },
  { "Time;Wall\n10:00;20,5\n10:01;21\n10:02;250\n" },
  { "Clock,Wall (type K)\n23:59:00.000,20.5\n0:00,21\n00:01:00,250\n" },
  { "Timestamp,Wall ℃\n2026-04-12 10:00:00,20.5\n2026-04-12T10:01,21\n2026/04/12 10:02:00.0,250\n", 1775988000 },
  { "Date;Time;Wall\n12.4.2026;10:00;\"20,5\"\n12.04.2026;10:01;21\n12.04.2026;10:02;250\n", 1775988000 },
  { "time,wall\n1775988000,20.5\n1775988060,21\n1775988120,250\n" },
  { "Time,Wall\n11:59:00 pm,20.5\n12:00 AM,21\n12:01:00am,250\n" },
  { "Time,Wall\n2026-04-12 10:00:00 AM,20.5\n2026-04-12 10:01:00 AM,21\n2026-04-12 10:02 AM,250\n", 1775988000 },
  { "Time,Wall\n11:59:00\xe2\x80\xafPM,20.5\n12:00\xc2\xa0" "AM,21\n12:01:00 AM,250\n" },
  { "Elapsed (mm:ss),Wall\n0:00,20.5\n1:00,21\n2:00.0,250\n" },
  { "Time (HH:MM:SS),Wall\n23:59:30,20.5\n00:00:30,21\n00:01:30,250\n" },
  { "Time (min),Wall\n11:59 PM,20.5\n12:00 AM,21\n12:01 AM,250\n" },
  { "Date;Elapsed (mm:ss);Wall\n12.4.2026;10:00;20,5\n12.4.2026;10:01;21\n12.4.2026;10:02;250\n", 1775988000 },
  { "Date;Time (HH:MM:SS);Wall\n12.4.2026;10:00:00;20,5\n12.4.2026;10:01:00;21\n12.4.2026;10:02:00;250\n", 1775988000 },
  { "Date Time (DD/MM/YYYY HH:MM:SS);Wall\n12.4.2026 10:00:00;20,5\n12.4.2026 10:01:00;21\n12.4.2026 10:02:00;250\n",
    1775988000 },
  { "Stopwatch,Wall\n0:00:00,20.5\n0:01:00,21\n0:02:00,250\n" },
  { "sep=;\r\nTime;Wall\r\n0;20,5\r\n60;21\r\n120;250\r\n" },
};

static void
test_alike (void)
{
  static const double seconds[] = { 0, 60, 120 }, degrees[] = { 20.5, 21, 250 };

  for (guint i = 0; i < G_N_ELEMENTS (alike); i++)
    {
      g_autoptr (LwLogTaken) taken = take (alike[i].text);
      const LwLogCurve *wall;
      const double *time_s;
      guint n;

      g_test_message ("%u", i);
      g_assert_nonnull (taken->log);
      g_assert_cmpuint (taken->problems->len, ==, 0);
      g_assert_cmpuint (taken->log->rows, ==, 3);
      g_assert_cmpuint (taken->log->left_out, ==, 0);
      g_assert_cmpint (taken->dated, ==, alike[i].start_s > 0);
      if (taken->dated)
        assert_within (taken->start_s, alike[i].start_s, 0, "start");
      wall = lw_log_curve (taken->log, LW_LOG_WALL);
      g_assert_nonnull (wall);
      time_s = lw_course_times (wall->course, &n);
      g_assert_cmpuint (n, ==, 3);
      for (guint k = 0; k < n; k++)
        {
          assert_within (time_s[k], seconds[k], 1e-3, "time");
          assert_within (lw_course_values (wall->course)[k], degrees[k], 1e-4, "temperature");
        }
    }
}

static void
test_clock (void)
{
  static const char *const none[] = { "", "10", "24:00", "13:00 PM", "0:10 AM", "10:00 PMs", "10:00 p", "10:60 AM" };
  static const char *const counts[] = { "", "90", "90.5", "1:60", "1:60:00", "1:2:3:4", "1:", ":30", "1:30x", "-1:30" };
  double since_s;

  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    g_assert_false (lw_table_clock (none[i], &since_s));
  g_assert_true (lw_table_clock ("12:30 PM", &since_s));
  g_assert_cmpfloat (since_s, ==, 45000);

  for (guint i = 0; i < G_N_ELEMENTS (counts); i++)
    g_assert_false (lw_table_stopwatch (counts[i], &since_s));
  g_assert_true (lw_table_stopwatch ("90:05.5", &since_s));
  g_assert_cmpfloat (since_s, ==, 5405.5);
  g_assert_true (lw_table_stopwatch ("25:00:05", &since_s));
  g_assert_cmpfloat (since_s, ==, 90005);
}

/* Several columns, guessed; and taken otherwise when somebody says so. */
static void
test_columns (void)
{
  g_autoptr (LwLogTable) table = table_of ("Time;Leaf, left;Pan;Room air;Battery (V);Leaf, right\n"
                                           "0;20;200;22;3,1;21\n10;30;210;22;3,1;29\n");
  static const LwLogUse guessed[] = { LW_USE_TIME, LW_USE_LEAF, LW_USE_WALL, LW_USE_AIR, LW_USE_NONE, LW_USE_LEAF };
  g_autoptr (LwLogTaken) taken = lw_log_take (table, "a", "A"), other = NULL, none = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (guessed); i++)
    g_assert_cmpint (table->columns[i].use, ==, guessed[i]);
  g_assert_cmpuint (taken->log->n_curves, ==, 4);
  g_assert_cmpstr (lw_log_curve (taken->log, LW_LOG_LEAF)->heading, ==, "Leaf, left");

  lw_log_table_use (table, 4, LW_USE_TIME);
  g_assert_cmpint (table->columns[0].use, ==, LW_USE_NONE);
  none = lw_log_take (table, "a", "A");
  g_assert_cmpuint (none->log->n_curves, ==, 4);
  g_assert_cmpuint (none->log->left_out, ==, 1);

  lw_log_table_use (table, 0, LW_USE_TIME);
  table->columns[0].time = LW_TIME_MINUTES;
  for (guint i = 1; i < table->n_columns; i++)
    lw_log_table_use (table, i, i == 2 ? LW_USE_AIR : LW_USE_NONE);
  other = lw_log_take (table, "a", "A");
  g_assert_cmpuint (other->log->n_curves, ==, 1);
  assert_within (lw_log_duration_s (other->log), 600, 0, "minutes");
  g_assert_cmpfloat (lw_log_curve (other->log, LW_LOG_AIR)->high_c, ==, 210);
}

/* No row of names. */
static void
test_nameless (void)
{
  g_autoptr (LwLogTaken) taken = take ("0;21,5\n1;22,5\n");

  g_assert_cmpuint (taken->log->rows, ==, 2);
  g_assert_cmpuint (taken->log->first_line, ==, 1);
  g_assert_cmpint (taken->log->curves[0].of, ==, LW_LOG_LEAF);
  g_assert_null (taken->log->curves[0].heading);
}

static const struct
{
  const char *rows;   /* after the names and the row of 10:00 */
  guint line;
  guint left_out;
  const char *what;
} damaged[] = {
  { "10:01,OL,20\n", 3, 0, "“OL” of “Wall” is what a broken" },
  { "10:01,----,20\n", 3, 0, "broken" },
  { "10:01,NaN,20\n", 3, 0, "broken" },
  { "10:01,1372,20\n", 3, 0, "“1372” of “Wall” is not between -50 and 600 °C" },
  { "10:01,-999.9,20\n", 3, 0, "is not between" },
  { "10:01,hot,20\n", 3, 0, "“hot” of “Wall” is not a number" },
  { "10:01,,20\n", 3, 0, "There is no value of “Wall”" },
  { "10:01\n", 3, 1, "There is no value of “Wall”" },
  { "10:01,250,20,1\n", 3, 0, "more cells than the first, which has 3" },
  { "10:01,250,20\n09:59,250,20\n", 4, 1, "“09:59” is before the row above" },
  { "10:01,250,20\n10:01:00,251,20\n", 4, 1, "“10:01:00” stands in the row above already" },
  { "25:00,250,20\n", 3, 1, "“25:00” is not a time" },
  { ",250,20\n", 3, 1, "“” is not a time" },
  { "2026-04-12T10:01,250,20\n2026-04-12T10:02Z,250,20\n", 4, 1, "“2026-04-12T10:02Z” is not a time" },
};

static void
test_damaged (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (damaged); i++)
    {
      g_autofree char *text = g_strconcat ("Time,Wall,Air\n", damaged[i].rows[0] == '2' && damaged[i].rows[1] == '0'
                                                                ? "2026-04-12T10:00,240,20\n" : "10:00,240,20\n",
                                           damaged[i].rows, NULL);
      g_autoptr (LwLogTaken) taken = take (text);
      const LwProblem *first = taken->problems->len > 0 ? g_ptr_array_index (taken->problems, 0) : NULL;

      if (first == NULL || first->line != damaged[i].line || strstr (first->what, damaged[i].what) == NULL)
        g_error ("“%s”: line %u: %s", damaged[i].rows, first != NULL ? first->line : 0,
                 first != NULL ? first->what : "nothing told");
      g_assert_cmpuint (strlen (first->remedy), >, 0);
      /* And the rest is there. */
      g_assert_nonnull (taken->log);
      g_assert_cmpuint (taken->log->left_out, ==, damaged[i].left_out);
      g_assert_cmpfloat (lw_log_curve (taken->log, LW_LOG_WALL)->low_c, ==, 240);
    }
}

/* A run of broken rows is one line of the list; very many faults are told by their number. */
static void
test_runs (void)
{
  g_autoptr (GString) text = g_string_new ("s,wall\n"), flicker = g_string_new ("s,wall\n");
  g_autoptr (LwLogTaken) taken = NULL, many = NULL;

  for (int i = 0; i < 1000; i++)
    {
      g_string_append_printf (text, "%d,%s\n", i, i >= 100 && i < 400 ? "OL" : "250");
      g_string_append_printf (flicker, "%d,%s\n", i, i % 2 ? "OL" : "250");
    }

  taken = take (text->str);
  g_assert_cmpuint (taken->problems->len, ==, 1);
  g_assert_cmpuint (taken->log->left_out, ==, 300);
  g_assert_nonnull (strstr (((LwProblem *) taken->problems->pdata[0])->what, "The next 299 rows are alike."));

  many = take (flicker->str);
  g_assert_cmpuint (many->problems->len, ==, 200);
  g_assert_cmpuint (many->untold, ==, 300);
  g_assert_cmpuint (many->log->left_out, ==, 500);
}

static const struct
{
  const char *text;
  const char *what;
} hopeless[] = {
  { "", "There is no table" },
  { "only words\nand words\n", "There is no table" },
  { "a,b\n", "There are no rows" },
};

static void
test_hopeless (void)
{
  static const char binary[] = "a,b\n\0,1\n";
  g_autofree char *huge = g_strnfill (LW_MAX_FILE_BYTES + 1, 'a');
  g_autoptr (GPtrArray) problems = lw_problems_new ();

  for (guint i = 0; i < G_N_ELEMENTS (hopeless); i++)
    {
      g_autoptr (GPtrArray) found = lw_problems_new ();

      g_assert_null (lw_log_table_read (hopeless[i].text, strlen (hopeless[i].text), found));
      g_assert_cmpuint (found->len, ==, 1);
      g_assert_nonnull (strstr (((LwProblem *) found->pdata[0])->what, hopeless[i].what));
    }

  g_assert_null (lw_log_table_read (binary, sizeof binary - 1, problems));
  g_assert_null (lw_log_table_read (huge, LW_MAX_FILE_BYTES + 1, problems));
  g_assert_null (lw_log_table_load ("/no/such/file", problems));
  g_assert_cmpuint (problems->len, ==, 3);
}

/* Nothing of the table is a log as it is taken: that is told, too. */
static void
test_nothing (void)
{
  g_autoptr (LwLogTable) table = table_of ("time,wall\n10:00,20\n");
  g_autoptr (LwLogTaken) unread = NULL, unchosen = NULL;

  table->columns[0].time = LW_TIME_SECONDS;
  unread = lw_log_take (table, "a", "A");
  g_assert_null (unread->log);
  g_assert_cmpuint (unread->problems->len, ==, 2);
  lw_log_table_use (table, 1, LW_USE_NONE);
  unchosen = lw_log_take (table, "a", "A");
  g_assert_null (unchosen->log);
}

/* A day of seconds with a flicker: what is kept passes all of it within what is told, and is little. */
static void
test_kept (void)
{
  g_autoptr (GString) text = g_string_new ("s,wall,leaf\n");
  g_autoptr (GRand) dice = g_rand_new_with_seed (3);
  g_autofree double *wall = g_new (double, 86400);
  g_autoptr (LwLogTaken) taken = NULL;
  const LwFollowed *coarsest;
  const LwLogCurve *curve;
  guint n, m;

  for (int i = 0; i < 86400; i++)
    {
      wall[i] = round (10 * (220 + 30 * sin (i / 600.0) + g_rand_double_range (dice, -0.1, 0.1))) / 10;
      g_string_append_printf (text, "%d,%.1f,25\n", i, wall[i]);
    }
  taken = take (text->str);
  g_assert_cmpuint (taken->problems->len, ==, 0);
  curve = lw_log_curve (taken->log, LW_LOG_WALL);
  lw_course_times (curve->course, &n);
  coarsest = lw_log_coarsest (curve);
  lw_course_times (coarsest->course, &m);
  g_assert_cmpuint (n, <=, LW_MAX_POINTS);
  g_assert_cmpuint (m, <=, 300);
  g_assert_cmpfloat (coarsest->off_c, <, 1);
  g_assert_cmpfloat (coarsest->waves_c, <, 1);
  g_test_message ("%u points within %g C, %u within %g C", n, curve->within_c, m, coarsest->off_c);
  for (int i = 0; i < 86400; i++)
    {
      assert_within (lw_course_at (curve->course, i), wall[i], curve->within_c * (1 + 1e-6), "kept");
      assert_within (lw_course_at (coarsest->course, i), wall[i], (curve->within_c + coarsest->off_c) * (1 + 1e-6),
                     "followed");
    }
  lw_course_times (lw_log_curve (taken->log, LW_LOG_LEAF)->course, &n);
  g_assert_cmpuint (n, ==, 2);
}

/* Waves of minutes over a day are more than a step as long is reckoned with: that is said of a wall, and not of the leaf.
 * A pan's quarter of an hour in it is reckoned with all of them. */
static void
test_waves (void)
{
  g_autoptr (GString) text = g_string_new ("s,wall,leaf\n");
  g_autoptr (LwLogTable) table = NULL;
  g_autoptr (LwLogTaken) taken = NULL;
  g_autofree char *wall = NULL, *leaf = NULL, *all = NULL, *calm = NULL, *day = NULL;
  const LwLogCurve *curve;
  const LwFollowed *pan;
  g_autoptr (LwLogTaken) slow = take ("s,wall\n0,200\n600,240\n1200,220\n");

  for (int i = 0; i < 86400; i += 5)
    g_string_append_printf (text, "%d,%.1f,%.1f\n", i, 220 + 5 * sin (i / 60.0), 60 + 5 * sin (i / 60.0));
  table = table_of (text->str);
  taken = lw_log_take (table, "log", "Log");
  curve = lw_log_curve (taken->log, LW_LOG_WALL);
  wall = lw_say_curve (curve, table);
  leaf = lw_say_curve (lw_log_curve (taken->log, LW_LOG_LEAF), table);
  all = lw_say_log_off (lw_log_followed (curve, 0, 86400));
  day = lw_say_log_off (lw_log_coarsest (curve));
  calm = lw_say_log_off (lw_log_coarsest (lw_log_curve (slow->log, LW_LOG_WALL)));
  g_assert_nonnull (strstr (wall, "°C off."));
  g_assert_null (strstr (leaf, "°C off."));
  g_assert_nonnull (strstr (all, "°C off."));
  g_assert_cmpstr (all, ==, day);
  g_assert_null (calm);

  pan = lw_log_followed (curve, 40000, 900);
  g_assert_null (lw_say_log_off (pan));
  g_assert_cmpfloat (pan->waves_c, ==, 0.25);
  for (int i = 40000; i <= 40900; i += 5)
    assert_within (lw_course_at (pan->course, i), 220 + 5 * sin (i / 60.0), 0.5, "the pan's wall");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/log-csv/alike", test_alike);
  g_test_add_func ("/log-csv/clock", test_clock);
  g_test_add_func ("/log-csv/columns", test_columns);
  g_test_add_func ("/log-csv/nameless", test_nameless);
  g_test_add_func ("/log-csv/damaged", test_damaged);
  g_test_add_func ("/log-csv/runs", test_runs);
  g_test_add_func ("/log-csv/hopeless", test_hopeless);
  g_test_add_func ("/log-csv/nothing", test_nothing);
  g_test_add_func ("/log-csv/kept", test_kept);
  g_test_add_func ("/log-csv/waves", test_waves);

  return g_test_run ();
}
