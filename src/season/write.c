/* Writing the document: one element per line, attributes in a fixed order, numbers
 * as short as they can be, so that the same season is always the same bytes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/document.h"

#include <math.h>

#include "season/notation.h"

/* What XML cannot hold, such as a control character, becomes the replacement character. */
static gboolean
is_xml (gunichar c)
{
  return c >= 0x20 ? c != 0xfffe && c != 0xffff : c == '\t' || c == '\n' || c == '\r';
}

/* A line break would be read as a blank in an attribute, a return as a line break anywhere. */
static gboolean
must_escape (gunichar c,
             gboolean in_attribute)
{
  if (in_attribute && (c == '"' || c == '\t' || c == '\n'))
    return TRUE;

  return c == '&' || c == '<' || c == '>' || c == '\r';
}

static void
put_escaped (GString *out,
             gunichar c)
{
  static const struct
  {
    gunichar c;
    const char *name;
  } names[] = { { '&', "&amp;" }, { '<', "&lt;" }, { '>', "&gt;" }, { '"', "&quot;" } };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (names[i].c == c)
      {
        g_string_append (out, names[i].name);
        return;
      }

  g_string_append_printf (out, "&#%u;", c);
}

static void
put_text (GString    *out,
          const char *text,
          gboolean    in_attribute)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (must_escape (c, in_attribute))
        put_escaped (out, c);
      else
        g_string_append_unichar (out, is_xml (c) ? c : 0xfffd);
    }
}

static gboolean
is_empty (const char *text)
{
  return text == NULL || *text == '\0';
}

static void
put_attr (GString    *out,
          const char *name,
          const char *text)
{
  g_string_append_printf (out, " %s=\"", name);
  put_text (out, text, TRUE);
  g_string_append_c (out, '"');
}

static void
put_optional (GString    *out,
              const char *name,
              const char *text)
{
  if (!is_empty (text))
    put_attr (out, name, text);
}

static void
put_number (GString    *out,
            const char *name,
            double      value)
{
  g_autofree char *text = lw_number_text (value);

  put_attr (out, name, text);
}

static void
put_time (GString    *out,
          const char *name,
          gint64      when_s)
{
  g_autofree char *text = lw_time_text (when_s);

  put_attr (out, name, text);
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

static void
put_note (GString    *out,
          int         depth,
          const char *note)
{
  if (is_empty (note))
    return;

  put_start (out, depth, "note");
  g_string_append_c (out, '>');
  put_text (out, note, FALSE);
  put_end (out, 0, "note");
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
      put_number (out, fields[i].symbol, lw_law_get (&profile->law, i));
  g_string_append (out, "/>\n");
}

static void
put_part (GString      *out,
          const char   *name,
          const LwPart *part)
{
  put_start (out, 2, "part");
  put_attr (out, "name", name);
  put_number (out, "share", part->share);
  put_number (out, "exposure", part->exposure);
  put_number (out, "area", part->area);
  put_number (out, "cuticle", part->cuticle);
  put_number (out, "ruptured", part->ruptured);
  g_string_append (out, "/>\n");
}

static void
put_profile (GString         *out,
             const LwProfile *profile)
{
  put_start (out, 1, "leaf");
  put_attr (out, "id", profile->id);
  put_attr (out, "name", profile->name);
  put_number (out, "fresh-moisture-pct", profile->fresh_moisture_pct);
  put_number (out, "green", profile->fresh_green);
  g_string_append (out, ">\n");

  put_note (out, 2, profile->note);
  put_law (out, profile);
  for (guint i = 0; i < profile->n_parts; i++)
    put_part (out, profile->part_names[i], &profile->parts[i]);

  put_end (out, 1, "leaf");
}

static void
put_hour (GString      *out,
          const LwHour *hour)
{
  put_start (out, 2, "hour");
  put_number (out, "temp-c", hour->temp_c);
  put_number (out, "humidity-pct", hour->humidity_pct);
  put_number (out, "sun-w-m2", hour->sun_w_m2);
  put_number (out, "wind-m-s", hour->wind_m_s);
  g_string_append (out, "/>\n");
}

static void
put_weather (GString         *out,
             const LwWeather *weather)
{
  put_start (out, 1, "weather");
  put_attr (out, "id", weather->id);
  put_attr (out, "name", weather->name);
  put_time (out, "start", weather->start_s);
  g_string_append (out, ">\n");

  put_note (out, 2, weather->note);
  for (guint i = 0; i < weather->n_hours; i++)
    put_hour (out, &weather->hours[i]);

  put_end (out, 1, "weather");
}

static void
put_aim (GString     *out,
         int          depth,
         const LwAim *aim)
{
  put_start (out, depth, "aim");
  put_attr (out, "of", lw_quantity_row (aim->of)->id);
  if (aim->low != -INFINITY)
    put_number (out, "low", aim->low);
  if (aim->high != INFINITY)
    put_number (out, "high", aim->high);
  if (aim->weight != 1)
    put_number (out, "weight", aim->weight);
  g_string_append (out, "/>\n");
}

static void
put_weigh_in (GString         *out,
              const LwWeighIn *weigh_in)
{
  put_start (out, 3, "weigh-in");
  put_number (out, "minute", weigh_in->minute);
  put_attr (out, "of", lw_measure_row (weigh_in->of)->id);
  put_number (out, "value", weigh_in->value);
  put_number (out, "sd", weigh_in->sd);
  if (weigh_in->tare_kg != 0)
    put_number (out, "tare-kg", weigh_in->tare_kg);

  if (is_empty (weigh_in->note))
    {
      g_string_append (out, "/>\n");
      return;
    }

  g_string_append_c (out, '>');
  put_text (out, weigh_in->note, FALSE);
  put_end (out, 0, "weigh-in");
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
        put_number (out, lw_setting_row (setting)->id, lw_step_get (step, setting));
    }
}

static void
put_step (GString      *out,
          const LwStep *step)
{
  put_start (out, 2, "step");
  put_attr (out, "kind", lw_kind_row (step->kind)->id);
  put_settings (out, step);
  if (is_empty (step->note) && step->n_aims == 0 && step->n_weigh_ins == 0)
    {
      g_string_append (out, "/>\n");
      return;
    }

  g_string_append (out, ">\n");
  put_note (out, 3, step->note);
  for (guint i = 0; i < step->n_aims; i++)
    put_aim (out, 3, &step->aims[i]);
  for (guint i = 0; i < step->n_weigh_ins; i++)
    put_weigh_in (out, &step->weigh_ins[i]);
  put_end (out, 2, "step");
}

static void
put_batch (GString       *out,
           const LwBatch *batch)
{
  put_start (out, 1, "batch");
  put_attr (out, "name", batch->name);
  put_optional (out, "tea", batch->tea);
  put_time (out, "start", batch->when_s);
  put_attr (out, "state", batch->made ? "made" : "planned");
  put_attr (out, "leaf", batch->leaf);
  put_optional (out, "weather", batch->weather);
  put_number (out, "fresh-kg", batch->fresh_kg);
  if (!isnan (batch->fresh_moisture_pct))
    put_number (out, "fresh-moisture-pct", batch->fresh_moisture_pct);
  g_string_append (out, ">\n");

  put_note (out, 2, batch->note);
  for (guint i = 0; i < batch->n_steps; i++)
    put_step (out, &batch->steps[i]);
  for (guint i = 0; i < batch->n_aims; i++)
    put_aim (out, 2, &batch->aims[i]);

  put_end (out, 1, "batch");
}

static void
put_place (GString        *out,
           const LwSeason *season)
{
  put_start (out, 1, "place");
  put_optional (out, "name", season->place);
  put_number (out, "altitude-m", season->altitude_m);
  put_number (out, "latitude-deg", season->latitude_deg);
  g_string_append (out, "/>\n");
}

char *
lw_document_write (const LwSeason *season,
                   gsize          *length)
{
  GString *out = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");

  put_start (out, 0, "season");
  put_attr (out, "xmlns", LW_SEASON_NS);
  put_attr (out, "version", LW_SEASON_VERSION);
  put_attr (out, "name", season->name);
  g_string_append (out, ">\n");

  put_place (out, season);
  put_note (out, 1, season->note);
  for (guint i = 0; i < season->n_profiles; i++)
    put_profile (out, season->profiles[i]);
  for (guint i = 0; i < season->n_weathers; i++)
    put_weather (out, season->weathers[i]);
  for (guint i = 0; i < season->n_batches; i++)
    put_batch (out, season->batches[i]);

  put_end (out, 0, "season");
  *length = out->len;

  return g_string_free (out, FALSE);
}
