/* Headings and the names of rows, and the room that they need. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "bench/knock-cell.h"
#include "bench/knock-head.h"
#include "bench/knock-table-private.h"
#include "draw/words.h"
#include "season/text.h"

#define FIRST_MOST 0.42   /* of the table's width */
#define FIRST_LEAST 72    /* px */
#define PAD 14            /* both sides of a name, px */

static GtkWidget *
label_new (const char *text,
           const char *class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, class);

  return label;
}

static GtkWidget *
toggle_new (GtkWidget  *words,
            const char *said)
{
  GtkWidget *button = gtk_toggle_button_new ();

  gtk_widget_set_valign (words, GTK_ALIGN_END);
  gtk_button_set_child (GTK_BUTTON (button), words);
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

  return toggle_new (lw_knock_head_new (label, unit), said);
}

GtkWidget *
lw_knock_corner_new (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), label_new (_ ("Setting"), "knock-outcome"));
  gtk_box_append (GTK_BOX (box), label_new (_ ("one notch more"), "knock-unit"));

  return toggle_new (box, _ ("Settings: in the order of the steps"));
}

/* The setting over its notch and its step: what has no room gives way at its end, the step's name first. */
GtkWidget *
lw_knock_name_new (void)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_ROW_HEADER, NULL);

  gtk_box_append (GTK_BOX (box), label_new ("", "knock-setting"));
  gtk_box_append (GTK_BOX (box), label_new ("", "knock-step"));
  gtk_widget_add_css_class (box, "knock-name");

  return box;
}

/* (transfer full) */
static char *
lower_line (const LwKnockList *list,
            guint              row)
{
  g_autofree char *notch = lw_knock_list_notch (list, row), *step = lw_knock_list_step (list, row);

  /* Translators: what is added to a setting, and its step: "+5 °C · 2 fix in pan" */
  return g_strdup_printf (_ ("%s%s · %s"), LW_KNOCK_SIGN_FIRST, notch, step);
}

void
lw_knock_name_set (GtkWidget         *name,
                   const LwKnockList *list,
                   guint              row)
{
  const char *setting = lw_knock_list_setting (list, row);
  g_autofree char *notch = lw_knock_list_notch (list, row), *step = lw_knock_list_step (list, row);
  /* Translators: a step, one of its settings and what is added to that: "2 fix in pan · wall +5 °C" */
  g_autofree char *all = g_strdup_printf (_ ("%s · %s %s"), step, setting, notch);
  g_autofree char *lower = lower_line (list, row);

  if (g_strcmp0 (all, gtk_widget_get_tooltip_text (name)) == 0)
    return;

  gtk_widget_set_tooltip_text (name, all);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_first_child (name)), setting);
  gtk_label_set_label (GTK_LABEL (gtk_widget_get_last_child (name)), lower);
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
  GtkWidget *name = lw_knock_strip_first (sample);
  int least = MAX (least_width (lw_knock_strip_first (heads)), FIRST_LEAST), first = least;

  for (guint i = 0; i < lw_knock_table_n_rows (self); i++)
    {
      g_autofree char *lower = lower_line (self->list, i);

      first = MAX (first, width_of (gtk_widget_get_first_child (name), lw_knock_list_setting (self->list, i)) + PAD);
      first = MAX (first, width_of (gtk_widget_get_last_child (name), lower) + PAD);
    }
  self->columns.first = MIN (first, MAX ((int) (FIRST_MOST * width), least));

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      int column = MAX (least_width (lw_knock_strip_cell (heads, q)),
                        numbers_width (self, lw_knock_strip_cell (sample, q), q));

      self->columns.starts[q + 1] = self->columns.starts[q] + column;
    }
}
