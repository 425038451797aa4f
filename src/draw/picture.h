/* Any drawing as a picture file: PNG, SVG or PDF. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

/* Draws into 0,0..width,height. */
typedef void (*LwPictureDraw) (cairo_t *cr,
                               double   width,
                               double   height,
                               gpointer data);

/* Draws page `page`. */
typedef void (*LwPicturePage) (cairo_t *cr,
                               guint    page,
                               gpointer data);

/* The suffix .png, .svg or .pdf chooses the format; px, in a PDF points. The file appears whole or
 * not at all. `title` goes into a PDF's properties. `error` says what is wrong and what to do. */
gboolean lw_picture_save (const char    *path,
                          double         width,
                          double         height,
                          const char    *title,
                          LwPictureDraw  draw,
                          gpointer       data,
                          GError       **error);

/* The same of several pages of one size. A PDF holds all; of the others each page is a file of its own, the second
 * called name-2.png. Where one fails, those before it are there. */
gboolean lw_picture_save_pages (const char    *path,
                                double         width,
                                double         height,
                                const char    *title,
                                guint          n,
                                LwPicturePage  draw,
                                gpointer       data,
                                GError       **error);
