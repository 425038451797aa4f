/* The list of the result's rows. It draws what all of them show as one picture: many small ones that change in every
 * frame of a drag are far dearer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/result-row.h"

#define LW_TYPE_RESULT_LIST (lw_result_list_get_type ())
G_DECLARE_FINAL_TYPE (LwResultList, lw_result_list, LW, RESULT_LIST, GtkWidget)

GtkWidget *lw_result_list_new (void);
void       lw_result_list_add (LwResultList *self,
                               LwResultRow  *row);
