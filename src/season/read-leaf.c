/* Reading leaf profiles. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/reader.h"

#include <math.h>

#include "season/gate.h"
#include "season/leaf-field.h"
#include "season/notation.h"
#include "season/text.h"

static void
read_law (LwReader  *reader,
          xmlNode   *node,
          LwProfile *profile)
{
  LwValue values[LW_MAX_ATTRS];

  lw_reader_attrs (reader, node, LW_E_LAW, values);
  for (guint i = 0; i < LW_N_LAW; i++)
    if (values[i].given)
      lw_profile_set_law (profile, i, values[i].number);
}

static void
read_part (LwReader  *reader,
           xmlNode   *node,
           LwProfile *profile)
{
  enum { NAME, SHARE, EXPOSURE, AREA, CUTICLE, RUPTURED };
  LwValue values[LW_MAX_ATTRS];

  lw_reader_attrs (reader, node, LW_E_PART, values);
  lw_profile_add_part (profile, lw_value_text (&values[NAME]),
                       (LwPart) {
                         .share = values[SHARE].given ? values[SHARE].number : NAN,
                         .exposure = values[EXPOSURE].number,
                         .area = values[AREA].number,
                         .cuticle = values[CUTICLE].number,
                         .ruptured = values[RUPTURED].number,
                       });
}

static void
take_in_leaf (LwReader *reader,
              xmlNode  *node,
              LwElement element,
              gpointer  into)
{
  LwProfile *profile = into;

  if (element == LW_E_LAW)
    read_law (reader, node, profile);
  else if (element == LW_E_PART)
    read_part (reader, node, profile);
  else
    profile->note = lw_reader_note (reader, node, LW_E_NOTE, profile->note);
}

static void
check_shares (LwReader        *reader,
              xmlNode         *node,
              const LwProfile *profile)
{
  g_autofree char *quoted = NULL, *number = NULL;
  double sum = 0;

  for (guint i = 0; i < profile->n_parts; i++)
    sum += profile->parts[i].share;

  /* Not a number: a share was already found wrong. */
  if (profile->n_parts == 0 || !(fabs (sum - 1) > LW_SHARE_SLACK))
    return;

  quoted = lw_reader_quote (profile->name);
  number = lw_number_text (sum);
  lw_reader_tell (reader, lw_gate_line (node), _ ("Change them so that they add up to 1."),
                  _ ("The shares of the parts of “%s” add up to %s."), quoted, number);
}

LwProfile *
lw_read_profile (LwReader *reader,
                 xmlNode  *node)
{
  enum { ID, NAME, MOISTURE, GREEN };
  LwValue values[LW_MAX_ATTRS];
  LwProfile *profile;

  lw_reader_attrs (reader, node, LW_E_LEAF, values);
  profile = lw_profile_new (lw_value_text (&values[ID]), lw_value_text (&values[NAME]));
  profile->fresh_moisture_pct = values[MOISTURE].number;
  profile->fresh_green = values[GREEN].number;

  lw_reader_children (reader, node, LW_E_LEAF, take_in_leaf, profile);
  check_shares (reader, node, profile);

  return profile;
}
