/* The fields of a weigh-in: which measure, its number, tare, uncertainty, moment and note. Knows no season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "season/weigh-in.h"

#define LW_N_WEIGH_FIELDS (LW_WEIGH_NOTE + 1)

typedef struct
{
  LwMeasure of;
  double minute;       /* as given, told as `minute_text` */
  char *minute_text;
  GtkWidget *grid;
  GtkWidget *measures[LW_N_MEASURES];
  GtkWidget *names[LW_N_WEIGH_FIELDS];
  GtkWidget *fields[LW_N_WEIGH_FIELDS];
  GtkWidget *units[LW_N_WEIGH_FIELDS];
  GtkWidget *meaning;
  GtkWidget *refused;
  GtkWidget *buttons;  /* a box for what may be done */
  void (*changed) (gpointer data);
  void (*done) (gpointer data);
  gpointer data;
} LwWeighForm;

/* Fills in what `shows` says; a value of NAN stays empty. `changed` is called at every key, `done` at Return. */
void      lw_weigh_form_init   (LwWeighForm     *form,
                                const char      *title,
                                const LwWeighIn *shows,
                                void           (*changed) (gpointer data),
                                void           (*done) (gpointer data),
                                gpointer         data);
void      lw_weigh_form_clear  (LwWeighForm     *form);

/* What is written, NAN where it is no number. Its note is (transfer full). */
LwWeighIn lw_weigh_form_read   (const LwWeighForm *form);

/* Says why not, at a field where `wrong` >= 0, until something is changed. */
void      lw_weigh_form_refuse (LwWeighForm     *form,
                                int              wrong,
                                const char      *words);
void      lw_weigh_form_unrefuse (LwWeighForm   *form);

/* The keyboard to the measures, or to the field that comes first. */
void      lw_weigh_form_focus  (LwWeighForm     *form,
                                gboolean         measures);
