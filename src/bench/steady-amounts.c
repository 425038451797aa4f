/* What varies: an amount for each source that acts on the batch, the number of samples and the seed. What is typed
 * counts at once if it can be. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-parts.h"

#include <math.h>

#include "bench/entry.h"
#include "bench/steady-words.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;
  GtkWidget *groups[LW_N_VARY];  /* (nullable) the heading before a source */
  GtkWidget *lines[LW_N_VARY];
  GtkWidget *entries[LW_N_VARY];
  GtkWidget *samples;
  GtkWidget *seed;
  GtkWidget *goes_on;
  GtkWidget *refused;
  gboolean filling;
} Part;

static LwSteady *
steady_of (Part *part)
{
  return lw_steady_of (part->session);
}

static void
mark (GtkWidget *entry,
      gboolean   fits)
{
  if (fits)
    {
      gtk_widget_remove_css_class (entry, "error");
      gtk_accessible_reset_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID);
    }
  else
    {
      gtk_widget_add_css_class (entry, "error");
      gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
    }
}

/* Puts a number there, unless that is what stands there already: it may be under the fingers. */
static void
put (GtkWidget *entry,
     double     value)
{
  g_autofree char *text = g_strdup_printf ("%.10g", value);
  double now;

  if (!lw_entry_parse_number (gtk_editable_get_text (GTK_EDITABLE (entry)), &now) || now != value)
    gtk_editable_set_text (GTK_EDITABLE (entry), text);
  mark (entry, TRUE);
}

/* What does not act on the batch in hand is not asked for. */
static void
show_sources (Part *part)
{
  const LwBatch *batch = lw_session_batch (part->session);

  for (guint i = 0; i < LW_N_VARY; i++)
    gtk_widget_set_visible (part->lines[i],
                            batch != NULL && lw_chance_has (lw_session_season (part->session),
                                                            (guint) lw_session_batch_index (part->session), i, 0));
  for (guint i = 0; i < LW_N_VARY; i++)
    if (part->groups[i] != NULL)
      {
        gboolean any = FALSE;

        for (guint k = i; k < LW_N_VARY && (k == i || part->groups[k] == NULL); k++)
          any |= gtk_widget_get_visible (part->lines[k]);
        gtk_widget_set_visible (part->groups[i], any);
      }
}

static void
asked_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  const LwSpreadAsk *ask = lw_steady_ask (steady_of (part));

  part->filling = TRUE;
  for (guint i = 0; i < LW_N_VARY; i++)
    put (part->entries[i], ask->varies[i].sd);
  put (part->samples, ask->samples);
  put (part->seed, ask->seed);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (part->goes_on), lw_steady_goes_on (steady_of (part)));
  gtk_widget_set_visible (part->refused, FALSE);
  part->filling = FALSE;
}

/* TRUE and the number, or FALSE and the reason beside the fields. */
static gboolean
read_number (Part      *part,
             GtkWidget *entry,
             double     low,
             double     high,
             double    *value)
{
  gboolean fits = lw_entry_parse_number (gtk_editable_get_text (GTK_EDITABLE (entry)), value) && *value >= low
                  && *value <= high;
  /* Translators: the least and the largest number that is taken */
  g_autofree char *words = fits ? g_strdup ("") : g_strdup_printf (_ ("Write a number from %g to %.10g."), low, high);

  gtk_label_set_label (GTK_LABEL (part->refused), words);
  gtk_widget_set_visible (part->refused, !fits);
  mark (entry, fits);

  return fits;
}

static void
typed_cb (GtkEditable *entry,
          GtkWidget   *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  LwSteady *steady = steady_of (part);
  const LwSpreadAsk *ask = lw_steady_ask (steady);
  double value;

  if (part->filling)
    return;

  for (guint i = 0; i < LW_N_VARY; i++)
    if (GTK_WIDGET (entry) == part->entries[i])
      {
        LwVary vary = ask->varies[i];

        if (!read_number (part, part->entries[i], 0, vary.percent ? LW_VARY_MOST_PCT : lw_vary_row (i)->most, &value))
          return;
        vary.sd = value;
        lw_steady_vary (steady, i, vary);
      }
  if (GTK_WIDGET (entry) == part->samples && read_number (part, part->samples, 2, LW_SPREAD_MOST, &value))
    lw_steady_sample (steady, (guint) value, ask->seed);
  if (GTK_WIDGET (entry) == part->seed && read_number (part, part->seed, 1, G_MAXUINT32, &value))
    lw_steady_sample (steady, ask->samples, (guint32) value);
}

static void
goes_on_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  if (!part->filling)
    lw_steady_go_on (steady_of (part), gtk_check_button_get_active (GTK_CHECK_BUTTON (part->goes_on)));
}

static void
usual_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  LwVary usual[LW_N_VARY];

  lw_vary_usual (usual);
  for (guint i = 0; i < LW_N_VARY; i++)
    lw_steady_vary (steady_of (part), i, usual[i]);
  /* Also what was typed in vain. */
  asked_cb (box);
}

static void
track_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");

  if (!lw_session_is_dragging (part->session))
    show_sources (part);
}

static GtkWidget *
line_new (GtkWidget  *box,
          const char *label,
          const char *unit,
          const char *note,   /* (nullable) */
          GtkWidget **entry)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *name = lw_steady_label (label, "steady-name"), *after = lw_steady_label (unit, "steady-unit");

  *entry = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (*entry), 5);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (*entry), 5);
  gtk_entry_set_input_purpose (GTK_ENTRY (*entry), GTK_INPUT_PURPOSE_NUMBER);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_label_set_width_chars (GTK_LABEL (after), 7);
  gtk_accessible_update_property (GTK_ACCESSIBLE (*entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, note != NULL ? note : unit, -1);
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), *entry);
  gtk_box_append (GTK_BOX (row), after);
  gtk_box_append (GTK_BOX (line), row);
  if (note != NULL)
    gtk_box_append (GTK_BOX (line), lw_steady_label (note, "steady-note"));
  gtk_box_append (GTK_BOX (box), line);
  g_signal_connect_object (*entry, "changed", G_CALLBACK (typed_cb), box, 0);

  return line;
}

static void
add_sources (Part      *part,
             GtkWidget *box)
{
  LwVary usual[LW_N_VARY];

  lw_vary_usual (usual);
  for (guint i = 0; i < LW_N_VARY; i++)
    {
      const LwVaryRow *row = lw_vary_row (i);
      g_autofree char *amount = lw_steady_say_amount (i, usual[i]);
      /* Translators: an amount; where that number comes from */
      g_autofree char *note = g_strdup_printf (_ ("Usually %s (%s)"), amount, _ (row->source));

      if (i == 0 || g_strcmp0 (row->from, lw_vary_row (i - 1)->from) != 0)
        {
          part->groups[i] = lw_steady_label (_ (row->from), "steady-group");
          gtk_box_append (GTK_BOX (box), part->groups[i]);
        }
      part->lines[i] = line_new (box, _ (row->label), usual[i].percent ? "%" : lw_unit_words (row->unit), note,
                                 &part->entries[i]);
    }
}

GtkWidget *
lw_steady_amounts_new (LwSession *session)
{
  Part *part = g_new0 (Part, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3), *usual;

  part->session = session;
  g_object_set_data_full (G_OBJECT (box), "part", part, g_free);
  gtk_box_append (GTK_BOX (box), lw_steady_label (_ ("What varies"), "steady-heading"));
  gtk_box_append (GTK_BOX (box),
                  lw_steady_label (_ ("By how much, as one standard deviation: about two in three batches are within it. 0 does "
                                      "not vary."), "steady-note"));
  part->goes_on = gtk_check_button_new ();
  gtk_check_button_set_child (GTK_CHECK_BUTTON (part->goes_on),
                              lw_steady_label (_ ("Again after each change of the batch"), "steady-name"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (part->goes_on), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Again after each change of the batch"), -1);
  part->refused = lw_steady_label ("", "refused");
  gtk_widget_set_visible (part->refused, FALSE);
  gtk_box_append (GTK_BOX (box), part->refused);
  add_sources (part, box);
  gtk_box_append (GTK_BOX (box), lw_steady_label (_ ("How it is computed"), "steady-group"));
  line_new (box, _ ("samples"), "", NULL, &part->samples);
  line_new (box, _ ("seed"), "", _ ("The same seed gives the same luck"), &part->seed);
  gtk_box_append (GTK_BOX (box), part->goes_on);
  usual = gtk_button_new_with_label (_ ("Usual amounts"));
  gtk_widget_set_halign (usual, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), usual);

  asked_cb (box);
  g_signal_connect_object (usual, "clicked", G_CALLBACK (usual_cb), box, G_CONNECT_SWAPPED);
  g_signal_connect_object (part->goes_on, "toggled", G_CALLBACK (goes_on_cb), box, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_steady_of (session), "asked", G_CALLBACK (asked_cb), box, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), box, G_CONNECT_SWAPPED);

  return box;
}
