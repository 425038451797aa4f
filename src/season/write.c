/* Writing the document: one element per line, attributes in a fixed order, numbers
 * as short as they can be, so that the same season is always the same bytes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/document.h"

#include <math.h>

#include "season/escape.h"
#include "season/notation.h"
#include "season/put.h"
#include "season/write-batch.h"
#include "season/write-lesson.h"

static void
put_law (GString         *out,
         const LwProfile *profile)
{
  const LwLawField *fields = lw_law_fields ();

  if (profile->given == 0)
    return;

  lw_put_start (out, 2, "law");
  for (guint i = 0; i < LW_N_LAW; i++)
    if (profile->given & (G_GUINT64_CONSTANT (1) << i))
      lw_put_number (out, fields[i].symbol, lw_law_get (&profile->law, i));
  g_string_append (out, "/>\n");
}

static void
put_part (GString      *out,
          const char   *name,
          const LwPart *part)
{
  lw_put_start (out, 2, "part");
  lw_put_attr (out, "name", name);
  lw_put_number (out, "share", part->share);
  lw_put_number (out, "exposure", part->exposure);
  lw_put_number (out, "area", part->area);
  lw_put_number (out, "cuticle", part->cuticle);
  lw_put_number (out, "ruptured", part->ruptured);
  g_string_append (out, "/>\n");
}

static void
put_profile (GString         *out,
             const LwProfile *profile)
{
  lw_put_start (out, 1, "leaf");
  lw_put_attr (out, "id", profile->id);
  lw_put_attr (out, "name", profile->name);
  lw_put_number (out, "fresh-moisture-pct", profile->fresh_moisture_pct);
  lw_put_number (out, "green", profile->fresh_green);
  g_string_append (out, ">\n");

  lw_put_note (out, 2, "note", profile->note);
  put_law (out, profile);
  for (guint i = 0; i < profile->n_parts; i++)
    put_part (out, profile->part_names[i], &profile->parts[i]);

  lw_put_end (out, 1, "leaf");
}

/* Where a number stands in a value. */
typedef struct
{
  const char *name;
  gsize offset;
} Column;

static const Column hour_columns[] = {
  { "temp-c", offsetof (LwHour, temp_c) },
  { "humidity-pct", offsetof (LwHour, humidity_pct) },
  { "sun-w-m2", offsetof (LwHour, sun_w_m2) },
  { "cloud-pct", offsetof (LwHour, cloud_pct) },
  { "wind-m-s", offsetof (LwHour, wind_m_s) },
  { "rain-mm", offsetof (LwHour, rain_mm) },
};

static const Column day_columns[] = {
  { "low-c", offsetof (LwDay, low_c) },
  { "low-hour", offsetof (LwDay, low_hour) },
  { "high-c", offsetof (LwDay, high_c) },
  { "high-hour", offsetof (LwDay, high_hour) },
  { "humidity-pct", offsetof (LwDay, humidity_pct) },
  { "dew-point-c", offsetof (LwDay, dew_point_c) },
  { "cloud-pct", offsetof (LwDay, cloud_pct) },
  { "wind-m-s", offsetof (LwDay, wind_m_s) },
};

/* All that are numbers. */
static void
put_columns (GString      *out,
             const char   *name,
             const Column *columns,
             guint         n,
             const void   *values)
{
  lw_put_start (out, 2, name);
  for (guint i = 0; i < n; i++)
    {
      double value = *(const double *) ((const char *) values + columns[i].offset);

      if (!isnan (value))
        lw_put_number (out, columns[i].name, value);
    }
  g_string_append (out, "/>\n");
}

static void
put_weather (GString         *out,
             const LwWeather *weather)
{
  lw_put_start (out, 1, "weather");
  lw_put_attr (out, "id", weather->id);
  lw_put_attr (out, "name", weather->name);
  if (weather->form == LW_WEATHER_HOURS)
    lw_put_time (out, "start", weather->start_s);
  g_string_append (out, ">\n");

  lw_put_note (out, 2, "note", weather->note);
  for (guint i = 0; i < weather->n_hours; i++)
    put_columns (out, weather->form == LW_WEATHER_HOURS ? "hour" : "constant", hour_columns,
                 G_N_ELEMENTS (hour_columns), &weather->hours[i]);
  if (weather->form == LW_WEATHER_DAY)
    put_columns (out, "day", day_columns, G_N_ELEMENTS (day_columns), &weather->day);

  lw_put_end (out, 1, "weather");
}

static void
put_place (GString        *out,
           const LwSeason *season)
{
  lw_put_start (out, 1, "place");
  lw_put_optional (out, "name", season->place);
  lw_put_number (out, "altitude-m", season->altitude_m);
  lw_put_number (out, "latitude-deg", season->latitude_deg);
  g_string_append (out, "/>\n");
}

char *
lw_document_write (const LwSeason *season,
                   gsize          *length)
{
  GString *out = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");

  lw_put_start (out, 0, "season");
  lw_put_attr (out, "xmlns", LW_SEASON_NS);
  lw_put_attr (out, "version", LW_SEASON_VERSION);
  lw_put_attr (out, "name", season->name);
  g_string_append (out, ">\n");

  put_place (out, season);
  lw_put_note (out, 1, "note", season->note);
  for (guint i = 0; i < season->n_profiles; i++)
    put_profile (out, season->profiles[i]);
  for (guint i = 0; i < season->n_weathers; i++)
    put_weather (out, season->weathers[i]);
  for (guint i = 0; i < season->n_batches; i++)
    lw_write_batch (out, season->batches[i]);
  lw_write_lessons (out, season);

  lw_put_end (out, 0, "season");
  *length = out->len;

  return g_string_free (out, FALSE);
}
