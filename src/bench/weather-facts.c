/* The window on a weather that is made up: a day that is like every other. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/facts-windows.h"

#include <math.h>

#include "bench/entry.h"
#include "bench/facts.h"
#include "season/document.h"
#include "season/facts.h"
#include "season/import.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;
  guint batch;
  char *id;            /* (nullable) of the weather that is changed */
  GtkWidget *name;
  GtkWidget *low;
  GtkWidget *low_hour;
  GtkWidget *high;
  GtkWidget *high_hour;
  GtkWidget *humidity;
  GtkWidget *dew_point;
  GtkWidget *cloud;
  GtkWidget *wind;
  GtkWidget *note;
} WeatherFacts;

static void
weather_facts_free (WeatherFacts *self)
{
  g_object_unref (self->session);
  g_free (self->id);
  g_free (self);
}

static void
put (WeatherFacts     *self,
     const LwDayFacts *facts)
{
  const LwSeason *base = lw_session_base (self->session);
  g_autofree char *id = self->id != NULL ? g_strdup (self->id) : lw_import_weather_id (base, facts->name);
  g_autoptr (LwSeason) with_it = lw_edit_add_weather (base, lw_day_facts_weather (facts, id));

  lw_session_edit (self->session, lw_edit_set_batch_weather (with_it, self->batch, id),
                   self->id != NULL ? _ ("Change a weather") : _ ("Make up a weather"), NULL);
}

/* A number that may be left out must be none or a number. */
static gboolean
is_odd (GtkWidget *entry)
{
  g_autofree char *text = lw_facts_text (entry);

  return text[0] != '\0' && isnan (lw_entry_number_of (entry));
}

static gboolean
read_fields (gpointer   data,
             gboolean   apply,
             GError   **error)
{
  WeatherFacts *self = data;
  g_autofree char *name = lw_facts_text (self->name), *note = lw_facts_text (self->note);
  const LwDayFacts facts = {
    name,
    { .low_c = lw_entry_number_of (self->low), .low_hour = lw_entry_number_of (self->low_hour),
      .high_c = lw_entry_number_of (self->high), .high_hour = lw_entry_number_of (self->high_hour),
      .humidity_pct = lw_entry_number_of (self->humidity), .dew_point_c = lw_entry_number_of (self->dew_point),
      .cloud_pct = lw_entry_number_of (self->cloud), .wind_m_s = lw_entry_number_of (self->wind) },
    note,
  };

  if (is_odd (self->humidity) || is_odd (self->dew_point))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, _ ("Humidity and dew point are numbers."));
      return FALSE;
    }
  if (!lw_day_facts_check (&facts, error))
    return FALSE;

  if (apply)
    put (self, &facts);

  return TRUE;
}

/* (transfer full) (nullable) how many other batches change with the weather. */
static char *
say_shared (WeatherFacts *self)
{
  const LwSeason *base = lw_session_base (self->session);
  guint n = 0;

  for (guint i = 0; i < base->n_batches; i++)
    n += self->id != NULL && i != self->batch && g_strcmp0 (base->batches[i]->weather, self->id) == 0;

  return n == 0 ? NULL
                : g_strdup_printf (ngettext ("%u other batch has this weather and changes, too.",
                                             "%u other batches have this weather and change, too.", n), n);
}

static void
add_fields (WeatherFacts     *self,
            LwFacts          *form,
            const LwDayFacts *facts)
{
  const LwDay *day = &facts->day;
  g_autofree char *shared = say_shared (self);

  self->name = lw_facts_add_text (form, _ ("Name"), facts->name, shared);
  self->low = lw_facts_add_number (form, _ ("Lowest, °C"), day->low_c, _ ("Air in the shade. Low and high alike: the same all day."));
  self->low_hour = lw_facts_add_number (form, _ ("Lowest at hour"), day->low_hour,
                                        _ ("0 to 24, often about dawn; half past six is 6.5."));
  self->high = lw_facts_add_number (form, _ ("Highest, °C"), day->high_c, _ ("Between the two it follows a wave."));
  self->high_hour = lw_facts_add_number (form, _ ("Highest at hour"), day->high_hour, _ ("Often early in the afternoon."));
  self->humidity = lw_facts_add_number (form, _ ("Humidity, %"), day->humidity_pct,
                                        _ ("Relative, all day; or leave it empty and give the dew point."));
  self->dew_point = lw_facts_add_number (form, _ ("Dew point, °C"), day->dew_point_c,
                                         _ ("All day: humidity then falls as it gets warmer, as it does outdoors."));
  self->cloud = lw_facts_add_number (form, _ ("Cloud, %"), day->cloud_pct, _ ("Of the sky that is covered."));
  self->wind = lw_facts_add_number (form, _ ("Wind, m/s"), day->wind_m_s, _ ("Over the leaf."));
  self->note = lw_facts_add_note (form, _ ("Note"), facts->note);
}

gboolean
lw_weather_facts_can_change (LwSession *session)
{
  const LwBatch *batch = lw_session_batch (session);
  const LwWeather *weather = batch != NULL && batch->weather != NULL
                               ? lw_season_weather (lw_session_base (session), batch->weather) : NULL;

  return weather != NULL && weather->form != LW_WEATHER_HOURS;
}

void
lw_weather_facts_open (GtkWindow *parent,
                       LwSession *session,
                       gboolean   change)
{
  /* A mild, dry day to start from: invented. */
  LwDayFacts facts = { _ ("my weather"), { 15, 6, 25, 14, NAN, 10, 20, 1 }, "" };
  const LwBatch *batch = lw_session_batch (session);
  WeatherFacts *self = g_new0 (WeatherFacts, 1);
  LwFacts *form = lw_facts_new (parent, _ ("A day's weather"), read_fields, self, (GDestroyNotify) weather_facts_free);

  self->session = g_object_ref (session);
  self->batch = (guint) lw_session_batch_index (session);
  if (change && lw_day_facts_of (lw_season_weather (lw_session_base (session), batch->weather), &facts))
    self->id = g_strdup (batch->weather);
  add_fields (self, form, &facts);

  lw_facts_present (form, self->id == NULL);
}
