/* Escaped, in the C locale. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/put.h"

#include "season/escape.h"
#include "season/notation.h"

void
lw_put_attr (GString    *out,
             const char *name,
             const char *text)
{
  g_string_append_printf (out, " %s=\"", name);
  lw_escape_append (out, text, TRUE);
  g_string_append_c (out, '"');
}

void
lw_put_optional (GString    *out,
                 const char *name,
                 const char *text)
{
  if (text != NULL && *text != '\0')
    lw_put_attr (out, name, text);
}

void
lw_put_number (GString    *out,
               const char *name,
               double      value)
{
  g_autofree char *text = lw_number_text (value);

  lw_put_attr (out, name, text);
}
