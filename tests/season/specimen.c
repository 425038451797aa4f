/* Makes the specimen documents: each element stands where it must, with the least that it needs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "specimen.h"

#include <string.h>

#include "season/document.h"
#include "season/notation.h"

static gboolean
is_under_test (const Specimen  *specimen,
               LwElement        element,
               const LwAttrRow *row)
{
  return specimen->element == element && strcmp (specimen->name, row->name) == 0;
}

/* An id refers to others: all change together. */
static const char *
id_value (const Specimen *specimen)
{
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (specimen->element, specimen->word, rows);

  for (guint i = 0; i < n; i++)
    if (rows[i].type == LW_ATTR_ID && specimen->value != NULL
        && strcmp (rows[i].name, specimen->name) == 0)
      return specimen->value;

  return "a";
}

/* A day's high is above its low and at another hour, whatever one of them is. */
static double
day_value (const LwAttrRow *row)
{
  if (g_str_has_suffix (row->name, "-hour"))
    return *row->name == 'l' ? 12 : 13;

  return *row->name == 'h' ? row->high : row->low;
}

/* (transfer full) a value that is right. */
static char *
usual_value (const Specimen  *specimen,
             LwElement        element,
             const LwAttrRow *row,
             int              word)
{
  /* A lesson shows the batch by its name. */
  if (element == LW_E_BATCH && specimen->element == LW_E_SHOW && specimen->value != NULL && strcmp (row->name, "name") == 0)
    return g_strdup (specimen->value);
  if (row->type == LW_ATTR_NUMBER && element == LW_E_DAY)
    return lw_number_text (day_value (row));
  if (row->type == LW_ATTR_NUMBER)
    return lw_number_text (element == LW_E_STEP || element == LW_E_PART ? row->high : row->low);
  if (row->type == LW_ATTR_WORD)
    return g_strdup (row->word ((guint) MAX (word, 0)));
  if (row->type == LW_ATTR_TIME)
    return g_strdup ("2026-04-12T10:30");

  return g_strdup (row->type == LW_ATTR_ID ? id_value (specimen) : "Name");
}

/* Whether the row is the first of a pair, of which the other is not under test. */
static gboolean
is_of_pair (const Specimen  *specimen,
            LwElement        element,
            const LwAttrRow *row,
            const LwAttrRow *next)
{
  return next != NULL && next->instead && !is_under_test (specimen, element, next);
}

/* An aim needs a side; the lower one unless a side is under test. Hours need a start. */
static gboolean
is_wanted (const Specimen  *specimen,
           LwElement        element,
           const LwAttrRow *row)
{
  gboolean side = element == LW_E_AIM && strcmp (row->name, "low") == 0;
  gboolean hours = specimen->element != LW_E_CONSTANT && specimen->element != LW_E_DAY;

  return row->needed || row->type == LW_ATTR_ID || (row->type == LW_ATTR_TIME && hours)
         || (side && !(specimen->element == LW_E_AIM && strcmp (specimen->name, "high") == 0));
}

static void
put_start (GString        *text,
           const Specimen *specimen,
           LwElement       element,
           int             word)
{
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (element, word, rows);

  g_string_append_printf (text, "<%s", lw_shape (element)->name);
  if (element == LW_E_SEASON)
    g_string_append (text, " xmlns=\"" LW_SEASON_NS "\"");

  for (guint i = 0; i < n; i++)
    {
      gboolean tested = is_under_test (specimen, element, &rows[i]);
      g_autofree char *usual = usual_value (specimen, element, &rows[i], word);
      const char *value = tested ? specimen->value : usual;

      if (value != NULL && (tested || is_wanted (specimen, element, &rows[i])
                            || is_of_pair (specimen, element, &rows[i], i + 1 < n ? &rows[i + 1] : NULL)))
        g_string_append_printf (text, " %s=\"%s\"", rows[i].name, value);
    }
}

static void
put_empty (GString        *text,
           const Specimen *specimen,
           LwElement       element,
           int             word)
{
  put_start (text, specimen, element, word);
  g_string_append (text, "/>\n");
}

/* A second part takes what the part under test leaves of the whole. */
static void
put_rest_of_leaf (GString        *text,
                  const Specimen *specimen)
{
  double share;

  if (specimen->element != LW_E_PART || strcmp (specimen->name, "share") != 0
      || specimen->value == NULL || !lw_number_parse (specimen->value, &share)
      || share <= 0 || share >= 1)
    return;

  g_string_append_printf (text, "<part name=\"rest\" share=\"%.9f\" exposure=\"1\" area=\"1\""
                          " cuticle=\"1\" ruptured=\"0\"/>\n", 1 - share);
}

static void
put_step (GString        *text,
          const Specimen *specimen)
{
  int kind = specimen->element == LW_E_STEP ? specimen->word : LW_KIND_WITHER;
  int aim = specimen->element == LW_E_AIM ? specimen->word : LW_MOISTURE;

  put_start (text, specimen, LW_E_STEP, kind);
  g_string_append (text, ">\n");
  put_empty (text, specimen, LW_E_AIM, aim);
  if (specimen->element == LW_E_WEIGH_IN)
    {
      put_start (text, specimen, LW_E_WEIGH_IN, specimen->word);
      g_string_append (text, ">Text</weigh-in>\n");
    }
  if (specimen->element == LW_E_CORRECTION || specimen->element == LW_E_SHIFT)
    {
      put_start (text, specimen, LW_E_CORRECTION, -1);
      g_string_append (text, ">\n");
      put_empty (text, specimen, LW_E_SHIFT, -1);
      g_string_append (text, "</correction>\n");
    }
  g_string_append (text, "</step>\n");
}

/* The log that steps follow: of wall and of air, and the curve under test. */
static void
put_log (GString        *text,
         const Specimen *specimen)
{
  put_start (text, specimen, LW_E_LOG, -1);
  g_string_append (text, ">\n<curve of=\"wall\" within-c=\"0\">0 20</curve>\n"
                   "<curve of=\"air\" within-c=\"0\">0 20 1.5 2e2</curve>\n");
  put_start (text, specimen, LW_E_CURVE, -1);
  g_string_append (text, ">0 20</curve>\n</log>\n");
}

/* Where it is under test. */
static void
put_lesson (GString        *text,
            const Specimen *specimen)
{
  if (specimen->element != LW_E_LESSON && specimen->element != LW_E_SHOW && specimen->element != LW_E_MOMENT)
    return;

  put_start (text, specimen, LW_E_LESSON, -1);
  g_string_append (text, ">\n");
  put_empty (text, specimen, LW_E_SHOW, -1);
  put_start (text, specimen, LW_E_MOMENT, -1);
  g_string_append (text, ">Text</moment>\n</lesson>\n");
}

char *
specimen_text (const Specimen *specimen)
{
  GString *text = g_string_new (NULL);

  put_start (text, specimen, LW_E_SEASON, 0);
  g_string_append (text, ">\n");
  put_empty (text, specimen, LW_E_PLACE, -1);
  put_start (text, specimen, LW_E_LEAF, -1);
  g_string_append (text, ">\n");
  put_empty (text, specimen, LW_E_LAW, -1);
  put_empty (text, specimen, LW_E_PART, -1);
  put_rest_of_leaf (text, specimen);
  g_string_append (text, "</leaf>\n");
  put_start (text, specimen, LW_E_WEATHER, -1);
  g_string_append (text, ">\n");
  put_empty (text, specimen, specimen->element == LW_E_CONSTANT || specimen->element == LW_E_DAY
                               ? specimen->element : LW_E_HOUR, -1);
  g_string_append (text, "</weather>\n");
  put_start (text, specimen, LW_E_BATCH, -1);
  g_string_append (text, ">\n");
  put_step (text, specimen);
  put_log (text, specimen);
  if (specimen->element == LW_E_PLAN)
    put_empty (text, specimen, LW_E_PLAN, -1);
  g_string_append (text, "</batch>\n");
  put_lesson (text, specimen);
  g_string_append (text, "</season>\n");

  return g_string_free (text, FALSE);
}
