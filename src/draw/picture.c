/* Drawings as files. A picture is written to memory first, so that a full disk or a
 * failing surface leaves no half picture behind. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/picture.h"

#include <math.h>
#include <string.h>

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <gio/gio.h>

#include "season/export.h"
#include "season/text.h"

#define PNG_SHARPNESS 2.0 /* pixels for each px of the picture */

static cairo_status_t
append (void                *bytes,
        const unsigned char *data,
        unsigned int         length)
{
  g_byte_array_append (bytes, data, length);

  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
png_surface (GByteArray *bytes,
             double      width,
             double      height,
             const char *title)
{
  cairo_surface_t *surface;

  if (width * PNG_SHARPNESS > G_MAXINT16 || height * PNG_SHARPNESS > G_MAXINT16)
    return cairo_image_surface_create (CAIRO_FORMAT_ARGB32, -1, -1);

  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) ceil (width * PNG_SHARPNESS),
                                        (int) ceil (height * PNG_SHARPNESS));
  cairo_surface_set_device_scale (surface, PNG_SHARPNESS, PNG_SHARPNESS);

  return surface;
}

static cairo_surface_t *
svg_surface (GByteArray *bytes,
             double      width,
             double      height,
             const char *title)
{
  cairo_surface_t *surface = cairo_svg_surface_create_for_stream (append, bytes, width, height);

  cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PX);

  return surface;
}

static cairo_surface_t *
pdf_surface (GByteArray *bytes,
             double      width,
             double      height,
             const char *title)
{
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, width, height);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Leafwend " LW_VERSION);

  return surface;
}

typedef struct
{
  const char *suffix;
  cairo_surface_t *(*create) (GByteArray *bytes,
                              double      width,
                              double      height,
                              const char *title);
  gboolean pages; /* whether one file holds several */
} Format;

static const Format formats[] = {
  { ".png", png_surface, FALSE },
  { ".svg", svg_surface, FALSE },
  { ".pdf", pdf_surface, TRUE },
};

static const Format *
format_of (const char  *path,
           GError     **error)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);

  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    if (g_str_has_suffix (lower, formats[i].suffix))
      return &formats[i];

  g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_FILENAME,
               _ ("“%s” is no kind of picture by name. End the name in .pdf, .svg or .png."),
               path);

  return NULL;
}

/* Finishes the surface, so that `bytes` is whole. */
static cairo_status_t
finish (cairo_surface_t *surface,
        GByteArray      *bytes)
{
  cairo_status_t status = CAIRO_STATUS_SUCCESS;

  if (cairo_surface_get_type (surface) == CAIRO_SURFACE_TYPE_IMAGE)
    status = cairo_surface_write_to_png_stream (surface, append, bytes);
  cairo_surface_finish (surface);

  return status != CAIRO_STATUS_SUCCESS ? status : cairo_surface_status (surface);
}

/* Writes the pages from `first` on, before `end`, into one file. */
static gboolean
save_file (const char     *path,
           const Format   *format,
           double          width,
           double          height,
           const char     *title,
           guint           first,
           guint           end,
           LwPicturePage   draw,
           gpointer        data,
           GError        **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = format->create (bytes, width, height, title);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  for (guint page = first; page < end; page++)
    {
      draw (cr, page, data);
      if (page + 1 < end)
        cairo_show_page (cr);
    }
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = finish (surface, bytes);
  cairo_surface_destroy (surface);

  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                   _ ("The picture could not be drawn (%s). Try a smaller size."),
                   cairo_status_to_string (status));
      return FALSE;
    }

  return lw_export_save (path, (const char *) bytes->data, bytes->len, error);
}

/* "card-2.png" for the second page. */
static char *
page_path (const char *path,
           guint       page)
{
  const char *suffix = strrchr (path, '.');

  return page == 0 ? g_strdup (path)
                   : g_strdup_printf ("%.*s-%u%s", (int) (suffix - path), path, page + 1, suffix);
}

gboolean
lw_picture_save_pages (const char     *path,
                       double          width,
                       double          height,
                       const char     *title,
                       guint           n,
                       LwPicturePage   draw,
                       gpointer        data,
                       GError        **error)
{
  const Format *format = format_of (path, error);

  if (format == NULL)
    return FALSE;
  if (format->pages)
    return save_file (path, format, width, height, title, 0, n, draw, data, error);

  for (guint page = 0; page < n; page++)
    {
      g_autofree char *file = page_path (path, page);

      if (!save_file (file, format, width, height, title, page, page + 1, draw, data, error))
        return FALSE;
    }

  return TRUE;
}

typedef struct
{
  LwPictureDraw draw;
  double width, height;
  gpointer data;
} Single;

static void
draw_single (cairo_t *cr,
             guint    page,
             gpointer data)
{
  const Single *single = data;

  single->draw (cr, single->width, single->height, single->data);
}

gboolean
lw_picture_save (const char     *path,
                 double          width,
                 double          height,
                 const char     *title,
                 LwPictureDraw   draw,
                 gpointer        data,
                 GError        **error)
{
  Single single = { draw, width, height, data };

  return lw_picture_save_pages (path, width, height, title, 1, draw_single, &single, error);
}
