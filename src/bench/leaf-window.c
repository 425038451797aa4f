/* The leaf window. Its entries hold what is typed; the leaf is made from them anew at every keystroke and
 * checked, and only a leaf that can stand in a document can be applied. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/leaf-window-private.h"

#include <math.h>

#include "bench/entry.h"
#include "bench/modal.h"
#include "season/document.h"
#include "season/text.h"

static gboolean
has_own (LwLeafWindow *self)
{
  return gtk_check_button_get_active (GTK_CHECK_BUTTON (self->own));
}

/* Why the fields cannot be applied. */
static gboolean
check_all (LwLeafWindow      *self,
           const LwProfile *leaf,
           GError         **error)
{
  g_autofree char *range = NULL;

  if (!lw_profile_check (leaf, error))
    return FALSE;
  if (!has_own (self) || lw_leaf_field_fits (LW_LEAF_MOISTURE, lw_entry_number_of (self->own_number)))
    return TRUE;

  range = lw_leaf_field_range_text (LW_LEAF_MOISTURE);
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, _ ("The batch's fresh moisture must be a number: %s."),
               range);

  return FALSE;
}

void
lw_leaf_window_check (LwLeafWindow *self)
{
  g_autoptr (LwProfile) leaf = NULL;
  g_autoptr (GError) error = NULL;
  double sum;

  /* While the window is being filled. */
  if (self->apply == NULL)
    return;

  leaf = lw_leaf_window_leaf (self);
  sum = lw_profile_share_sum (leaf);
  for (int field = 0; field < LW_PART_SHARE; field++)
    lw_leaf_show_fit (self->numbers[field], (LwLeafField) field, TRUE);
  lw_leaf_show_fit (self->own_number, LW_LEAF_MOISTURE, has_own (self));
  gtk_widget_set_sensitive (self->own_number, has_own (self));

  for (guint i = 0; i < self->parts->len; i++)
    {
      LwPartRow *row = g_ptr_array_index (self->parts, i);

      for (guint k = 0; k < LW_N_PART_FIELDS; k++)
        {
          lw_leaf_show_fit (row->numbers[k], LW_PART_SHARE + k, TRUE);
          lw_leaf_name_widget (row->numbers[k], _ (lw_leaf_field_row (LW_PART_SHARE + k)->label), i);
        }
      lw_leaf_name_widget (row->name, _ ("name"), i);
      lw_leaf_name_widget (row->remove, _ ("Remove"), i);
      gtk_widget_set_sensitive (row->remove, self->parts->len > 1);
    }
  gtk_widget_set_sensitive (self->add, self->parts->len < LW_MAX_PARTS);
  gtk_widget_set_sensitive (self->add_up, sum > 0 && isfinite (sum) && fabs (sum - 1) > LW_SHARE_SLACK);

  gtk_widget_set_sensitive (self->apply, check_all (self, leaf, &error));
  gtk_label_set_label (GTK_LABEL (self->refused), error != NULL ? error->message : "");
}

static void
add_cb (LwLeafWindow *self)
{
  /* A tenth of the leaf, like whole leaf in all else. */
  const LwPart part = { .share = 0.1, .exposure = 1, .area = 1, .cuticle = 1, .ruptured = 0.005 };
  /* Translators: the name of a new part of the leaf, with its number */
  g_autofree char *name = g_strdup_printf (_ ("part %u"), self->parts->len + 1);
  LwPartRow *row = lw_leaf_append_part (self, name, &part);

  lw_leaf_window_check (self);
  gtk_widget_grab_focus (row->name);
}

static void
add_up_cb (LwLeafWindow *self)
{
  g_autoptr (LwProfile) leaf = lw_leaf_window_leaf (self);
  g_autofree double *shares = g_new (double, leaf->n_parts);

  for (guint i = 0; i < leaf->n_parts; i++)
    shares[i] = leaf->parts[i].share;
  lw_shares_add_up (shares, leaf->n_parts);
  for (guint i = 0; i < leaf->n_parts; i++)
    lw_entry_put_number (((LwPartRow *) g_ptr_array_index (self->parts, i))->numbers[0], shares[i]);
}

static void
apply_cb (LwLeafWindow *self)
{
  g_autoptr (LwSeason) with_leaf = lw_edit_put_profile (lw_session_base (self->session), lw_leaf_window_leaf (self));
  double own = has_own (self) ? lw_entry_number_of (self->own_number) : NAN;

  lw_session_edit (self->session, lw_edit_set_fresh_moisture (with_leaf, self->batch, own), _ ("Change the leaf"), NULL);
  gtk_window_close (GTK_WINDOW (self->window));
}

static void
leaf_window_free (LwLeafWindow *self)
{
  g_object_unref (self->session);
  lw_profile_unref (self->profile);
  g_ptr_array_unref (self->parts);
  g_free (self);
}

/* One line of the leaf as a whole: its label, its field, its unit and meaning. */
/* Not so narrow that the window must be as high as lines broken at every word need. */
static GtkWidget *
meaning_new (const char *text)
{
  GtkWidget *label = lw_leaf_label (text, "small");

  gtk_label_set_width_chars (GTK_LABEL (label), 40);

  return label;
}

static void
attach_line (GtkGrid    *grid,
             int         y,
             GtkWidget  *label,
             GtkWidget  *field,
             const char *meaning)
{
  gtk_grid_attach (grid, label, 0, y, 1, 1);
  gtk_grid_attach (grid, field, 1, y, 1, 1);
  gtk_grid_attach (grid, meaning_new (meaning), 2, y, 1, 1);
}

static GtkWidget *
whole_new (LwLeafWindow    *self,
           const LwBatch *batch)
{
  GtkWidget *grid = gtk_grid_new ();
  const LwProfile *leaf = self->profile;
  gboolean own = !isnan (batch->fresh_moisture_pct);
  guint others = 0;
  g_autofree char *shared = NULL;

  for (guint i = 0; i < lw_session_base (self->session)->n_batches; i++)
    others += g_strcmp0 (lw_session_base (self->session)->batches[i]->leaf, leaf->id) == 0;
  others--;
  shared = others == 0
             ? g_strdup ("")
             : g_strdup_printf (ngettext ("%u other batch is of this leaf and changes, too.",
                                          "%u other batches are of this leaf and change, too.", others), others);

  gtk_grid_set_column_spacing (GTK_GRID (grid), 10);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  gtk_widget_add_css_class (grid, "settings");
  self->name = lw_leaf_entry_new (self, 20);
  gtk_editable_set_text (GTK_EDITABLE (self->name), leaf->name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->name), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("name of the leaf"), -1);
  attach_line (GTK_GRID (grid), 0, lw_leaf_label (_ ("name of the leaf"), NULL), self->name, shared);

  for (int field = 0; field < LW_PART_SHARE; field++)
    {
      const LwLeafFieldRow *row = lw_leaf_field_row ((LwLeafField) field);
      g_autofree char *meaning = lw_leaf_meaning ((LwLeafField) field);
      g_autofree char *told = row->unit[0] != '\0' ? g_strdup_printf ("%s. %s", _ (row->unit), meaning)
                                                   : g_steal_pointer (&meaning);

      self->numbers[field] = lw_leaf_number_new (self, (LwLeafField) field,
                                                 *(const double *) ((const char *) leaf + row->offset));
      attach_line (GTK_GRID (grid), 1 + field, lw_leaf_label (_ (row->label), NULL), self->numbers[field], told);
    }

  self->own = gtk_check_button_new_with_label (_ ("fresh moisture of this batch"));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->own), own);
  g_signal_connect_swapped (self->own, "toggled", G_CALLBACK (lw_leaf_window_check), self);
  self->own_number = lw_leaf_number_new (self, LW_LEAF_MOISTURE,
                                         own ? batch->fresh_moisture_pct : leaf->fresh_moisture_pct);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->own_number), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("fresh moisture of this batch alone"), -1);
  attach_line (GTK_GRID (grid), 1 + LW_PART_SHARE, self->own, self->own_number,
               _ ("Where this plucking was wetter or drier than the leaf usually is."));

  return grid;
}

/* What the columns of the table mean, always in sight. */
static GtkWidget *
meanings_new (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_add_css_class (box, "settings");
  for (guint k = 0; k < LW_N_PART_FIELDS; k++)
    {
      g_autofree char *meaning = lw_leaf_meaning (LW_PART_SHARE + k);
      /* Translators: a number's name and what it means */
      g_autofree char *text = g_strdup_printf (_ ("%s: %s"), _ (lw_leaf_field_row (LW_PART_SHARE + k)->label), meaning);

      gtk_box_append (GTK_BOX (box), meaning_new (text));
    }

  return box;
}

static void
add_buttons (LwLeafWindow *self,
             GtkWidget    *box)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *gap = gtk_label_new (NULL), *cancel;

  gtk_widget_set_hexpand (gap, TRUE);
  self->add = lw_modal_button (row, _ ("Add a part"), G_CALLBACK (add_cb), self);
  self->add_up = lw_modal_button (row, _ ("Make shares add up to 1"), G_CALLBACK (add_up_cb), self);
  gtk_box_append (GTK_BOX (row), gap);
  cancel = lw_modal_button (row, _ ("Cancel"), G_CALLBACK (gtk_window_close), self->window);
  gtk_widget_set_tooltip_text (cancel, _ ("Leave the leaf as it is"));
  self->apply = lw_modal_button (row, _ ("Apply"), G_CALLBACK (apply_cb), self);
  gtk_widget_add_css_class (self->apply, "suggested-action");
  gtk_window_set_default_widget (GTK_WINDOW (self->window), self->apply);
  gtk_box_append (GTK_BOX (box), row);
}

static void
window_new (LwLeafWindow *self,
            GtkWindow    *parent)
{
  self->window = lw_modal_new (parent, _ ("Leaf of this batch"));
  g_object_set_data_full (G_OBJECT (self->window), "leaf", self, (GDestroyNotify) leaf_window_free);
}

void
lw_leaf_window_open (GtkWindow *parent,
                     LwSession *session)
{
  const LwBatch *batch = lw_session_batch (session);
  LwProfile *leaf = lw_season_profile (lw_session_base (session), batch->leaf);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  LwLeafWindow *self;

  g_return_if_fail (leaf != NULL);

  self = g_new0 (LwLeafWindow, 1);
  self->session = g_object_ref (session);
  self->profile = lw_profile_ref (leaf);
  self->batch = (guint) lw_session_batch_index (session);
  self->parts = g_ptr_array_new_with_free_func (g_free);
  window_new (self, parent);

  gtk_widget_add_css_class (box, "ask");
  gtk_box_append (GTK_BOX (box), whole_new (self, batch));
  gtk_box_append (GTK_BOX (box), lw_leaf_parts_new (self));
  gtk_box_append (GTK_BOX (box), meanings_new ());
  self->refused = lw_leaf_label ("", "refused");
  gtk_box_append (GTK_BOX (box), self->refused);
  add_buttons (self, box);
  gtk_window_set_child (GTK_WINDOW (self->window), box);

  lw_leaf_window_check (self);
  gtk_window_set_focus (GTK_WINDOW (self->window), self->name);
  gtk_window_present (GTK_WINDOW (self->window));
}
