/* Writing the document: one element per line, attributes in a fixed order, numbers
 * as short as they can be, so that the same season is always the same bytes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/document.h"

#include <math.h>

#include "season/correction.h"
#include "season/escape.h"
#include "season/notation.h"
#include "season/put.h"
#include "season/write-lesson.h"
#include "season/write-log.h"

static gboolean
is_empty (const char *text)
{
  return text == NULL || *text == '\0';
}

static void
put_time (GString    *out,
          const char *name,
          gint64      when_s)
{
  g_autofree char *text = lw_time_text (when_s);

  lw_put_attr (out, name, text);
}

static void
put_start (GString    *out,
           int         depth,
           const char *name)
{
  g_string_append_printf (out, "%*s<%s", 2 * depth, "", name);
}

static void
put_end (GString    *out,
         int         depth,
         const char *name)
{
  g_string_append_printf (out, "%*s</%s>\n", 2 * depth, "", name);
}

/* A note or a sign. */
static void
put_note (GString    *out,
          int         depth,
          const char *name,
          const char *note)
{
  if (is_empty (note))
    return;

  put_start (out, depth, name);
  g_string_append_c (out, '>');
  lw_escape_append (out, note, FALSE);
  put_end (out, 0, name);
}

static void
put_law (GString         *out,
         const LwProfile *profile)
{
  const LwLawField *fields = lw_law_fields ();

  if (profile->given == 0)
    return;

  put_start (out, 2, "law");
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
  put_start (out, 2, "part");
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
  put_start (out, 1, "leaf");
  lw_put_attr (out, "id", profile->id);
  lw_put_attr (out, "name", profile->name);
  lw_put_number (out, "fresh-moisture-pct", profile->fresh_moisture_pct);
  lw_put_number (out, "green", profile->fresh_green);
  g_string_append (out, ">\n");

  put_note (out, 2, "note", profile->note);
  put_law (out, profile);
  for (guint i = 0; i < profile->n_parts; i++)
    put_part (out, profile->part_names[i], &profile->parts[i]);

  put_end (out, 1, "leaf");
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
  put_start (out, 2, name);
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
  put_start (out, 1, "weather");
  lw_put_attr (out, "id", weather->id);
  lw_put_attr (out, "name", weather->name);
  if (weather->form == LW_WEATHER_HOURS)
    put_time (out, "start", weather->start_s);
  g_string_append (out, ">\n");

  put_note (out, 2, "note", weather->note);
  for (guint i = 0; i < weather->n_hours; i++)
    put_columns (out, weather->form == LW_WEATHER_HOURS ? "hour" : "constant", hour_columns,
                 G_N_ELEMENTS (hour_columns), &weather->hours[i]);
  if (weather->form == LW_WEATHER_DAY)
    put_columns (out, "day", day_columns, G_N_ELEMENTS (day_columns), &weather->day);

  put_end (out, 1, "weather");
}

/* The end of an element that holds nothing but what the maker says of it. */
static void
put_said (GString    *out,
          const char *name,
          const char *note)
{
  if (is_empty (note))
    {
      g_string_append (out, "/>\n");
      return;
    }

  g_string_append_c (out, '>');
  lw_escape_append (out, note, FALSE);
  put_end (out, 0, name);
}

static void
put_aim (GString     *out,
         int          depth,
         const LwAim *aim)
{
  put_start (out, depth, "aim");
  lw_put_attr (out, "of", lw_quantity_row (aim->of)->id);
  if (aim->low != -INFINITY)
    lw_put_number (out, "low", aim->low);
  if (aim->high != INFINITY)
    lw_put_number (out, "high", aim->high);
  if (aim->weight != 1)
    lw_put_number (out, "weight", aim->weight);
  put_said (out, "aim", aim->note);
}

static void
put_weigh_in (GString         *out,
              const LwWeighIn *weigh_in)
{
  put_start (out, 3, "weigh-in");
  lw_put_number (out, "minute", weigh_in->minute);
  lw_put_attr (out, "of", lw_measure_row (weigh_in->of)->id);
  if (weigh_in->of != LW_NOTED)
    {
      lw_put_number (out, "value", weigh_in->value);
      lw_put_number (out, "sd", weigh_in->sd);
    }
  if (weigh_in->tare_kg != 0)
    lw_put_number (out, "tare-kg", weigh_in->tare_kg);

  put_said (out, "weigh-in", weigh_in->note);
}

static void
put_correction (GString            *out,
                const LwCorrection *correction)
{
  put_start (out, 3, "correction");
  lw_put_number (out, "minute", correction->minute);
  if (correction->fresh_points != 0)
    lw_put_number (out, "fresh-moisture-points", correction->fresh_points);
  g_string_append (out, ">\n");

  for (guint i = 0; i < correction->jump->n_parts; i++)
    {
      put_start (out, 4, "shift");
      for (guint k = 0; k < LW_N_STATE; k++)
        {
          const LwShiftRow *row = &lw_shift_rows ()[k];
          double value = *(const double *) ((const char *) &correction->jump->shifts[i] + row->offset);

          if (value != 0)
            lw_put_number (out, row->id, value);
        }
      g_string_append (out, "/>\n");
    }
  put_end (out, 3, "correction");
}

static void
put_settings (GString      *out,
              const LwStep *step)
{
  const LwKindRow *row = lw_kind_row (step->kind);

  for (guint i = 0; i < row->n_settings; i++)
    {
      LwSetting setting = row->settings[i].setting;

      if (setting == LW_SET_MINUTES || lw_step_is_given (step, setting))
        lw_put_number (out, lw_setting_row (setting)->id, lw_step_get (step, setting));
    }
  lw_put_optional (out, "wall-log", step->log[LW_LOG_WALL]);
  lw_put_optional (out, "air-log", step->log[LW_LOG_AIR]);
}

static void
put_step (GString       *out,
          const LwBatch *batch,
          guint          at)
{
  const LwStep *step = &batch->steps[at];
  const LwCorrection *correction = lw_correction_of (batch, at);

  put_start (out, 2, "step");
  lw_put_attr (out, "kind", lw_kind_row (step->kind)->id);
  put_settings (out, step);
  if (is_empty (step->note) && is_empty (step->sign) && step->n_aims == 0 && step->n_weigh_ins == 0 && correction == NULL
      && !lw_write_has_logs (batch, (int) at))
    {
      g_string_append (out, "/>\n");
      return;
    }

  g_string_append (out, ">\n");
  put_note (out, 3, "note", step->note);
  put_note (out, 3, "sign", step->sign);
  for (guint i = 0; i < step->n_aims; i++)
    put_aim (out, 3, &step->aims[i]);
  for (guint i = 0; i < step->n_weigh_ins; i++)
    put_weigh_in (out, &step->weigh_ins[i]);
  if (correction != NULL)
    put_correction (out, correction);
  lw_write_logs (out, 3, batch, (int) at);
  put_end (out, 2, "step");
}

static void
put_batch (GString       *out,
           const LwBatch *batch)
{
  put_start (out, 1, "batch");
  lw_put_attr (out, "name", batch->name);
  lw_put_optional (out, "tea", batch->tea);
  put_time (out, "start", batch->when_s);
  lw_put_attr (out, "state", batch->made ? "made" : "planned");
  lw_put_attr (out, "leaf", batch->leaf);
  lw_put_optional (out, "weather", batch->weather);
  lw_put_number (out, "fresh-kg", batch->fresh_kg);
  if (!isnan (batch->fresh_moisture_pct))
    lw_put_number (out, "fresh-moisture-pct", batch->fresh_moisture_pct);
  g_string_append (out, ">\n");

  put_note (out, 2, "note", batch->note);
  for (guint i = 0; i < batch->n_steps; i++)
    put_step (out, batch, i);
  for (guint i = 0; i < batch->n_aims; i++)
    put_aim (out, 2, &batch->aims[i]);
  lw_write_logs (out, 2, batch, -1);

  put_end (out, 1, "batch");
}

static void
put_place (GString        *out,
           const LwSeason *season)
{
  put_start (out, 1, "place");
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

  put_start (out, 0, "season");
  lw_put_attr (out, "xmlns", LW_SEASON_NS);
  lw_put_attr (out, "version", LW_SEASON_VERSION);
  lw_put_attr (out, "name", season->name);
  g_string_append (out, ">\n");

  put_place (out, season);
  put_note (out, 1, "note", season->note);
  for (guint i = 0; i < season->n_profiles; i++)
    put_profile (out, season->profiles[i]);
  for (guint i = 0; i < season->n_weathers; i++)
    put_weather (out, season->weathers[i]);
  for (guint i = 0; i < season->n_batches; i++)
    put_batch (out, season->batches[i]);
  lw_write_lessons (out, season);

  put_end (out, 0, "season");
  *length = out->len;

  return g_string_free (out, FALSE);
}
