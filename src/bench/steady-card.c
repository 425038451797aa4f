/* The card: what is under way on top, then its parts. An outdated result is pale and said to be outdated. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-card.h"

#include "bench/steady-memory.h"
#include "bench/steady-parts.h"
#include "season/text.h"

struct _LwSteadyCard
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *run;
  GtkWidget *cancel;
  GtkWidget *progress;
  GtkWidget *note;
  GtkWidget *result;    /* the parts that can be outdated */
  GtkWidget *sources;
};

G_DEFINE_FINAL_TYPE (LwSteadyCard, lw_steady_card, GTK_TYPE_WIDGET)

static const char *
note_of (LwSteadyCard *self)
{
  LwSteady *steady = lw_steady_of (self->session);

  if (lw_steady_work (steady) == LW_STEADY_SPREADS)
    return _ ("The batch is being computed many times, each time with other luck …");
  if (lw_steady_work (steady) == LW_STEADY_SEEKS)
    return _ ("Steadier settings are being looked for …");
  if (!lw_steady_can (steady))
    return _ ("The batch has no steps yet: there is nothing to compute. The + over the panels adds one.");
  if (lw_steady_failed (steady))
    return _ ("The batch cannot be computed as it stands.");
  if (lw_steady_result (steady) == NULL)
    return _ ("No two batches meet the same leaf, weather and hand. How does this one come out when they vary as told below?");

  return lw_steady_is_fresh (steady) ? _ ("The bands in the panels: nine in ten samples, half of them, their median.")
                                     : _ ("Outdated: from before a change. Compute it again.");
}

static void
mark (GtkWidget *part,
      gboolean   outdated)
{
  if (outdated)
    gtk_widget_add_css_class (part, "stale");
  else
    gtk_widget_remove_css_class (part, "stale");
}

static void
refresh (LwSteadyCard *self)
{
  LwSteady *steady = lw_steady_of (self->session);
  gboolean works = lw_steady_work (steady) != LW_STEADY_RESTS, focused = gtk_widget_has_focus (self->cancel);
  gboolean outdated = lw_steady_result (steady) != NULL && !lw_steady_is_fresh (steady);
  guint n = lw_steady_ask (steady)->samples;
  g_autofree char *label = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Compute %u sample", "Compute %u samples", n), n);

  gtk_button_set_label (GTK_BUTTON (self->run), label);
  gtk_widget_set_visible (self->run, !works);
  gtk_widget_set_sensitive (self->run, lw_steady_can (steady));
  gtk_widget_set_visible (self->cancel, works);
  if (!works && focused)
    gtk_widget_grab_focus (self->run);
  gtk_widget_set_visible (self->progress, works);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), CLAMP (lw_steady_done (steady), 0, 1));
  gtk_label_set_label (GTK_LABEL (self->note), note_of (self));
  mark (self->result, outdated);
  mark (self->sources, outdated);
}

static void
asked_cb (LwSteadyCard *self)
{
  lw_steady_memory_keep (lw_steady_of (self->session));
  refresh (self);
}

/* The keyboard goes on from what takes the button's place. */
static void
run_cb (LwSteadyCard *self)
{
  gboolean focused = gtk_widget_has_focus (self->run);

  lw_steady_spread (lw_steady_of (self->session));
  if (focused)
    gtk_widget_grab_focus (self->cancel);
}

static void
cancel_cb (LwSteadyCard *self)
{
  lw_steady_cancel (lw_steady_of (self->session));
}

static void
lw_steady_card_dispose (GObject *object)
{
  LwSteadyCard *self = LW_STEADY_CARD (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_steady_card_parent_class)->dispose (object);
}

static void
lw_steady_card_class_init (LwSteadyCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_steady_card_dispose;

  gtk_widget_class_set_css_name (widget_class, "steadycard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
add (LwSteadyCard *self,
     GtkWidget    *child)
{
  gtk_widget_set_parent (child, GTK_WIDGET (self));

  return child;
}

static void
lw_steady_card_init (LwSteadyCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Steady through the weather"), -1);

  add (self, lw_steady_label (_ ("Steady through the weather"), "steady-title"));
  self->run = add (self, gtk_button_new ());
  self->cancel = add (self, gtk_button_new_with_label (_ ("Cancel")));
  self->progress = add (self, gtk_progress_bar_new ());
  self->note = add (self, lw_steady_label ("", "steady-note"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("How far it has come"), -1);
  gtk_widget_set_tooltip_text (self->cancel, _ ("Leave off; what was there stays"));
}

GtkWidget *
lw_steady_card_new (LwSession *session)
{
  LwSteadyCard *self = g_object_new (LW_TYPE_STEADY_CARD, NULL);
  LwSteady *steady = lw_steady_of (session);

  self->session = g_object_ref (session);
  lw_steady_memory_recall (steady);
  self->result = add (self, lw_steady_result_new (session));
  self->sources = add (self, lw_steady_sources_new (session));
  add (self, lw_steady_better_new (session));
  add (self, lw_steady_amounts_new (session));

  g_signal_connect_object (self->run, "clicked", G_CALLBACK (run_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->cancel, "clicked", G_CALLBACK (cancel_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (steady, "asked", G_CALLBACK (asked_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (steady, "work", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (steady, "result", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);

  return GTK_WIDGET (self);
}
