/* Reading a batch's logs, and what in its steps follows them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/reader.h"

#include <math.h>
#include <string.h>

#include "season/gate.h"
#include "season/log-points.h"
#include "season/text.h"

static void
tell_points (LwReader     *reader,
             xmlNode      *node,
             LwPointsFault fault,
             guint         point)
{
  static const struct { const char *what, *remedy; } faults[] = {
    [LW_POINTS_MANY] = { N_ ("one more than a log can hold"), N_ ("Leave out points on the line between others.") },
    [LW_POINTS_ODD] = { N_ ("a time without a temperature"), N_ ("Write “seconds temperature”, point after point.") },
    [LW_POINTS_WORD] = { N_ ("not a number"), N_ ("Write digits with a point: 12.5, not 12,5.") },
    [LW_POINTS_RANGE] = { N_ ("out of range"), N_ ("Times are 0 to 2592000 s, temperatures -50 to 600 °C.") },
    [LW_POINTS_ORDER] = { N_ ("not after the one before it"), N_ ("Sort the points by time, each time once.") },
  };

  if (fault == LW_POINTS_NONE)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Write “seconds temperature”, point after point."),
                    _ ("The curve has no points."));
  else if (fault != LW_POINTS_RIGHT)
    /* Translators: number of the point, and what is wrong with it */
    lw_reader_tell (reader, lw_gate_line (node), _ (faults[fault].remedy), _ ("Point %u of the curve: %s."), point,
                    _ (faults[fault].what));
}

static void
take_in_log (LwReader *reader,
             xmlNode  *node,
             LwElement element,
             gpointer  into)
{
  enum { OF, HEADING, WITHIN };
  LwLog *log = into;
  LwValue values[LW_MAX_ATTRS];
  g_autoptr (GArray) time_s = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) temp_c = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (xmlChar) text = xmlNodeListGetString (node->doc, node->children, 1);
  LwPointsFault fault;
  guint point;

  lw_reader_attrs (reader, node, LW_E_CURVE, values);
  fault = lw_points_parse (text != NULL ? (const char *) text : "", time_s, temp_c, &point);
  tell_points (reader, node, fault, point);
  if (temp_c->len > 0)
    lw_log_add_curve (log, (LwLogOf) MAX (values[OF].word, 0), values[HEADING].text, values[WITHIN].number,
                      (const double *) (gpointer) time_s->data, (const double *) (gpointer) temp_c->data, temp_c->len);
}

static guint
count (LwReader      *reader,
       xmlNode       *node,
       const char    *name,
       const LwValue *value)
{
  if (value->given && value->number != floor (value->number))
    lw_reader_tell (reader, lw_gate_line (node), _ ("Write it without a fraction."),
                    _ ("“%s” is not a whole number."), name);

  /* One that was told to be out of range is none. */
  return value->number >= 0 && value->number <= G_MAXINT ? (guint) value->number : 0;
}

LwBatchLog
lw_read_log (LwReader *reader,
             xmlNode  *node,
             int       step)
{
  enum { ID, NAME, MINUTE, ROWS, LEFT_OUT, FIRST, LAST };
  LwValue values[LW_MAX_ATTRS];
  LwLog *log;

  lw_reader_attrs (reader, node, LW_E_LOG, values);
  log = lw_log_new (lw_value_text (&values[ID]), lw_value_text (&values[NAME]));
  log->rows = count (reader, node, "rows", &values[ROWS]);
  log->left_out = count (reader, node, "left-out", &values[LEFT_OUT]);
  log->first_line = count (reader, node, "first-line", &values[FIRST]);
  log->last_line = count (reader, node, "last-line", &values[LAST]);
  lw_reader_children (reader, node, LW_E_LOG, take_in_log, log);

  return (LwBatchLog) { log, step, values[MINUTE].number };
}

static void
check_followed (LwReader      *reader,
                xmlNode       *node,
                const LwBatch *batch,
                const LwStep  *step,
                LwLogOf        of)
{
  const LwBatchLog *at = lw_batch_log (batch, step->log[of]);
  g_autofree char *quoted = NULL;
  gboolean of_plan;

  if (step->log[of] == NULL || (at != NULL && lw_log_curve (at->log, of) != NULL))
    return;

  of_plan = strcmp ((const char *) node->parent->name, lw_shape (LW_E_PLAN)->name) == 0;
  quoted = lw_reader_quote (step->log[of]);
  if (at == NULL)
    lw_reader_tell (reader, lw_gate_line (node),
                    of_plan ? _ ("Add it to the plan, or name one that is there.")
                            : _ ("Add it to the batch, or name one that is there."),
                    of_plan ? _ ("The plan has no log with the id “%s”.")
                            : _ ("The batch has no log with the id “%s”."), quoted);
  else
    lw_reader_tell (reader, lw_gate_line (node), _ ("Name a log that has one."),
                    _ ("The log “%s” has no curve of “%s”."), quoted, lw_log_of_id (of));
}

void
lw_read_check_logs (LwReader      *reader,
                    xmlNode       *node,
                    const LwBatch *batch)
{
  guint step = 0;

  for (guint i = 0; i < batch->n_logs; i++)
    if (lw_batch_log (batch, batch->logs[i].log->id) != &batch->logs[i])
      {
        g_autofree char *quoted = lw_reader_quote (batch->logs[i].log->id);

        lw_reader_tell (reader, lw_gate_line (node), _ ("Give one of them another id."),
                        strcmp ((const char *) node->name, lw_shape (LW_E_PLAN)->name) == 0
                          ? _ ("The plan has more than one log with the id “%s”.")
                          : _ ("The batch has more than one log with the id “%s”."), quoted);
      }

  for (xmlNode *child = node->children; child != NULL && step < batch->n_steps; child = child->next)
    if (child->type == XML_ELEMENT_NODE && strcmp ((const char *) child->name, "step") == 0)
      {
        for (guint of = 0; of < LW_N_LOG_OF; of++)
          check_followed (reader, child, batch, &batch->steps[step], (LwLogOf) of);
        step++;
      }
}
