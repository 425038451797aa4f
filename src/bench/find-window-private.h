/* What the files of the window share: find-window.c looks and opens, find-fields.c holds what is asked, find-columns.c
 * shows what is found. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/find-window.h"
#include "bench/finder.h"

typedef struct
{
  GtkWidget *window;
  GtkWidget *words;
  GtkWidget *place;    /* drop-down: this season, a folder */
  GtkWidget *folder;
  GtkWidget *choose;
  GtkWidget *leaf;
  GtkWidget *tea;
  GtkWidget *made;
  GtkWidget *from;
  GtkWidget *until;
  GtkWidget *outcome;
  GtkWidget *low;
  GtkWidget *high;
  GtkWidget *sort;
  GtkWidget *downwards;
  GtkWidget *list;
  GtkWidget *status;
  GtkWidget *stop;
  GtkWidget *problems;

  LwSession *session;
  LwFinder *finder;
  GtkSingleSelection *selection;
  LwFindChosen chosen;
  gpointer data;
  const char *wrong;   /* (nullable) why a field is passed over */
  int column;          /* the one that a heading's sorter was asked about */
  gboolean sorting;    /* the fields follow the headings, or the other way */
} LwFindWindow;

/* find-fields.c: the rows of fields; each asks anew when it changes. */
GtkWidget *lw_find_fields_new  (LwFindWindow *self);
/* Asks the finder for what the fields say. */
void       lw_find_fields_ask  (LwFindWindow *self);
gboolean   lw_find_in_folder   (LwFindWindow *self);

/* find-columns.c: the list in its scroller. */
GtkWidget *lw_find_columns_new (LwFindWindow *self);
/* (transfer full) names of what can be sorted by, ends with NULL; the how. */
GStrv      lw_find_sort_names  (void);
LwSort     lw_find_sort_of     (guint         column,
                                gboolean      downwards);
/* Shows at the headings what the fields say. */
void       lw_find_columns_show_sort (LwFindWindow *self,
                                      guint         column,
                                      gboolean      downwards);

/* find-window.c: looks where the fields say, as it is now. */
void       lw_find_window_look (LwFindWindow *self);
