/* A leaf profile: its memory, the law it changes, its parts. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/season.h"

#include "season/text.h"

G_STATIC_ASSERT (LW_N_LAW <= 64);

LwProfile *
lw_profile_new (const char *id,
                const char *name)
{
  LwProfile *profile = g_atomic_rc_box_new0 (LwProfile);

  profile->id = g_strdup (id);
  profile->name = g_strdup (name);
  profile->fresh_moisture_pct = 77;
  profile->fresh_green = 0.25;
  profile->law = lw_law_start ();

  return profile;
}

void
lw_profile_set_law (LwProfile *profile,
                    guint      field,
                    double     value)
{
  guint64 bit = G_GUINT64_CONSTANT (1) << field;

  g_return_if_fail (field < LW_N_LAW);

  lw_law_set (&profile->law, field, value);
  if (value != lw_law_fields ()[field].value)
    profile->given |= bit;
  else
    profile->given &= ~bit;
}

void
lw_profile_add_part (LwProfile  *profile,
                     const char *name,
                     LwPart      part)
{
  guint n = profile->n_parts++;

  profile->parts = g_renew (LwPart, profile->parts, n + 1);
  profile->parts[n] = part;
  profile->part_names = g_renew (char *, profile->part_names, n + 1);
  profile->part_names[n] = g_strdup (name);
}

LwProfile *
lw_profile_copy_bare (const LwProfile *profile)
{
  LwProfile *copy = lw_profile_new (profile->id, profile->name);

  copy->fresh_moisture_pct = profile->fresh_moisture_pct;
  copy->fresh_green = profile->fresh_green;
  copy->given = profile->given;
  copy->law = profile->law;
  copy->note = g_strdup (profile->note);

  return copy;
}

LwProfile *
lw_profile_copy (const LwProfile *profile)
{
  LwProfile *copy = lw_profile_copy_bare (profile);

  for (guint i = 0; i < profile->n_parts; i++)
    lw_profile_add_part (copy, profile->part_names[i], profile->parts[i]);

  return copy;
}

LwProfile *
lw_profile_start (void)
{
  static const struct
  {
    const char *name;
    LwPart part;
  } parts[] = {
    /* share, exposure, area, cuticle, ruptured */
    { N_ ("sheltered"), { 0.55, 0.8, 1, 1, 0.005 } },
    { N_ ("surface"), { 0.25, 1.55, 1, 1, 0.006 } },
    { N_ ("torn"), { 0.08, 1.05, 1, 1.8, 0.05 } },
    { N_ ("stem"), { 0.12, 0.75, 0.4, 1, 0.005 } },
  };
  LwProfile *profile = lw_profile_new ("large-leaf", _ ("Large leaf"));

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    lw_profile_add_part (profile, _ (parts[i].name), parts[i].part);

  return profile;
}

LwProfile *
lw_profile_ref (LwProfile *profile)
{
  return g_atomic_rc_box_acquire (profile);
}

static void
profile_clear (LwProfile *profile)
{
  for (guint i = 0; i < profile->n_parts; i++)
    g_free (profile->part_names[i]);

  g_free (profile->part_names);
  g_free (profile->parts);
  g_free (profile->id);
  g_free (profile->name);
  g_free (profile->note);
}

void
lw_profile_unref (LwProfile *profile)
{
  g_atomic_rc_box_release_full (profile, (GDestroyNotify) profile_clear);
}
