/* What a maker writes down: a season of batches, the leaf, the weather. Values,
 * not objects: once in a season's hands a batch, profile or weather never changes;
 * an edit makes a new season that shares all that stayed the same. Atomic
 * reference counts, so any thread may read. Units: those of the settings' rows. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/sky.h"
#include "leaf/state.h"
#include "season/kind.h"
#include "season/log.h"
#include "season/quantity.h"

/* A window on an outcome. An open side is -INFINITY or INFINITY. */
typedef struct
{
  LwQuantity of;
  double low;
  double high;
  double weight; /* > 0, usually 1 */
  char *note;    /* (nullable) where the window comes from */
} LwAim;

typedef struct
{
  double minute;  /* from the step's start */
  LwMeasure of;
  double value;   /* a weight includes `tare_kg` */
  double sd;      /* one standard deviation; of LW_NOTED it and the value are 0 */
  double tare_kg; /* 0 unless weighed in a vessel */
  char *note;     /* (nullable) but of LW_NOTED */
} LwWeighIn;

typedef struct _LwCorrection LwCorrection; /* season/correction.h */
typedef struct _LwLesson LwLesson;         /* season/lesson.h */

typedef struct
{
  LwKind kind;
  guint32 given;                /* bit per LwSetting that the maker has set; others start from the kind's row */
  double value[LW_N_SETTINGS];  /* where given */
  char *log[LW_N_LOG_OF];       /* (nullable) ids of logs of the batch that air and wall follow */
  char *note;                   /* (nullable) what was done or happened */
  char *sign;                   /* (nullable) what to look for, whenever the step is done */
  guint n_aims;
  LwAim *aims;                  /* at the step's end */
  guint n_weigh_ins;
  LwWeighIn *weigh_ins;
  LwCorrection *correction;     /* (nullable) what they corrected */
} LwStep;

/* A log of the batch, and when it begins. */
typedef struct
{
  LwLog *log;
  int step;         /* that it goes with; -1: with the batch, by the clock */
  double minute;    /* from that step's start, or the batch's */
} LwBatchLog;

typedef struct _LwBatch LwBatch;

struct _LwBatch
{
  char *name;       /* unique in the season, never empty */
  char *tea;        /* kind of tea, (nullable) */
  gint64 when_s;    /* start by the place's own clock: seconds since 1970-01-01T00:00 there */
  gboolean made;    /* else planned */
  char *leaf;       /* id of a profile in the season */
  char *weather;    /* id of a weather in the season, (nullable) */
  double fresh_kg;
  double fresh_moisture_pct; /* NAN: the profile's */
  char *note;       /* (nullable) */
  guint n_steps;
  LwStep *steps;
  guint n_aims;
  LwAim *aims;      /* of the finished tea */
  guint n_logs;
  LwBatchLog *logs;
  LwBatch *plan;    /* (nullable) start, fresh leaf, steps and aims as they stood when its run began; of no other use */
};

typedef struct
{
  char *id;
  char *name;
  double fresh_moisture_pct;
  double fresh_green;      /* green note of fresh leaf */
  guint64 given;           /* bit per row of lw_law_fields () that differs from the start */
  LwLaw law;
  guint n_parts;
  LwPart *parts;
  char **part_names;       /* n_parts strings */
  char *note;              /* (nullable) */
} LwProfile;

typedef struct
{
  double temp_c;
  double humidity_pct;
  double sun_w_m2;  /* NAN: that of a clear day, through the clouds */
  double wind_m_s;
  double cloud_pct; /* where `sun_w_m2` is NAN: of the sky */
  double rain_mm;   /* in the hour that begins here; 0 or NAN: none */
} LwHour;

/* A day that is like every other: the temperature goes from its low to its high and back. */
typedef struct
{
  double low_c;
  double low_hour;     /* 0..24, not that of the high */
  double high_c;
  double high_hour;
  double humidity_pct; /* all day; NAN: of the dew point */
  double dew_point_c;  /* all day, where `humidity_pct` is NAN */
  double cloud_pct;
  double wind_m_s;
} LwDay;

typedef enum
{
  LW_WEATHER_HOURS,
  LW_WEATHER_CONSTANT,
  LW_WEATHER_DAY,
} LwWeatherForm;

typedef struct
{
  char *id;
  char *name;
  LwWeatherForm form;
  gint64 start_s;   /* of the first hour, by the place's own clock, as LwBatch.when_s */
  guint n_hours;    /* constant: 1; day: 0 */
  LwHour *hours;
  LwDay day;
  char *note;       /* (nullable) */
  LwSky *sky;       /* made from these */
} LwWeather;

typedef struct
{
  char *name;
  char *place;      /* (nullable) */
  double altitude_m;
  double latitude_deg;
  char *note;       /* (nullable) */
  guint n_profiles;
  LwProfile **profiles;
  guint n_weathers;
  LwWeather **weathers;
  guint n_batches;
  LwBatch **batches;
  guint n_lessons;
  LwLesson **lessons;
} LwSeason;

/* Steps are plain values inside a batch. */
LwStep     lw_step_new          (LwKind           kind);
LwStep     lw_step_copy         (const LwStep    *step);
void       lw_step_clear        (LwStep          *step);

/* The setting in force: the given one or the kind's start. The kind must have it. */
double     lw_step_get          (const LwStep    *step,
                                 LwSetting        setting);
gboolean   lw_step_is_given     (const LwStep    *step,
                                 LwSetting        setting);
void       lw_step_set          (LwStep          *step,
                                 LwSetting        setting,
                                 double           value);
void       lw_step_unset        (LwStep          *step,
                                 LwSetting        setting);

/* A batch of one's own to fill or change, before a season takes it. */
LwBatch   *lw_batch_new         (const char      *name);
LwBatch   *lw_batch_copy        (const LwBatch   *batch);
LwBatch   *lw_batch_ref         (LwBatch         *batch);

/* Takes from a batch what only its making gave it: state, weigh-ins, corrections, the plan, and logs that no step
 * follows. */
void       lw_batch_forget_made (LwBatch         *batch);

/* (transfer full) (nullable) the batch as it was planned, of its leaf and under its weather; NULL without a plan. */
LwBatch   *lw_batch_as_planned  (const LwBatch   *batch);
void       lw_batch_unref       (LwBatch         *batch);

/* Inserts at `at` <= n_steps and takes the step's contents. */
void       lw_batch_insert_step (LwBatch         *batch,
                                 guint            at,
                                 LwStep           step);
void       lw_batch_remove_step (LwBatch         *batch,
                                 guint            at);

/* Moves the step at `from` so that it is then at `to`. */
void       lw_batch_move_step   (LwBatch         *batch,
                                 guint            from,
                                 guint            to);
/* Takes over `aim.note`. `step` -1: the finished tea. */
void       lw_batch_add_aim     (LwBatch         *batch,
                                 int              step,
                                 LwAim            aim);
/* The aim at an outcome there, (nullable); the last where there is more than one. */
const LwAim *lw_batch_aim       (const LwBatch   *batch,
                                 int              step,
                                 LwQuantity       of);
/* Removes every aim at that outcome there. */
void       lw_batch_remove_aim  (LwBatch         *batch,
                                 int              step,
                                 LwQuantity       of);
/* Lists of aims, copied and cleared with their notes. */
LwAim     *lw_aims_copy         (const LwAim     *aims,
                                 guint            n);
void       lw_aims_clear        (LwAim          **aims,
                                 guint           *n);
/* Whether the lists say the same in the same order, notes included. */
gboolean   lw_aims_same         (const LwAim     *a,
                                 guint            n_a,
                                 const LwAim     *b,
                                 guint            n_b);
/* Takes over `weigh_in.note`. */
void       lw_batch_add_weigh_in (LwBatch        *batch,
                                  guint           step,
                                  LwWeighIn       weigh_in);

/* The log that a setting follows, by id; NULL: none. In a batch it must be there. */
const char *lw_step_log         (const LwStep    *step,
                                 LwSetting        setting);
void       lw_step_set_log      (LwStep          *step,
                                 LwSetting        setting,
                                 const char      *id);

/* When a step begins, minutes from the batch's start. */
double     lw_batch_begin_minute (const LwBatch  *batch,
                                  guint           step);

/* A log by id, NULL if there is none; and when it begins, minutes from the batch's start. */
const LwBatchLog *lw_batch_log  (const LwBatch   *batch,
                                 const char      *id);
double     lw_batch_log_minute  (const LwBatch   *batch,
                                 const LwBatchLog *at);
/* What a step's setting follows, and its time at the step's start; NULL if it follows none. */
const LwFollowed *lw_batch_followed (const LwBatch *batch,
                                     guint        step,
                                     LwSetting    setting,
                                     double      *from_s);
/* The same if it followed that log. */
const LwFollowed *lw_batch_would_follow (const LwBatch *batch,
                                         guint        step,
                                         LwSetting    setting,
                                         const char  *id,
                                         double      *from_s);
/* Whether a step of the batch follows that log. */
gboolean   lw_batch_follows     (const LwBatch   *batch,
                                 const char      *id);
/* Takes over `log.log`, whose id no other has. */
void       lw_batch_add_log     (LwBatch         *batch,
                                 LwBatchLog       log);
/* And nothing follows it any more. */
void       lw_batch_remove_log  (LwBatch         *batch,
                                 const char      *id);
/* For batch.c: steps come and go, logs stay at their moments. */
void       lw_batch_logs_inserted (LwBatch       *batch,
                                   guint          at);
void       lw_batch_logs_removing (LwBatch       *batch,
                                   guint          at);
void       lw_batch_logs_moved  (LwBatch         *batch,
                                 guint            from,
                                 guint            to);

/* A profile with the starting law and no parts. */
LwProfile *lw_profile_new       (const char      *id,
                                 const char      *name);
void       lw_profile_set_law   (LwProfile       *profile,
                                 guint            field,
                                 double           value);
void       lw_profile_add_part  (LwProfile       *profile,
                                 const char      *name,
                                 LwPart           part);
/* One's own to change; without its parts. */
LwProfile *lw_profile_copy_bare (const LwProfile *profile);
/* One's own to change, with its parts. */
LwProfile *lw_profile_copy      (const LwProfile *profile);
/* The large-leaf start: sheltered, surface, torn, stem. */
LwProfile *lw_profile_start     (void);
LwProfile *lw_profile_ref       (LwProfile       *profile);
void       lw_profile_unref     (LwProfile       *profile);

/* Takes a copy of `n` >= 1 hours. */
LwWeather *lw_weather_new       (const char      *id,
                                 const char      *name,
                                 gint64           start_s,
                                 const LwHour    *hours,
                                 guint            n);
LwWeather *lw_weather_new_constant (const char   *id,
                                    const char   *name,
                                    const LwHour *hour); /* copied; rain and measured sun have no place in it */
LwWeather *lw_weather_new_day   (const char      *id,
                                 const char      *name,
                                 const LwDay     *day); /* copied */
LwWeather *lw_weather_ref       (LwWeather       *weather);
void       lw_weather_unref     (LwWeather       *weather);

/* An empty season; lw_season_copy shares the entries. Change only a season nobody else holds. */
LwSeason  *lw_season_new        (const char      *name);
LwSeason  *lw_season_copy       (const LwSeason  *season);
LwSeason  *lw_season_ref        (LwSeason        *season);
void       lw_season_unref      (LwSeason        *season);

/* These take over the entry. `at` <= n_batches; put replaces the batch there. */
void       lw_season_insert_batch (LwSeason      *season,
                                   guint          at,
                                   LwBatch       *batch);
void       lw_season_put_batch    (LwSeason      *season,
                                   guint          at,
                                   LwBatch       *batch);
/* (transfer full) a copy, and in `batch` that batch as one's own to change, already in the copy's hands. */
LwSeason  *lw_season_own_batch    (const LwSeason *season,
                                   guint          at,
                                   LwBatch      **batch);
void       lw_season_remove_batch (LwSeason      *season,
                                   guint          at);
void       lw_season_add_profile  (LwSeason      *season,
                                   LwProfile     *profile);
void       lw_season_add_weather  (LwSeason      *season,
                                   LwWeather     *weather);
/* In the place of the one with the same id, or else at the end. */
void       lw_season_put_profile  (LwSeason      *season,
                                   LwProfile     *profile);
void       lw_season_put_weather  (LwSeason      *season,
                                   LwWeather     *weather);

/* By id or name; NULL or -1 if there is none. */
LwProfile *lw_season_profile      (const LwSeason *season,
                                   const char     *id);
LwWeather *lw_season_weather      (const LwSeason *season,
                                   const char     *id);
int        lw_season_batch        (const LwSeason *season,
                                   const char     *name);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwBatch, lw_batch_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwProfile, lw_profile_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwWeather, lw_weather_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSeason, lw_season_unref)
