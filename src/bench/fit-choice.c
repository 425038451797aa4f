/* The left side of the fit window: which batches, and what may differ. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-window-private.h"

#include <math.h>

#include "season/text.h"
#include "season/wording.h"
#include "study/fit-tells.h"
#include "study/fit-words.h"

#define WIDTH 372

static gboolean
is_on (GtkWidget *tick)
{
  return gtk_widget_is_sensitive (tick) && gtk_check_button_get_active (GTK_CHECK_BUTTON (tick));
}

GArray *
lw_fit_choice_batches (LwFitWindow *self)
{
  GArray *batches = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < self->ticks->len; i++)
    if (is_on (self->ticks->pdata[i]))
      g_array_append_val (batches, i);

  return batches;
}

guint
lw_fit_choice_free (LwFitWindow *self)
{
  guint bits = 0;

  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    bits |= is_on (self->free[i]) ? LW_FIT_BIT (i) : 0;

  return bits;
}

/* A tick with its name and, under it, what is to be known of it. */
static GtkWidget *
tick_new (LwFitWindow *self,
          const char  *name,
          GtkWidget  **detail)
{
  GtkWidget *tick = gtk_check_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  *detail = lw_fit_label ("", "batch-detail");
  gtk_box_append (GTK_BOX (box), lw_fit_label (name, NULL));
  gtk_box_append (GTK_BOX (box), *detail);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (tick), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (tick), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);

  return tick;
}

static void
set_detail (GtkWidget  *tick,
            GtkWidget  *detail,
            const char *words)
{
  GString *shown = g_string_new (words);

  /* "weight × 3" stays on one line. */
  g_string_replace (shown, " × ", "\u00a0×\u00a0", 0);
  gtk_label_set_label (GTK_LABEL (detail), shown->str);
  gtk_accessible_update_property (GTK_ACCESSIBLE (tick), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  g_string_free (shown, TRUE);
}

/* (transfer none) (nullable) the leaf of the first ticked batch, or of the batch in hand. */
static LwProfile *
leading_leaf (LwFitWindow *self)
{
  const LwBatch *hand = lw_session_batch (self->session);

  for (guint i = 0; i < self->ticks->len; i++)
    if (is_on (self->ticks->pdata[i]))
      return lw_season_profile (self->shown, self->shown->batches[i]->leaf);

  return hand != NULL ? lw_season_profile (self->shown, hand->leaf) : NULL;
}

/* Whether one of the ticked batches' leaves has it. */
static gboolean
some_leaf_has (LwFitWindow *self,
               LwFitWhat    what)
{
  LwFitScope scope = lw_fit_row (what)->scope;
  gboolean none = TRUE;

  if (scope == LW_FIT_OF_BATCH || scope == LW_FIT_OF_VESSEL)
    return TRUE;

  for (guint i = 0; i < self->ticks->len; i++)
    if (is_on (self->ticks->pdata[i]))
      {
        none = FALSE;
        if (!isnan (lw_fit_value (what, lw_season_profile (self->shown, self->shown->batches[i]->leaf))))
          return TRUE;
      }

  return none;
}

static void
show_priors (LwFitWindow *self)
{
  const LwProfile *leaf = leading_leaf (self);
  g_autofree char *of = leaf != NULL ? g_strdup_printf (_ ("Expected before anything was weighed: “%s”."), leaf->name) : NULL;

  gtk_label_set_label (GTK_LABEL (self->of_leaf), of != NULL ? of : "");
  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    {
      g_autofree char *prior = lw_fit_prior_say (i, leaf), *words = NULL;
      gboolean has = some_leaf_has (self, i);

      /* Translators: how much is expected, and what more of it means */
      words = has ? g_strdup_printf (_ ("%s. If more: %s"), prior, _ (lw_fit_row (i)->meaning))
                  : g_strdup (_ ("No part of this leaf stands apart so."));
      gtk_widget_set_sensitive (self->free[i], has);
      set_detail (self->free[i], self->priors[i], words);
    }
}

static void
toggled_cb (LwFitWindow *self)
{
  show_priors (self);
  lw_fit_window_check (self);
}

static void
add_batch (LwFitWindow   *self,
           const LwBatch *batch,
           gboolean       ticked)
{
  const LwProfile *leaf = lw_season_profile (self->shown, batch->leaf);
  g_autofree char *date = lw_say_date (batch->when_s), *useless = lw_fit_say_useless (batch);
  g_autofree char *told = lw_fit_say_told (batch), *words = NULL;
  GtkWidget *detail, *tick = tick_new (self, batch->name, &detail);

  /* Translators: date, leaf, what was weighed or why the batch cannot be used */
  words = g_strdup_printf (_ ("%s · %s · %s"), date, leaf->name, useless != NULL ? useless : told);
  set_detail (tick, detail, words);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (tick), ticked && useless == NULL);
  gtk_widget_set_sensitive (tick, useless == NULL);
  g_signal_connect_swapped (tick, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_box_append (GTK_BOX (self->batches), tick);
  g_ptr_array_add (self->ticks, tick);
}

/* At first the made batches of the leaf in hand. */
static gboolean
is_ticked (LwFitWindow    *self,
           GHashTable     *names,
           const LwBatch  *batch)
{
  const LwBatch *hand = lw_session_batch (self->session);

  return names != NULL ? g_hash_table_contains (names, batch->name)
                       : hand == NULL || g_str_equal (hand->leaf, batch->leaf);
}

void
lw_fit_choice_fill (LwFitWindow *self)
{
  LwSeason *base = lw_session_base (self->session);
  g_autoptr (GHashTable) names = NULL;

  if (base == self->shown)
    return;

  if (self->shown != NULL)
    names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < self->ticks->len; i++)
    if (is_on (self->ticks->pdata[i]))
      g_hash_table_add (names, g_strdup (self->shown->batches[i]->name));

  g_clear_pointer (&self->shown, lw_season_unref);
  self->shown = lw_season_ref (base);
  g_ptr_array_set_size (self->ticks, 0);
  lw_fit_clear (self->batches);
  for (guint i = 0; i < base->n_batches; i++)
    add_batch (self, base->batches[i], is_ticked (self, names, base->batches[i]));
  toggled_cb (self);
}

static void
tick_all (LwFitWindow *self,
          gboolean     active)
{
  for (guint i = 0; i < self->ticks->len; i++)
    if (gtk_widget_is_sensitive (self->ticks->pdata[i]))
      gtk_check_button_set_active (self->ticks->pdata[i], active);
}

static void
all_cb (LwFitWindow *self)
{
  tick_all (self, TRUE);
}

static void
none_cb (LwFitWindow *self)
{
  tick_all (self, FALSE);
}

GtkWidget *
lw_fit_choice_new (LwFitWindow *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *heading = lw_fit_label (_ ("Batches"), "heading");

  gtk_widget_set_hexpand (heading, TRUE);
  gtk_box_append (GTK_BOX (row), heading);
  lw_fit_button (self, row, _ ("All"), G_CALLBACK (all_cb));
  lw_fit_button (self, row, _ ("None"), G_CALLBACK (none_cb));
  self->batches = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->of_leaf = lw_fit_label ("", "batch-detail");
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), self->batches);
  gtk_box_append (GTK_BOX (box), lw_fit_label (_ ("May differ"), "heading"));
  gtk_box_append (GTK_BOX (box), self->of_leaf);

  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    {
      self->free[i] = tick_new (self, _ (lw_fit_row (i)->label), &self->priors[i]);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->free[i]), lw_fit_row (i)->usual);
      g_signal_connect_swapped (self->free[i], "toggled", G_CALLBACK (lw_fit_window_check), self);
      gtk_box_append (GTK_BOX (box), self->free[i]);
    }

  gtk_widget_add_css_class (box, "fit-ticks");
  /* Always the same width, however much is told. */
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_AUTOMATIC);
  gtk_widget_set_size_request (scrolled, WIDTH, -1);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);

  return scrolled;
}
