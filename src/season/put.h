/* Elements and attributes of the document as they are written: escaped, in the C locale. Private to writing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

void lw_put_attr     (GString    *out,
                      const char *name,
                      const char *text);
/* Nothing where the text (nullable) is empty. */
void lw_put_optional (GString    *out,
                      const char *name,
                      const char *text);
void lw_put_number   (GString    *out,
                      const char *name,
                      double      value);
void lw_put_time     (GString    *out,
                      const char *name,
                      gint64      when_s);

/* "<name", to be followed by attributes, and "</name>" on a line of its own. */
void lw_put_start    (GString    *out,
                      int         depth,
                      const char *name);
void lw_put_end      (GString    *out,
                      int         depth,
                      const char *name);

gboolean lw_put_is_empty (const char *text);

/* The end of an element that holds nothing but a text (nullable), after its attributes. */
void lw_put_said     (GString    *out,
                      const char *name,
                      const char *text);

/* An element without attributes that holds a text; nothing where that is empty. */
void lw_put_note     (GString    *out,
                      int         depth,
                      const char *name,
                      const char *text);
