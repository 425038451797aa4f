/* The table that the window copies and the command line writes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/knock-csv.h"

#include <math.h>

#include "season/csv.h"

static void
append_knock (GString       *csv,
              const LwBatch *batch,
              const LwKnock *knock)
{
  const LwStep *step = &batch->steps[knock->handle.step];
  const LwSettingRow *row = lw_setting_row (knock->handle.setting);

  g_string_append_printf (csv, "%u,%s,%s,", knock->handle.step + 1, lw_kind_row (step->kind)->id, row->id);
  lw_csv_append_text (csv, row->unit);
  lw_csv_append_number (csv, lw_step_get (step, knock->handle.setting));
  lw_csv_append_number (csv, knock->notch);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    if (isnan (knock->effect[q]))
      g_string_append_c (csv, ',');
    else
      lw_csv_append_number (csv, knock->effect[q]);
  g_string_append_c (csv, '\n');
}

char *
lw_knock_csv (const LwBatch *batch,
              const GArray  *knocks)
{
  GString *csv = g_string_new ("step,kind,setting,unit,value,notch");

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    g_string_append_printf (csv, ",%s", lw_quantity_row (q)->id);
  g_string_append_c (csv, '\n');
  for (guint i = 0; i < knocks->len; i++)
    append_knock (csv, batch, &g_array_index (knocks, LwKnock, i));

  return g_string_free (csv, FALSE);
}
