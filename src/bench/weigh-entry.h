/* The popover where a weigh-in is entered, changed or removed: the measure by its letter, the number, Return. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

/* Which weigh-in of the batch in hand. */
typedef struct
{
  guint step;
  int at;            /* the one to change, -1: a new one */
  double minute;     /* of a new one */
  gboolean goes_on;  /* the step is under way: it lasts as long as is written here */
} LwWeighPlace;

/* Opens it on `widget` at `spot`, in the widget's pixels. It closes by itself once the edit is made. Returns
 * (transfer none) it. */
GtkWidget *lw_weigh_entry_open   (GtkWidget          *widget,
                                  const GdkRectangle *spot,
                                  LwSession          *session,
                                  LwWeighPlace        place);

/* The edit that removes one of the batch in hand; it must be there. */
void       lw_weigh_entry_remove (LwSession          *session,
                                  guint               step,
                                  guint               at);
