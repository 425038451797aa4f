/* The wall clock. Not a monotonic one: those stand still under a closed lid and start anew with the machine. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/clock.h"

#include <time.h>

#define PACED "LEAFWEND_CLOCK"

static gboolean
paced (double *since_s,
       double *pace)
{
  const char *told = g_getenv (PACED);
  char *end;

  if (told == NULL)
    return FALSE;

  *since_s = g_ascii_strtod (told, &end);
  *pace = *end == ',' ? g_ascii_strtod (end + 1, NULL) : 0;

  return *pace > 0;
}

double
lw_clock_pace (void)
{
  double since_s, pace;

  return paced (&since_s, &pace) ? pace : 1;
}

double
lw_clock_now_s (void)
{
  double now_s = (double) g_get_real_time () / G_USEC_PER_SEC, since_s, pace;

  return paced (&since_s, &pace) ? since_s + (now_s - since_s) * pace : now_s;
}

#ifdef CLOCK_BOOTTIME
static double
seconds (const struct timespec *at)
{
  return (double) at->tv_sec + (double) at->tv_nsec / 1e9;
}
#endif

double
lw_clock_offset_s (void)
{
#ifdef CLOCK_BOOTTIME
  struct timespec before, after;
  double now_s;

  /* Both at one moment: the program may be held up between the two. */
  do
    {
      clock_gettime (CLOCK_BOOTTIME, &before);
      now_s = lw_clock_now_s ();
      clock_gettime (CLOCK_BOOTTIME, &after);
    }
  while (seconds (&after) - seconds (&before) > 0.1);

  return now_s - lw_clock_pace () * seconds (&before);
#else
  return 0;
#endif
}

gint64
lw_clock_place_s (double now_s)
{
  g_autoptr (GDateTime) here = g_date_time_new_from_unix_local ((gint64) now_s);

  return here != NULL ? g_date_time_to_unix (here) + g_date_time_get_utc_offset (here) / G_USEC_PER_SEC : (gint64) now_s;
}
