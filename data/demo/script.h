/* The script of a season: what the makers of an invented garden did, day by day, as
 * plain tables. Whatever is zero ends a list. Units: those of the settings' rows. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "season/season.h"

#define DEMO_END (-1.0) /* the minute of a look at the end of its step */

typedef struct
{
  LwSetting setting;
  double value;
} DemoGiven;

typedef struct
{
  LwQuantity of;
  double low;
  double high;
} DemoAim;

/* When the makers weighed, measured or judged. */
typedef struct
{
  double minute;
  LwMeasure of;
  double tare_kg;
  const char *note;
} DemoLook;

typedef struct
{
  LwKind kind;
  double minutes; /* 0: no more steps */
  const char *note;
  const char *sign;
  DemoGiven given[8];
  DemoAim aims[4];
  DemoLook looks[7];
} DemoStep;

typedef struct
{
  const char *name;
  const char *tea;
  const char *leaf;
  const char *weather;
  const char *start;
  gboolean planned;
  double true_kg;       /* what truly lay on the mats; the noted weight scatters about it */
  double moisture_pct;  /* 0: the plot's */
  const char *note;
  DemoStep steps[14];
  DemoAim aims[4];
  const char *was_start;     /* NULL: it was made as planned */
  const DemoStep *was;       /* its steps as they were planned, of the plot's usual leaf */
} DemoBatch;

/* One day of an invented record. */
typedef struct
{
  double low_c;         /* at dawn */
  double high_c;        /* in the afternoon */
  double dew_c;         /* dew point at 18:00 */
  double cloud_am;      /* share of the sky */
  double cloud_pm;
  double wind_m_s;      /* mean of the day */
} DemoDay;

typedef struct
{
  const char *id;       /* NULL: no more records */
  const char *name;
  const char *note;
  const char *start;    /* midnight of the first day */
  guint n_days;
  const DemoDay *days;
} DemoRecord;

/* What is said or asked at a moment of the first batch. */
typedef struct
{
  guint step;           /* from 1; 0: no more moments */
  double minute;        /* or DEMO_END */
  guint ask;            /* which curve, from 1; 0: it is said */
  const char *text;
} DemoMoment;

typedef struct
{
  const char *name;
  const char *note;
  gboolean by_clock;
  LwQuantity curves[3];
  const char *shown[5];
  DemoMoment moments[8];
} DemoLesson;

typedef struct
{
  const char *file;
  const char *name;
  const char *note;
  guint32 seed;
  DemoRecord records[3];
  guint n_batches;
  const DemoBatch *batches;
  guint n_lessons;
  const DemoLesson *lessons;
} DemoSeason;

extern const DemoSeason demo_spring_2025;
extern const DemoSeason demo_spring_2026;
extern const DemoSeason demo_lessons;

/* Short hands for the tables. */
#define GIVEN(...) .given = { __VA_ARGS__ }
#define AIMS(...) .aims = { __VA_ARGS__ }
#define LOOKS(...) .looks = { __VA_ARGS__ }
#define SET(setting, value) { LW_SET_##setting, value }
#define AIM(of, low, high) { LW_##of, low, high }
#define AT(minute, of) { minute, LW_##of, 0, NULL }
#define AT_END(of) { DEMO_END, LW_##of, 0, NULL }
