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

/* The suffix .png, .svg or .pdf chooses the format; px, in a PDF points. The file appears whole or
 * not at all. `title` goes into a PDF's properties. `error` says what is wrong and what to do. */
gboolean lw_picture_save (const char    *path,
                          double         width,
                          double         height,
                          const char    *title,
                          LwPictureDraw  draw,
                          gpointer       data,
                          GError       **error);
