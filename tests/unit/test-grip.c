/* Taking hold of blocks and dragging them, in both reading directions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/grip.h"

#include <math.h>

#include "draw/block.h"

#define TOP 30.0
#define N_STEPS 4
#define PAN 1
#define EDGE_REACH 7.0 /* px within which a block's end edge and line are taken hold of */
#define LINE_REACH 9.0

static const LwLetter letter = { .base_px = 13 };

typedef struct
{
  LwSeason *season;
  LwScale scale;
  double leading[N_STEPS];
  double height;
} Lane;

/* Four steps; of equal times their columns are of equal width. */
static Lane
lane_of (const double *minutes,
         gboolean      rtl)
{
  static const LwKind kinds[N_STEPS] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_SUN };
  Lane lane = { .season = lw_season_new ("s"), .height = lw_block_height (&letter) };
  LwBatch *batch = lw_batch_new ("b");

  for (guint i = 0; i < N_STEPS; i++)
    {
      LwStep step = lw_step_new (kinds[i]);

      lw_step_set (&step, LW_SET_MINUTES, minutes[i]);
      lane.leading[i] = lw_step_get (&step, lw_kind_row (kinds[i])->leading);
      lw_batch_insert_step (batch, i, step);
    }
  lw_season_insert_batch (lane.season, 0, batch);
  lw_scale_fill (&lane.scale, minutes, N_STEPS, 10, 900, rtl);

  return lane;
}

static const double various[N_STEPS] = { 300, 25, 5, 480 };
static const double equal[N_STEPS] = { 30, 30, 30, 30 };

static LwGrip
grip_at (const Lane *lane,
         double      x,
         double      y)
{
  return lw_grip_at (&lane->scale, lane->season->batches[0], lane->leading, TOP, lane->height, &letter, x, y);
}

static LwSeason *
drag (Lane    *lane,
      LwGrip  *grip,
      double   x,
      double   y,
      gboolean fine)
{
  return lw_grip_drag (grip, lane->season, 0, &lane->scale, &letter, x, y, fine);
}

static double
end_x (const Lane *lane,
       guint       step)
{
  return lw_scale_x (&lane->scale, step, lane->scale.minutes[step]);
}

static double
middle_x (const Lane *lane,
          guint       step)
{
  return lw_scale_x (&lane->scale, step, lane->scale.minutes[step] / 2);
}

static double
line_y (const Lane *lane,
        guint       step)
{
  LwKind kind = lane->season->batches[0]->steps[step].kind;

  return TOP + lw_block_line_y (kind, lane->height, &letter, lane->leading[step]);
}

static double
setting_of (const LwSeason *season,
            guint           step,
            LwSetting       setting)
{
  return lw_step_get (&season->batches[0]->steps[step], setting);
}

static gboolean
is_notch (double value,
          double notch)
{
  return fabs (value / notch - round (value / notch)) < 1e-4;
}

static void
test_hit_edge (gconstpointer rtl)
{
  Lane lane = lane_of (various, GPOINTER_TO_INT (rtl));

  for (guint i = 0; i < N_STEPS; i++)
    for (double off = -EDGE_REACH - 1; off <= EDGE_REACH + 1; off += 0.5)
      {
        LwGrip grip = grip_at (&lane, end_x (&lane, i) + off, TOP + 1);

        g_assert_cmpint (grip.part == LW_GRIP_EDGE, ==, fabs (off) <= EDGE_REACH);
        if (grip.part != LW_GRIP_EDGE)
          continue;
        g_assert_cmpuint (grip.step, ==, i);
        g_assert_cmpfloat_with_epsilon (grip.off_x, -off, 1e-9);
        g_assert_cmpint (lw_grip_setting (&grip, lane.season->batches[0]), ==, LW_SET_MINUTES);
      }

  lw_season_unref (lane.season);
}

static void
test_hit_line_and_body (gconstpointer rtl)
{
  Lane lane = lane_of (various, GPOINTER_TO_INT (rtl));
  const LwBatch *batch = lane.season->batches[0];

  for (guint i = 0; i < N_STEPS; i++)
    {
      double x = middle_x (&lane, i) + 5, line = line_y (&lane, i);

      for (double y = TOP + 0.25; y < TOP + lane.height; y += 0.5)
        {
          LwGrip grip = grip_at (&lane, x, y);

          g_assert_cmpuint (grip.step, ==, i);
          if (fabs (y - line) <= LINE_REACH)
            {
              g_assert_cmpint (grip.part, ==, LW_GRIP_LINE);
              g_assert_cmpfloat_with_epsilon (grip.off_y, line - y, 1e-9);
              g_assert_cmpint (lw_grip_setting (&grip, batch), ==, lw_kind_row (batch->steps[i].kind)->leading);
            }
          else
            {
              g_assert_cmpint (grip.part, ==, LW_GRIP_BODY);
              g_assert_cmpfloat_with_epsilon (grip.off_x, -5, 1e-9);
              g_assert_cmpint (lw_grip_setting (&grip, batch), ==, -1);
            }
        }
    }

  lw_season_unref (lane.season);
}

static void
test_hit_none (gconstpointer rtl)
{
  Lane lane = lane_of (various, GPOINTER_TO_INT (rtl));
  double middle = middle_x (&lane, 0), past = GPOINTER_TO_INT (rtl) ? -EDGE_REACH - 1 : EDGE_REACH + 1;
  LwGrip grip = grip_at (&lane, middle, TOP - 0.5);

  g_assert_cmpint (grip.part, ==, LW_GRIP_NONE);
  g_assert_cmpint (grip_at (&lane, middle, TOP + lane.height + 0.5).part, ==, LW_GRIP_NONE);
  g_assert_cmpint (grip_at (&lane, end_x (&lane, N_STEPS - 1) + past, TOP + 9).part, ==, LW_GRIP_NONE);
  g_assert_cmpint (grip_at (&lane, lw_scale_x (&lane.scale, 0, 0) - past, TOP + 9).part, ==, LW_GRIP_NONE);
  g_assert_null (drag (&lane, &grip, middle, TOP, FALSE));
  g_assert_cmpint (lw_grip_setting (&grip, lane.season->batches[0]), ==, -1);

  lw_season_unref (lane.season);
}

/* Time moves by notches, and the edge stays at the pointer as near as notches let it. */
static void
test_drag_edge (gconstpointer rtl)
{
  for (int fine = 0; fine < 2; fine++)
    for (guint i = 0; i < N_STEPS; i++)
      {
        Lane lane = lane_of (various, GPOINTER_TO_INT (rtl));
        double start = end_x (&lane, i), held = 4;
        LwGrip grip = grip_at (&lane, start + held, TOP + 1);
        g_autoptr (LwSeason) back = NULL;

        for (double by = -24; by <= 24; by += 1.7)
          {
            g_autoptr (LwSeason) next = drag (&lane, &grip, start + held + by, TOP + 50, fine);
            double minutes = setting_of (next, i, LW_SET_MINUTES);
            double notch = lw_minutes_notch (minutes, fine), room;
            LwScale wider = lane.scale;

            lw_scale_set_minutes (&wider, i, minutes + notch);
            room = wider.width[i] - lane.scale.width[i];
            g_assert_true (is_notch (minutes, notch));
            g_assert_cmpfloat (lane.scale.minutes[i], ==, minutes);
            g_assert_cmpfloat (fabs (end_x (&lane, i) - (start + by)), <=, room);
            g_assert_cmpfloat (setting_of (lane.season, i, LW_SET_MINUTES), ==, various[i]);
          }

        back = drag (&lane, &grip, start + held, TOP + 1, fine);
        g_assert_cmpfloat (setting_of (back, i, LW_SET_MINUTES), ==, various[i]);
        lw_season_unref (lane.season);
      }
}

static void
test_drag_edge_limits (gconstpointer rtl)
{
  Lane lane = lane_of (various, GPOINTER_TO_INT (rtl));
  double start = end_x (&lane, PAN), far = GPOINTER_TO_INT (rtl) ? -5000 : 5000;
  LwGrip grip = grip_at (&lane, start, TOP + 1);
  g_autoptr (LwSeason) most = drag (&lane, &grip, start + far, TOP, FALSE);
  g_autoptr (LwSeason) least = drag (&lane, &grip, start - far, TOP, FALSE);

  g_assert_cmpfloat (setting_of (most, PAN, LW_SET_MINUTES), ==, 90);
  g_assert_cmpfloat (setting_of (least, PAN, LW_SET_MINUTES), ==, 0.5);

  lw_season_unref (lane.season);
}

/* Up is hotter, by 5 °C or finely by half of one. */
static void
test_drag_line (void)
{
  Lane lane = lane_of (various, FALSE);
  double x = middle_x (&lane, PAN), start = line_y (&lane, PAN);
  LwGrip grip = grip_at (&lane, x, start + 3);
  double last = INFINITY;
  g_autoptr (LwSeason) top = drag (&lane, &grip, x, -500, FALSE);
  g_autoptr (LwSeason) bottom = drag (&lane, &grip, x, 5000, FALSE);
  g_autoptr (LwSeason) back = drag (&lane, &grip, x + 70, start + 3, FALSE);
  gboolean finely = FALSE;

  g_assert_cmpint (grip.part, ==, LW_GRIP_LINE);
  for (double by = -20; by <= 20; by += 0.6)
    {
      g_autoptr (LwSeason) next = drag (&lane, &grip, x, start + 3 + by, FALSE);
      g_autoptr (LwSeason) fine = drag (&lane, &grip, x, start + 3 + by, TRUE);
      double coarse_c = setting_of (next, PAN, LW_SET_WALL_C), fine_c = setting_of (fine, PAN, LW_SET_WALL_C);

      g_assert_true (is_notch (coarse_c, 5));
      g_assert_true (is_notch (fine_c, 0.5));
      g_assert_cmpfloat (fabs (coarse_c - fine_c), <=, 2.5 + 0.25);
      g_assert_cmpfloat (coarse_c, <=, last);
      finely |= !is_notch (fine_c, 5);
      last = coarse_c;
    }

  g_assert_true (finely);
  g_assert_cmpfloat (last, <, 260);
  g_assert_cmpfloat (setting_of (back, PAN, LW_SET_WALL_C), ==, 260);
  g_assert_cmpfloat (setting_of (top, PAN, LW_SET_WALL_C), ==, 400);
  g_assert_cmpfloat (setting_of (bottom, PAN, LW_SET_WALL_C), ==, 80);
  g_assert_cmpfloat (setting_of (lane.season, PAN, LW_SET_WALL_C), ==, 260);

  lw_season_unref (lane.season);
}

/* Kinds by their first letters: wither, fix-pan, roll, dry-sun. */
static void
assert_order (const LwSeason *season,
              const char     *order)
{
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < N_STEPS; i++)
    g_string_append_c (found, lw_kind_row (season->batches[0]->steps[i].kind)->id[0]);
  g_assert_cmpstr (found->str, ==, order);
}

static void
test_drag_body (gconstpointer rtl)
{
  Lane lane = lane_of (equal, GPOINTER_TO_INT (rtl));
  double y = TOP + lane.height - 2;
  double at[N_STEPS];
  LwGrip grip = grip_at (&lane, middle_x (&lane, PAN) + 6, y);
  g_autoptr (LwSeason) last = NULL, first = NULL, back = NULL;

  for (guint i = 0; i < N_STEPS; i++)
    at[i] = middle_x (&lane, i) + 6;

  g_assert_cmpint (grip.part, ==, LW_GRIP_BODY);
  g_assert_null (drag (&lane, &grip, at[PAN] + 3, y, FALSE));
  last = drag (&lane, &grip, at[3], y, FALSE);
  assert_order (last, "wrdf");
  g_assert_cmpuint (grip.step, ==, 3);
  g_assert_cmpuint (grip.from, ==, PAN);
  g_assert_null (drag (&lane, &grip, at[3] + 2, y, FALSE));
  first = drag (&lane, &grip, at[0], y, FALSE);
  assert_order (first, "fwrd");
  back = drag (&lane, &grip, at[PAN], y, FALSE);
  assert_order (back, "wfrd");
  assert_order (lane.season, "wfrd");

  lw_season_unref (lane.season);
}

/* The columns go along, each as wide as before. */
static void
test_drag_body_scale (gconstpointer rtl)
{
  Lane lane = lane_of (various, GPOINTER_TO_INT (rtl));
  LwScale before = lane.scale;
  LwGrip grip = grip_at (&lane, middle_x (&lane, 3), TOP + lane.height - 2);
  g_autoptr (LwSeason) next = drag (&lane, &grip, middle_x (&lane, 0), TOP, FALSE);

  assert_order (next, "dwfr");
  for (guint i = 0; i < N_STEPS; i++)
    {
      g_assert_cmpfloat (lane.scale.minutes[i], ==, various[(i + 3) % N_STEPS]);
      g_assert_cmpfloat_with_epsilon (lane.scale.width[i], before.width[(i + 3) % N_STEPS], 1e-9);
    }
  g_assert_cmpint (lane.scale.rtl, ==, before.rtl);

  lw_season_unref (lane.season);
}

/* Sweeping a short block over long ones moves it from place to place once each: the answer must not depend on
 * where it stands by now. */
static void
test_drag_body_steady (gconstpointer data)
{
  gboolean rtl = GPOINTER_TO_INT (data);
  Lane lane = lane_of (various, rtl);
  double left, right, y = TOP + 4;
  LwGrip grip;
  guint last = 2, moves = 0;

  lw_scale_column (&lane.scale, 2, &left, &right);
  grip = grip_at (&lane, (left + right) / 2, y);
  g_assert_cmpint (grip.part, ==, LW_GRIP_BODY);

  for (double along = 0; along < 900; along += 3)
    {
      double x = rtl ? (left + right) / 2 + along : (left + right) / 2 - along;
      g_autoptr (LwSeason) next = lw_grip_drag (&grip, lane.season, 0, &lane.scale, &letter, x, y, FALSE);

      moves += grip.step != last;
      g_assert_cmpuint (grip.step, <=, last);
      last = grip.step;
    }
  g_assert_cmpuint (last, ==, 0);
  g_assert_cmpuint (moves, ==, 2);

  lw_season_unref (lane.season);
}

static void
add_both_ways (const char   *name,
               GTestDataFunc test)
{
  g_autofree char *from_left = g_strconcat ("/grip/", name, "/left-to-right", NULL);
  g_autofree char *from_right = g_strconcat ("/grip/", name, "/right-to-left", NULL);

  g_test_add_data_func (from_left, GINT_TO_POINTER (FALSE), test);
  g_test_add_data_func (from_right, GINT_TO_POINTER (TRUE), test);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_both_ways ("hit-edge", test_hit_edge);
  add_both_ways ("hit-line-and-body", test_hit_line_and_body);
  add_both_ways ("hit-none", test_hit_none);
  add_both_ways ("drag-edge", test_drag_edge);
  add_both_ways ("drag-edge-limits", test_drag_edge_limits);
  g_test_add_func ("/grip/drag-line", test_drag_line);
  add_both_ways ("drag-body", test_drag_body);
  add_both_ways ("drag-body-scale", test_drag_body_scale);
  add_both_ways ("drag-body-steady", test_drag_body_steady);

  return g_test_run ();
}
