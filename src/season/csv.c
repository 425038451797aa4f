/* Curves as comma-separated text: one table of columns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/csv.h"

#include <string.h>

static const struct
{
  const char *name;
  gsize offset;
} columns[] = {
  { "moisture_wb_pct", offsetof (LwOutcome, moisture_wb_pct) },
  { "leaf_temp_c", offsetof (LwOutcome, leaf_temp_c) },
  { "enzyme_left_pct", offsetof (LwOutcome, enzyme_left_pct) },
  { "oxidation_pct", offsetof (LwOutcome, oxidation_pct) },
  { "rupture_pct", offsetof (LwOutcome, rupture_pct) },
  { "rupture_wilt_pct", offsetof (LwOutcome, rupture_wilt_pct) },
  { "rupture_heat_pct", offsetof (LwOutcome, rupture_heat_pct) },
  { "rupture_roll_pct", offsetof (LwOutcome, rupture_roll_pct) },
  { "roast_min", offsetof (LwOutcome, roast_min) },
  { "green_note", offsetof (LwOutcome, green_note) },
  { "broken_pct", offsetof (LwOutcome, broken_pct) },
  { "twist_pct", offsetof (LwOutcome, twist_pct) },
  { "kg_per_kg_fresh", offsetof (LwOutcome, kg_per_kg_fresh) },
};

void
lw_csv_append_text (GString    *to,
                    const char *text)
{
  if (strpbrk (text, ",\"\r\n") == NULL)
    {
      g_string_append (to, text);
      return;
    }

  g_string_append_c (to, '"');
  for (; *text != '\0'; text++)
    {
      if (*text == '"')
        g_string_append_c (to, '"');
      g_string_append_c (to, *text);
    }
  g_string_append_c (to, '"');
}

void
lw_csv_append_number (GString *to,
                      double   value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_c (to, ',');
  g_string_append (to, g_ascii_formatd (digits, sizeof digits, "%.9g", value));
}

void
lw_csv_append_header (GString *to)
{
  g_string_append (to, "batch,part,step,kind,minute");
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    g_string_append_printf (to, ",%s", columns[i].name);
  g_string_append_c (to, '\n');
}

static void
append_row (GString         *to,
            const LwBatch   *batch,
            const char      *part,
            guint            step,
            double           minute,
            const LwOutcome *outcome)
{
  lw_csv_append_text (to, batch->name);
  g_string_append_c (to, ',');
  lw_csv_append_text (to, part);
  g_string_append_printf (to, ",%u,%s", step + 1, lw_kind_row (batch->steps[step].kind)->id);
  lw_csv_append_number (to, minute);
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    lw_csv_append_number (to, *(const double *) ((const char *) outcome + columns[i].offset));
  g_string_append_c (to, '\n');
}

void
lw_csv_append_track (GString         *to,
                     const LwBatch   *batch,
                     const LwProfile *profile,
                     const LwTrack   *track,
                     LwCsvFlags       flags)
{
  double begin_s = 0;

  for (guint step = 0; step < track->n_steps; step++)
    {
      const LwSegment *segment = track->steps[step];
      /* A step begins as the one before ended: that moment has its row already. */
      guint first = flags & LW_CSV_ENDS ? segment->n - 1 : step == 0 ? 0 : 1;

      for (guint i = first; i < segment->n; i++)
        {
          double minute = (begin_s + segment->time_s[i]) / 60;
          LwOutcome outcome = lw_track_outcome (track, step, -1, i);

          append_row (to, batch, "mean", step, minute, &outcome);
          for (guint part = 0; flags & LW_CSV_PARTS && part < track->n_parts; part++)
            {
              outcome = lw_track_outcome (track, step, (int) part, i);
              append_row (to, batch, profile->part_names[part], step, minute, &outcome);
            }
        }
      begin_s += segment->duration_s;
    }
}
