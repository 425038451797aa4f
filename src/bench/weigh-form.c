/* The form. One letter chooses the measure while the measures have the keyboard, Alt and the letter anywhere; a figure
 * begins the value. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/weigh-form.h"

#include <math.h>

#include "bench/entry.h"
#include "bench/look.h"
#include "bench/weigh-words.h"
#include "season/text.h"
#include "season/wording.h"

#define ACROSS 4      /* measures in a line, */
#define FEWER 3       /* and where letters are larger than */
#define LARGE_PX 22
#define WORDS 44      /* characters in a line of words */
#define COLUMNS 3     /* of the grid for a field: its name, itself, its unit */

/* Two fields share a line: the form is to fit under a board in a low window. The keyboard goes along the lines. */
static const struct { int line, place; } places[LW_N_WEIGH_FIELDS] = {
  [LW_WEIGH_VALUE] = { 0, 0 }, [LW_WEIGH_TARE] = { 0, 1 },
  [LW_WEIGH_SD] = { 1, 0 }, [LW_WEIGH_MINUTE] = { 1, 1 },
  [LW_WEIGH_NOTE] = { 2, 0 },
};

/* (transfer full) what stands in a field. */
static char *
text_of (const LwWeighForm *form,
         LwWeighField       field)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (form->fields[field]))));
}

static double
number_of (const LwWeighForm *form,
           LwWeighField       field,
           double             empty)
{
  g_autofree char *text = text_of (form, field);
  double number;

  if (*text == '\0')
    return empty;

  return lw_entry_parse_number (text, &number) ? number : NAN;
}

/* One that was not touched keeps what its words round off. */
static double
minute_of (const LwWeighForm *form)
{
  g_autofree char *text = text_of (form, LW_WEIGH_MINUTE);
  double minute;

  if (g_strcmp0 (text, form->minute_text) == 0)
    return form->minute;

  return lw_entry_parse_minutes (text, &minute) ? minute : NAN;
}

LwWeighIn
lw_weigh_form_read (const LwWeighForm *form)
{
  g_autofree char *note = text_of (form, LW_WEIGH_NOTE);
  LwWeighIn read = { .minute = minute_of (form), .of = form->of };

  read.note = *note != '\0' ? g_steal_pointer (&note) : NULL;
  if (form->of == LW_NOTED)
    return read;

  read.value = number_of (form, LW_WEIGH_VALUE, NAN);
  read.sd = number_of (form, LW_WEIGH_SD, NAN);
  if (form->of == LW_WEIGHED_KG)
    read.tare_kg = number_of (form, LW_WEIGH_TARE, 0);

  return read;
}

void
lw_weigh_form_unrefuse (LwWeighForm *form)
{
  gtk_widget_set_visible (form->refused, FALSE);
  for (guint i = 0; i < LW_N_WEIGH_FIELDS; i++)
    {
      gtk_widget_remove_css_class (form->fields[i], "error");
      gtk_accessible_reset_state (GTK_ACCESSIBLE (form->fields[i]), GTK_ACCESSIBLE_STATE_INVALID);
    }
}

void
lw_weigh_form_refuse (LwWeighForm *form,
                      int          wrong,
                      const char  *words)
{
  lw_weigh_form_unrefuse (form);
  gtk_label_set_label (GTK_LABEL (form->refused), words);
  gtk_widget_set_visible (form->refused, TRUE);
  if (wrong < 0)
    return;

  gtk_widget_add_css_class (form->fields[wrong], "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (form->fields[wrong]), GTK_ACCESSIBLE_STATE_INVALID,
                               GTK_ACCESSIBLE_INVALID_TRUE, -1);
  gtk_widget_grab_focus (form->fields[wrong]);
}

static void
put_number (const LwWeighForm *form,
            LwWeighField       field,
            double             number)
{
  g_autofree char *text = isnan (number) ? g_strdup ("") : g_strdup_printf ("%.10g", number);

  gtk_editable_set_text (GTK_EDITABLE (form->fields[field]), text);
}

static void
show_field (const LwWeighForm *form,
            LwWeighField       field,
            gboolean           shown,
            const char        *unit)
{
  gtk_widget_set_visible (form->names[field], shown);
  gtk_widget_set_visible (form->fields[field], shown);
  gtk_widget_set_visible (form->units[field], shown);
  gtk_label_set_label (GTK_LABEL (form->units[field]), unit);
}

static void
show_fields (LwWeighForm *form)
{
  const LwMeasureRow *row = lw_measure_row (form->of);
  const char *unit = lw_unit_words (row->unit);

  show_field (form, LW_WEIGH_VALUE, form->of != LW_NOTED, unit);
  show_field (form, LW_WEIGH_TARE, form->of == LW_WEIGHED_KG, unit);
  show_field (form, LW_WEIGH_SD, form->of != LW_NOTED, unit);
}

static void
changed_cb (LwWeighForm *form)
{
  lw_weigh_form_unrefuse (form);
  form->changed (form->data);
}

static void
done_cb (LwWeighForm *form)
{
  form->done (form->data);
}

static void
toggled_cb (GtkToggleButton *button,
            LwWeighForm     *form)
{
  for (int i = 0; gtk_toggle_button_get_active (button) && i < LW_N_MEASURES; i++)
    if (form->measures[i] == GTK_WIDGET (button) && form->of != (LwMeasure) i)
      {
        form->of = (LwMeasure) i;
        put_number (form, LW_WEIGH_SD, lw_measure_row (form->of)->sd);
        show_fields (form);
        changed_cb (form);
      }
}

void
lw_weigh_form_focus (LwWeighForm *form,
                     gboolean     measures)
{
  if (measures)
    gtk_widget_grab_focus (form->measures[form->of]);
  else
    gtk_widget_grab_focus (form->fields[form->of == LW_NOTED ? LW_WEIGH_NOTE : LW_WEIGH_VALUE]);
}

/* Chosen by key or pointer: the number comes next. */
static void
clicked_cb (LwWeighForm *form)
{
  lw_weigh_form_focus (form, FALSE);
}

/* The key of a measure; 0 if its translation has none. */
static guint
letter_of (LwMeasure of)
{
  const char *mark = strchr (lw_weigh_name (of), '_');

  return mark != NULL ? gdk_unicode_to_keyval (g_unichar_tolower (g_utf8_get_char (mark + 1))) : 0;
}

/* A figure with no measure chosen before it begins the value of the one that is. */
static void
start_value (LwWeighForm *form,
             char         figure)
{
  GtkWidget *entry = form->fields[LW_WEIGH_VALUE];
  const char text[] = { figure, '\0' };

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_entry_grab_focus_without_selecting (GTK_ENTRY (entry));
  gtk_editable_set_position (GTK_EDITABLE (entry), -1);
}

static gboolean
key_cb (LwWeighForm    *form,
        guint           key,
        guint           code,
        GdkModifierType state)
{
  gboolean alone = gtk_widget_get_focus_child (gtk_widget_get_parent (form->measures[0])) != NULL;
  char figure = (char) MIN (gdk_keyval_to_unicode (key), G_MAXINT8);

  if ((state & GDK_CONTROL_MASK) || !(alone || (state & GDK_ALT_MASK)))
    return FALSE;
  if (alone && form->of != LW_NOTED && g_ascii_isdigit (figure))
    {
      start_value (form, figure);
      return TRUE;
    }

  for (int i = 0; i < LW_N_MEASURES; i++)
    if (gdk_keyval_to_lower (key) == letter_of ((LwMeasure) i))
      {
        gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (form->measures[i]), TRUE);
        clicked_cb (form);
        return TRUE;
      }

  return FALSE;
}

/* Not a mnemonic of GTK's: its letter is underlined only while Alt is down, and its button has two names. */
static GtkWidget *
measure_new (LwMeasure of)
{
  g_autofree char *title = lw_weigh_title (of);
  GtkWidget *button = gtk_toggle_button_new_with_label (title);
  const char *name = lw_weigh_name (of), *mark = strchr (name, '_');
  g_autoptr (PangoAttrList) list = pango_attr_list_new ();
  PangoAttribute *line = pango_attr_underline_new (PANGO_UNDERLINE_SINGLE);

  line->start_index = mark != NULL ? (guint) (mark - name) : 0;
  line->end_index = mark != NULL ? (guint) (g_utf8_next_char (mark + 1) - name - 1) : 0;
  pango_attr_list_insert (list, line);
  gtk_label_set_attributes (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), list);

  return button;
}

static GtkWidget *
measures_new (LwWeighForm *form)
{
  GtkWidget *grid = gtk_grid_new ();
  int across = lw_look_letter (grid).base_px > LARGE_PX ? FEWER : ACROSS;

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 4);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 4);
  for (int i = 0; i < LW_N_MEASURES; i++)
    {
      GtkWidget *button = measure_new ((LwMeasure) i);

      if (i > 0)
        gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (form->measures[0]));
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), form->of == (LwMeasure) i);
      g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), form);
      g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked_cb), form);
      gtk_grid_attach (GTK_GRID (grid), button, i % across, i / across, 1, 1);
      form->measures[i] = button;
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (grid), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("What was measured"), -1);

  return grid;
}

static GtkWidget *
words_new (const char *class)
{
  GtkWidget *label = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL);

  gtk_widget_add_css_class (label, class);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), WORDS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WORDS);

  return label;
}

static void
add_field (LwWeighForm *form,
           LwWeighField field,
           const char  *name)
{
  GtkWidget *entry = gtk_entry_new (), *label = gtk_label_new (name);
  gboolean wide = field == LW_WEIGH_NOTE;
  int x = COLUMNS * places[field].place, y = 2 + places[field].line;

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 10);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (GTK_GRID (form->grid), label, x, y, 1, 1);
  gtk_widget_set_halign (entry, wide ? GTK_ALIGN_FILL : GTK_ALIGN_START);
  gtk_grid_attach (GTK_GRID (form->grid), entry, x + 1, y, wide ? 2 * COLUMNS - 1 : 1, 1);
  if (!wide)
    {
      form->units[field] = gtk_label_new ("");
      gtk_label_set_xalign (GTK_LABEL (form->units[field]), 0);
      gtk_widget_set_hexpand (form->units[field], TRUE);
      gtk_grid_attach (GTK_GRID (form->grid), form->units[field], x + 2, y, 1, 1);
    }
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (done_cb), form);
  form->names[field] = label;
  form->fields[field] = entry;
}

static void
fill (LwWeighForm     *form,
      const LwWeighIn *shows)
{
  gboolean noted = shows->of == LW_NOTED;

  put_number (form, LW_WEIGH_VALUE, noted ? NAN : shows->value);
  put_number (form, LW_WEIGH_TARE, shows->tare_kg > 0 ? shows->tare_kg : NAN);
  put_number (form, LW_WEIGH_SD, noted ? NAN : shows->sd);
  gtk_editable_set_text (GTK_EDITABLE (form->fields[LW_WEIGH_MINUTE]), form->minute_text);
  gtk_editable_set_text (GTK_EDITABLE (form->fields[LW_WEIGH_NOTE]), shows->note != NULL ? shows->note : "");
  for (guint i = 0; i < LW_N_WEIGH_FIELDS; i++)
    g_signal_connect_swapped (form->fields[i], "changed", G_CALLBACK (changed_cb), form);
}

void
lw_weigh_form_init (LwWeighForm     *form,
                    const char      *title,
                    const LwWeighIn *shows,
                    void           (*changed) (gpointer data),
                    void           (*done) (gpointer data),
                    gpointer         data)
{
  GtkWidget *heading = gtk_label_new (title);
  GtkEventController *keys = gtk_event_controller_key_new ();

  *form = (LwWeighForm) { .of = shows->of, .minute = shows->minute, .minute_text = lw_say_minutes (shows->minute),
                          .grid = gtk_grid_new (), .changed = changed, .done = done, .data = data };
  gtk_widget_add_css_class (heading, "heading");
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_widget_add_css_class (form->grid, "settings");
  gtk_grid_set_column_spacing (GTK_GRID (form->grid), 10);
  gtk_grid_set_row_spacing (GTK_GRID (form->grid), 6);
  gtk_grid_attach (GTK_GRID (form->grid), heading, 0, 0, 2 * COLUMNS, 1);
  gtk_grid_attach (GTK_GRID (form->grid), measures_new (form), 0, 1, 2 * COLUMNS, 1);
  add_field (form, LW_WEIGH_VALUE, _ ("Value"));
  /* Translators: what the empty vessel weighs */
  add_field (form, LW_WEIGH_TARE, _ ("Tare"));
  /* Translators: how sure a measurement is: give or take, one standard deviation */
  add_field (form, LW_WEIGH_SD, _ ("Give or take"));
  add_field (form, LW_WEIGH_MINUTE, _ ("Moment"));
  add_field (form, LW_WEIGH_NOTE, _ ("Note"));
  gtk_label_set_label (GTK_LABEL (form->units[LW_WEIGH_MINUTE]), _ ("from the step's start"));
  form->meaning = words_new ("weigh-meaning");
  form->refused = words_new ("refused");
  form->buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_grid_attach (GTK_GRID (form->grid), form->meaning, 0, 2 + LW_N_WEIGH_FIELDS, 2 * COLUMNS, 1);
  gtk_grid_attach (GTK_GRID (form->grid), form->refused, 0, 3 + LW_N_WEIGH_FIELDS, 2 * COLUMNS, 1);
  gtk_grid_attach (GTK_GRID (form->grid), form->buttons, 0, 4 + LW_N_WEIGH_FIELDS, 2 * COLUMNS, 1);
  gtk_widget_set_visible (form->refused, FALSE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), form);
  gtk_widget_add_controller (form->grid, keys);
  show_fields (form);
  fill (form, shows);
}

void
lw_weigh_form_clear (LwWeighForm *form)
{
  g_clear_pointer (&form->minute_text, g_free);
}
