/* The fields of the search. One that cannot be understood says so and is passed over. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/find-window-private.h"

#include <math.h>
#include <stdlib.h>

#include "bench/compat.h"
#include "season/text.h"

#define PLACE_FOLDER 1
#define LEAST_CHARS 5  /* of an entry, where the window is too narrow for all of it */

gboolean
lw_find_in_folder (LwFindWindow *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->place)) == PLACE_FOLDER;
}

static const char *
text_of (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

/* Marks an entry as not understood, by more than its colour; the foot says why of the first. */
static void
mark (LwFindWindow *self,
      GtkWidget    *entry,
      gboolean      good,
      const char   *usual,
      const char   *wrong)
{
  if (!good && self->wrong == NULL)
    self->wrong = wrong;
  if (good)
    gtk_widget_remove_css_class (entry, "error");
  else
    gtk_widget_add_css_class (entry, "error");
  gtk_entry_set_icon_from_icon_name (GTK_ENTRY (entry), GTK_ENTRY_ICON_SECONDARY, good ? NULL
                                                                                     : "dialog-warning-symbolic");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               good ? GTK_ACCESSIBLE_INVALID_FALSE : GTK_ACCESSIBLE_INVALID_TRUE, -1);
  gtk_widget_set_tooltip_text (entry, good ? usual : wrong);
}

/* `otherwise` if there is nothing, or less than `least`. */
static double
number_of (LwFindWindow *self,
           GtkWidget    *entry,
           double        least,
           double        otherwise)
{
  g_autofree char *text = g_strstrip (g_strdup (text_of (entry)));
  char *end;
  double number = g_strtod (text, &end); /* the user's comma, and the point */
  gboolean some = *text != '\0', is_one = *end == '\0' && isfinite (number), good = is_one && (!some || number >= least);

  mark (self, entry, good, NULL, is_one ? _ ("The highest outcome is under the lowest.") : _ ("The outcome is no number."));

  return some && good ? number : otherwise;
}

/* `until`: the moment after the date, if that is after `least_s`. */
static gint64
date_of (LwFindWindow *self,
         GtkWidget    *entry,
         gboolean      until,
         gint64        least_s,
         gint64        otherwise)
{
  g_autofree char *text = g_strstrip (g_strdup (text_of (entry)));
  gint64 from_s, until_s;
  gboolean some = *text != '\0', is_one = !some || lw_find_date (text, &from_s, &until_s);
  gboolean good = is_one && (!some || !until || until_s > least_s);

  mark (self, entry, good, _ ("Year, month and day, as in 2026-04-12; or only the year, or year and month"),
        is_one ? _ ("The last date is before the first.") : _ ("The date is none: write it as 2026-04-12."));

  return !some || !good ? otherwise : until ? until_s : from_s;
}

void
lw_find_fields_ask (LwFindWindow *self)
{
  guint column = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->sort));
  gboolean downwards = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->downwards));
  LwSort sort = lw_find_sort_of (column, downwards);
  LwFind find;

  lw_find_init (&find);
  lw_find_set (&find, text_of (self->words), text_of (self->leaf), text_of (self->tea));
  self->wrong = NULL;
  find.from_s = date_of (self, self->from, FALSE, G_MININT64, G_MININT64);
  find.until_s = date_of (self, self->until, TRUE, find.from_s, G_MAXINT64);
  find.made = (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->made)) - 1;
  find.outcome = (int) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->outcome)) - 1;
  find.low = number_of (self, self->low, -INFINITY, -INFINITY);
  find.high = number_of (self, self->high, find.low, INFINITY);
  gtk_widget_set_sensitive (self->low, find.outcome >= 0);
  gtk_widget_set_sensitive (self->high, find.outcome >= 0);
  lw_finder_ask (self->finder, &find, &sort);
}

static void
sort_cb (LwFindWindow *self)
{
  if (self->sorting)
    return;

  self->sorting = TRUE;
  lw_find_columns_show_sort (self, gtk_drop_down_get_selected (GTK_DROP_DOWN (self->sort)),
                             gtk_check_button_get_active (GTK_CHECK_BUTTON (self->downwards)));
  self->sorting = FALSE;
  lw_find_fields_ask (self);
}

static void
place_cb (LwFindWindow *self)
{
  gtk_widget_set_sensitive (self->folder, lw_find_in_folder (self));
  gtk_widget_set_sensitive (self->choose, lw_find_in_folder (self));
  lw_find_window_look (self);
}

static void
folder_chosen_cb (GFile   *folder,
                  gpointer data)
{
  g_autoptr (GtkWindow) window = data;
  LwFindWindow *self = g_object_get_data (G_OBJECT (window), "find");
  g_autofree char *path = folder != NULL ? g_file_get_path (folder) : NULL;
  g_autofree char *shown = path != NULL ? g_filename_display_name (path) : NULL;

  if (self == NULL || shown == NULL)
    return;

  gtk_editable_set_text (GTK_EDITABLE (self->folder), shown);
  lw_find_window_look (self);
}

static void
choose_cb (LwFindWindow *self)
{
  g_autoptr (GFile) folder = g_file_new_for_path (text_of (self->folder));

  lw_compat_ask_folder (GTK_WINDOW (self->window), folder, folder_chosen_cb, g_object_ref (self->window));
}

static GtkWidget *
row_new (GtkWidget *box)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_box_append (GTK_BOX (box), row);

  return row;
}

/* The widget behind its name, which is also what a screen reader says. */
static GtkWidget *
named (GtkWidget  *row,
       const char *name,
       const char *spoken,
       GtkWidget  *widget)
{
  gtk_box_append (GTK_BOX (row), gtk_label_new (name));
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_box_append (GTK_BOX (row), widget);

  return widget;
}

static GtkWidget *
entry_new (LwFindWindow *self,
           GtkWidget    *row,
           const char   *name,
           const char   *spoken,
           int           chars)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), MIN (chars, LEAST_CHARS));
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), chars);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (lw_find_fields_ask), self);

  return named (row, name, spoken, entry);
}

static GtkWidget *
choice_new (GtkWidget         *row,
            const char        *name,
            const char *const *choices)
{
  GtkWidget *choice = named (row, name, name, gtk_drop_down_new_from_strings (choices));

  /* GTK 4.8 gives the focus to the button in it, and that has no name. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_first_child (choice)), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);

  return choice;
}

static void
add_place (LwFindWindow *self,
           GtkWidget    *box)
{
  const char *places[] = { _ ("this season"), _ ("a folder and those in it"), NULL };
  GtkWidget *row = row_new (box);

  self->place = choice_new (row, _ ("Look in"), places);
  self->folder = gtk_entry_new ();
  gtk_widget_set_hexpand (self->folder, TRUE);
  gtk_widget_set_tooltip_text (self->folder, _ ("Return looks through it"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->folder), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Folder to search"), -1);
  g_signal_connect_swapped (self->folder, "activate", G_CALLBACK (lw_find_window_look), self);
  gtk_box_append (GTK_BOX (row), self->folder);
  self->choose = gtk_button_new_with_label (_ ("Choose…"));
  g_signal_connect_swapped (self->choose, "clicked", G_CALLBACK (choose_cb), self);
  gtk_box_append (GTK_BOX (row), self->choose);
  gtk_widget_set_sensitive (self->folder, FALSE);
  gtk_widget_set_sensitive (self->choose, FALSE);
}

static void
add_what (LwFindWindow *self,
          GtkWidget    *box)
{
  const char *states[] = { _ ("planned or made"), _ ("planned"), _ ("made"), NULL };
  GtkWidget *row = row_new (box);

  self->leaf = entry_new (self, row, _ ("Leaf"), _ ("Leaf"), 12);
  self->tea = entry_new (self, row, _ ("Kind of tea"), _ ("Kind of tea"), 12);
  self->from = entry_new (self, row, _ ("From"), _ ("From this date"), 11);
  self->until = entry_new (self, row, _ ("to"), _ ("To this date"), 11);
  /* Translators: how to write a date */
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->from), _ ("as 2026-04-12"));
  self->made = choice_new (row, _ ("State"), states);
}

static void
add_outcome (LwFindWindow *self,
             GtkWidget    *box)
{
  g_autoptr (GStrvBuilder) outcomes = g_strv_builder_new ();
  g_auto (GStrv) all = NULL, sorts = lw_find_sort_names ();
  GtkWidget *row = row_new (box);

  g_strv_builder_add (outcomes, _ ("any outcome"));
  for (int i = 0; i < LW_N_QUANTITIES; i++)
    {
      const LwQuantityRow *of = lw_quantity_row ((LwQuantity) i);
      /* Translators: an outcome and its unit */
      g_autofree char *name = of->unit[0] != '\0' ? g_strdup_printf (_ ("%s, %s"), _ (of->label), _ (of->unit))
                                                  : g_strdup (_ (of->label));

      g_strv_builder_add (outcomes, name);
    }
  g_strv_builder_add (outcomes, _ ("Finished weight, kg"));
  all = g_strv_builder_end (outcomes);

  self->outcome = choice_new (row, _ ("Outcome"), (const char *const *) all);
  self->low = entry_new (self, row, _ ("from"), _ ("Outcome at least"), 6);
  self->high = entry_new (self, row, _ ("to"), _ ("Outcome at most"), 6);
  self->sort = choice_new (row, _ ("Sort by"), (const char *const *) sorts);
  self->downwards = gtk_check_button_new_with_label (_ ("largest or latest first"));
  gtk_box_append (GTK_BOX (row), self->downwards);
}

GtkWidget *
lw_find_fields_new (LwFindWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->words = gtk_search_entry_new ();
  g_object_set (self->words, "placeholder-text", _ ("Words of the name, leaf, kind of tea, date or a note"), NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->words), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Words to find"), -1);
  g_signal_connect_swapped (self->words, "search-changed", G_CALLBACK (lw_find_fields_ask), self);
  gtk_box_append (GTK_BOX (box), self->words);
  add_place (self, box);
  add_what (self, box);
  add_outcome (self, box);
  gtk_widget_set_sensitive (self->low, FALSE);
  gtk_widget_set_sensitive (self->high, FALSE);

  g_signal_connect_swapped (self->place, "notify::selected", G_CALLBACK (place_cb), self);
  g_signal_connect_swapped (self->made, "notify::selected", G_CALLBACK (lw_find_fields_ask), self);
  g_signal_connect_swapped (self->outcome, "notify::selected", G_CALLBACK (lw_find_fields_ask), self);
  g_signal_connect_swapped (self->sort, "notify::selected", G_CALLBACK (sort_cb), self);
  g_signal_connect_swapped (self->downwards, "toggled", G_CALLBACK (sort_cb), self);

  return box;
}
