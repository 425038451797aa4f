/* A row of the difference table: made once, never changed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-table-item.h"

#include <math.h>

#include "season/text.h"

#define DAY_MINUTES (24 * 60)

struct _LwOverItem
{
  GObject parent_instance;

  char *words[LW_OVER_N_COLUMNS];
  char *all;
};

G_DEFINE_FINAL_TYPE (LwOverItem, lw_over_item, G_TYPE_OBJECT)

static void
lw_over_item_finalize (GObject *object)
{
  LwOverItem *self = LW_OVER_ITEM (object);

  for (guint i = 0; i < LW_OVER_N_COLUMNS; i++)
    g_free (self->words[i]);
  g_free (self->all);

  G_OBJECT_CLASS (lw_over_item_parent_class)->finalize (object);
}

static void
lw_over_item_class_init (LwOverItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lw_over_item_finalize;
}

static void
lw_over_item_init (LwOverItem *self)
{
}

static const char *
kind_of (const LwSide   *side,
         const LwMoment *moment)
{
  return _ (lw_kind_row (side->batch->steps[moment->step].kind)->label);
}

static char *
say_where (const LwCompareRow *row,
           const LwSide        sides[2],
           gboolean            finished)
{
  guint minutes = isnan (row->clock_s) ? 0 : (guint) lround (row->clock_s / 60), day = minutes / DAY_MINUTES;

  if (finished)
    return g_strdup (_ ("Finished tea"));
  if (!isnan (row->clock_s) && day > 0)
    /* Translators: a day counted from 1, and a time of day as hours and minutes */
    return g_strdup_printf (_ ("day %u, %02u:%02u"), day + 1, minutes % DAY_MINUTES / 60, minutes % 60);
  if (!isnan (row->clock_s))
    /* Translators: a time of day as hours and minutes */
    return g_strdup_printf (_ ("%02u:%02u"), minutes / 60, minutes % 60);
  if (row->of[0].there && row->of[1].there)
    /* Translators: a step's number and its kind */
    return g_strdup_printf (_ ("%u %s"), row->of[0].step + 1, kind_of (&sides[0], &row->of[0]));
  if (row->of[0].there)
    /* Translators: a step's number and its kind; the other batch has no such step */
    return g_strdup_printf (_ ("%u %s, only this"), row->of[0].step + 1, kind_of (&sides[0], &row->of[0]));

  return row->of[1].there ? g_strdup_printf (_ ("%u %s, only that"), row->of[1].step + 1, kind_of (&sides[1], &row->of[1]))
                          : g_strdup ("");
}

static char *
say_number (double   value,
            int      digits,
            gboolean with_sign)
{
  g_autofree char *plain = g_strdup_printf ("%.*f", digits, fabs (value));
  gboolean nothing = fabs (value) < 0.5 * pow (10, -digits);

  if (isnan (value))
    return g_strdup ("–");

  return g_strconcat (nothing ? "" : value < 0 ? "−" : with_sign ? "+" : "", plain, NULL);
}

LwOverItem *
lw_over_item_new (const LwCompareRow *row,
                  const LwSide        sides[2],
                  gboolean            finished,
                  int                 of)
{
  LwOverItem *self = g_object_new (LW_TYPE_OVER_ITEM, NULL);
  const LwQuantityRow *quantity = of == LW_COMPARE_MINUTES ? NULL : lw_quantity_row ((LwQuantity) of);
  const char *label = quantity != NULL ? _ (quantity->label) : _ ("Time in the step");
  const char *unit = quantity == NULL ? _ ("min") : lw_unit_words (quantity->unit);
  double values[3];

  lw_compare_values (row, of, values);
  self->words[LW_OVER_WHERE] = say_where (row, sides, finished);
  /* Translators: an outcome and its unit */
  self->words[LW_OVER_OUTCOME] = *unit != '\0' ? g_strdup_printf (_ ("%s, %s"), label, unit) : g_strdup (label);
  for (guint i = 0; i < 3; i++)
    self->words[LW_OVER_THIS + i] = say_number (values[i], lw_compare_digits (of), i == 2);
  /* Translators: an outcome, where it is compared, its value in this batch, in that one, and the difference */
  self->all = g_strdup_printf (_ ("%s; %s: this %s, that %s, difference %s"), self->words[LW_OVER_OUTCOME],
                               self->words[LW_OVER_WHERE], self->words[LW_OVER_THIS], self->words[LW_OVER_THAT],
                               self->words[LW_OVER_DIFFERENCE]);

  return self;
}

const char *
lw_over_item_words (LwOverItem  *self,
                    LwOverColumn column)
{
  return self->words[column];
}

const char *
lw_over_item_all (LwOverItem *self)
{
  return self->all;
}
