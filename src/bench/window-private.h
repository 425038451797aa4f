/* What the window's files share: window.c shows it, and each window-NAME.c adds the actions of its name. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/board.h"
#include "bench/running.h"
#include "bench/window.h"
#include "season/stamp.h"

typedef struct _LwWindowDisk LwWindowDisk;

struct _LwWindow
{
  GtkApplicationWindow parent_instance;

  GtkWidget *title;
  GtkWidget *subtitle;
  GtkWidget *undo_button;
  GtkWidget *redo_button;
  GtkWidget *batch_button;
  GtkWidget *menu_button;
  GtkWidget *paned;
  GtkWidget *side_paned;
  GtkWidget *scrolled;
  GtkWidget *trouble;
  GtkWidget *status;
  GMenu *recent_menu;
  GMenu *leaf_menu;
  GMenu *weather_menu;
  GMenu *log_menu;
  GMenu *tea_menu;
  GMenu *panels_menu;

  LwSession *session;
  LwBoard *board;
  GtkWidget *side;
  GtkWidget *differences; /* (nullable) the window with the table */
  LwRunning *running;
  LwSeason *teas;        /* (nullable) the kinds of tea that ship */
  GSettings *settings;   /* (nullable) */
  LwWindowDisk *disk;
};

/* Says what was done or what can be done, at the window's foot. */
void lw_window_say         (LwWindow   *self,
                            const char *text);

/* Whether an action of the window can be done. */
void lw_window_enable      (LwWindow   *self,
                            const char *action,
                            gboolean    enabled);

/* window-file.c */
void lw_window_add_file_actions  (LwWindow *self);

/* Calls `then` when nothing unsaved would be lost: at once, or after the question was answered. */
void lw_window_when_safe   (LwWindow   *self,
                            void      (*then) (LwWindow *self, gpointer data),
                            gpointer    data,
                            GDestroyNotify free_data);

/* Reads the season's file anew, with the same batch in hand; unsaved changes go. */
void lw_window_read_again  (LwWindow   *self);
/* Opens the file, whatever is unsaved; FALSE, and its problems told, if that cannot be. */
gboolean lw_window_open_now (LwWindow  *self,
                             const char *path);
/* Takes the batch of that name in hand; FALSE if there is none. */
gboolean lw_window_choose_batch (LwWindow  *self,
                                 const char *name);
/* Saves over whatever the file now holds. */
void lw_window_save_over   (LwWindow   *self);

/* window-recent.c */
void lw_window_refill_recent (LwWindow   *self);
/* Puts the file among them. */
void lw_window_note_recent   (LwWindow   *self,
                              const char *path);

/* window-disk.c; the session must be there. */
void   lw_window_add_disk   (LwWindow     *self);
void   lw_window_disk_free  (LwWindowDisk *disk);
/* The session's file was read when it held what `stamp` (transfer full, nullable) says, or has just been written. */
void   lw_window_disk_took  (LwWindow     *self,
                             LwStamp      *stamp);
void   lw_window_disk_wrote (LwWindow     *self);
/* As lw_stamp_check. */
LwDisk lw_window_disk_check (LwWindow     *self,
                             gboolean      thorough);

/* (transfer full) (nullable) why a save at `path` is to be asked about first: others wrote there, or the file was taken away.
 * `asked`: the name was agreed to. */
char  *lw_window_disk_reason (LwWindow    *self,
                              const char  *path,
                              gboolean     asked);

/* window-batch.c */
void lw_window_add_batch_actions (LwWindow *self);

/* window-leaf.c; the session must be there. */
void lw_window_add_leaf_actions (LwWindow *self);

/* window-guide.c */
void lw_window_add_guide_action (LwWindow *self);

/* window-find.c; the session must be there. */
void lw_window_add_find (LwWindow *self);

/* window-card.c; the session must be there. */
void lw_window_add_card_actions (LwWindow *self);

/* window-lesson.c; the session must be there. */
void lw_window_add_lesson_action (LwWindow *self);

/* window-side.c; the session must be there. */
void lw_window_add_side (LwWindow *self);

/* window-weather.c; the session must be there. */
void lw_window_add_weather_actions (LwWindow *self);

/* window-log.c; the session must be there. */
void lw_window_add_log_actions   (LwWindow *self);

/* window-tea.c; the session must be there. */
void lw_window_add_tea_actions   (LwWindow *self);

/* window-weigh.c; the board must be there. */
void lw_window_add_weigh_actions (LwWindow *self);

/* window-replan.c; the session must be there. */
void lw_window_add_replan_action (LwWindow *self);

/* window-run.c; the board must be there. */
void lw_window_add_run (LwWindow *self);

/* window-left.c; the running batch must be there. */
void lw_window_add_left (LwWindow *self);

/* window-logout.c; the session must be there. */
void lw_window_add_logout (LwWindow *self);

/* window-view.c; the board must be there. */
void lw_window_add_view_actions (LwWindow *self);

/* window-over.c; the session must be there. */
void lw_window_add_over_actions (LwWindow *self);
