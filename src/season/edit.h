/* Edits: functions from a season to the next one, and the history that holds
 * them for undo and redo. A drag previews with the same functions and pushes once. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* A setting of a step, and what it is to be. */
typedef struct
{
  guint step;
  LwSetting setting;
  double value;
} LwChange;

/* Each returns (transfer full) a new season; indices must be in range. */
LwSeason   *lw_edit_set          (const LwSeason *season,
                                  guint           batch,
                                  guint           step,
                                  LwSetting       setting,
                                  double          value);
LwSeason   *lw_edit_set_all      (const LwSeason *season,
                                  guint           batch,
                                  const LwChange *changes,
                                  guint           n);
/* What to look for in the step; NULL or "": nothing. */
LwSeason   *lw_edit_set_sign     (const LwSeason *season,
                                  guint           batch,
                                  guint           step,
                                  const char     *sign);
LwSeason   *lw_edit_unset        (const LwSeason *season,
                                  guint           batch,
                                  guint           step,
                                  LwSetting       setting);
LwSeason   *lw_edit_add_step     (const LwSeason *season,
                                  guint           batch,
                                  guint           at,
                                  LwKind          kind);
LwSeason   *lw_edit_remove_step  (const LwSeason *season,
                                  guint           batch,
                                  guint           step);
LwSeason   *lw_edit_move_step    (const LwSeason *season,
                                  guint           batch,
                                  guint           from,
                                  guint           to);
/* The step is of another kind, whose time and leading setting begin anew; what else both kinds have, aims, note and
 * weigh-ins stay; its sign goes. */
LwSeason   *lw_edit_set_kind     (const LwSeason *season,
                                  guint           batch,
                                  guint           step,
                                  LwKind          kind);
/* In the place of any other aim at the same outcome there; `aim.note` is copied. `step` -1: the finished tea. */
LwSeason   *lw_edit_put_aim      (const LwSeason *season,
                                  guint           batch,
                                  int             step,
                                  LwAim           aim);
LwSeason   *lw_edit_remove_aim   (const LwSeason *season,
                                  guint           batch,
                                  int             step,
                                  LwQuantity      of);
/* The batch is to be this tea, and the finished tea's aims are these (copied). */
LwSeason   *lw_edit_take_tea     (const LwSeason *season,
                                  guint           batch,
                                  const char     *tea,
                                  const LwAim    *aims,
                                  guint           n);
/* A planned copy of `batch` under a name not yet used, after it, without weigh-ins. */
LwSeason   *lw_edit_repeat_batch (const LwSeason *season,
                                  guint           batch);
/* The batch, which has a plan, as it was planned: a batch of its own after it, under a name not yet used. */
LwSeason   *lw_edit_add_planned  (const LwSeason *season,
                                  guint           batch);
LwSeason   *lw_edit_remove_batch (const LwSeason *season,
                                  guint           batch);
LwSeason   *lw_edit_rename_batch (const LwSeason *season,
                                  guint           batch,
                                  const char     *name);

/* Takes over the lesson, in the place of the one at `at`, or, -1, after all. Its name is no other's, its batches are there. */
LwSeason   *lw_edit_put_lesson   (const LwSeason *season,
                                  int             at,
                                  LwLesson       *lesson);
LwSeason   *lw_edit_remove_lesson (const LwSeason *season,
                                   guint           at);

/* Takes over the log, whose id no other of the batch has; and removes one, so that nothing follows it. */
LwSeason   *lw_edit_add_log      (const LwSeason *season,
                                  guint           batch,
                                  LwBatchLog      log);
LwSeason   *lw_edit_remove_log   (const LwSeason *season,
                                  guint           batch,
                                  const char     *id);
/* The step's air or wall follows the log, which has such a curve; NULL: what is set. A setting that is set by hand
 * no longer follows. */
LwSeason   *lw_edit_follow_log   (const LwSeason *season,
                                  guint           batch,
                                  guint           step,
                                  LwSetting       setting,
                                  const char     *id);

/* Takes over the weather, in the place of one with the same id or after all. */
LwSeason   *lw_edit_add_weather  (const LwSeason *season,
                                  LwWeather      *weather);
/* `profile` (transfer full) takes the place of the one with its id, for every batch of that leaf. */
LwSeason   *lw_edit_put_profile  (const LwSeason *season,
                                  LwProfile      *profile);
/* The batch's leaf once more under an `id` and a name that no other has; the batch is of that one. */
LwSeason   *lw_edit_add_leaf     (const LwSeason *season,
                                  guint           batch,
                                  const char     *id,
                                  const char     *name);
/* `ids` has an entry for each batch: the leaf it is to be of, or NULL: that it has. */
LwSeason   *lw_edit_set_leaves   (const LwSeason *season,
                                  const char *const *ids);
/* Takes over the correction, the only one of the batch. */
LwSeason   *lw_edit_correct      (const LwSeason *season,
                                  guint           batch,
                                  guint           step,
                                  LwCorrection   *correction);
LwSeason   *lw_edit_uncorrect    (const LwSeason *season,
                                  guint           batch);
/* NAN: the profile's. */
LwSeason   *lw_edit_set_fresh_moisture (const LwSeason *season,
                                        guint           batch,
                                        double          moisture_pct);
/* `id` NULL: none; else it must be there. */
LwSeason   *lw_edit_set_batch_weather (const LwSeason *season,
                                       guint           batch,
                                       const char     *id);

/* Whether `value` may be set; else `error` says the range. */
gboolean    lw_edit_check        (LwKind          kind,
                                  LwSetting       setting,
                                  double          value,
                                  GError        **error);

/* A season to start from: one batch, the starting leaf. */
LwSeason   *lw_edit_new_season   (gint64          when_s);

typedef struct _LwHistory LwHistory;

/* Starts at `season`, which counts as saved. */
LwHistory  *lw_history_new        (LwSeason        *season);
void        lw_history_free       (LwHistory       *history);
LwSeason   *lw_history_now        (const LwHistory *history); /* (transfer none) */

/* Makes `season` the present; what was undone is gone. `label`: what was done, translated. */
void        lw_history_push       (LwHistory       *history,
                                   LwSeason        *season,
                                   const char      *label);
/* Puts `season` in the place of the present, as one with the edit that led there. FALSE, and nothing done,
 * where that would change what was saved or undo cannot follow: at the start, or before an undone edit. */
gboolean    lw_history_amend      (LwHistory       *history,
                                   LwSeason        *season);
/* FALSE if there is nothing to undo or redo. */
gboolean    lw_history_undo       (LwHistory       *history);
gboolean    lw_history_redo       (LwHistory       *history);
/* What would be undone or redone; NULL if nothing. */
const char *lw_history_undo_label (const LwHistory *history);
const char *lw_history_redo_label (const LwHistory *history);
void        lw_history_mark_saved (LwHistory       *history);
gboolean    lw_history_is_saved   (const LwHistory *history);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwHistory, lw_history_free)
