/* Text in XML, as an element's content or an attribute's value. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What is not UTF-8 or cannot stand in XML becomes the replacement character. */
void lw_escape_append (GString    *out,
                       const char *text,
                       gboolean    in_attribute);
