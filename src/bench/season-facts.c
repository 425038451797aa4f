/* The window on the season's name and place. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/facts-windows.h"

#include "bench/entry.h"
#include "bench/facts.h"
#include "season/facts.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;
  GtkWidget *name;
  GtkWidget *place;
  GtkWidget *altitude;
  GtkWidget *latitude;
  GtkWidget *note;
} SeasonFacts;

static void
season_facts_free (SeasonFacts *self)
{
  g_object_unref (self->session);
  g_free (self);
}

static gboolean
read_fields (gpointer   data,
             gboolean   apply,
             GError   **error)
{
  SeasonFacts *self = data;
  const LwSeason *base = lw_session_base (self->session);
  g_autofree char *name = lw_facts_text (self->name), *place = lw_facts_text (self->place);
  g_autofree char *note = lw_facts_text (self->note);
  const LwSeasonFacts facts = {
    .name = name, .place = place, .note = note,
    .altitude_m = lw_entry_number_of (self->altitude),
    .latitude_deg = lw_entry_number_of (self->latitude),
  };

  if (!lw_season_facts_check (&facts, error))
    return FALSE;

  if (apply)
    lw_session_edit (self->session, lw_edit_set_season_facts (base, &facts), _ ("Write down the season"), NULL);

  return TRUE;
}

void
lw_season_facts_open (GtkWindow *parent,
                      LwSession *session)
{
  const LwSeason *season = lw_session_base (session);
  SeasonFacts *self = g_new0 (SeasonFacts, 1);
  LwFacts *facts = lw_facts_new (parent, _ ("Season and place"), read_fields, self, (GDestroyNotify) season_facts_free);

  self->session = g_object_ref (session);
  self->name = lw_facts_add_text (facts, _ ("Name of the season"), season->name, NULL);
  self->place = lw_facts_add_text (facts, _ ("Place"), season->place, NULL);
  self->altitude = lw_facts_add_number (facts, _ ("Altitude, m"), season->altitude_m,
                                        _ ("Higher up the air is thinner: water leaves the leaf, and boils, sooner."));
  self->latitude = lw_facts_add_number (facts, _ ("Latitude, degrees"), season->latitude_deg,
                                        _ ("North is positive. The sun's height follows from it."));
  self->note = lw_facts_add_note (facts, _ ("Note"), season->note);

  lw_facts_present (facts, FALSE);
}
