/* A window of fields for what is written down: names, numbers, a moment, notes, ticks. Nothing changes before Apply. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

typedef struct _LwFacts LwFacts;

/* Reads the fields: FALSE, and `error` says why, where they hold what may not stand. With `apply` makes it the season's. */
typedef gboolean (*LwFactsRead) (gpointer   data,
                                 gboolean   apply,
                                 GError   **error);

/* Modal over `parent`; `data` is freed with the window. Fields are added in their order, then it is shown. */
LwFacts   *lw_facts_new        (GtkWindow     *parent,
                                const char    *title,
                                LwFactsRead    read,
                                gpointer       data,
                                GDestroyNotify free_data);
/* `is_new`: what it tells of is not there yet, so that Apply does something even where no field was touched. */
void       lw_facts_present    (LwFacts       *facts,
                                gboolean       is_new);

/* Each returns the field. `meaning` is told beside it and to a screen reader. */
GtkWidget *lw_facts_add_text   (LwFacts       *facts,
                                const char    *name,
                                const char    *text,     /* (nullable) */
                                const char    *meaning);
GtkWidget *lw_facts_add_number (LwFacts       *facts,
                                const char    *name,
                                double         value,
                                const char    *meaning);
/* A day and a time of the place's clock, with a calendar to choose the day from. */
GtkWidget *lw_facts_add_moment (LwFacts       *facts,
                                const char    *name,
                                gint64         when_s,
                                const char    *meaning);
GtkWidget *lw_facts_add_tick   (LwFacts       *facts,
                                const char    *name,
                                gboolean       on,
                                const char    *meaning);
/* Of many lines. */
GtkWidget *lw_facts_add_note   (LwFacts       *facts,
                                const char    *name,
                                const char    *text);    /* (nullable) */
void       lw_facts_add_heading (LwFacts      *facts,
                                 const char   *text);

/* (transfer full) what a field of text or of many lines holds, without blanks at its ends. */
char      *lw_facts_text       (GtkWidget     *field);
/* FALSE if it is no moment. */
gboolean   lw_facts_moment     (GtkWidget     *field,
                                gint64        *when_s);
