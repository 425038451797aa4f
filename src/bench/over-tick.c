/* The tick, and beside it the letter: so the list is the key to the letters at the lines' ends. It shows what the
 * overlays are and holds no truth of its own. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-tick.h"

#include "season/text.h"

struct _LwOverTick
{
  GtkCheckButton parent_instance;

  LwOverlays *overlays;
  GtkWidget *letter;
  LwSeason *season;  /* (nullable) until it is set */
  char *path;        /* (nullable) */
  guint at;
  gboolean updating; /* it follows the overlays, not the other way */
};

G_DEFINE_FINAL_TYPE (LwOverTick, lw_over_tick, GTK_TYPE_CHECK_BUTTON)

static void
show (LwOverTick *self)
{
  const LwLaid *laid = self->season == NULL
                         ? NULL : lw_overlays_get (self->overlays, self->path, self->season->batches[self->at]->name);
  g_autofree char *tag = laid != NULL ? lw_laid_tag (laid) : g_strdup ("");
  /* Translators: the letter of a batch that is laid over */
  g_autofree char *said = laid != NULL ? g_strdup_printf (_ ("Laid over as %s"), tag) : g_strdup ("");

  self->updating = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self), laid != NULL);
  self->updating = FALSE;
  gtk_label_set_label (GTK_LABEL (self->letter), tag);
  gtk_widget_set_visible (self->letter, laid != NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, said, -1);
}

static void
toggled_cb (LwOverTick *self)
{
  if (!self->updating && self->season != NULL)
    lw_overlays_lay (self->overlays, self->season, self->path, self->at,
                     gtk_check_button_get_active (GTK_CHECK_BUTTON (self)));
}

void
lw_over_tick_set (LwOverTick *self,
                  LwSeason   *season,
                  const char *path,
                  guint       at)
{
  /* Translators: what a tick does; a batch */
  g_autofree char *words = g_strdup_printf (_ ("Lay over: %s"), season->batches[at]->name);
  LwSeason *before = self->season;

  self->season = lw_season_ref (season);
  g_clear_pointer (&before, lw_season_unref);
  if (path != self->path)
    {
      g_free (self->path);
      self->path = g_strdup (path);
    }
  self->at = at;
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  show (self);
}

void
lw_over_tick_toggle (LwOverTick *self)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self),
                               !gtk_check_button_get_active (GTK_CHECK_BUTTON (self)));
}

static void
lw_over_tick_dispose (GObject *object)
{
  LwOverTick *self = LW_OVER_TICK (object);

  g_clear_pointer (&self->season, lw_season_unref);
  g_clear_pointer (&self->path, g_free);
  g_clear_object (&self->overlays);

  G_OBJECT_CLASS (lw_over_tick_parent_class)->dispose (object);
}

static void
lw_over_tick_class_init (LwOverTickClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_over_tick_dispose;
}

static void
lw_over_tick_init (LwOverTick *self)
{
  self->letter = gtk_label_new ("");
  gtk_widget_add_css_class (self->letter, "over-letter");
  gtk_check_button_set_child (GTK_CHECK_BUTTON (self), self->letter);
  /* Under the tick, where it takes nothing from the names. */
  if (GTK_IS_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))))
    gtk_orientable_set_orientation (GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))),
                                    GTK_ORIENTATION_VERTICAL);
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  g_signal_connect (self, "toggled", G_CALLBACK (toggled_cb), NULL);
}

GtkWidget *
lw_over_tick_new (LwOverlays *overlays)
{
  LwOverTick *self = g_object_new (LW_TYPE_OVER_TICK, NULL);

  self->overlays = g_object_ref (overlays);
  g_signal_connect_object (overlays, "changed", G_CALLBACK (show), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
