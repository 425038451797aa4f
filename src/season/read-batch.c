/* Reading batches: their steps, aims and weigh-ins. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/reader.h"

#include <math.h>

#include "season/correction.h"
#include "season/gate.h"
#include "season/notation.h"
#include "season/text.h"

static LwAim
read_aim (LwReader *reader,
          xmlNode  *node)
{
  enum { OF, LOW, HIGH, WEIGHT };
  LwValue values[LW_MAX_ATTRS];
  LwAim aim = { .low = -INFINITY, .high = INFINITY, .weight = 1 };

  lw_reader_attrs (reader, node, LW_E_AIM, values);
  if (values[OF].given)
    aim.of = (LwQuantity) values[OF].word;
  if (values[LOW].given)
    aim.low = values[LOW].number;
  if (values[HIGH].given)
    aim.high = values[HIGH].number;
  if (values[WEIGHT].given)
    aim.weight = values[WEIGHT].number;
  aim.note = lw_reader_text (reader, node);

  if (values[OF].given && values[LOW].text == NULL && values[HIGH].text == NULL)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Add “low” or “high”, or both."),
                    _ ("The aim has neither a lower nor an upper side."));
  else if (!(aim.low < aim.high))
    lw_reader_tell (reader, lw_gate_line (node), _ ("Write the smaller number as “low”."),
                    _ ("The aim's lower side is not below its upper side."));

  return aim;
}

static void
read_weigh_in (LwReader *reader,
               xmlNode  *node,
               LwBatch  *batch,
               guint     step)
{
  enum { MINUTE, OF, VALUE, SD, TARE };
  LwValue values[LW_MAX_ATTRS];
  LwWeighIn weigh_in = { 0 };

  lw_reader_attrs (reader, node, LW_E_WEIGH_IN, values);
  weigh_in.minute = values[MINUTE].number;
  weigh_in.of = (LwMeasure) MAX (values[OF].word, 0);
  weigh_in.note = lw_reader_text (reader, node);
  if (weigh_in.of != LW_NOTED)
    {
      weigh_in.value = values[VALUE].number;
      weigh_in.sd = values[SD].number;
      weigh_in.tare_kg = values[TARE].number;
    }
  else if (weigh_in.note == NULL)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Write the note into the element, or remove it."),
                    _ ("The note is empty."));

  lw_batch_add_weigh_in (batch, step, weigh_in);
}

static void
take_shift (LwReader *reader,
            xmlNode  *node,
            LwElement element,
            gpointer  into)
{
  LwValue values[LW_MAX_ATTRS];
  LwState shift = { 0 };

  lw_reader_attrs (reader, node, LW_E_SHIFT, values);
  for (guint i = 0; i < LW_N_STATE; i++)
    *(double *) ((char *) &shift + lw_shift_rows ()[i].offset) = values[i].given ? values[i].number : 0;
  g_array_append_val ((GArray *) into, shift);
}

static void
read_correction (LwReader *reader,
                 xmlNode  *node,
                 LwBatch  *batch,
                 guint     step)
{
  enum { MINUTE, FRESH };
  LwValue values[LW_MAX_ATTRS];
  g_autoptr (GArray) shifts = g_array_new (FALSE, FALSE, sizeof (LwState));

  lw_reader_attrs (reader, node, LW_E_CORRECTION, values);
  lw_reader_children (reader, node, LW_E_CORRECTION, take_shift, shifts);
  lw_batch_set_correction (batch, step,
                           lw_correction_new (batch, step, values[MINUTE].given ? values[MINUTE].number : 0,
                                              values[FRESH].given ? values[FRESH].number : 0,
                                              (const LwState *) (gpointer) shifts->data, shifts->len));
}

static void
take_in_step (LwReader *reader,
              xmlNode  *node,
              LwElement element,
              gpointer  into)
{
  LwBatch *batch = into;
  guint last = batch->n_steps - 1;

  if (element == LW_E_AIM)
    lw_batch_add_aim (batch, (int) last, read_aim (reader, node));
  else if (element == LW_E_WEIGH_IN)
    read_weigh_in (reader, node, batch, last);
  else if (element == LW_E_CORRECTION)
    read_correction (reader, node, batch, last);
  else if (element == LW_E_LOG)
    lw_batch_add_log (batch, lw_read_log (reader, node, (int) last));
  else if (element == LW_E_SIGN)
    batch->steps[last].sign = lw_reader_note (reader, node, LW_E_SIGN, batch->steps[last].sign);
  else
    batch->steps[last].note = lw_reader_note (reader, node, LW_E_NOTE, batch->steps[last].note);
}

static void
read_settings (LwStep        *step,
               const LwValue *values)
{
  static const LwSetting following[] = { LW_SET_WALL_C, LW_SET_AIR_C };
  const LwKindRow *row = lw_kind_row (step->kind);
  guint at = row->n_settings;

  for (guint i = 0; i < row->n_settings; i++)
    if (values[i].given)
      lw_step_set (step, row->settings[i].setting, values[i].number);

  /* The logs stand after them. */
  for (guint i = 0; i < G_N_ELEMENTS (following); i++)
    if (lw_kind_setting (step->kind, following[i]) != NULL)
      {
        if (values[at].given)
          lw_step_set_log (step, following[i], values[at].text);
        at++;
      }
}

static void
read_step (LwReader *reader,
           xmlNode  *node,
           LwBatch  *batch)
{
  enum { KIND, SETTINGS };
  LwValue values[LW_MAX_ATTRS];
  LwStep step;

  lw_reader_attrs (reader, node, LW_E_STEP, values);
  step = lw_step_new ((LwKind) MAX (values[KIND].word, 0));
  if (values[KIND].given)
    read_settings (&step, &values[SETTINGS]);

  lw_batch_insert_step (batch, batch->n_steps, step);
  lw_reader_children (reader, node, LW_E_STEP, take_in_step, batch);
}

static void
take_in_batch (LwReader *reader,
               xmlNode  *node,
               LwElement element,
               gpointer  into);

static void
read_plan (LwReader *reader,
           xmlNode  *node,
           LwBatch  *batch)
{
  enum { START, KG, MOISTURE };
  LwValue values[LW_MAX_ATTRS];

  lw_reader_attrs (reader, node, LW_E_PLAN, values);
  g_clear_pointer (&batch->plan, lw_batch_unref);
  batch->plan = lw_batch_new (batch->name);
  batch->plan->when_s = values[START].time_s;
  batch->plan->fresh_kg = values[KG].number;
  if (values[MOISTURE].given)
    batch->plan->fresh_moisture_pct = values[MOISTURE].number;

  lw_reader_children (reader, node, LW_E_PLAN, take_in_batch, batch->plan);
  lw_read_check_logs (reader, node, batch->plan);
}

static void
take_in_batch (LwReader *reader,
               xmlNode  *node,
               LwElement element,
               gpointer  into)
{
  LwBatch *batch = into;

  if (element == LW_E_STEP)
    read_step (reader, node, batch);
  else if (element == LW_E_AIM)
    lw_batch_add_aim (batch, -1, read_aim (reader, node));
  else if (element == LW_E_LOG)
    lw_batch_add_log (batch, lw_read_log (reader, node, -1));
  else if (element == LW_E_PLAN)
    read_plan (reader, node, batch);
  else
    batch->note = lw_reader_note (reader, node, LW_E_NOTE, batch->note);
}

LwBatch *
lw_read_batch (LwReader *reader,
               xmlNode  *node)
{
  enum { NAME, TEA, START, STATE, LEAF, WEATHER, KG, MOISTURE };
  LwValue values[LW_MAX_ATTRS];
  LwBatch *batch;

  lw_reader_attrs (reader, node, LW_E_BATCH, values);
  batch = lw_batch_new (lw_value_text (&values[NAME]));
  batch->tea = g_strdup (values[TEA].text);
  batch->when_s = values[START].time_s;
  batch->made = values[STATE].word == 1;
  g_free (batch->leaf);
  batch->leaf = g_strdup (values[LEAF].given ? values[LEAF].text : "");
  batch->weather = g_strdup (values[WEATHER].given ? values[WEATHER].text : NULL);
  batch->fresh_kg = values[KG].number;
  if (values[MOISTURE].given)
    batch->fresh_moisture_pct = values[MOISTURE].number;

  lw_reader_children (reader, node, LW_E_BATCH, take_in_batch, batch);
  lw_read_check_logs (reader, node, batch);

  return batch;
}
