/* Headings and the names of rows, and the room that they need. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bench/knock-cell.h"
#include "bench/knock-table-private.h"
#include "draw/words.h"
#include "season/text.h"

#define FIRST_MOST 0.45   /* of the table's width */
#define FIRST_LEAST 72    /* px */
#define HEADING_CHARS 8
#define NOTCH_GAP 5
#define PAD 14            /* both sides of a name, px */

static GtkWidget *
label_new (const char *text,
           const char *class,
           gboolean    heading)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), heading);
  gtk_label_set_ellipsize (GTK_LABEL (label), heading ? PANGO_ELLIPSIZE_NONE : PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (heading)
    {
      /* At the right, over the numbers, wherever people read from. */
      gtk_widget_set_direction (label, GTK_TEXT_DIR_LTR);
      gtk_label_set_xalign (GTK_LABEL (label), 1);
      gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_RIGHT);
      gtk_label_set_width_chars (GTK_LABEL (label), HEADING_CHARS);
    }
  gtk_widget_add_css_class (label, class);

  return label;
}

static GtkWidget *
toggle_new (GtkWidget  *upper,
            GtkWidget  *lower,
            const char *said)
{
  GtkWidget *button = gtk_toggle_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_valign (box, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (box), upper);
  gtk_box_append (GTK_BOX (box), lower);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_set_tooltip_text (button, said);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);

  return button;
}

GtkWidget *
lw_knock_heading_new (LwQuantity quantity)
{
  const char *label = _ (lw_quantity_row (quantity)->label), *unit = lw_words_change_unit (quantity);
  /* Translators: an outcome */
  g_autofree char *said = g_strdup_printf (_ ("%s: put the settings that move it most first"), label);

  return toggle_new (label_new (label, "knock-outcome", TRUE), label_new (unit, "knock-unit", TRUE), said);
}

GtkWidget *
lw_knock_corner_new (void)
{
  GtkWidget *upper = label_new (_ ("Setting"), "knock-outcome", FALSE);
  GtkWidget *lower = label_new (_ ("one notch more"), "knock-unit", FALSE);

  return toggle_new (upper, lower, _ ("Settings: in the order of the steps"));
}

/* A long name of a setting gives way, never its notch. */
GtkWidget *
lw_knock_name_new (void)
{
  GtkWidget *upper = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, NOTCH_GAP);
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_ROW_HEADER, NULL);
  GtkWidget *notch = label_new ("", "knock-setting", FALSE);

  gtk_label_set_ellipsize (GTK_LABEL (notch), PANGO_ELLIPSIZE_NONE);
  gtk_box_append (GTK_BOX (upper), label_new ("", "knock-setting", FALSE));
  gtk_box_append (GTK_BOX (upper), notch);
  gtk_box_append (GTK_BOX (box), upper);
  gtk_box_append (GTK_BOX (box), label_new ("", "knock-step", FALSE));
  gtk_widget_add_css_class (box, "knock-name");

  return box;
}

void
lw_knock_name_set (GtkWidget         *name,
                   const LwKnockList *list,
                   guint              row)
{
  GtkWidget *upper = gtk_widget_get_first_child (name);
  const char *setting = lw_knock_list_setting (list, row);
  g_autofree char *notch = lw_knock_list_notch (list, row), *step = lw_knock_list_step (list, row);
  /* Translators: a step, one of its settings and what is added to that: "2 fix in pan · wall +5 °C" */
  g_autofree char *all = g_strdup_printf (_ ("%s · %s %s"), step, setting, notch);
  g_autofree char *shown = g_strconcat (LW_KNOCK_SIGN_FIRST, notch, NULL);

  if (g_strcmp0 (all, gtk_widget_get_tooltip_text (name)) == 0)
    return;

  gtk_widget_set_tooltip_text (name, all);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_first_child (upper)), setting);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_last_child (upper)), shown);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_last_child (name)), step);
  gtk_accessible_update_property (GTK_ACCESSIBLE (name), GTK_ACCESSIBLE_PROPERTY_LABEL, all, -1);
}

static int
width_of (GtkWidget  *as,
          const char *text)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (as, text);
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);

  return width;
}

static int
least_width (GtkWidget *widget)
{
  int least;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);

  return least;
}

/* The numbers' room: that of the one with most letters, for digits are of one width. */
static int
numbers_width (LwKnockTable *self,
               GtkWidget    *cell,
               LwQuantity    quantity)
{
  g_autofree char *longest = g_strdup ("");

  for (guint i = 0; i < lw_knock_table_n_rows (self); i++)
    {
      g_autofree char *number = lw_words_change (quantity, lw_knock_list_row (self->list, i)->effect[quantity]);

      if (g_utf8_strlen (number, -1) > g_utf8_strlen (longest, -1))
        {
          char *spare = longest;

          longest = g_steal_pointer (&number);
          number = spare;
        }
    }

  return width_of (cell, longest) + PAD;
}

void
lw_knock_columns_measure (LwKnockTable *self,
                          int           width)
{
  LwKnockStrip *heads = LW_KNOCK_STRIP (self->heads), *sample = self->slots->pdata[0];
  GtkWidget *name = lw_knock_strip_first (sample), *upper = gtk_widget_get_first_child (name);
  int least = MAX (least_width (lw_knock_strip_first (heads)), FIRST_LEAST), first = least;

  for (guint i = 0; i < lw_knock_table_n_rows (self); i++)
    {
      g_autofree char *notch = lw_knock_list_notch (self->list, i), *step = lw_knock_list_step (self->list, i);
      int setting = width_of (gtk_widget_get_first_child (upper), lw_knock_list_setting (self->list, i));
      int notch_width = width_of (gtk_widget_get_last_child (upper), notch);

      least = MAX (least, notch_width + PAD + FIRST_LEAST / 2);
      first = MAX (first, setting + NOTCH_GAP + notch_width + PAD);
      first = MAX (first, width_of (gtk_widget_get_last_child (name), step) + PAD);
    }
  self->columns.first = MIN (first, MAX ((int) (FIRST_MOST * width), least));

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      int column = MAX (least_width (lw_knock_strip_cell (heads, q)),
                        numbers_width (self, lw_knock_strip_cell (sample, q), q));

      self->columns.starts[q + 1] = self->columns.starts[q] + column;
    }
}
