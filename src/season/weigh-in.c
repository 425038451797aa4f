/* Entering weigh-ins. Ranges are those of the document, so that what is taken here can be saved. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/weigh-in.h"

#include <gio/gio.h>
#include <math.h>

#include "season/document.h"
#include "season/text.h"
#include "season/wording.h"

static gboolean
refuse (LwWeighField *field,
        LwWeighField  wrong,
        GError      **error,
        const char   *words)
{
  *field = wrong;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, words);

  return FALSE;
}

/* What the document would refuse: XML has no control characters. */
static gboolean
is_writable (const char *note)
{
  for (const char *p = note; *p != '\0'; p = g_utf8_next_char (p))
    if (g_unichar_iscntrl (g_utf8_get_char (p)) && *p != '\n' && *p != '\t')
      return FALSE;

  return g_utf8_strlen (note, -1) <= LW_MAX_TEXT;
}

static gboolean
check_value (const LwWeighIn *weigh_in,
             LwWeighField    *field,
             GError         **error)
{
  const LwMeasureRow *row = lw_measure_row (weigh_in->of);
  g_autofree char *words = NULL;

  if (!(weigh_in->value >= row->low && weigh_in->value <= row->high))
    {
      words = g_strdup_printf (_ ("Write a number from %g to %g."), row->low, row->high);
      return refuse (field, LW_WEIGH_VALUE, error, words);
    }
  if (!(weigh_in->tare_kg >= 0 && weigh_in->tare_kg <= row->high))
    return refuse (field, LW_WEIGH_TARE, error, _ ("Write what the empty vessel weighs, or leave this empty."));
  if (weigh_in->of == LW_WEIGHED_KG && weigh_in->tare_kg >= weigh_in->value)
    return refuse (field, LW_WEIGH_TARE, error, _ ("The empty vessel must weigh less than the vessel with leaf in it."));
  if (!(weigh_in->sd >= LW_LEAST_SD && weigh_in->sd <= row->high))
    {
      words = g_strdup_printf (_ ("Write a number above 0, at most %g."), row->high);
      return refuse (field, LW_WEIGH_SD, error, words);
    }

  return TRUE;
}

gboolean
lw_weigh_in_check (const LwWeighIn *weigh_in,
                   double           most_minutes,
                   LwWeighField    *field,
                   GError         **error)
{
  g_autofree char *most = lw_say_minutes (most_minutes), *words = NULL;

  if (weigh_in->of != LW_NOTED && !check_value (weigh_in, field, error))
    return FALSE;
  if (!(weigh_in->minute >= 0 && weigh_in->minute <= most_minutes))
    {
      /* Translators: a time, as in "25 min" */
      words = g_strdup_printf (_ ("Write a time from the step's start, at most %s."), most);
      return refuse (field, LW_WEIGH_MINUTE, error, words);
    }
  if (weigh_in->of == LW_NOTED && weigh_in->note == NULL)
    return refuse (field, LW_WEIGH_NOTE, error, _ ("Write the note."));
  if (weigh_in->note != NULL && !is_writable (weigh_in->note))
    return refuse (field, LW_WEIGH_NOTE, error, _ ("The note is too long, or has characters that no file can hold."));

  return TRUE;
}

gboolean
lw_weigh_in_same (const LwWeighIn *a,
                  const LwWeighIn *b)
{
  return a->of == b->of && a->minute == b->minute && a->value == b->value && a->sd == b->sd
         && a->tare_kg == b->tare_kg && g_strcmp0 (a->note, b->note) == 0;
}

static LwSeason *
with_own_step (const LwSeason *season,
               guint           batch,
               guint           step,
               LwBatch       **own,
               LwStep        **at)
{
  LwSeason *next = lw_season_own_batch (season, batch, own);

  *at = &(*own)->steps[step];

  return next;
}

/* The one at `at` goes to where its minute belongs among the others, and stays where it may. */
static void
settle (LwStep *step,
        guint   at)
{
  LwWeighIn *all = step->weigh_ins, moved = all[at];

  for (; at > 0 && all[at - 1].minute > moved.minute; at--)
    all[at] = all[at - 1];
  for (; at + 1 < step->n_weigh_ins && all[at + 1].minute < moved.minute; at++)
    all[at] = all[at + 1];
  all[at] = moved;
}

void
lw_batch_place_weigh_in (LwBatch         *batch,
                         guint            step,
                         const LwWeighIn *weigh_in)
{
  LwWeighIn own = *weigh_in;

  own.note = g_strdup (weigh_in->note);
  lw_batch_add_weigh_in (batch, step, own);
  settle (&batch->steps[step], batch->steps[step].n_weigh_ins - 1);
}

LwSeason *
lw_edit_add_weigh_in (const LwSeason *season,
                      guint           batch,
                      guint           step,
                      LwWeighIn       weigh_in)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_place_weigh_in (own, step, &weigh_in);

  return next;
}

LwSeason *
lw_edit_change_weigh_in (const LwSeason *season,
                         guint           batch,
                         guint           step,
                         guint           at,
                         LwWeighIn       weigh_in)
{
  LwBatch *own;
  LwStep *place;
  LwSeason *next = with_own_step (season, batch, step, &own, &place);

  g_free (place->weigh_ins[at].note);
  place->weigh_ins[at] = weigh_in;
  place->weigh_ins[at].note = g_strdup (weigh_in.note);
  settle (place, at);

  return next;
}

LwSeason *
lw_edit_remove_weigh_in (const LwSeason *season,
                         guint           batch,
                         guint           step,
                         guint           at)
{
  LwBatch *own;
  LwStep *place;
  LwSeason *next = with_own_step (season, batch, step, &own, &place);

  g_free (place->weigh_ins[at].note);
  place->n_weigh_ins--;
  memmove (&place->weigh_ins[at], &place->weigh_ins[at + 1], (place->n_weigh_ins - at) * sizeof *place->weigh_ins);

  return next;
}
