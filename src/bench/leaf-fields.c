/* The leaf window's fields: entries for numbers and names, and the table of parts. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/leaf-window-private.h"

#include "bench/entry.h"

#include <math.h>
#include <string.h>

#include "season/text.h"

GtkWidget *
lw_leaf_label (const char *text,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 80);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

void
lw_leaf_show_fit (GtkWidget  *entry,
          LwLeafField field,
          gboolean    counts)
{
  if (!counts || lw_leaf_field_fits (field, lw_entry_number_of (entry)))
    {
      gtk_widget_remove_css_class (entry, "error");
      gtk_accessible_reset_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID);
      return;
    }

  gtk_widget_add_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
}

GtkWidget *
lw_leaf_entry_new (LwLeafWindow *self,
           int         width_chars)
{
  GtkWidget *entry = gtk_entry_new ();

  /* A hint of two lines beside it makes it no higher. */
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width_chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), width_chars);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (lw_leaf_window_check), self);

  return entry;
}

char *
lw_leaf_meaning (LwLeafField field)
{
  g_autofree char *range = lw_leaf_field_range_text (field);

  /* Translators: what a number means, and its range */
  return g_strdup_printf (_ ("%s %s."), _ (lw_leaf_field_row (field)->effect), range);
}

GtkWidget *
lw_leaf_number_new (LwLeafWindow *self,
            LwLeafField field,
            double      value)
{
  GtkWidget *entry = lw_leaf_entry_new (self, 9);
  g_autofree char *meaning = lw_leaf_meaning (field);

  gtk_widget_set_tooltip_text (entry, meaning);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (lw_leaf_field_row (field)->label), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, meaning,
                                  -1);
  lw_entry_put_number (entry, value);

  return entry;
}

void
lw_leaf_name_widget (GtkWidget  *widget,
             const char *what,
             guint       part)
{
  /* Translators: a field or button, and of which part of the leaf: "share, part 2" */
  g_autofree char *label = g_strdup_printf (_ ("%s, part %u"), what, part + 1);

  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

/* The leaf that the fields describe, right or not. */
LwProfile *
lw_leaf_window_leaf (LwLeafWindow *self)
{
  LwProfile *leaf = lw_profile_copy_bare (self->profile);

  g_free (leaf->name);
  leaf->name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));
  leaf->fresh_moisture_pct = lw_entry_number_of (self->numbers[LW_LEAF_MOISTURE]);
  leaf->fresh_green = lw_entry_number_of (self->numbers[LW_LEAF_GREEN]);

  for (guint i = 0; i < self->parts->len; i++)
    {
      const LwPartRow *row = g_ptr_array_index (self->parts, i);
      g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (row->name))));
      LwPart part;

      for (guint k = 0; k < LW_N_PART_FIELDS; k++)
        *(double *) ((char *) &part + lw_leaf_field_row (LW_PART_SHARE + k)->offset)
          = lw_entry_number_of (row->numbers[k]);
      lw_profile_add_part (leaf, name, part);
    }

  return leaf;
}

static void
remove_cb (GtkWidget  *button,
           LwLeafWindow *self)
{
  for (guint i = 0; i < self->parts->len; i++)
    if (((LwPartRow *) g_ptr_array_index (self->parts, i))->remove == button)
      {
        const LwPartRow *near = g_ptr_array_index (self->parts, i > 0 ? i - 1 : 1);

        gtk_widget_grab_focus (near->name);
        gtk_grid_remove_row (self->grid, (int) i + 1);
        g_ptr_array_remove_index (self->parts, i);
        break;
      }
  lw_leaf_window_check (self);
}

LwPartRow *
lw_leaf_append_part (LwLeafWindow   *self,
             const char   *name,
             const LwPart *part)
{
  LwPartRow *row = g_new0 (LwPartRow, 1);
  int y = (int) self->parts->len + 1;

  row->name = lw_leaf_entry_new (self, 14);
  gtk_editable_set_text (GTK_EDITABLE (row->name), name);
  gtk_grid_attach (self->grid, row->name, 0, y, 1, 1);
  for (guint k = 0; k < LW_N_PART_FIELDS; k++)
    {
      LwLeafField field = LW_PART_SHARE + k;

      row->numbers[k] = lw_leaf_number_new (self, field,
                                    *(const double *) ((const char *) part + lw_leaf_field_row (field)->offset));
      gtk_grid_attach (self->grid, row->numbers[k], 1 + (int) k, y, 1, 1);
    }
  row->remove = gtk_button_new_from_icon_name ("list-remove-symbolic");
  gtk_widget_set_tooltip_text (row->remove, _ ("Remove this part"));
  g_signal_connect (row->remove, "clicked", G_CALLBACK (remove_cb), self);
  gtk_grid_attach (self->grid, row->remove, 1 + LW_N_PART_FIELDS, y, 1, 1);
  g_ptr_array_add (self->parts, row);

  return row;
}

GtkWidget *
lw_leaf_parts_new (LwLeafWindow *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->grid = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->grid, 6);
  gtk_grid_set_row_spacing (self->grid, 4);
  gtk_widget_add_css_class (GTK_WIDGET (self->grid), "settings");
  gtk_grid_attach (self->grid, lw_leaf_label (_ ("part"), "heading"), 0, 0, 1, 1);
  for (guint k = 0; k < LW_N_PART_FIELDS; k++)
    gtk_grid_attach (self->grid, lw_leaf_label (_ (lw_leaf_field_row (LW_PART_SHARE + k)->label), "heading"),
                     1 + (int) k, 0, 1, 1);
  for (guint i = 0; i < self->profile->n_parts; i++)
    lw_leaf_append_part (self, self->profile->part_names[i], &self->profile->parts[i]);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 260);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), GTK_WIDGET (self->grid));

  return scrolled;
}
