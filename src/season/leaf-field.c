/* The table of a leaf's fields. Their ranges are those of the reader. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/leaf-field.h"

#include <math.h>
#include <string.h>

#include "season/document.h"
#include "season/shape.h"
#include "season/text.h"

static const LwLeafFieldRow rows[LW_N_LEAF_FIELDS] = {
  [LW_LEAF_MOISTURE] = { "fresh-moisture-pct", N_ ("fresh moisture"), N_ ("% wet basis"),
                         N_ ("Water in the leaf when it is plucked."), offsetof (LwProfile, fresh_moisture_pct) },
  [LW_LEAF_GREEN] = { "green", N_ ("green note"), "",
                      N_ ("Grassy smell of the fresh leaf; only its change has a meaning."),
                      offsetof (LwProfile, fresh_green) },
  [LW_PART_SHARE] = { "share", N_ ("share"), "", N_ ("How much of the dry leaf is of this part; all together 1."),
                      offsetof (LwPart, share) },
  [LW_PART_EXPOSURE] = { "exposure", N_ ("exposure"), "",
                         N_ ("How much air it meets in a layer that is not mixed, beside the mean leaf at 1."),
                         offsetof (LwPart, exposure) },
  [LW_PART_AREA] = { "area", N_ ("area"), "", N_ ("Surface for its weight, beside the mean leaf at 1; stems have less."),
                     offsetof (LwPart, area) },
  [LW_PART_SKIN] = { "cuticle", N_ ("skin"), "", N_ ("How easily its skin lets water out, beside whole leaf at 1."),
                     offsetof (LwPart, cuticle) },
  [LW_PART_TORN] = { "ruptured", N_ ("torn cells"), "", N_ ("Share of its cells that are broken when it is plucked."),
                     offsetof (LwPart, ruptured) },
};

const LwLeafFieldRow *
lw_leaf_field_row (LwLeafField field)
{
  return &rows[field];
}

void
lw_leaf_field_range (LwLeafField field,
                     double     *low,
                     double     *high)
{
  LwAttrRow attrs[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (field < LW_PART_SHARE ? LW_E_LEAF : LW_E_PART, -1, attrs);

  for (guint i = 0; i < n; i++)
    if (strcmp (attrs[i].name, rows[field].id) == 0)
      {
        *low = attrs[i].low;
        *high = attrs[i].high;
        return;
      }

  g_assert_not_reached ();
}

char *
lw_leaf_field_range_text (LwLeafField field)
{
  double low, high;

  lw_leaf_field_range (field, &low, &high);

  /* Translators: lowest and highest value */
  return g_strdup_printf (_ ("%.*f to %g"), low > 0 && low < 0.01 ? 6 : low > 0 && low < 1 ? 2 : 0, low, high);
}

gboolean
lw_leaf_field_fits (LwLeafField field,
                    double      value)
{
  double low, high;

  lw_leaf_field_range (field, &low, &high);

  return isfinite (value) && value >= low && value <= high;
}

double
lw_profile_share_sum (const LwProfile *profile)
{
  double sum = 0;

  for (guint i = 0; i < profile->n_parts; i++)
    sum += profile->parts[i].share;

  return sum;
}

static gboolean
refuse (GError    **error,
        const char *format,
        ...) G_GNUC_PRINTF (2, 3);

static gboolean
refuse (GError    **error,
        const char *format,
        ...)
{
  g_autofree char *text = NULL;
  va_list args;

  va_start (args, format);
  text = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, text);

  return FALSE;
}

static gboolean
check_name (const char *name,
            GError    **error)
{
  if (name[0] == '\0')
    return refuse (error, _ ("The leaf and each of its parts need a name."));
  if (g_utf8_strlen (name, -1) > LW_MAX_TEXT)
    return refuse (error, _ ("A name is longer than %d characters."), LW_MAX_TEXT);

  return TRUE;
}

static gboolean
check_field (LwLeafField field,
             const void *from,
             const char *of,
             GError    **error)
{
  g_autofree char *range = NULL;

  if (lw_leaf_field_fits (field, *(const double *) ((const char *) from + rows[field].offset)))
    return TRUE;

  range = lw_leaf_field_range_text (field);

  /* Translators: the name of a number, of what, and its range: “share” of “stem” must be a number: 0.01 to 1. */
  return refuse (error, _ ("“%s” of “%s” must be a number: %s."), _ (rows[field].label), of, range);
}

gboolean
lw_profile_check (const LwProfile *profile,
                  GError         **error)
{
  if (!check_name (profile->name, error))
    return FALSE;
  for (int field = 0; field < LW_PART_SHARE; field++)
    if (!check_field ((LwLeafField) field, profile, profile->name, error))
      return FALSE;

  if (profile->n_parts == 0 || profile->n_parts > LW_MAX_PARTS)
    return refuse (error, _ ("A leaf has 1 to %d parts."), LW_MAX_PARTS);
  for (guint i = 0; i < profile->n_parts; i++)
    {
      if (!check_name (profile->part_names[i], error))
        return FALSE;
      for (int field = LW_PART_SHARE; field < LW_N_LEAF_FIELDS; field++)
        if (!check_field ((LwLeafField) field, &profile->parts[i], profile->part_names[i], error))
          return FALSE;
    }

  if (fabs (lw_profile_share_sum (profile) - 1) > LW_SHARE_SLACK)
    return refuse (error, _ ("The shares add up to %g; they must add up to 1."), lw_profile_share_sum (profile));

  return TRUE;
}

void
lw_shares_add_up (double *shares,
                  guint   n)
{
  double sum = 0, others = 0;
  guint largest = 0;

  for (guint i = 0; i < n; i++)
    {
      sum += shares[i];
      if (shares[i] > shares[largest])
        largest = i;
    }

  for (guint i = 0; i < n; i++)
    {
      double exact = shares[i] / sum, rounded = round (exact * 1e4) / 1e4;

      shares[i] = exact < 1e-3 ? exact : rounded;
      if (i != largest)
        others += shares[i];
    }
  shares[largest] = round ((1 - others) * 1e12) / 1e12;
}
