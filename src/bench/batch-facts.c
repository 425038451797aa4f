/* The window on a batch's date, weight and notes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/facts-windows.h"

#include "bench/entry.h"
#include "bench/facts.h"
#include "season/facts.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;
  guint batch;
  GtkWidget *name;
  GtkWidget *tea;
  GtkWidget *start;
  GtkWidget *fresh;
  GtkWidget *made;
  GtkWidget *note;
  GPtrArray *steps; /* fields, one for each step */
} BatchFacts;

static void
batch_facts_free (BatchFacts *self)
{
  g_object_unref (self->session);
  g_ptr_array_unref (self->steps);
  g_free (self);
}

static gboolean
read_fields (gpointer   data,
             gboolean   apply,
             GError   **error)
{
  BatchFacts *self = data;
  const LwSeason *base = lw_session_base (self->session);
  g_autofree char *name = lw_facts_text (self->name), *tea = lw_facts_text (self->tea), *note = lw_facts_text (self->note);
  g_autoptr (GPtrArray) steps = g_ptr_array_new_with_free_func (g_free);
  LwBatchFacts facts = {
    .name = name, .tea = tea, .note = note,
    .fresh_kg = lw_entry_number_of (self->fresh),
    .made = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->made)),
  };

  for (guint i = 0; i < self->steps->len; i++)
    g_ptr_array_add (steps, lw_facts_text (g_ptr_array_index (self->steps, i)));
  facts.step_notes = (const char *const *) steps->pdata;

  if (!lw_facts_moment (self->start, &facts.when_s))
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT,
                   _ ("The start is a day and a time, such as %s."), "2026-04-12 10:30");
      return FALSE;
    }
  if (!lw_batch_facts_check (base, self->batch, &facts, error))
    return FALSE;

  if (apply)
    lw_session_edit (self->session, lw_edit_set_batch_facts (base, self->batch, &facts), _ ("Write down the batch"), NULL);

  return TRUE;
}

static void
add_steps (BatchFacts    *self,
           LwFacts       *facts,
           const LwBatch *batch)
{
  if (batch->n_steps > 0)
    lw_facts_add_heading (facts, _ ("Notes of the steps"));

  for (guint i = 0; i < batch->n_steps; i++)
    {
      /* Translators: a step's number and kind */
      g_autofree char *name = g_strdup_printf (_ ("%u. %s"), i + 1, _ (lw_kind_row (batch->steps[i].kind)->label));

      g_ptr_array_add (self->steps, lw_facts_add_text (facts, name, batch->steps[i].note, NULL));
    }
}

void
lw_batch_facts_open (GtkWindow *parent,
                     LwSession *session,
                     gboolean   running)
{
  const LwBatch *batch = lw_session_batch (session);
  BatchFacts *self = g_new0 (BatchFacts, 1);
  LwFacts *facts = lw_facts_new (parent, _ ("Name, date, weight, notes"), read_fields, self, (GDestroyNotify) batch_facts_free);

  self->session = g_object_ref (session);
  self->batch = (guint) lw_session_batch_index (session);
  self->steps = g_ptr_array_new ();
  self->name = lw_facts_add_text (facts, _ ("Name"), batch->name, _ ("No two batches of a season have the same."));
  self->tea = lw_facts_add_text (facts, _ ("Kind of tea"), batch->tea,
                                 _ ("In your own words. Kinds with their aims are in the batch's menu."));
  self->start = lw_facts_add_moment (facts, _ ("Start"), batch->when_s,
                                     _ ("Year, month, day and time by the place's clock. The weather is taken from then on."));
  self->fresh = lw_facts_add_number (facts, _ ("Fresh leaf, kg"), batch->fresh_kg,
                                     _ ("Every weight is compared with this. Loads of pan and drum stay as they are set."));
  self->made = lw_facts_add_tick (facts, _ ("Made"), batch->made,
                                  _ ("Ticked: the steps tell what was done. Else it is a plan."));
  self->note = lw_facts_add_note (facts, _ ("Note"), batch->note);
  add_steps (self, facts, batch);
  gtk_widget_set_sensitive (self->start, !running);
  gtk_widget_set_sensitive (self->made, !running);

  lw_facts_present (facts, FALSE);
}
