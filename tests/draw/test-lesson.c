/* The lesson's picture: figures as high as its rule says, a head that comes to the end, pointing, what is hidden, and what
 * is told. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "draw/lesson.h"
#include "draw/paragraph.h"
#include "sample.h"

#define WIDTH 1280
#define HEIGHT 720

typedef struct
{
  LwSeason *season;
  LwTrack *track;
  LwShown shown;
  LwCurves *curves[LW_LESSON_CURVES];
  LwLessonLook look;
} Lesson;

/* The sample's batch; `spread_kg_m2` of the sun step, which no block shows. */
static void
lesson_init (Lesson *lesson,
             double  spread_kg_m2)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwPlan) plan = NULL;

  lesson->season = sample_season ();
  lw_step_set (&lesson->season->batches[0]->steps[3], LW_SET_SPREAD_KG_M2, spread_kg_m2);
  plan = lw_plan_new (lesson->season, 0);
  lesson->track = lw_plan_march (plan, march, (LwSampling) { .samples = 80, .turns = TRUE });
  lesson->shown = (LwShown) { lesson->season->batches[0], lesson->track, NULL };
  lesson->look = (LwLessonLook) {
    .season = lesson->season, .n = 1, .shown = &lesson->shown, .curves = (const LwCurves *const *) lesson->curves,
    .of = { LW_MOISTURE, LW_MOISTURE, LW_MOISTURE }, .head = { 1, 10 }, .title = "Title", .caption = "Caption",
    .where = "here", .ask = -1, .pointed = NAN,
  };
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lesson->curves[i] = lw_curves_new (lesson->track, LW_MOISTURE);
}

static void
lesson_clear (Lesson *lesson)
{
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lw_curves_unref (lesson->curves[i]);
  lw_track_unref (lesson->track);
  lw_season_unref (lesson->season);
}

static cairo_surface_t *
picture (const Lesson *lesson)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  lw_lesson_draw (cr, WIDTH, HEIGHT, &lesson->look, lw_palette (FALSE));
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  return surface;
}

/* Whether a colour differs by more than the smoothing of an edge does, when the line goes on another way elsewhere. */
static gboolean
is_other (guint32 a,
          guint32 b)
{
  for (guint bits = 0; bits < 24; bits += 8)
    if (ABS ((int) (a >> bits & 0xff) - (int) (b >> bits & 0xff)) > 8)
      return TRUE;

  return FALSE;
}

/* How many pixels of the panels differ from x `begin` to `end`. */
static guint
differ (cairo_surface_t *a,
        cairo_surface_t *b,
        int              begin,
        int              end)
{
  const guint32 *one = (const guint32 *) (gpointer) cairo_image_surface_get_data (a);
  const guint32 *other = (const guint32 *) (gpointer) cairo_image_surface_get_data (b);
  guint n = 0;

  for (int y = HEIGHT / 4; y < HEIGHT; y++)
    for (int x = begin; x < end; x++)
      n += is_other (one[y * WIDTH + x], other[y * WIDTH + x]);

  return n;
}

/* Ten minutes of arc at six metres are 17.45 mm, on a picture 1.2 m high. */
static void
test_letters (void)
{
  double mm = 2 * 6000 * tan (5.0 / 60 * G_PI / 180);

  g_assert_cmpfloat_with_epsilon (mm, 17.453, 0.001);
  g_assert_cmpfloat_with_epsilon (lw_lesson_letter (HEIGHT, 1) * lw_paragraph_figure (FALSE), mm / 1200 * HEIGHT, 0.01);
  g_assert_cmpfloat_with_epsilon (lw_lesson_letter (1440, 0.8) * 0.8, 2 * lw_lesson_letter (HEIGHT, 1), 1e-9);
}

static void
test_head (void)
{
  Lesson lesson;
  const LwBatch *batch;
  LwHead head = { 0 }, half = { 0 };
  guint n = 0;

  lesson_init (&lesson, 1);
  batch = lesson.season->batches[0];
  while (lw_head_advance (&head, batch, FALSE, 0.01))
    {
      g_assert_cmpfloat (head.minute, <=, lw_step_get (&batch->steps[head.step], LW_SET_MINUTES));
      n++;
    }
  g_assert_cmpuint (n, >=, 98);
  g_assert_cmpuint (n, <=, 100);
  g_assert_cmpuint (head.step, ==, batch->n_steps - 1);
  g_assert_cmpfloat (head.minute, ==, 20);
  g_assert_false (lw_head_advance (&head, batch, FALSE, 0.01));

  /* By clock half of the way is half of the time: 1678 min in all. */
  g_assert_true (lw_head_advance (&half, batch, TRUE, 0.5));
  g_assert_cmpuint (half.step, ==, 0);
  g_assert_cmpfloat_with_epsilon (half.minute, 839, 0.5);
  lesson_clear (&lesson);
}

static void
test_point (void)
{
  Lesson lesson;
  double top, bottom, value, low, high;

  lesson_init (&lesson, 1);
  g_assert_false (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, HEIGHT / 2.0, &value));
  lesson.look.ask = 1;
  lw_lesson_plot (HEIGHT, 1, &top, &bottom);
  lw_lesson_range (&lesson.look, 1, &low, &high);
  g_assert_cmpfloat (low, ==, 0);
  g_assert_cmpfloat (high, >=, 77);
  g_assert_true (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, top, &value));
  g_assert_cmpfloat_with_epsilon (value, high, 1e-9);
  g_assert_true (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, bottom, &value));
  g_assert_cmpfloat_with_epsilon (value, low, 1e-9);
  g_assert_true (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, (top + bottom) / 2, &value));
  g_assert_cmpfloat_with_epsilon (value, (low + high) / 2, 1e-9);
  /* A little beyond is its edge: a click there must not leave the name that follows to the picture. */
  g_assert_true (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, bottom + 10, &value));
  g_assert_cmpfloat_with_epsilon (value, low, 1e-9);
  g_assert_true (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, top - 10, &value));
  g_assert_cmpfloat_with_epsilon (value, high, 1e-9);
  g_assert_false (lw_lesson_value_at (&lesson.look, WIDTH, HEIGHT, bottom + 40, &value));
  lesson_clear (&lesson);
}

/* A picture that hides shows nothing of what comes: two batches that part only later look the same in it. */
static void
test_hides (void)
{
  Lesson thin, thick;
  cairo_surface_t *a, *b, *hidden, *other;

  lesson_init (&thin, 0.3);
  lesson_init (&thick, 6);
  a = picture (&thin);
  b = picture (&thick);
  thin.look.hides = thick.look.hides = TRUE;
  hidden = picture (&thin);
  other = picture (&thick);

  g_assert_cmpuint (differ (a, b, 0, WIDTH), >, 500);
  g_assert_cmpuint (differ (a, hidden, WIDTH / 2, WIDTH), >, 500);
  g_assert_cmpuint (differ (hidden, other, 0, WIDTH), ==, 0);

  /* What has been is there all the same. */
  g_assert_cmpuint (differ (a, hidden, 0, WIDTH / 5), ==, 0);
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
  cairo_surface_destroy (hidden);
  cairo_surface_destroy (other);
  lesson_clear (&thin);
  lesson_clear (&thick);
}

static void
test_words (void)
{
  LwGuess guesses[] = { { (char *) "Ann", 12, 2, 1 }, { (char *) "Bo", 5, -5, 2 } };
  g_autofree char *told = lw_lesson_tells (LW_MOISTURE, 10, guesses, 2), *alone = lw_lesson_tells (LW_ROAST, 3, NULL, 0);
  Lesson lesson;
  g_autofree char *ends = NULL, *turn = NULL, *asked = NULL, *said = NULL;
  g_autoptr (LwLesson) kept = lw_lesson_new ("L");
  LwShown two[2];

  g_assert_cmpstr (told, ==, "Moisture ends at 10.0 %. 1. Ann: off by +2.0 % points. 2. Bo: off by −5.0 % points.");
  g_assert_true (g_str_has_prefix (alone, "Roast ends at 3"));

  lesson_init (&lesson, 1);
  two[0] = two[1] = lesson.shown;
  lw_lesson_add_moment (kept, (LwLessonMoment) { 0, 1, 2, NULL });
  lw_lesson_add_moment (kept, (LwLessonMoment) { 0, 2, -1, g_strdup ("Look here.") });
  ends = lw_lesson_says (two, 1, &(LwStop) { .kind = LW_STOP_END }, NULL, lesson.look.of);
  turn = lw_lesson_says (two, 2, &(LwStop) { .kind = LW_STOP_TURN, .shown = 1, .turn = { LW_TURN_ENZYME_HALF, 1, 4 } }, NULL,
                         lesson.look.of);
  asked = lw_lesson_says (two, 1, &(LwStop) { .kind = LW_STOP_MOMENT, .moment = 0 }, kept, lesson.look.of);
  said = lw_lesson_says (two, 1, &(LwStop) { .kind = LW_STOP_MOMENT, .moment = 1 }, kept, lesson.look.of);
  g_assert_true (g_str_has_prefix (ends, "At the end: Moisture "));
  g_assert_cmpstr (turn, ==, SAMPLE_NAME ": After 4 min of step 2 half of the enzyme is gone.");
  g_assert_cmpstr (asked, ==, "Moisture: where does the curve end?");
  g_assert_cmpstr (said, ==, "Look here.");
  lesson_clear (&lesson);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/lesson/letters", test_letters);
  g_test_add_func ("/lesson/head", test_head);
  g_test_add_func ("/lesson/point", test_point);
  g_test_add_func ("/lesson/hides", test_hides);
  g_test_add_func ("/lesson/words", test_words);

  return g_test_run ();
}
