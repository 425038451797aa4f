/* Text as XML can hold it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/escape.h"

/* What XML cannot hold, such as a control character, becomes the replacement character. */
static gboolean
is_xml (gunichar c)
{
  return c >= 0x20 ? c != 0xfffe && c != 0xffff : c == '\t' || c == '\n' || c == '\r';
}

/* A line break would be read as a blank in an attribute, a return as a line break anywhere. */
static gboolean
must_escape (gunichar c,
             gboolean in_attribute)
{
  if (in_attribute && (c == '"' || c == '\t' || c == '\n'))
    return TRUE;

  return c == '&' || c == '<' || c == '>' || c == '\r';
}

static void
put_escaped (GString *out,
             gunichar c)
{
  static const struct
  {
    gunichar c;
    const char *name;
  } names[] = { { '&', "&amp;" }, { '<', "&lt;" }, { '>', "&gt;" }, { '"', "&quot;" } };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (names[i].c == c)
      {
        g_string_append (out, names[i].name);
        return;
      }

  g_string_append_printf (out, "&#%u;", c);
}

void
lw_escape_append (GString    *out,
                  const char *text,
                  gboolean    in_attribute)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (must_escape (c, in_attribute))
        put_escaped (out, c);
      else
        g_string_append_unichar (out, is_xml (c) ? c : 0xfffd);
    }
}
