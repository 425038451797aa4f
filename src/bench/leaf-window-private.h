/* What the leaf window's files share: leaf-window.c lays it out, checks and applies, leaf-fields.c makes its
 * fields and the table of parts, and reads them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/leaf-window.h"
#include "season/leaf-field.h"

typedef struct
{
  GtkWidget *name;
  GtkWidget *numbers[LW_N_PART_FIELDS];
  GtkWidget *remove;
} LwPartRow;

typedef struct
{
  LwSession *session;
  LwProfile *profile;    /* as it was */
  guint batch;
  GtkWidget *window;
  GtkWidget *name;
  GtkWidget *numbers[LW_PART_SHARE];
  GtkWidget *own;        /* whether the batch has a fresh moisture of its own */
  GtkWidget *own_number;
  GtkGrid *grid;         /* of parts; a row of titles, then a row for each of `parts` */
  GPtrArray *parts;      /* of LwPartRow */
  GtkWidget *add;
  GtkWidget *add_up;
  GtkWidget *refused;
  GtkWidget *apply;
} LwLeafWindow;

/* leaf-window.c: looks at all fields, tells what is wrong. */
void       lw_leaf_window_check (LwLeafWindow *self);

/* leaf-fields.c */
GtkWidget *lw_leaf_label        (const char   *text,
                                 const char   *css_class); /* (nullable) */
GtkWidget *lw_leaf_entry_new    (LwLeafWindow *self,
                                 int           width_chars);
GtkWidget *lw_leaf_number_new   (LwLeafWindow *self,
                                 LwLeafField   field,
                                 double        value);
/* Marks a field that is out of its range, if it counts. */
void       lw_leaf_show_fit     (GtkWidget    *entry,
                                 LwLeafField   field,
                                 gboolean      counts);
/* (transfer full) what a number means, and its range. */
char      *lw_leaf_meaning      (LwLeafField   field);
/* "share, part 2", for a screen reader; parts count from 0. */
void       lw_leaf_name_widget  (GtkWidget    *widget,
                                 const char   *what,
                                 guint         part);

/* The table of parts, filled from the profile. */
GtkWidget *lw_leaf_parts_new    (LwLeafWindow *self);
LwPartRow *lw_leaf_append_part  (LwLeafWindow *self,
                                 const char   *name,
                                 const LwPart *part);
/* (transfer full) the leaf that the fields describe, right or not. */
LwProfile *lw_leaf_window_leaf  (LwLeafWindow *self);
