/* Which batches lie over the one in hand, of this season and of others. Each is computed once, in a thread, and stays
 * as it is while anything is dragged. One object for each session, remembered as long as it lives. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/laid.h"
#include "bench/session.h"

#define LW_TYPE_OVERLAYS (lw_overlays_get_type ())
G_DECLARE_FINAL_TYPE (LwOverlays, lw_overlays, LW, OVERLAYS, GObject)

/* (transfer none) those of the session. Signal "changed": others lie over, or one of them was computed. */
LwOverlays *lw_overlays_of      (LwSession  *session);

/* Lays a batch over, or takes it off. `path` NULL: of the season in hand. One of another file that lies over already is
 * laid anew if the file was read again. */
void        lw_overlays_lay     (LwOverlays *self,
                                 LwSeason   *season,
                                 const char *path,
                                 guint       at,
                                 gboolean    on);
/* (transfer none) (nullable) that batch, if it is chosen. */
LwLaid     *lw_overlays_get     (LwOverlays *self,
                                 const char *path,
                                 const char *name);
void        lw_overlays_clear   (LwOverlays *self);
/* The file was read again: its batches lie over as they are now, by their names. Those that are not there any more stay
 * as they were; returns how many. */
guint       lw_overlays_read_anew (LwOverlays *self,
                                 LwSeason   *season,
                                 const char *path);

/* How many are chosen, the batch in hand among them if it is. */
guint       lw_overlays_chosen  (LwOverlays *self);

/* Those that lie over: all that are chosen, but not the batch in hand over itself. (transfer none) */
guint       lw_overlays_n       (LwOverlays *self);
LwLaid     *lw_overlays_nth     (LwOverlays *self,
                                 guint       i);

/* Matches them to the batch in hand as it is now, if it has other kinds of step; cheap else. Returns a number that is
 * another whenever lines lie elsewhere. */
guint       lw_overlays_stamp   (LwOverlays *self);

/* Minutes from the begin of the batch in hand to its own by the time of day, as lw_compare_begins. */
double      lw_overlays_begins  (LwOverlays *self,
                                 LwLaid     *laid);
