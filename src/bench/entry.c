/* Number fields: GTK's spin button with our reading of times and our refusals. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/entry.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "season/edit.h"
#include "season/text.h"
#include "season/wording.h"

typedef struct
{
  LwKind kind;
  LwSetting setting;
  GtkLabel *refused;
} Field;

/* Minutes that a unit's name stands for; 0 if it is none. */
static double
unit_minutes (const char *name)
{
  static const struct { const char *name; double minutes; } units[] = {
    { N_ ("h"), 60 }, { N_ ("min"), 1 }, { N_ ("s"), 1.0 / 60 }, { N_ ("d"), 1440 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_ascii_strcasecmp (name, units[i].name) == 0 || g_utf8_collate (name, _ (units[i].name)) == 0)
      return units[i].minutes;

  return 0;
}

/* A number at the start of `text`: digits, with a decimal sign; nothing else that strtod would take. */
static gboolean
read_number (const char *text,
             double     *value,
             char      **end)
{
  if (!g_ascii_isdigit (text[strspn (text, ".,")]) || strspn (text, ".,") > 1
      || (text[0] == '0' && g_ascii_tolower (text[1]) == 'x'))
    return FALSE;

  *value = strtod (text, end);

  return *end != text && isfinite (*value);
}

gboolean
lw_entry_parse_number (const char *text,
                       double     *value)
{
  const char *p = text + strspn (text, " \t");
  gboolean minus = *p == '-';
  char *end;

  if (!read_number (p + minus, value, &end) || end[strspn (end, " \t")] != '\0')
    return FALSE;

  *value = minus ? -*value : *value;

  return TRUE;
}

void
lw_entry_put_number (GtkWidget *entry,
                     double     value)
{
  g_autofree char *text = isnan (value) ? g_strdup ("") : g_strdup_printf ("%.6g", value);

  g_object_set_data_full (G_OBJECT (entry), "value", g_memdup2 (&value, sizeof value), g_free);
  g_object_set_data_full (G_OBJECT (entry), "text", g_strdup (text), g_free);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

double
lw_entry_number_of (GtkWidget *entry)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (entry));
  double value;

  if (g_strcmp0 (text, g_object_get_data (G_OBJECT (entry), "text")) == 0)
    return *(double *) g_object_get_data (G_OBJECT (entry), "value");

  return lw_entry_parse_number (text, &value) ? value : NAN;
}

/* "1:30", hours and minutes. */
static gboolean
read_clock (const char *text,
            double     *minutes)
{
  double hours, rest;
  char *end;

  if (!read_number (text, &hours, &end) || hours != floor (hours))
    return FALSE;

  end += strspn (end, " \t");
  if (*end != ':')
    return FALSE;

  end += 1 + strspn (end + 1, " \t");
  if (!read_number (end, &rest, &end) || rest >= 60 || end[strspn (end, " \t")] != '\0')
    return FALSE;

  *minutes = hours * 60 + rest;

  return TRUE;
}

gboolean
lw_entry_parse_minutes (const char *text,
                        double     *minutes)
{
  const char *p = text + strspn (text, " \t");
  double sum = 0;
  guint n = 0;

  if (read_clock (p, minutes))
    return TRUE;

  while (*p != '\0')
    {
      g_autofree char *unit = NULL;
      double number;
      char *end;

      if (!read_number (p, &number, &end))
        return FALSE;

      p = end + strspn (end, " \t");
      unit = g_strndup (p, strcspn (p, " \t0123456789.,:"));
      p += strlen (unit);
      p += strspn (p, " \t");

      /* A bare number is minutes, if it is all there is. */
      if (unit[0] == '\0' ? n > 0 || *p != '\0' : unit_minutes (unit) == 0)
        return FALSE;

      sum += number * (unit[0] == '\0' ? 1 : unit_minutes (unit));
      n++;
    }

  *minutes = sum;

  return n > 0;
}

static gboolean
read_text (const Field *field,
           const char  *text,
           double      *value)
{
  return field->setting == LW_SET_MINUTES ? lw_entry_parse_minutes (text, value) : lw_entry_parse_number (text, value);
}

static int
input_cb (GtkSpinButton *spin,
          double        *value,
          const Field   *field)
{
  g_autoptr (GError) error = NULL;
  double typed;

  if (!read_text (field, gtk_editable_get_text (GTK_EDITABLE (spin)), &typed))
    typed = NAN;

  if (lw_edit_check (field->kind, field->setting, typed, &error))
    {
      *value = typed;
      gtk_widget_remove_css_class (GTK_WIDGET (spin), "error");
      gtk_accessible_reset_state (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_STATE_INVALID);
      gtk_widget_set_visible (GTK_WIDGET (field->refused), FALSE);
      return TRUE;
    }

  gtk_widget_add_css_class (GTK_WIDGET (spin), "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
  gtk_label_set_label (field->refused, error->message);
  gtk_widget_set_visible (GTK_WIDGET (field->refused), TRUE);

  return GTK_INPUT_ERROR;
}

static gboolean
output_cb (GtkSpinButton *spin,
           const Field   *field)
{
  g_autofree char *text = NULL;

  if (field->setting != LW_SET_MINUTES)
    return FALSE;

  text = lw_say_minutes (gtk_spin_button_get_value (spin));
  if (strcmp (text, gtk_editable_get_text (GTK_EDITABLE (spin))) != 0)
    gtk_editable_set_text (GTK_EDITABLE (spin), text);

  return TRUE;
}

GtkWidget *
lw_entry_new (LwKind    kind,
              LwSetting setting,
              double    value,
              GtkLabel *refused)
{
  const LwSettingRow *row = lw_setting_row (setting);
  const LwKindSetting *range = lw_kind_setting (kind, setting);
  double notch = setting == LW_SET_MINUTES ? lw_minutes_notch (value, FALSE) : row->notch;
  GtkWidget *spin = gtk_spin_button_new_with_range (range->low, range->high, notch);
  Field *field = g_new (Field, 1);

  *field = (Field) { kind, setting, refused };
  g_object_set_data_full (G_OBJECT (spin), "field", field, g_free);
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), (guint) row->digits);
  /* Its filter of digits would not let "5 min 30 s" in. */
  gtk_spin_button_set_numeric (GTK_SPIN_BUTTON (spin), FALSE);
  gtk_spin_button_set_update_policy (GTK_SPIN_BUTTON (spin), GTK_UPDATE_IF_VALID);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), 9);
  g_signal_connect (spin, "input", G_CALLBACK (input_cb), field);
  g_signal_connect (spin, "output", G_CALLBACK (output_cb), field);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (row->label),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, _ (row->effect), -1);

  return spin;
}
