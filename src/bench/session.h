/* The edit session: one open season, the batch in hand, what is being dragged, the
 * computed track, the reading line. Widgets watch it and call it; it knows no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "draw/scale.h"
#include "leaf/track.h"
#include "season/edit.h"

#define LW_TYPE_SESSION (lw_session_get_type ())
G_DECLARE_FINAL_TYPE (LwSession, lw_session, LW, SESSION, GObject)

/* Signals:
 * "season": the document changed: batches, name, file, saved or not, undo and redo.
 * "track": the batch in hand, its steps or its curves changed.
 * "stale": a new result is due; somebody with a frame clock calls lw_session_compute.
 * "reading": the reading line moved.
 * "step": another step is in hand, or the result is looked at elsewhere.
 * "locks": an outcome was locked or let go.
 * "opened": another season was taken up; comes after its "season".
 * "said": a search for what holds or reaches the aims came to an end; lw_session_said. */
LwSession      *lw_session_new          (void);

/* Takes up a season as the document. `path` NULL: not in a file yet. */
void            lw_session_open         (LwSession   *self,
                                         LwSeason    *season,
                                         const char  *path);
const char     *lw_session_path         (LwSession   *self);
/* (nullable) the season as it was last read from its file or written to it. */
LwSeason       *lw_session_filed        (LwSession   *self);

/* (transfer none) the season as it is shown: the preview while something is dragged. */
LwSeason       *lw_session_season       (LwSession   *self);

/* Writes the file; on success the present counts as saved. */
gboolean        lw_session_save         (LwSession   *self,
                                         const char  *path,
                                         GError     **error);
gboolean        lw_session_is_saved     (LwSession   *self);

/* The batch in hand; -1 if the season has none. */
int             lw_session_batch_index  (LwSession   *self);
const LwBatch  *lw_session_batch        (LwSession   *self);
void            lw_session_choose       (LwSession   *self,
                                         guint        batch);

/* Makes `season` (transfer full) the present under `label`. Edits with the same `key`, not NULL, one
 * after the other become one: for steps by key. */
void            lw_session_edit         (LwSession   *self,
                                         LwSeason    *season,
                                         const char  *label,
                                         const char  *key);
/* The same for what was shown whole before it was taken: what is locked moves nothing after it. */
void            lw_session_put          (LwSession   *self,
                                         LwSeason    *season,
                                         const char  *label);
/* As lw_session_edit, and then takes up that batch. */
void            lw_session_edit_batch   (LwSession   *self,
                                         LwSeason    *season,
                                         const char  *label,
                                         guint        batch);
void            lw_session_undo         (LwSession   *self);
void            lw_session_redo         (LwSession   *self);
const char     *lw_session_undo_label   (LwSession   *self);
const char     *lw_session_redo_label   (LwSession   *self);

/* A drag: begin, any number of previews (transfer full, made from lw_session_base), then commit with a
 * label, or cancel. */
void            lw_session_drag_begin   (LwSession   *self);
void            lw_session_preview      (LwSession   *self,
                                         LwSeason    *season);
void            lw_session_drag_commit  (LwSession   *self,
                                         const char  *label);
void            lw_session_drag_cancel  (LwSession   *self);
gboolean        lw_session_is_dragging  (LwSession   *self);
/* (transfer none) the season that previews are made from. */
LwSeason       *lw_session_base         (LwSession   *self);

/* Locks an outcome at the end of `step` (-1: the finished tea) where it stands now, or lets it go. While anything is
 * locked, the settings from an edited step on move by the least that keeps it, but for the edited and the pinned ones.
 * Locks and pins belong to the batch in hand and end with it. */
void            lw_session_lock         (LwSession   *self,
                                         int          step,
                                         LwQuantity   of,
                                         gboolean     locked);
/* FALSE if it is not locked. `value` (nullable): where it is held. */
gboolean        lw_session_locked       (LwSession   *self,
                                         int          step,
                                         LwQuantity   of,
                                         double      *value);
guint           lw_session_n_locks      (LwSession   *self);
/* Lets go all locks. */
void            lw_session_unlock       (LwSession   *self);
void            lw_session_pin          (LwSession   *self,
                                         guint        step,
                                         LwSetting    setting,
                                         gboolean     pinned);
gboolean        lw_session_pinned       (LwSession   *self,
                                         guint        step,
                                         LwSetting    setting);
/* The first so many steps of the batch in hand have passed or are under way: nothing of them moves by itself. */
void            lw_session_pass         (LwSession   *self,
                                         guint        n_steps);
/* Whether a search must leave it alone: it is pinned, or of a step that has passed. */
gboolean        lw_session_stays        (LwSession   *self,
                                         guint        step,
                                         LwSetting    setting);

/* Searches for settings that meet the batch's aims, with what is locked; one edit when found. FALSE if there is
 * nothing to aim at. */
gboolean        lw_session_reach        (LwSession   *self);
/* Whether a search is under way. */
gboolean        lw_session_seeks        (LwSession   *self);
/* What the last search came to, translated; NULL if there was none since the last edit. */
const char     *lw_session_said         (LwSession   *self);

/* (nullable) the season that the ghost is of. */
const LwSeason *lw_session_before       (LwSession   *self);

/* Computes what is due; cheap if nothing is. */
void            lw_session_compute      (LwSession   *self);

/* The present track and the one before the last change; NULL if there is none. */
const LwTrack  *lw_session_track        (LwSession   *self);
const LwTrack  *lw_session_ghost        (LwSession   *self);
/* Step times of the ghost, minutes. */
const double   *lw_session_ghost_minutes (LwSession  *self,
                                          guint      *n);
/* What could not be computed, in words; NULL if all was. */
const char     *lw_session_trouble      (LwSession   *self);

/* The step in hand; -1: none. */
int             lw_session_step         (LwSession   *self);
void            lw_session_choose_step  (LwSession   *self,
                                         int          step);

/* Where the result is looked at: the end of the step in hand, or -1: the finished tea. At first the latter, whatever
 * is in hand; the last step leaves the finished tea, too. */
int             lw_session_place        (LwSession   *self);
gboolean        lw_session_looks_at_step (LwSession  *self);
void            lw_session_look_at_step (LwSession   *self,
                                         gboolean     at_step);

/* What `track` (nullable), the present one or the ghost, leaves of the batch in hand at the end of `place`, a step or -1:
 * the finished tea. FALSE where that is not computed. */
gboolean        lw_session_outcome      (LwSession     *self,
                                         const LwTrack *track,
                                         int            place,
                                         LwOutcome     *outcome);

/* The reading line; FALSE if it is off. */
gboolean        lw_session_reading      (LwSession   *self,
                                         guint       *step,
                                         double      *minute);
void            lw_session_read_at      (LwSession   *self,
                                         guint        step,
                                         double       minute);
void            lw_session_read_off     (LwSession   *self);

/* The columns on which blocks and panels are drawn; the board lays them out. */
LwScale        *lw_session_scale        (LwSession   *self);
