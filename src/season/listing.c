/* A list of rows, as a Markdown table or as CSV. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/listing.h"

#include <math.h>
#include <stdio.h>

#include "season/csv.h"

char *
lw_listing_number (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (digits, sizeof digits, "%.9g", value));
}

char *
lw_listing_fixed (double value,
                  int    digits)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *format = g_strdup_printf ("%%.%df", digits);

  if (isnan (value))
    return g_strdup ("");
  if (fabs (value) < 0.5 * pow (10, -digits))
    value = 0;

  return g_strdup (g_ascii_formatd (text, sizeof text, format, value));
}

void
lw_listing_cell (const char *text,
                 int         width)
{
  printf ("  %s%*s", text, (int) MAX (width - g_utf8_strlen (text, -1), 0), "");
}

/* A cell stays on its line and ends where its column ends. */
static void
append_cell (GString    *to,
             const char *cell)
{
  for (; *cell != '\0'; cell++)
    if (*cell == '\n' || *cell == '\r')
      g_string_append_c (to, ' ');
    else
      g_string_append_printf (to, *cell == '|' ? "\\%c" : "%c", *cell);
}

void
lw_listing_append_row (GString           *to,
                       gboolean           csv,
                       guint              n,
                       const char *const *cells)
{
  for (guint i = 0; i < n; i++)
    {
      if (csv)
        {
          g_string_append (to, i > 0 ? "," : "");
          lw_csv_append_text (to, cells[i]);
        }
      else
        {
          g_string_append (to, i > 0 ? " " : "| ");
          append_cell (to, cells[i]);
          g_string_append (to, " |");
        }
    }
  g_string_append_c (to, '\n');
}

void
lw_listing_append_head (GString           *to,
                        gboolean           csv,
                        guint              n,
                        const char *const *cells)
{
  lw_listing_append_row (to, csv, n, cells);
  for (guint i = 0; i < n && !csv; i++)
    g_string_append (to, i > 0 ? "---|" : "|---|");
  if (!csv)
    g_string_append_c (to, '\n');
}
