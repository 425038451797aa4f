/* The window: a row for each field, at every keystroke a look at whether it all may stand. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/facts.h"

#include <string.h>

#include "bench/entry.h"
#include "bench/modal.h"
#include "season/notation.h"
#include "season/text.h"

#define NOTE_HEIGHT 84
#define MOST_HEIGHT 440
#define MEANING_CHARS 34
#define LABEL_CHARS 15

struct _LwFacts
{
  GtkWidget *window;
  GtkWidget *grid;
  GtkWidget *refused;
  GtkWidget *apply;
  LwFactsRead read;
  gpointer data;
  GDestroyNotify free_data;
  int rows;
  gboolean touched;   /* by the maker; what was only looked at is no edit */
};

static void
check (LwFacts *self)
{
  g_autoptr (GError) error = NULL;

  /* While the window is being filled. */
  if (self->apply == NULL)
    return;

  self->touched = TRUE;
  gtk_widget_set_sensitive (self->apply, self->read (self->data, FALSE, &error));
  gtk_label_set_label (GTK_LABEL (self->refused), error != NULL ? error->message : "");
}

static void
apply_cb (LwFacts *self)
{
  if (!self->touched || self->read (self->data, TRUE, NULL))
    gtk_window_close (GTK_WINDOW (self->window));
}

static void
facts_free (LwFacts *self)
{
  self->free_data (self->data);
  g_free (self);
}

static GtkWidget *
label_new (const char *text,
           const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

LwFacts *
lw_facts_new (GtkWindow     *parent,
              const char    *title,
              LwFactsRead    read,
              gpointer       data,
              GDestroyNotify free_data)
{
  LwFacts *self = g_new0 (LwFacts, 1);

  self->read = read;
  self->data = data;
  self->free_data = free_data;
  self->window = lw_modal_new (parent, title);
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 10);
  gtk_grid_set_row_spacing (GTK_GRID (self->grid), 6);
  gtk_widget_add_css_class (self->grid, "settings");
  g_object_set_data_full (G_OBJECT (self->window), "facts", self, (GDestroyNotify) facts_free);

  return self;
}

void
lw_facts_present (LwFacts *self,
                  gboolean is_new)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *scrolled = gtk_scrolled_window_new ();
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_widget_add_css_class (box, "ask");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), MOST_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->grid);
  gtk_box_append (GTK_BOX (box), scrolled);
  self->refused = label_new ("", "refused");
  gtk_box_append (GTK_BOX (box), self->refused);

  gtk_widget_set_halign (row, GTK_ALIGN_END);
  lw_modal_button (row, _ ("Cancel"), G_CALLBACK (gtk_window_close), self->window);
  self->apply = lw_modal_button (row, _ ("Apply"), G_CALLBACK (apply_cb), self);
  gtk_widget_add_css_class (self->apply, "suggested-action");
  gtk_window_set_default_widget (GTK_WINDOW (self->window), self->apply);
  gtk_box_append (GTK_BOX (box), row);
  gtk_window_set_child (GTK_WINDOW (self->window), box);

  check (self);
  self->touched = is_new;
  gtk_window_present (GTK_WINDOW (self->window));
}

/* Puts the field into the next row, `cell` is what stands there: the field or what holds it. */
static GtkWidget *
add (LwFacts    *self,
     const char *name,
     GtkWidget  *cell,
     GtkWidget  *field,
     const char *meaning)
{
  GtkWidget *label = label_new (name, NULL);

  gtk_label_set_width_chars (GTK_LABEL (label), LABEL_CHARS);
  gtk_widget_set_valign (cell, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (cell, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (GTK_GRID (self->grid), label, 0, self->rows, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), cell, 1, self->rows, meaning != NULL ? 1 : 2, 1);
  if (meaning != NULL)
    {
      GtkWidget *told = label_new (meaning, "small");

      gtk_label_set_width_chars (GTK_LABEL (told), MEANING_CHARS);
      gtk_label_set_max_width_chars (GTK_LABEL (told), MEANING_CHARS);
      gtk_grid_attach (GTK_GRID (self->grid), told, 2, self->rows, 1, 1);
      gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, meaning, -1);
    }
  self->rows++;

  return field;
}

static GtkWidget *
entry_new (LwFacts    *self,
           const char *text)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), text != NULL ? text : "");
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 24);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (check), self);

  return entry;
}

GtkWidget *
lw_facts_add_text (LwFacts    *self,
                   const char *name,
                   const char *text,
                   const char *meaning)
{
  GtkWidget *entry = entry_new (self, text);

  return add (self, name, entry, entry, meaning);
}

GtkWidget *
lw_facts_add_number (LwFacts    *self,
                     const char *name,
                     double      value,
                     const char *meaning)
{
  GtkWidget *entry = entry_new (self, NULL);

  lw_entry_put_number (entry, value);

  return add (self, name, entry, entry, meaning);
}

/* The document's notation with a blank for its T. */
static char *
say_moment (gint64 when_s)
{
  char *text = lw_time_text (when_s);

  return g_strdelimit (text, "T", ' ');
}

gboolean
lw_facts_moment (GtkWidget *field,
                 gint64    *when_s)
{
  g_autofree char *text = lw_facts_text (field);

  return lw_time_parse (g_strdelimit (text, " ", 'T'), when_s);
}

/* The day that the calendar shows, with the time that stands in the field. */
static void
day_cb (GtkCalendar *calendar,
        GtkWidget   *entry)
{
  g_autoptr (GDateTime) day = gtk_calendar_get_date (calendar);
  g_autofree char *date = g_date_time_format (day, "%Y-%m-%d"), *was = lw_facts_text (entry);
  const char *time = strpbrk (was, " T");
  g_autofree char *text = g_strconcat (date, " ", time != NULL ? time + 1 : "12:00", NULL);

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

/* Opens on the day that stands in the field. */
static void
open_cb (GtkWidget *popover,
         GtkWidget *entry)
{
  GtkWidget *calendar = gtk_popover_get_child (GTK_POPOVER (popover));
  g_autoptr (GDateTime) day = NULL;
  gint64 when_s;

  if (!lw_facts_moment (entry, &when_s))
    return;

  day = g_date_time_new_from_unix_utc (when_s);
  g_signal_handlers_block_by_func (calendar, day_cb, entry);
  gtk_calendar_select_day (GTK_CALENDAR (calendar), day);
  g_signal_handlers_unblock_by_func (calendar, day_cb, entry);
}

GtkWidget *
lw_facts_add_moment (LwFacts    *self,
                     const char *name,
                     gint64      when_s,
                     const char *meaning)
{
  static const char *const signals[] = { "day-selected", "next-month", "prev-month", "next-year", "prev-year" };
  g_autofree char *text = say_moment (when_s);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4), *entry = entry_new (self, text);
  GtkWidget *button = gtk_menu_button_new (), *popover = gtk_popover_new (), *calendar = gtk_calendar_new ();

  gtk_popover_set_child (GTK_POPOVER (popover), calendar);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), popover);
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "x-office-calendar-symbolic");
  gtk_widget_set_tooltip_text (button, _ ("Choose the day"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Choose the day"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (popover), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (calendar), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  for (guint i = 0; i < G_N_ELEMENTS (signals); i++)
    g_signal_connect (calendar, signals[i], G_CALLBACK (day_cb), entry);
  g_signal_connect (popover, "map", G_CALLBACK (open_cb), entry);
  gtk_widget_set_hexpand (entry, TRUE);
  /* From the right its day and time would change places. */
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (entry))), GTK_TEXT_DIR_LTR);
  gtk_box_append (GTK_BOX (box), entry);
  gtk_box_append (GTK_BOX (box), button);

  return add (self, name, box, entry, meaning);
}

GtkWidget *
lw_facts_add_tick (LwFacts    *self,
                   const char *name,
                   gboolean    on,
                   const char *meaning)
{
  GtkWidget *tick = gtk_check_button_new ();

  gtk_check_button_set_active (GTK_CHECK_BUTTON (tick), on);
  g_signal_connect_swapped (tick, "toggled", G_CALLBACK (check), self);

  return add (self, name, tick, tick, meaning);
}

GtkWidget *
lw_facts_add_note (LwFacts    *self,
                   const char *name,
                   const char *text)
{
  GtkWidget *scrolled = gtk_scrolled_window_new (), *view = gtk_text_view_new ();
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (view));

  gtk_text_buffer_set_text (buffer, text != NULL ? text : "", -1);
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (view), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (view), FALSE);
  gtk_text_view_set_top_margin (GTK_TEXT_VIEW (view), 6);
  gtk_text_view_set_left_margin (GTK_TEXT_VIEW (view), 8);
  gtk_text_view_set_right_margin (GTK_TEXT_VIEW (view), 8);
  g_signal_connect_swapped (buffer, "changed", G_CALLBACK (check), self);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scrolled), NOTE_HEIGHT);
  gtk_scrolled_window_set_has_frame (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), view);

  return add (self, name, scrolled, view, NULL);
}

void
lw_facts_add_heading (LwFacts    *self,
                      const char *text)
{
  gtk_grid_attach (GTK_GRID (self->grid), label_new (text, "ask-heading"), 0, self->rows++, 3, 1);
}

char *
lw_facts_text (GtkWidget *field)
{
  GtkTextBuffer *buffer;
  GtkTextIter start, end;

  if (!GTK_IS_TEXT_VIEW (field))
    return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (field))));

  buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (field));
  gtk_text_buffer_get_bounds (buffer, &start, &end);

  return g_strstrip (gtk_text_buffer_get_text (buffer, &start, &end, FALSE));
}
