/* Keeping what was found: a new leaf for each that was fitted, and batches that are to be of it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-window-private.h"

#include "season/document.h"
#include "season/text.h"

#define SAID_DOWN 8   /* to be in line with the button */
#define MOST_HIGH 116 /* of the names; then they scroll */

/* (transfer none) (nullable) what the leaf was saved as, where the season still has it. */
static const char *
kept_for (LwFitWindow *self,
          const char  *leaf)
{
  const LwSeason *base = lw_session_base (self->session);

  for (guint i = 0; i < self->kept->len; i++)
    if (g_strcmp0 (self->leaves->pdata[i], leaf) == 0 && lw_season_profile (base, self->kept->pdata[i]) != NULL)
      return self->kept->pdata[i];

  return NULL;
}

static gboolean
is_kept (LwFitWindow *self)
{
  return self->kept->len > 0 && kept_for (self, self->leaves->pdata[0]) != NULL;
}

/* Why it cannot be saved as `name`; NULL where it can. */
static const char *
refused (LwFitWindow *self,
         const char  *name)
{
  const LwSeason *base = lw_session_base (self->session);

  if (*name == '\0')
    return _ ("The new leaf needs a name.");
  if (g_utf8_strlen (name, -1) > LW_MAX_TEXT)
    return _ ("That name is too long.");
  for (guint i = 0; i < base->n_profiles; i++)
    if (g_str_equal (base->profiles[i]->name, name))
      return _ ("Another leaf has that name.");

  return base->n_profiles + self->leaves->len > LW_MAX_PROFILES ? _ ("The season holds as many leaves as it can.") : NULL;
}

/* (transfer full) */
static char *
name_in (GtkWidget *entry)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
}

/* Why nothing can be saved now; NULL where it can. */
static const char *
why_not (LwFitWindow *self)
{
  if (!self->fit->enough)
    return _ ("Nothing can be saved: not enough data.");
  if (is_kept (self))
    return _ ("Saved as a new leaf. Undo takes it back.");

  for (guint i = 0; i < self->entries->len; i++)
    {
      g_autofree char *name = name_in (self->entries->pdata[i]);
      const char *why = refused (self, name);

      if (why != NULL)
        return why;
      for (guint k = 0; k < i; k++)
        {
          g_autofree char *other = name_in (self->entries->pdata[k]);

          if (g_str_equal (name, other))
            return _ ("Two of the new leaves have the same name.");
        }
    }

  return NULL;
}

/* (transfer full) ids for lw_edit_set_leaves: of the batch in hand alone, or of all planned ones. `n` is how many. */
static const char **
wanted (LwFitWindow *self,
        gboolean     hand,
        guint       *n)
{
  const LwSeason *base = lw_session_base (self->session);
  const char **ids = g_new0 (const char *, MAX (base->n_batches, 1));

  *n = 0;
  for (guint i = 0; i < base->n_batches; i++)
    if (hand ? (int) i == lw_session_batch_index (self->session) : !base->batches[i]->made)
      {
        ids[i] = kept_for (self, base->batches[i]->leaf);
        *n += ids[i] != NULL ? 1 : 0;
      }

  return ids;
}

static void
show_uses (LwFitWindow *self)
{
  const LwBatch *hand = lw_session_batch (self->session);
  guint of_hand, planned;
  g_autofree const char **one = wanted (self, TRUE, &of_hand), **all = wanted (self, FALSE, &planned);
  g_autofree char *hand_label = g_strdup_printf (_ ("Use it for “%s”"), hand != NULL ? hand->name : "");
  g_autofree char *planned_label = g_strdup_printf (ngettext ("Use it for the %u planned batch of this leaf",
                                                              "Use it for the %u planned batches of this leaf", planned),
                                                    planned);

  gtk_widget_set_visible (self->uses, is_kept (self));
  gtk_button_set_label (GTK_BUTTON (self->use_hand), hand_label);
  gtk_button_set_label (GTK_BUTTON (self->use_planned), planned_label);
  gtk_widget_set_sensitive (self->use_hand, of_hand > 0);
  gtk_widget_set_sensitive (self->use_planned, planned > 0);
}

static void
check (LwFitWindow *self)
{
  const char *why;

  if (self->fit == NULL)
    return;

  why = why_not (self);
  gtk_widget_set_sensitive (self->save, why == NULL);
  gtk_widget_set_sensitive (self->names, self->fit->enough && !is_kept (self));
  gtk_label_set_label (GTK_LABEL (self->keep_said), why != NULL ? why : "");
}

void
lw_fit_keep_refresh (LwFitWindow *self)
{
  if (self->fit == NULL)
    return;

  check (self);
  show_uses (self);
}

void
lw_fit_keep_show (LwFitWindow *self)
{
  g_clear_pointer (&self->leaves, g_ptr_array_unref);
  self->leaves = lw_fit_leaves (self->fit);
  g_ptr_array_set_size (self->kept, 0);
  g_ptr_array_set_size (self->entries, 0);
  lw_fit_clear (self->names);

  for (guint i = 0; i < self->leaves->len; i++)
    {
      const LwProfile *from = lw_season_profile (self->fit->season, self->leaves->pdata[i]);
      g_autofree char *name = lw_fit_new_name (lw_session_base (self->session), from);
      g_autofree char *label = g_strdup_printf (_ ("name of the new leaf, from “%s”"), from->name);
      GtkWidget *entry = gtk_entry_new ();

      gtk_editable_set_text (GTK_EDITABLE (entry), name);
      gtk_editable_set_width_chars (GTK_EDITABLE (entry), 24);
      gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
      gtk_widget_set_tooltip_text (entry, label);
      g_signal_connect_swapped (entry, "changed", G_CALLBACK (check), self);
      gtk_box_append (GTK_BOX (self->names), entry);
      g_ptr_array_add (self->entries, entry);
    }
  lw_fit_keep_refresh (self);
}

/* By the user's clock, as a maker would write the day down. */
static gint64
now (void)
{
  g_autoptr (GDateTime) here = g_date_time_new_now_local ();

  return g_date_time_to_unix (here) + g_date_time_get_utc_offset (here) / G_USEC_PER_SEC;
}

static void
save_cb (LwFitWindow *self)
{
  const LwSeason *base = lw_session_base (self->session);
  g_auto (GStrv) names = g_new0 (char *, self->entries->len + 1);
  LwFitSaveAs as = { .when_s = now () };
  LwSeason *next;

  if (self->fit == NULL || why_not (self) != NULL)
    return;

  for (guint i = 0; i < self->entries->len; i++)
    names[i] = name_in (self->entries->pdata[i]);
  as.names = (const char *const *) names;
  next = lw_fit_save (self->fit, base, &as);
  g_ptr_array_set_size (self->kept, 0);
  for (guint i = base->n_profiles; i < next->n_profiles; i++)
    g_ptr_array_add (self->kept, g_strdup (next->profiles[i]->id));
  lw_session_edit (self->session, next, _ ("Save the fitted leaf"), NULL);
  gtk_widget_grab_focus (gtk_widget_is_sensitive (self->use_hand) ? self->use_hand : self->use_planned);
}

static void
use (LwFitWindow *self,
     gboolean     hand)
{
  guint n;
  g_autofree const char **ids = wanted (self, hand, &n);

  if (n > 0)
    lw_session_edit (self->session, lw_edit_set_leaves (lw_session_base (self->session), ids), _ ("Use the fitted leaf"),
                     NULL);
}

static void
hand_cb (LwFitWindow *self)
{
  use (self, TRUE);
}

static void
planned_cb (LwFitWindow *self)
{
  use (self, FALSE);
}

GtkWidget *
lw_fit_keep_new (LwFitWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->names = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), MOST_HIGH);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->names);
  gtk_box_append (GTK_BOX (row), scrolled);
  self->save = lw_fit_button (self, row, _ ("Save as a new leaf"), G_CALLBACK (save_cb));
  gtk_widget_set_valign (self->save, GTK_ALIGN_START);
  self->keep_said = lw_fit_label ("", NULL);
  gtk_widget_set_hexpand (self->keep_said, TRUE);
  gtk_widget_set_valign (self->keep_said, GTK_ALIGN_START);
  gtk_widget_set_margin_top (self->keep_said, SAID_DOWN);
  gtk_box_append (GTK_BOX (row), self->keep_said);
  gtk_box_append (GTK_BOX (box), row);

  self->uses = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->use_hand = lw_fit_button (self, self->uses, "", G_CALLBACK (hand_cb));
  self->use_planned = lw_fit_button (self, self->uses, "", G_CALLBACK (planned_cb));
  gtk_widget_set_visible (self->uses, FALSE);
  gtk_box_append (GTK_BOX (box), self->uses);
  gtk_widget_add_css_class (box, "fit-keep");

  return box;
}
