/* Attributes of the document as they are written. */
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
