/* Words laid out once are right wherever they stand next: on a picture, on a scaled one, on paper. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <cairo-pdf.h>

#include "draw/letter.h"

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

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/letter/ground", test_ground);
  g_test_add_func ("/draw/letter/room", test_room);

  return g_test_run ();
}
