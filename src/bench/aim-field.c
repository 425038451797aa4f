/* The popover: two sides, either of which may stay open; a bad number is refused at its place. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/aim-field.h"

#include <math.h>

#include "bench/entry.h"
#include "bench/popover.h"
#include "bench/telling.h"
#include "season/text.h"
#include "study/reach.h"

typedef struct
{
  LwSession *session;  /* outlives the popover */
  int step;
  LwQuantity of;
  GtkWidget *popover;
  GtkWidget *low;
  GtkWidget *high;
  GtkWidget *close;    /* how close "as now" is */
  GtkWidget *weight;   /* beside other aims */
  GtkWidget *note;
  GtkWidget *refused;
} Field;

static guint
batch_of (const Field *field)
{
  return (guint) lw_session_batch_index (field->session);
}

static void
refuse (const Field *field,
        GtkWidget   *entry,
        const char  *words)
{
  gtk_label_set_label (GTK_LABEL (field->refused), words);
  gtk_widget_set_visible (field->refused, TRUE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
  gtk_widget_grab_focus (entry);
}

/* FALSE if what stands there is no number in range; then it is refused. Empty: `open`. */
static gboolean
read_side (const Field *field,
           GtkWidget   *entry,
           double       open,
           double      *value)
{
  const LwQuantityRow *row = lw_quantity_row (field->of);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
  g_autofree char *words = NULL;

  *value = open;
  if (*text == '\0' || (lw_entry_parse_number (text, value) && *value >= row->low && *value <= row->high))
    return TRUE;

  words = g_strdup_printf (_ ("Write a number from %g to %g, or leave this side open."), row->low, row->high);
  refuse (field, entry, words);

  return FALSE;
}

/* (transfer full) what is written as why. */
static char *
why_of (const Field *field)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (field->note))));
}

static void
put (const Field *field,
     double       low,
     double       high,
     char        *note)
{
  double weight = gtk_spin_button_get_value (GTK_SPIN_BUTTON (field->weight));
  LwAim aim = { field->of, low, high, weight, note != NULL && *note != '\0' ? note : NULL };
  g_autofree char *label = lw_tell_aim (field->of);

  lw_session_edit (field->session, lw_edit_put_aim (lw_session_base (field->session), batch_of (field), field->step, aim),
                   label, NULL);
  gtk_popover_popdown (GTK_POPOVER (field->popover));
}

static void
set_cb (const Field *field)
{
  g_autofree char *why = why_of (field);
  double low, high;

  if (!read_side (field, field->low, -INFINITY, &low) || !read_side (field, field->high, INFINITY, &high))
    return;

  if (isinf (low) && isinf (high))
    refuse (field, field->low, _ ("Write at least one side."));
  else if (!(low < high))
    refuse (field, field->high, _ ("The second number must be the larger one."));
  else
    put (field, low, high, why);
}

static void
as_now_cb (const Field *field)
{
  const LwQuantityRow *row = lw_quantity_row (field->of);
  const LwAim *old = lw_batch_aim (lw_session_batch (field->session), field->step, field->of);
  g_autofree char *why = why_of (field);
  double close = gtk_spin_button_get_value (GTK_SPIN_BUTTON (field->close)), unit = pow (10, -row->digits), value;
  LwOutcome outcome;

  if (!lw_session_outcome (field->session, lw_session_track (field->session), field->step, &outcome))
    return;

  value = round (lw_quantity_of (field->of, &outcome) / unit) * unit;
  /* The reason of the old aim is none for this one. */
  put (field, MAX (value - close, row->low), MIN (value + close, row->high),
       old != NULL && g_strcmp0 (old->note, why) == 0 ? NULL : why);
}

static void
remove_cb (const Field *field)
{
  g_autofree char *label = g_strdup_printf (_ ("Remove the aim at %s"), _ (lw_quantity_row (field->of)->label));

  lw_session_edit (field->session,
                   lw_edit_remove_aim (lw_session_base (field->session), batch_of (field), field->step, field->of), label,
                   NULL);
  gtk_popover_popdown (GTK_POPOVER (field->popover));
}

static GtkWidget *
entry_new (const Field *field,
           double       value,
           const char  *name)
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *text = isfinite (value) ? g_strdup_printf ("%.*f", lw_quantity_row (field->of)->digits, value)
                                           : g_strdup ("");

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_entry_set_input_purpose (GTK_ENTRY (entry), GTK_INPUT_PURPOSE_NUMBER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (set_cb), (gpointer) field);

  return entry;
}

static GtkWidget *
spin_new (double      least,
          double      most,
          double      step,
          double      value,
          const char *name)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (least, most, step);

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);

  return spin;
}

static void
attach (GtkWidget  *grid,
        int         y,
        const char *name,
        GtkWidget  *widget,
        const char *unit)
{
  GtkWidget *label = gtk_label_new (name), *after = gtk_label_new (unit);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_xalign (GTK_LABEL (after), 0);
  gtk_grid_attach (GTK_GRID (grid), label, 0, y, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), widget, 1, y, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), after, 2, y, 1, 1);
}

static void
attach_button (GtkWidget  *grid,
               int         x,
               int         y,
               const char *words,
               GCallback   done,
               Field      *field)
{
  GtkWidget *button = gtk_button_new_with_label (words);

  g_signal_connect_swapped (button, "clicked", done, field);
  gtk_grid_attach (GTK_GRID (grid), button, x, y, 1, 1);
}

static char *
title_of (const Field *field)
{
  const LwBatch *batch = lw_session_batch (field->session);
  const char *name = _ (lw_quantity_row (field->of)->label);

  if (field->step < 0)
    /* Translators: an outcome */
    return g_strdup_printf (_ ("%s of the finished tea"), name);

  /* Translators: an outcome, number and kind of a step */
  return g_strdup_printf (_ ("%s after step %d, %s"), name, field->step + 1,
                          _ (lw_kind_row (batch->steps[field->step].kind)->label));
}

static GtkWidget *
grid_new (Field *field)
{
  const LwAim *aim = lw_batch_aim (lw_session_batch (field->session), field->step, field->of);
  const LwQuantityRow *row = lw_quantity_row (field->of);
  double least = pow (10, -row->digits);
  const char *unit = lw_unit_words (row->unit);
  g_autofree char *words = title_of (field);
  GtkWidget *grid = gtk_grid_new (), *title = gtk_label_new (words);

  gtk_widget_add_css_class (title, "heading");
  gtk_widget_add_css_class (grid, "settings");
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 10);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  field->low = entry_new (field, aim != NULL ? aim->low : INFINITY, _ ("From"));
  field->high = entry_new (field, aim != NULL ? aim->high : INFINITY, _ ("To"));
  field->note = gtk_entry_new ();
  field->close = spin_new (least, row->high, least, MAX (lw_want_tolerance (field->of), least), _ ("How close"));
  field->weight = spin_new (0.1, 100, 0.1, aim != NULL ? aim->weight : 1, _ ("Weight"));
  field->refused = gtk_label_new ("");
  gtk_editable_set_text (GTK_EDITABLE (field->note), aim != NULL && aim->note != NULL ? aim->note : "");
  gtk_editable_set_width_chars (GTK_EDITABLE (field->note), 18);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field->note), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Why"), -1);
  g_signal_connect_swapped (field->note, "activate", G_CALLBACK (set_cb), field);
  gtk_widget_add_css_class (field->refused, "refused");
  gtk_label_set_wrap (GTK_LABEL (field->refused), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (field->refused), 40);
  gtk_widget_set_visible (field->refused, FALSE);

  gtk_grid_attach (GTK_GRID (grid), title, 0, 0, 3, 1);
  attach (grid, 1, _ ("From"), field->low, unit);
  attach (grid, 2, _ ("To"), field->high, unit);
  /* Translators: where an aim comes from */
  attach (grid, 3, _ ("Why"), field->note, "");
  /* Translators: how much an aim matters */
  attach (grid, 4, _ ("Weight"), field->weight, _ ("beside other aims"));
  gtk_grid_attach (GTK_GRID (grid), field->refused, 0, 5, 3, 1);
  attach_button (grid, 1, 6, _ ("Set this aim"), G_CALLBACK (set_cb), field);
  /* Translators: then a number: so far to either side */
  attach (grid, 7, _ ("Now, give or take"), field->close, unit);
  attach_button (grid, 1, 8, _ ("Aim at what it gives now"), G_CALLBACK (as_now_cb), field);
  if (aim != NULL)
    attach_button (grid, 1, 9, _ ("Remove this aim"), G_CALLBACK (remove_cb), field);

  return grid;
}

void
lw_aim_field_open (GtkWidget *widget,
                   LwSession *session,
                   int        step,
                   LwQuantity of)
{
  Field *field = g_new0 (Field, 1);
  g_autofree char *words = NULL;

  *field = (Field) { .session = session, .step = step, .of = of };
  words = title_of (field);
  field->popover = lw_popover_open (widget, grid_new (field), GTK_POS_LEFT, words);
  g_object_set_data_full (G_OBJECT (field->popover), "field", field, g_free);
}
