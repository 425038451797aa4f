/* Judging claims and writing them down. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "claim.h"

#define STATED_WITHIN 0.10

static GString *table;
static guint n_claims, n_agree;
static gboolean broken;

static char *
number (double value,
        int    digits)
{
  char form[8], text[G_ASCII_DTOSTR_BUF_SIZE];

  g_snprintf (form, sizeof form, "%%.%df", digits);
  if (fabs (value) < 0.5 * pow (10, -digits))
    value = 0; /* without a sign */

  return g_strdup (g_ascii_formatd (text, sizeof text, form, value));
}

static char *
published (const Claim *c)
{
  g_autofree char *low = number (c->low, c->digits);
  g_autofree char *high = number (c->high, c->digits);
  g_autofree char *scatter = number (c->scatter, c->digits);
  g_autofree char *range = c->low == c->high ? g_strdup (low)
                           : isinf (c->low)  ? g_strconcat ("at most ", high, NULL)
                           : isinf (c->high) ? g_strconcat ("at least ", low, NULL)
                                             : g_strconcat (low, " to ", high, NULL);

  return c->scatter > 0 ? g_strconcat (range, " ± ", scatter, NULL) : g_steal_pointer (&range);
}

/* From the nearest published figure; 0 inside their range. */
static double
difference (const Claim *c)
{
  return c->model < c->low ? c->model - c->low : c->model > c->high ? c->model - c->high : 0;
}

void
claim (Claim c)
{
  static const char *const seen[] = { "abstract", "second-hand", "calculated", "memory" };
  double off = difference (&c);
  double allowed = STATED_WITHIN * fabs (c.stated) + pow (10, -c.digits);
  gboolean agrees = fabs (off) <= c.scatter;
  gboolean as_stated = c.stated != 0 ? !agrees && fabs (c.model - c.stated) <= allowed : agrees;
  g_autofree char *model = number (c.model, c.digits);
  g_autofree char *range = published (&c);
  g_autofree char *by = number (off, c.digits);
  const char *sign = off >= 0.5 * pow (10, -c.digits) ? "+" : "";
  const char *unit = c.unit[0] != '\0' ? " " : "";

  g_test_message ("%s (%s): %s | %s | %s%s%s%s", c.what, c.conditions, model, range, sign, by, unit, c.unit);

  n_claims++;
  n_agree += agrees;
  if (table == NULL)
    table = g_string_new ("| what | conditions | model | published | difference | | source | seen |\n"
                          "|---|---|--:|--:|--:|---|---|---|\n");
  g_string_append_printf (table, "| %s | %s | %s | %s%s%s | %s%s | %s | %s | %s |\n", c.what, c.conditions,
                          model, range, unit, c.unit, sign, by, agrees ? "agrees" : "**disagrees**", c.source,
                          seen[c.seen]);

  if (!as_stated)
    {
      g_test_message ("NOT AS STATED: %s says %s where %s; stated %g", c.what, model,
                      c.stated != 0 ? "the page states a disagreement" : "the page states that it agrees", c.stated);
      g_test_fail ();
      broken = TRUE;
    }
}

char *
claims_table (void)
{
  return g_strdup_printf ("%u of %u agree.\n\n%s", n_agree, n_claims, table != NULL ? table->str : "");
}

gboolean
claims_hold (void)
{
  return !broken;
}
