/* The tables of the document's grammar. Ranges of settings, laws, outcomes and
 * measurements come from their own tables; those of the rest stand here. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/shape.h"

#include <string.h>

#include "season/correction.h"
#include "season/document.h"
#include "season/lesson.h"

G_STATIC_ASSERT (LW_N_LAW <= LW_MAX_ATTRS);
G_STATIC_ASSERT (LW_N_SETTINGS + 1 + LW_N_LOG_OF <= LW_MAX_ATTRS);

#define TEXT(name, needed) { name, LW_ATTR_TEXT, needed, 0, 0, NULL }
#define ID(name, needed) { name, LW_ATTR_ID, needed, 0, 0, NULL }
#define TIME(name, needed) { name, LW_ATTR_TIME, needed, 0, 0, NULL }
#define NUMBER(name, needed, low, high) { name, LW_ATTR_NUMBER, needed, low, high, NULL }
#define INSTEAD(name, low, high) { name, LW_ATTR_NUMBER, FALSE, low, high, NULL, TRUE }
#define WORD(name, word) { name, LW_ATTR_WORD, TRUE, 0, 0, word }

static const char *
version_word (guint i)
{
  return i == 0 ? LW_SEASON_VERSION : NULL;
}

static const char *
state_word (guint i)
{
  static const char *const words[] = { "planned", "made", NULL };

  return words[i];
}

static const char *
kind_word (guint i)
{
  return i < LW_N_KINDS ? lw_kind_row (i)->id : NULL;
}

static const char *
quantity_word (guint i)
{
  return i < LW_N_QUANTITIES ? lw_quantity_row (i)->id : NULL;
}

static const char *
measure_word (guint i)
{
  return i < LW_N_MEASURES ? lw_measure_row (i)->id : NULL;
}

static const char *
log_of_word (guint i)
{
  return lw_log_of_id ((LwLogOf) i);
}

const char *
lw_lesson_curve_word (guint i)
{
  static const char *const words[LW_LESSON_CURVES + 1] = { "first", "second", "third", NULL };

  return words[i];
}

const char *
lw_lesson_time_word (guint i)
{
  static const char *const words[] = { "step", "clock", NULL };

  return words[i];
}

static guint
law_rows (int        word,
          LwAttrRow *rows)
{
  const LwLawField *fields = lw_law_fields ();

  for (guint i = 0; i < LW_N_LAW; i++)
    rows[i] = (LwAttrRow) NUMBER (fields[i].symbol, FALSE, fields[i].low, fields[i].high);

  return LW_N_LAW;
}

/* The logs that settings of the kind can follow, in the order of LwLogOf. */
static guint
log_rows (LwKind     kind,
          LwAttrRow *rows)
{
  guint n = 0;

  if (lw_kind_setting (kind, LW_SET_WALL_C) != NULL)
    rows[n++] = (LwAttrRow) ID ("wall-log", FALSE);
  if (lw_kind_setting (kind, LW_SET_AIR_C) != NULL)
    rows[n++] = (LwAttrRow) ID ("air-log", FALSE);

  return n;
}

static guint
step_rows (int        kind,
           LwAttrRow *rows)
{
  const LwKindRow *row = lw_kind_row ((LwKind) kind);

  for (guint i = 0; i < row->n_settings; i++)
    {
      const LwKindSetting *at = &row->settings[i];

      rows[i] = (LwAttrRow) NUMBER (lw_setting_row (at->setting)->id, at->setting == LW_SET_MINUTES,
                                    at->low, at->high);
    }

  return row->n_settings + log_rows ((LwKind) kind, rows + row->n_settings);
}

static guint
aim_rows (int        quantity,
          LwAttrRow *rows)
{
  const LwQuantityRow *row = lw_quantity_row ((LwQuantity) quantity);

  rows[0] = (LwAttrRow) NUMBER ("low", FALSE, row->low, row->high);
  rows[1] = (LwAttrRow) NUMBER ("high", FALSE, row->low, row->high);
  rows[2] = (LwAttrRow) NUMBER ("weight", FALSE, 0.001, 1000);

  return 3;
}

static guint
weigh_in_rows (int        measure,
               LwAttrRow *rows)
{
  const LwMeasureRow *row = lw_measure_row ((LwMeasure) measure);

  if (measure == LW_NOTED)
    return 0;

  rows[0] = (LwAttrRow) NUMBER ("value", TRUE, row->low, row->high);
  rows[1] = (LwAttrRow) NUMBER ("sd", TRUE, LW_LEAST_SD, row->high);
  rows[2] = (LwAttrRow) NUMBER ("tare-kg", FALSE, row->low, row->high);

  return measure == LW_WEIGHED_KG ? 3 : 2;
}

static guint
shift_rows (int        word,
            LwAttrRow *rows)
{
  for (guint i = 0; i < LW_N_STATE; i++)
    {
      const LwShiftRow *row = &lw_shift_rows ()[i];

      rows[i] = (LwAttrRow) NUMBER (row->id, FALSE, row->low, row->high);
    }

  return LW_N_STATE;
}

#define LONGEST 4320 /* minutes that any step may last */

static const LwAttrRow season_attrs[] = { WORD ("version", version_word), TEXT ("name", TRUE) };
static const LwAttrRow place_attrs[] = {
  TEXT ("name", FALSE),
  NUMBER ("altitude-m", TRUE, -500, 9000),
  NUMBER ("latitude-deg", TRUE, -90, 90),
};
static const LwAttrRow leaf_attrs[] = {
  ID ("id", TRUE),
  TEXT ("name", TRUE),
  NUMBER ("fresh-moisture-pct", TRUE, 50, 92),
  NUMBER ("green", TRUE, 0, 10),
};
static const LwAttrRow part_attrs[] = {
  TEXT ("name", TRUE),
  NUMBER ("share", TRUE, 1e-6, 1),
  NUMBER ("exposure", TRUE, 0.01, 10),
  NUMBER ("area", TRUE, 0.01, 10),
  NUMBER ("cuticle", TRUE, 0.01, 100),
  NUMBER ("ruptured", TRUE, 0, 0.99),
};
static const LwAttrRow weather_attrs[] = {
  ID ("id", TRUE),
  TEXT ("name", TRUE),
  TIME ("start", FALSE),
};
static const LwAttrRow constant_attrs[] = {
  NUMBER ("temp-c", TRUE, -40, 60),
  NUMBER ("humidity-pct", TRUE, 1, 100),
  NUMBER ("cloud-pct", TRUE, 0, 100),
  NUMBER ("wind-m-s", TRUE, 0, 60),
};
static const LwAttrRow day_attrs[] = {
  NUMBER ("low-c", TRUE, -40, 60),
  NUMBER ("low-hour", TRUE, 0, 24),
  NUMBER ("high-c", TRUE, -40, 60),
  NUMBER ("high-hour", TRUE, 0, 24),
  NUMBER ("humidity-pct", FALSE, 1, 100),
  INSTEAD ("dew-point-c", -60, 40),
  NUMBER ("cloud-pct", TRUE, 0, 100),
  NUMBER ("wind-m-s", TRUE, 0, 60),
};
static const LwAttrRow hour_attrs[] = {
  NUMBER ("temp-c", TRUE, -40, 60),
  NUMBER ("humidity-pct", TRUE, 1, 100),
  NUMBER ("sun-w-m2", FALSE, 0, 1500),
  INSTEAD ("cloud-pct", 0, 100),
  NUMBER ("wind-m-s", TRUE, 0, 60),
  NUMBER ("rain-mm", FALSE, 0, 500),
};
static const LwAttrRow batch_attrs[] = {
  TEXT ("name", TRUE),
  TEXT ("tea", FALSE),
  TIME ("start", TRUE),
  WORD ("state", state_word),
  ID ("leaf", TRUE),
  ID ("weather", FALSE),
  NUMBER ("fresh-kg", TRUE, 0.001, 1e5),
  NUMBER ("fresh-moisture-pct", FALSE, 50, 92),
};
static const LwAttrRow plan_attrs[] = {
  TIME ("start", TRUE),
  NUMBER ("fresh-kg", TRUE, 0.001, 1e5),
  NUMBER ("fresh-moisture-pct", FALSE, 50, 92),
};
static const LwAttrRow step_attrs[] = { WORD ("kind", kind_word) };
static const LwAttrRow aim_attrs[] = { WORD ("of", quantity_word) };
static const LwAttrRow weigh_in_attrs[] = {
  NUMBER ("minute", TRUE, 0, LONGEST),
  WORD ("of", measure_word),
};
static const LwAttrRow correction_attrs[] = {
  NUMBER ("minute", TRUE, 0, LONGEST),
  NUMBER ("fresh-moisture-points", FALSE, -LW_MOST_FRESH_POINTS, LW_MOST_FRESH_POINTS),
};

static const LwAttrRow log_attrs[] = {
  ID ("id", TRUE),
  TEXT ("name", TRUE),
  NUMBER ("minute", TRUE, -LW_LOG_MOST_MINUTES, LW_LOG_MOST_MINUTES),
  NUMBER ("rows", TRUE, 1, LW_LOG_MOST_ROWS),
  NUMBER ("left-out", TRUE, 0, LW_LOG_MOST_ROWS - 1),
  NUMBER ("first-line", TRUE, 1, 10 * LW_LOG_MOST_ROWS),
  NUMBER ("last-line", TRUE, 1, 10 * LW_LOG_MOST_ROWS),
};
static const LwAttrRow curve_attrs[] = {
  WORD ("of", log_of_word),
  TEXT ("heading", FALSE),
  NUMBER ("within-c", TRUE, 0, LW_LOG_HIGH_C - LW_LOG_LOW_C),
};

static const LwAttrRow lesson_attrs[] = {
  TEXT ("name", TRUE),
  WORD ("time", lw_lesson_time_word),
  WORD ("first", quantity_word),
  WORD ("second", quantity_word),
  WORD ("third", quantity_word),
};
static const LwAttrRow show_attrs[] = { TEXT ("batch", TRUE) };
static const LwAttrRow moment_attrs[] = {
  NUMBER ("step", TRUE, 1, LW_MAX_STEPS),
  NUMBER ("minute", TRUE, 0, LONGEST),
  { "ask", LW_ATTR_WORD, FALSE, 0, 0, lw_lesson_curve_word },
};

static const LwChildRow season_children[] = {
  { LW_E_PLACE, 1, 1 },
  { LW_E_NOTE, 0, 1 },
  { LW_E_LEAF, 0, LW_MAX_PROFILES },
  { LW_E_WEATHER, 0, LW_MAX_WEATHERS },
  { LW_E_BATCH, 0, LW_MAX_BATCHES },
  { LW_E_LESSON, 0, LW_MAX_LESSONS },
};
static const LwChildRow leaf_children[] = {
  { LW_E_NOTE, 0, 1 },
  { LW_E_LAW, 0, 1 },
  { LW_E_PART, 1, LW_MAX_PARTS },
};
static const LwChildRow weather_children[] = {
  { LW_E_NOTE, 0, 1 },
  { LW_E_CONSTANT, 0, 1 },
  { LW_E_DAY, 0, 1 },
  { LW_E_HOUR, 0, LW_MAX_HOURS },
};
static const LwChildRow batch_children[] = {
  { LW_E_NOTE, 0, 1 },
  { LW_E_STEP, 0, LW_MAX_STEPS },
  { LW_E_AIM, 0, LW_MAX_AIMS },
  { LW_E_LOG, 0, LW_MAX_LOGS },
  { LW_E_PLAN, 0, 1 },
};
static const LwChildRow plan_children[] = {
  { LW_E_STEP, 0, LW_MAX_STEPS },
  { LW_E_AIM, 0, LW_MAX_AIMS },
  { LW_E_LOG, 0, LW_MAX_LOGS },
};
static const LwChildRow step_children[] = {
  { LW_E_NOTE, 0, 1 },
  { LW_E_SIGN, 0, 1 },
  { LW_E_AIM, 0, LW_MAX_AIMS },
  { LW_E_WEIGH_IN, 0, LW_MAX_WEIGH_INS },
  { LW_E_CORRECTION, 0, 1 },
  { LW_E_LOG, 0, LW_MAX_LOGS },
};
static const LwChildRow correction_children[] = {
  { LW_E_SHIFT, 1, LW_MAX_PARTS },
};
static const LwChildRow log_children[] = { { LW_E_CURVE, 1, LW_MAX_CURVES } };
static const LwChildRow lesson_children[] = {
  { LW_E_NOTE, 0, 1 },
  { LW_E_SHOW, 1, LW_LESSON_MOST_SHOWN },
  { LW_E_MOMENT, 0, LW_MAX_MOMENTS },
};

#define ATTRS(table) .n_attrs = G_N_ELEMENTS (table), .attrs = table
#define CHILDREN(table) .n_children = G_N_ELEMENTS (table), .children = table

static const LwShape shapes[LW_N_ELEMENTS] = {
  [LW_E_SEASON] = { "season", ATTRS (season_attrs), CHILDREN (season_children), .choice = -1 },
  [LW_E_PLACE] = { "place", ATTRS (place_attrs), .choice = -1 },
  [LW_E_NOTE] = { "note", .text = TRUE, .choice = -1 },
  [LW_E_LEAF] = { "leaf", ATTRS (leaf_attrs), CHILDREN (leaf_children), .choice = -1 },
  [LW_E_LAW] = { "law", .choice = -1, .more = law_rows },
  [LW_E_PART] = { "part", ATTRS (part_attrs), .choice = -1 },
  [LW_E_WEATHER] = { "weather", ATTRS (weather_attrs), CHILDREN (weather_children), .choice = -1 },
  [LW_E_CONSTANT] = { "constant", ATTRS (constant_attrs), .choice = -1 },
  [LW_E_DAY] = { "day", ATTRS (day_attrs), .choice = -1 },
  [LW_E_HOUR] = { "hour", ATTRS (hour_attrs), .choice = -1 },
  [LW_E_BATCH] = { "batch", ATTRS (batch_attrs), CHILDREN (batch_children), .choice = -1 },
  [LW_E_PLAN] = { "plan", ATTRS (plan_attrs), CHILDREN (plan_children), .choice = -1 },
  [LW_E_STEP] = { "step", ATTRS (step_attrs), CHILDREN (step_children), .choice = 0,
                  .more = step_rows },
  [LW_E_SIGN] = { "sign", .text = TRUE, .choice = -1 },
  [LW_E_AIM] = { "aim", ATTRS (aim_attrs), .text = TRUE, .choice = 0, .more = aim_rows },
  [LW_E_WEIGH_IN] = { "weigh-in", ATTRS (weigh_in_attrs), .text = TRUE, .choice = 1,
                      .more = weigh_in_rows },
  [LW_E_CORRECTION] = { "correction", ATTRS (correction_attrs), CHILDREN (correction_children), .choice = -1 },
  [LW_E_SHIFT] = { "shift", .choice = -1, .more = shift_rows },
  [LW_E_LOG] = { "log", ATTRS (log_attrs), CHILDREN (log_children), .choice = -1 },
  [LW_E_CURVE] = { "curve", ATTRS (curve_attrs), .points = TRUE, .choice = -1 },
  [LW_E_LESSON] = { "lesson", ATTRS (lesson_attrs), CHILDREN (lesson_children), .choice = -1 },
  [LW_E_SHOW] = { "show", ATTRS (show_attrs), .choice = -1 },
  [LW_E_MOMENT] = { "moment", ATTRS (moment_attrs), .text = TRUE, .choice = -1 },
};

const LwShape *
lw_shape (LwElement element)
{
  return &shapes[element];
}

guint
lw_shape_attrs (LwElement element,
                int       word,
                LwAttrRow rows[LW_MAX_ATTRS])
{
  const LwShape *shape = &shapes[element];
  guint n = shape->n_attrs;

  if (n > 0)
    memcpy (rows, shape->attrs, n * sizeof *rows);
  if (shape->more != NULL && (word >= 0 || shape->choice < 0))
    n += shape->more (word, rows + n);

  return n;
}

int
lw_attr_word (const LwAttrRow *row,
              const char      *text)
{
  for (guint i = 0; row->word (i) != NULL; i++)
    if (strcmp (row->word (i), text) == 0)
      return (int) i;

  return -1;
}
