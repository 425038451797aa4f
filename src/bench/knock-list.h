/* What the knock-on table shows: its rows in their order, their words and numbers. No widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/knock.h"

typedef struct
{
  LwSeason *season;
  guint batch;
  int at;                            /* outcomes at this step's end, -1: the batch's */
  int by;                            /* the LwQuantity that orders the rows, -1: as in the batch */
  GArray *knocks;                    /* LwKnock, as in the batch */
  GArray *rows;                      /* the same as they are shown */
  double largest[LW_N_QUANTITIES];   /* size of the largest effect */
} LwKnockList;

/* `knocks` is (transfer full), as lw_knock_on returns it for the batch of that season. */
LwKnockList   *lw_knock_list_new     (LwSeason          *season,
                                      guint              batch,
                                      int                at,
                                      GArray            *knocks);
void           lw_knock_list_free    (LwKnockList       *list);

/* Orders the rows by the size of their effect on a quantity, largest first; -1: as in the batch. */
void           lw_knock_list_sort    (LwKnockList       *list,
                                      int                by);

const LwKnock *lw_knock_list_row     (const LwKnockList *list,
                                      guint              row);
/* The row of a handle; -1 if there is none. */
int            lw_knock_list_find    (const LwKnockList *list,
                                      const LwHandle    *handle);

/* (transfer full) "2 fix in pan". */
char          *lw_knock_list_step    (const LwKnockList *list,
                                      guint              row);
/* "wall", translated. */
const char    *lw_knock_list_setting (const LwKnockList *list,
                                      guint              row);
/* (transfer full) "+5 °C". */
char          *lw_knock_list_notch   (const LwKnockList *list,
                                      guint              row);
/* (transfer full) "wall of step 2, plus 5 °C: Oxidation plus 0.4 % points". */
char          *lw_knock_list_tell    (const LwKnockList *list,
                                      guint              row,
                                      LwQuantity         quantity);
/* (transfer full) "Knock-on at the end of step 2, fix in pan". */
char          *lw_knock_list_heading (const LwKnockList *list);

/* Whether nobody would notice the effect, as lw_want_tolerance has it. */
gboolean       lw_knock_list_is_faint (const LwKnockList *list,
                                       guint              row,
                                       LwQuantity         quantity);
/* How strong an effect is beside the largest on that quantity, from -1 to 1; 0 for a faint one. */
double         lw_knock_list_share   (const LwKnockList *list,
                                      guint              row,
                                      LwQuantity         quantity);

/* (transfer full) the rows as they are shown, as lw_knock_csv writes them. */
char          *lw_knock_list_csv     (const LwKnockList *list);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwKnockList, lw_knock_list_free)
