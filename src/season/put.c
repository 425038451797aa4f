/* What the writers of the document's parts share. */
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

void
lw_put_time (GString    *out,
             const char *name,
             gint64      when_s)
{
  g_autofree char *text = lw_time_text (when_s);

  lw_put_attr (out, name, text);
}

void
lw_put_start (GString    *out,
              int         depth,
              const char *name)
{
  g_string_append_printf (out, "%*s<%s", 2 * depth, "", name);
}

void
lw_put_end (GString    *out,
            int         depth,
            const char *name)
{
  g_string_append_printf (out, "%*s</%s>\n", 2 * depth, "", name);
}

gboolean
lw_put_is_empty (const char *text)
{
  return text == NULL || *text == '\0';
}

void
lw_put_said (GString    *out,
             const char *name,
             const char *text)
{
  if (lw_put_is_empty (text))
    {
      g_string_append (out, "/>\n");
      return;
    }

  g_string_append_c (out, '>');
  lw_escape_append (out, text, FALSE);
  lw_put_end (out, 0, name);
}

void
lw_put_note (GString    *out,
             int         depth,
             const char *name,
             const char *text)
{
  if (lw_put_is_empty (text))
    return;

  lw_put_start (out, depth, name);
  lw_put_said (out, name, text);
}
