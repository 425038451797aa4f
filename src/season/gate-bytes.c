/* What can be seen of a file before an XML parser is let near it: cheap, and in one pass. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/gate.h"

#include <string.h>

#include "season/document.h"
#include "season/text.h"

#define MOST_ATTRIBUTES 100

static guint
line_at (const char *data,
         const char *at)
{
  guint line = 1;

  while ((data = memchr (data, '\n', (gsize) (at - data))) != NULL)
    {
      line++;
      data++;
    }

  return line;
}

/* The bytes end at `end`, not with a NUL. */
static gboolean
starts (const char *at,
        const char *end,
        const char *mark)
{
  gsize length = strlen (mark);

  return (gsize) (end - at) >= length && memcmp (at, mark, length) == 0;
}

static const char *
past (const char *at,
      const char *end,
      const char *mark)
{
  const char *found = g_strstr_len (at, end - at, mark);

  return found != NULL ? found + strlen (mark) : end;
}

/* Past a tag's end; counts its attributes. A '<' inside ends it: the parser will tell of that. */
static const char *
past_tag (const char *at,
          const char *end,
          guint      *n)
{
  char quote = '\0';

  for (at++; at < end && *at != '<'; at++)
    {
      if (quote != '\0')
        quote = *at == quote ? '\0' : quote;
      else if (*at == '"' || *at == '\'')
        quote = *at;
      else if (*at == '=')
        (*n)++;
      else if (*at == '>')
        return at + 1;
    }

  return at;
}

/* The parser compares every attribute of a tag with every other: first bound their number. */
static const char *
find_crowded_tag (const char *at,
                  const char *end)
{
  while ((at = memchr (at, '<', (gsize) (end - at))) != NULL)
    {
      const char *tag = at;
      guint n = 0;

      if (starts (at, end, "<!--"))
        at = past (at, end, "-->");
      else if (starts (at, end, "<![CDATA["))
        at = past (at, end, "]]>");
      else if (starts (at, end, "<?"))
        at = past (at, end, "?>");
      else if (starts (at, end, "<!"))
        return NULL; /* a DTD: the parser stops there */
      else
        at = past_tag (at, end, &n);

      if (n > MOST_ATTRIBUTES)
        return tag;
    }

  return NULL;
}

/* Whether the XML declaration names another encoding than UTF-8; the parser will not look. */
static gboolean
says_other_encoding (const char *data,
                     const char *end)
{
  const char *at = starts (data, end, "\xef\xbb\xbf") ? data + 3 : data;

  if (!starts (at, end, "<?xml "))
    return FALSE;

  end = past (at, end, "?>");
  at = past (at, end, "encoding");
  while (at < end && strchr (" \t\r\n=\"'", *at) != NULL)
    at++;

  return at < end && !starts (at, end, "UTF-8") && !starts (at, end, "utf-8");
}

gboolean
lw_gate_check_bytes (LwReader   *reader,
                     const char *data,
                     gsize       length)
{
  const char *at;

  if (length > LW_MAX_FILE_BYTES)
    lw_reader_tell (reader, 0, _ ("Split the season into two files."),
                    _ ("The file is larger than %d MiB."), LW_MAX_FILE_BYTES / 1024 / 1024);
  else if (length == 0)
    lw_reader_tell (reader, 0, _ ("Open another file, or the last good copy."),
                    _ ("The file is empty."));
  else if (!g_utf8_validate_len (data, length, &at))
    lw_reader_tell (reader, line_at (data, at),
                    _ ("Open another file, or save this one as UTF-8 text."),
                    _ ("The file is not UTF-8 text from here on."));
  else if (says_other_encoding (data, data + length))
    lw_reader_tell (reader, 1, _ ("Write encoding=\"UTF-8\", and save the file as UTF-8 text."),
                    _ ("The file says that it is not UTF-8 text."));
  else if ((at = find_crowded_tag (data, data + length)) != NULL)
    lw_reader_tell (reader, line_at (data, at), _ ("Open another file, or the last good copy."),
                    _ ("An element has more than %d attributes."), MOST_ATTRIBUTES);
  else
    return TRUE;

  return FALSE;
}
