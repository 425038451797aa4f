/* The popover's edits. What is typed is read at every key and its meaning told; what cannot be is refused. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/weigh-entry.h"

#include <math.h>

#include "bench/popover.h"
#include "bench/weigh-form.h"
#include "bench/weigh-words.h"
#include "season/document.h"
#include "season/measured.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;  /* outlives the popover */
  LwWeighPlace place;
  LwKind kind;         /* of the step, to know it again */
  LwWeighIn old;       /* the one to change; its note is owned */
  LwWeighForm form;
  GtkWidget *popover;
  GdkRectangle spot;
} Entry;

static void
entry_free (Entry *entry)
{
  g_free (entry->old.note);
  lw_weigh_form_clear (&entry->form);
  g_free (entry);
}

/* (nullable) the step, if the batch in hand still has what the popover was opened for. */
static const LwStep *
step_of (const Entry *entry)
{
  const LwBatch *batch = lw_session_batch (entry->session);
  const LwStep *step = batch != NULL && entry->place.step < batch->n_steps ? &batch->steps[entry->place.step] : NULL;
  int at = entry->place.at;

  if (step == NULL || step->kind != entry->kind)
    return NULL;

  return at < 0 || ((guint) at < step->n_weigh_ins && lw_weigh_in_same (&step->weigh_ins[at], &entry->old)) ? step : NULL;
}

static double
most_minutes (const Entry  *entry,
              const LwStep *step)
{
  if (entry->place.goes_on)
    return lw_kind_setting (step->kind, LW_SET_MINUTES)->high;

  return MAX (lw_step_get (step, LW_SET_MINUTES), entry->place.at >= 0 ? entry->old.minute : 0);
}

/* As large as its words by now, which nobody else asks for. Where it would reach beyond the window's foot it stands
 * higher from then on, so that its buttons are there. */
static void
fit_popover (Entry *entry)
{
  GtkWidget *root, *widget;
  graphene_point_t at;
  int natural;

  if (entry->popover == NULL)
    return;

  widget = gtk_widget_get_parent (entry->popover);
  root = GTK_WIDGET (gtk_widget_get_root (widget));
  gtk_widget_measure (entry->popover, GTK_ORIENTATION_VERTICAL, -1, NULL, &natural, NULL, NULL);
  if (gtk_widget_compute_point (widget, root, &GRAPHENE_POINT_INIT (0, (float) entry->spot.y), &at))
    entry->spot.y -= CLAMP ((int) at.y + entry->spot.height + natural - gtk_widget_get_height (root), 0, MAX ((int) at.y, 0));
  gtk_popover_set_pointing_to (GTK_POPOVER (entry->popover), &entry->spot);
  gtk_popover_present (GTK_POPOVER (entry->popover));
}

static void
refuse (Entry      *entry,
        int         wrong,
        const char *words)
{
  lw_weigh_form_refuse (&entry->form, wrong, words);
  fit_popover (entry);
}

static void
changed_cb (gpointer data)
{
  Entry *entry = data;
  const LwBatch *batch = lw_session_batch (entry->session);
  const LwStep *step = step_of (entry);
  LwWeighIn read = lw_weigh_form_read (&entry->form);
  g_autofree char *meaning = NULL, *model = NULL, *note = read.note, *words = NULL;
  const char *doubt = NULL;
  LwWeighField wrong;
  LwBeside beside;

  if (step != NULL && lw_weigh_in_check (&read, most_minutes (entry, step), &wrong, NULL))
    {
      double moisture = lw_fresh_moisture_pct (lw_session_season (entry->session), batch);

      meaning = lw_weigh_meaning (&read, batch->fresh_kg, moisture);
      doubt = lw_weigh_doubt (&read, batch->fresh_kg, moisture);
      if (doubt != NULL)
        model = g_strdup (doubt);
      else if (lw_beside (batch, entry->place.step, &read, lw_session_track (entry->session), moisture, &beside))
        model = lw_weigh_beside (&beside);
    }
  words = g_strconcat (meaning != NULL ? meaning : "", meaning != NULL && model != NULL ? ".\n" : "",
                       model != NULL ? model : "", NULL);
  gtk_label_set_label (GTK_LABEL (entry->form.meaning), words);
  gtk_widget_set_visible (entry->form.meaning, *words != '\0');
  fit_popover (entry);
}

/* (transfer full) the season with it, and with the step as long as it has lasted by then. */
static LwSeason *
edited (const Entry     *entry,
        const LwWeighIn *weigh_in)
{
  const LwSeason *base = lw_session_base (entry->session);
  guint batch = (guint) lw_session_batch_index (entry->session), step = entry->place.step;
  g_autoptr (LwSeason) next = entry->place.at < 0
                                ? lw_edit_add_weigh_in (base, batch, step, *weigh_in)
                                : lw_edit_change_weigh_in (base, batch, step, (guint) entry->place.at, *weigh_in);

  if (entry->place.goes_on && weigh_in->minute > lw_step_get (&base->batches[batch]->steps[step], LW_SET_MINUTES))
    return lw_edit_set (next, batch, step, LW_SET_MINUTES, weigh_in->minute);

  return g_steal_pointer (&next);
}

static void
put_cb (gpointer data)
{
  Entry *entry = data;
  const LwStep *step = step_of (entry);
  LwWeighIn read = lw_weigh_form_read (&entry->form);
  g_autofree char *note = read.note, *label = NULL;
  g_autoptr (GError) error = NULL;
  LwWeighField wrong;

  if (step == NULL)
    {
      refuse (entry, -1, _ ("The batch has changed meanwhile. Close this and choose the place again."));
      return;
    }
  if (!lw_weigh_in_check (&read, most_minutes (entry, step), &wrong, &error))
    {
      refuse (entry, (int) wrong, error->message);
      return;
    }
  if (entry->place.at < 0 && step->n_weigh_ins >= LW_MAX_WEIGH_INS)
    {
      refuse (entry, -1, _ ("This step holds no more weigh-ins."));
      return;
    }

  /* Translators: what was measured */
  label = g_strdup_printf (entry->place.at < 0 ? _ ("Weigh-in: %s") : _ ("Change weigh-in: %s"),
                           _ (lw_measure_row (read.of)->label));
  if (entry->place.at < 0 || !lw_weigh_in_same (&read, &entry->old))
    lw_session_edit (entry->session, edited (entry, &read), label, NULL);
  gtk_popover_popdown (GTK_POPOVER (entry->popover));
}

static void
remove_cb (Entry *entry)
{
  if (step_of (entry) != NULL)
    lw_weigh_entry_remove (entry->session, entry->place.step, (guint) entry->place.at);
  gtk_popover_popdown (GTK_POPOVER (entry->popover));
}

void
lw_weigh_entry_remove (LwSession *session,
                       guint      step,
                       guint      at)
{
  const LwBatch *batch = lw_session_batch (session);
  g_autofree char *label = g_strdup_printf (_ ("Remove weigh-in: %s"),
                                            _ (lw_measure_row (batch->steps[step].weigh_ins[at].of)->label));

  lw_session_edit (session, lw_edit_remove_weigh_in (lw_session_base (session), (guint) lw_session_batch_index (session),
                                                     step, at), label, NULL);
}

/* The tare of the last weight before: leaf is weighed in the same vessel, mostly. */
static double
usual_tare (const LwBatch *batch,
            guint          step)
{
  double tare = 0;

  for (guint i = 0; i <= step; i++)
    for (guint k = 0; k < batch->steps[i].n_weigh_ins; k++)
      if (batch->steps[i].weigh_ins[k].of == LW_WEIGHED_KG)
        tare = batch->steps[i].weigh_ins[k].tare_kg;

  return tare;
}

static void
add_button (Entry      *entry,
            const char *words,
            const char *class,
            GCallback   clicked)
{
  GtkWidget *button = gtk_button_new_with_label (words);

  if (class != NULL)
    gtk_widget_add_css_class (button, class);
  g_signal_connect_swapped (button, "clicked", clicked, entry);
  gtk_box_append (GTK_BOX (entry->form.buttons), button);
}

/* (transfer full) what it is of. */
static char *
title_of (const Entry   *entry,
          const LwBatch *batch)
{
  /* Translators: number and kind of a step */
  return g_strdup_printf (entry->place.at < 0 ? _ ("Weigh-in in step %u, %s") : _ ("Change the weigh-in in step %u, %s"),
                          entry->place.step + 1, _ (lw_kind_row (entry->kind)->label));
}

GtkWidget *
lw_weigh_entry_open (GtkWidget          *widget,
                     const GdkRectangle *spot,
                     LwSession          *session,
                     LwWeighPlace        place)
{
  const LwBatch *batch = lw_session_batch (session);
  const LwStep *step = &batch->steps[place.step];
  Entry *entry = g_new0 (Entry, 1);
  g_autofree char *title = NULL;

  entry->session = session;
  entry->place = place;
  entry->kind = step->kind;
  entry->old = place.at >= 0 ? step->weigh_ins[place.at]
                             : (LwWeighIn) { .minute = place.minute, .of = LW_WEIGHED_KG, .value = NAN,
                                             .sd = lw_measure_row (LW_WEIGHED_KG)->sd,
                                             .tare_kg = usual_tare (batch, place.step) };
  entry->old.note = g_strdup (entry->old.note);
  title = title_of (entry, batch);
  lw_weigh_form_init (&entry->form, title, &entry->old, changed_cb, put_cb, entry);
  add_button (entry, place.at < 0 ? _ ("Enter") : _ ("Change"), "suggested-action", G_CALLBACK (put_cb));
  if (place.at >= 0)
    add_button (entry, _ ("Remove"), NULL, G_CALLBACK (remove_cb));
  changed_cb (entry);

  entry->popover = lw_popover_open (widget, entry->form.grid, GTK_POS_BOTTOM, title);
  entry->spot = *spot;
  fit_popover (entry);
  g_object_set_data_full (G_OBJECT (entry->popover), "entry", entry, (GDestroyNotify) entry_free);
  lw_weigh_form_focus (&entry->form, place.at < 0);

  return entry->popover;
}
