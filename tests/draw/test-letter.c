/* Words laid out once are right wherever they stand next: on a picture, on a scaled one, on paper. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <cairo-pdf.h>

#include "draw/elide.h"
#include "draw/letter.h"
#include "draw/slim.h"

#define SCALED 2.3

/* Sets width and height of some words on a ground of that kind. */
static void
measure (gboolean paper,
         double   scale,
         double  *width,
         double  *height)
{
  LwLetter letter = { .base_px = 13 };
  cairo_surface_t *surface = paper ? cairo_pdf_surface_create (NULL, 100, 100)
                                   : cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 10, 10);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, scale, scale);
  lw_letter_size (cr, &letter, 0.85, FALSE, "wither 12 h, very gently", width, height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
test_ground (void)
{
  double width[3], height[3];

  measure (FALSE, 1, &width[0], &height[0]);
  measure (FALSE, SCALED, &width[1], &height[1]);
  measure (TRUE, 1, &width[2], &height[2]);
  g_assert_cmpfloat (width[0], >, 50);
  /* A picture's letters stand on whole pixels, also where it is scaled; on paper a line has its own height. */
  g_assert_cmpfloat (width[0], !=, width[1]);
  g_assert_cmpfloat (height[0], !=, height[2]);

  for (guint again = 0; again < 2; again++)
    for (guint i = 0; i < 3; i++)
      {
        double now_width, now_height;

        measure (i == 2, i == 1 ? SCALED : 1, &now_width, &now_height);
        g_assert_cmpfloat (now_width, ==, width[i]);
        g_assert_cmpfloat (now_height, ==, height[i]);
      }
}

/* A place too narrow for the words takes nothing from the next. */
static void
test_room (void)
{
  LwLetter letter = { .base_px = 13 };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 200, 50);
  cairo_t *cr = cairo_create (surface);
  double whole, after;

  lw_letter_size (cr, &letter, 1, TRUE, "rolled firmly", &whole, NULL);
  g_assert_cmpfloat (lw_letter_draw (cr, &letter, 0, 0, LW_TEXT_START, 1, TRUE, whole / 2, "rolled firmly"), <=, whole / 2);
  lw_letter_size (cr, &letter, 1, TRUE, "rolled firmly", &after, NULL);
  g_assert_cmpfloat (after, ==, whole);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* What is left of a name in `room` px. */
static char *
elided (const char *name,
        double      room)
{
  LwLetter letter = { .base_px = 13 };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 10, 10);
  cairo_t *cr = cairo_create (surface);
  char *left = lw_elide_name (cr, &letter, 0.8, FALSE, room, name);
  double width;

  if (left != NULL)
    {
      lw_letter_size (cr, &letter, 0.8, FALSE, left, &width, NULL);
      g_assert_cmpfloat (width, <=, room);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);

  return left;
}

/* At every width a name is whole, ends with a word, or is left out; a number alone is no name. */
static void
test_elide (void)
{
  static const char *const ways[] = {
    "2025 · 4 long wither, bare mats", "2025 · 4 long wither, bare…", "2025 · 4 long wither…", "2025 · 4 long…",
  };
  g_autofree char *one_word = elided ("Unnachahmlichkeitsfahne", 60), *letters = elided ("日本 茶葉", 400);
  gboolean met[G_N_ELEMENTS (ways) + 1] = { FALSE };

  for (double room = 260; room > 0; room--)
    {
      g_autofree char *left = elided (ways[0], room);
      guint way = 0;

      while (way < G_N_ELEMENTS (ways) && g_strcmp0 (left, ways[way]) != 0)
        way++;
      g_assert_true (way < G_N_ELEMENTS (ways) || left == NULL);
      met[way] = TRUE;
    }
  for (guint i = 0; i < G_N_ELEMENTS (met); i++)
    g_assert_true (met[i]);
  g_assert_null (one_word);
  g_assert_cmpstr (letters, ==, "日本 茶葉");
}

/* A slim block says time and heat, one of them, or nothing, at every width. */
static void
test_slim (void)
{
  static const struct
  {
    double minutes;
    const char *ways[3];
  } cases[] = { { 15, { "15 min · 245 °C", "15 min", "245 °C" } }, { 135, { "2 h 15 min · 245 °C", "2 h 15 min", "245 °C" } } };
  LwLetter letter = { .base_px = 13 };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 10, 10);
  cairo_t *cr = cairo_create (surface);
  LwStep step = lw_step_new (LW_KIND_FIX_PAN);
  LwSlimLook look = { .step = &step, .leading = 245 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      guint way = 0;

      lw_step_set (&step, LW_SET_MINUTES, cases[i].minutes);
      for (double room = 200; room > 0; room--)
        {
          g_autofree char *words = lw_slim_fit (cr, &look, &letter, room);
          double width = 0;

          if (way < 3 && g_strcmp0 (words, cases[i].ways[way]) != 0)
            way++;
          g_assert_cmpstr (words, ==, way < 3 ? cases[i].ways[way] : NULL);
          if (words != NULL)
            lw_letter_size (cr, &letter, LW_SLIM_SIZE, FALSE, words, &width, NULL);
          g_assert_cmpfloat (width, <=, room);
        }
      g_assert_cmpuint (way, ==, 3);
    }
  lw_step_clear (&step);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/letter/ground", test_ground);
  g_test_add_func ("/draw/letter/room", test_room);
  g_test_add_func ("/draw/letter/elide", test_elide);
  g_test_add_func ("/draw/letter/slim", test_slim);

  return g_test_run ();
}
