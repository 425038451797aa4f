/* Reading and writing the page's tables. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page.h"

#include <math.h>
#include <string.h>

static gboolean
find_table (const char *page,
            const char *name,
            gsize      *begin,
            gsize      *end)
{
  g_autofree char *first = g_strdup_printf ("<!-- begin %s -->\n", name);
  g_autofree char *last = g_strdup_printf ("<!-- end %s -->\n", name);
  const char *from = strstr (page, first);
  const char *to = from != NULL ? strstr (from, last) : NULL;

  if (to == NULL)
    return FALSE;

  *begin = (gsize) (from - page) + strlen (first);
  *end = (gsize) (to - page);

  return TRUE;
}

char *
page_table (const char *page,
            const char *name)
{
  gsize begin, end;

  return find_table (page, name, &begin, &end) ? g_strndup (page + begin, end - begin) : NULL;
}

char *
page_with (const char *page,
           const char *name,
           const char *table)
{
  g_autofree char *before = NULL;
  gsize begin, end;

  if (!find_table (page, name, &begin, &end))
    return NULL;

  before = g_strndup (page, begin);

  return g_strconcat (before, table, page + end, NULL);
}

/* A cell's number and one unit of its last digit. */
static gboolean
as_number (const char *cell,
           double     *value,
           double     *unit)
{
  g_autofree char *text = g_strstrip (g_strdup (cell));
  const char *point = strchr (text, '.');
  char *end;

  *value = g_ascii_strtod (text, &end);
  *unit = point != NULL ? pow (10, -(double) strlen (point + 1)) : 1;

  return end != text && *end == '\0';
}

static gboolean
same_cell (const char *a,
           const char *b)
{
  double x, y, unit_x, unit_y;

  if (strcmp (a, b) == 0)
    return TRUE;

  return as_number (a, &x, &unit_x) && as_number (b, &y, &unit_y) && unit_x == unit_y && fabs (x - y) < 1.5 * unit_x;
}

static gboolean
same_line (const char *a,
           const char *b)
{
  g_auto (GStrv) left = g_strsplit (a, "|", -1);
  g_auto (GStrv) right = g_strsplit (b, "|", -1);
  guint n = g_strv_length (left);

  if (n != g_strv_length (right))
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!same_cell (left[i], right[i]))
      return FALSE;

  return TRUE;
}

char *
page_differs (const char *found,
              const char *expected)
{
  g_auto (GStrv) left = g_strsplit (found, "\n", -1);
  g_auto (GStrv) right = g_strsplit (expected, "\n", -1);

  for (guint i = 0; left[i] != NULL || right[i] != NULL; i++)
    if (left[i] == NULL || right[i] == NULL || !same_line (left[i], right[i]))
      return g_strdup_printf ("the page says\n%s\nand should say\n%s", left[i] != NULL ? left[i] : "(nothing)",
                              right[i] != NULL ? right[i] : "(nothing)");

  return NULL;
}
