/* The grammar of the season document in tables: which elements stand in which,
 * with which attributes, in which ranges. Reader, writer's order and schema follow it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef enum
{
  LW_E_SEASON,
  LW_E_PLACE,
  LW_E_NOTE,
  LW_E_LEAF,
  LW_E_LAW,
  LW_E_PART,
  LW_E_WEATHER,
  LW_E_CONSTANT,
  LW_E_DAY,
  LW_E_HOUR,
  LW_E_BATCH,
  LW_E_PLAN,
  LW_E_STEP,
  LW_E_SIGN,
  LW_E_AIM,
  LW_E_WEIGH_IN,
  LW_E_CORRECTION,
  LW_E_SHIFT,
  LW_E_LOG,
  LW_E_CURVE,
  LW_E_LESSON,
  LW_E_SHOW,
  LW_E_MOMENT,
} LwElement;

#define LW_N_ELEMENTS (LW_E_MOMENT + 1)

typedef enum
{
  LW_ATTR_TEXT,   /* 1 to LW_MAX_TEXT characters */
  LW_ATTR_ID,     /* lower-case letters, digits, hyphen; 1 to LW_MAX_ID */
  LW_ATTR_TIME,
  LW_ATTR_NUMBER,
  LW_ATTR_WORD,   /* one of a list */
} LwAttrType;

#define LW_MAX_ID 64
#define LW_ID_PATTERN "[a-z0-9\\-]{1,64}"

typedef struct
{
  const char *name;
  LwAttrType type;
  gboolean needed;
  double low;                       /* of a number */
  double high;
  const char *(*word) (guint i);    /* the i-th word, NULL past the last */
  gboolean instead;                 /* of the row before: one of the two is there, and only one */
} LwAttrRow;

typedef struct
{
  LwElement element;
  guint least;
  guint most;
} LwChildRow;

typedef struct
{
  const char *name;
  guint n_attrs;
  const LwAttrRow *attrs;
  guint n_children;
  const LwChildRow *children;       /* in the order in which they stand */
  gboolean text;                    /* holds text of at most LW_MAX_TEXT characters */
  gboolean points;                  /* holds points, as log-points.h says */
  int choice;                       /* the attribute whose word decides on more of them, -1: none */
  guint (*more) (int word,          /* appends those, returns how many */
                 LwAttrRow *rows);
} LwShape;

/* Room for the attributes of any element. */
#define LW_MAX_ATTRS 48

const LwShape *lw_shape       (LwElement element);

/* All attributes of `element` in their order, when its choice is `word` (-1: not known). */
guint          lw_shape_attrs (LwElement element,
                               int       word,
                               LwAttrRow rows[LW_MAX_ATTRS]);

/* The words of a lesson's curves, "first" and on, and of its time, "step" or "clock"; NULL past the last. */
const char    *lw_lesson_curve_word (guint i);
const char    *lw_lesson_time_word  (guint i);

/* The place of `text` in the row's list, -1 if it is not there. */
int            lw_attr_word   (const LwAttrRow *row,
                               const char      *text);
