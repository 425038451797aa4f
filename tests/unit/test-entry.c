/* Times as makers type them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/entry.h"

#include <locale.h>
#include <math.h>

#include "season/wording.h"

typedef struct
{
  const char *typed;
  double minutes; /* NAN: it is refused */
} Row;

static void
check (const Row *rows,
       guint      n)
{
  for (guint i = 0; i < n; i++)
    {
      double minutes = -1;
      gboolean taken = lw_entry_parse_minutes (rows[i].typed, &minutes);

      if (taken != !isnan (rows[i].minutes) || (taken && fabs (minutes - rows[i].minutes) > 1e-9))
        g_error ("“%s” is %s, %.10g", rows[i].typed, taken ? "taken" : "refused", minutes);
    }
}

static void
test_taken (void)
{
  static const Row rows[] = {
    { "18 h 20 min", 1100 }, { "5 min 30 s", 5.5 }, { "90", 90 },     { "1:30", 90 },
    { "2.5", 2.5 },          { "1 d 2 h", 1560 },   { "45 s", 0.75 }, { "0", 0 },
    { "5min30s", 5.5 },      { " 3  min ", 3 },     { "1 H", 60 },    { "0.5 h", 30 },
    { "0:05", 5 },           { "\t7", 7 },          { "12 : 00", 720 },
  };

  check (rows, G_N_ELEMENTS (rows));
}

static void
test_refused (void)
{
  static const Row rows[] = {
    { "", NAN },        { "   ", NAN },    { "abc", NAN },     { "-3", NAN },
    { "5 apples", NAN }, { "min", NAN },   { "5 min 30", NAN }, { "90 30", NAN },
    { "nan", NAN },     { "inf", NAN },    { "2,5", NAN },     { "1:30:15", NAN },
    { ":30", NAN },     { "5 min -2 s", NAN }, { "1 h:30", NAN }, { "5 %", NAN },
    { "1:30 5", NAN },   { "1:", NAN },     { "1:90", NAN },    { "2.5 : 30", NAN },
    { "1:30 h", NAN },   { "0x10", NAN },   { "1.5:30", NAN },  { "..5", NAN },
  };

  check (rows, G_N_ELEMENTS (rows));
}

/* The user's decimal sign, not ours. */
static void
test_comma (void)
{
  static const Row rows[] = { { "2,5", 2.5 }, { "1,5 h 2 min", 92 }, { "2.5", NAN } };

  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL)
    {
      g_test_skip ("there is no locale de_DE.UTF-8");
      return;
    }
  check (rows, G_N_ELEMENTS (rows));
  setlocale (LC_NUMERIC, "C");
}

/* What we say is what we read. */
static void
test_round_trip (void)
{
  for (double minutes = 0; minutes < 4400; minutes += minutes < 60 ? 1.0 / 12 : 1)
    {
      double whole = minutes < 59.99 ? round (minutes * 60) / 60 : round (minutes), back = -1;
      g_autofree char *said = lw_say_minutes (whole);

      g_assert_true (lw_entry_parse_minutes (said, &back));
      g_assert_cmpfloat_with_epsilon (back, whole, 1e-9);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/entry/taken", test_taken);
  g_test_add_func ("/entry/refused", test_refused);
  g_test_add_func ("/entry/comma", test_comma);
  g_test_add_func ("/entry/round-trip", test_round_trip);

  return g_test_run ();
}
