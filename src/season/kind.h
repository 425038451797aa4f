/* The kinds of step of the trade and their settings: what can be set, in which
 * unit and range, by which notch, and where it starts. Two tables, no logic. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* A setting keeps its unit everywhere in season/, draw/ and bench/: that of its row. */
typedef enum
{
  LW_SET_MINUTES,
  LW_SET_AIR_C,
  LW_SET_HUMIDITY_PCT,
  LW_SET_AIR_M_S,
  LW_SET_SPREAD_KG_M2,
  LW_SET_COVER_PCT,
  LW_SET_TURNING_PER_H,
  LW_SET_SUN_PCT,
  LW_SET_WALL_C,
  LW_SET_LOAD_KG,
  LW_SET_WALL_M2,
  LW_SET_WALL_W_M2K,
  LW_SET_TOUCH_S,
  LW_SET_TOUCH_PCT,
  LW_SET_HOT_AIR_PCT,
  LW_SET_TOSS_PCT,
  LW_SET_PRESS_KPA,
  LW_SET_STEAM_W_M2K,
} LwSetting;

#define LW_N_SETTINGS (LW_SET_STEAM_W_M2K + 1)

typedef struct
{
  const char *id;     /* attribute in the document, unit included: "wall-c" */
  const char *label;  /* N_() "wall" */
  const char *unit;   /* N_() for people: "°C", "" where it has none */
  const char *effect; /* N_() one line: what it does to the leaf */
  int digits;         /* after the point, on screen */
  double notch;       /* usual increment; for minutes see lw_snap_minutes */
} LwSettingRow;

typedef enum
{
  LW_KIND_WITHER,
  LW_KIND_TUMBLE,
  LW_KIND_FIX_PAN,
  LW_KIND_FIX_DRUM,
  LW_KIND_FIX_STEAM,
  LW_KIND_ROLL,
  LW_KIND_REST,
  LW_KIND_DRY_SUN,
  LW_KIND_DRY_AIR,
  LW_KIND_ROAST,
} LwKind;

#define LW_N_KINDS (LW_KIND_ROAST + 1)

/* One setting of one kind. */
typedef struct
{
  LwSetting setting;
  double start;       /* where it stands unless the maker says otherwise */
  double low;
  double high;
  gboolean weather;   /* follows the batch's weather, if it has one, while not given */
} LwKindSetting;

typedef struct
{
  const char *id;     /* in the document: "fix-pan" */
  const char *label;  /* N_() "fix in pan" */
  LwSetting leading;  /* the one drawn as the block's line */
  double line_low;    /* the range of that line, in the leading setting's unit */
  double line_high;
  guint n_settings;
  const LwKindSetting *settings; /* the first is always minutes */
} LwKindRow;

const LwSettingRow  *lw_setting_row   (LwSetting   setting);
const LwKindRow     *lw_kind_row      (LwKind      kind);

/* By document id; -1 if there is none. */
int                  lw_setting_find  (const char *id);
int                  lw_kind_find     (const char *id);

/* What `kind` says of `setting`; NULL if that kind has no such setting. */
const LwKindSetting *lw_kind_setting  (LwKind      kind,
                                       LwSetting   setting);

/* The notch by which minutes move when they are near `minutes`: 30 s under 10 min,
 * 1 min under 1 h, 5 min under 6 h, 15 min above; `fine` is a tenth or 5 s. */
double               lw_minutes_notch (double      minutes,
                                       gboolean    fine);

/* `value` moved to the nearest notch of the setting and into the kind's range. */
double               lw_kind_snap     (LwKind      kind,
                                       LwSetting   setting,
                                       double      value,
                                       gboolean    fine);
