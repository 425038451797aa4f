/* The card: labels in grids, each row told as a whole to a screen reader. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/replan-card.h"

#include "bench/look.h"
#include "season/text.h"
#include "season/wording.h"

#define WIDE 56  /* characters of a reason before it wraps */

static GtkWidget *
label_new (const char *text,
           const char *class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_yalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (class != NULL)
    gtk_widget_add_css_class (label, class);

  return label;
}

static GtkWidget *
grid_new (GtkWidget  *box,
          const char *heading)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_box_append (GTK_BOX (box), label_new (heading, "heading"));
  gtk_grid_set_column_spacing (GTK_GRID (grid), 14);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 3);
  gtk_box_append (GTK_BOX (box), grid);

  return grid;
}

/* (transfer full) with spaces that hold a number together with its error and its sign. */
static char *
unbroken (const char *words)
{
  g_autoptr (GString) text = g_string_new (words);

  g_string_replace (text, " ± ", "\u00a0±\u00a0", 0);
  g_string_replace (text, " %", "\u00a0%", 0);

  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* A row of cells; the last fills what is left. `words` ends with NULL. */
static void
add_row (GtkWidget         *grid,
         int                y,
         const char *const *words,
         const char        *class)
{
  for (int x = 0; words[x] != NULL; x++)
    {
      g_autofree char *text = unbroken (words[x]);
      GtkWidget *label = label_new (text, class);

      if (words[x + 1] == NULL)
        {
          gtk_widget_set_hexpand (label, TRUE);
          gtk_label_set_max_width_chars (GTK_LABEL (label), WIDE);
        }
      gtk_grid_attach (GTK_GRID (grid), label, x, y, 1, 1);
    }
}

static char *
say_sure (double value,
          double sd,
          int    digits)
{
  /* Translators: a value and its standard deviation */
  g_autofree char *text = g_strdup_printf (_ ("%.*f ± %.*f"), digits, value, digits, sd);

  return lw_look_numbers (text);
}

static void
add_points (GtkWidget       *box,
            const LwCorrect *correct)
{
  GtkWidget *grid = grid_new (box, _ ("Weighed and judged"));
  const char *const heads[] = { _ ("when"), _ ("what"), _ ("expected"), _ ("measured"), _ ("together"), NULL };

  add_row (grid, 0, heads, "dim-label");
  for (guint i = 0; i < correct->n; i++)
    {
      const LwCorrectPoint *point = &correct->points[i];
      const LwWeighIn *seen = &point->weighed.weigh_in;
      const LwMeasureRow *row = lw_measure_row (seen->of);
      int digits = seen->of == LW_WEIGHED_KG ? 2 : 1;
      g_autofree char *time = lw_say_minutes (seen->minute);
      /* Translators: a step's number and a time in it: "step 2, 12 min" */
      g_autofree char *when = g_strdup_printf (_ ("step %u, %s"), point->weighed.step + 1, time);
      /* Translators: what was measured and its unit: "weight, kg" */
      g_autofree char *what = g_strdup_printf (_ ("%s, %s"), _ (row->label), lw_unit_words (row->unit));
      g_autofree char *expected = say_sure (point->expected, point->expected_sd, digits);
      g_autofree char *measured = say_sure (seen->value, seen->sd, digits);
      g_autofree char *together = say_sure (point->combined, point->combined_sd, digits);
      const char *const words[] = { when, what, expected, measured, together, NULL };

      add_row (grid, (int) i + 1, words, "number");
    }

  for (guint i = 0; i < correct->n; i++)
    {
      g_autofree char *far = lw_replan_say_far (&correct->points[i]);

      if (far != NULL)
        gtk_box_append (GTK_BOX (box), label_new (far, "refused"));
    }
}

static void
add_rows (GtkWidget      *box,
          const LwReplan *replan,
          const LwBatch  *batch)
{
  GtkWidget *grid = grid_new (box, replan->n_changed > 0 ? _ ("What to change") : _ ("No setting need change."));
  const char *const heads[] = { _ ("step"), _ ("setting"), _ ("was"), _ ("now"), _ ("why"), NULL };
  int y = 0;

  if (replan->n_changed > 0)
    add_row (grid, y++, heads, "dim-label");
  for (guint i = 0; i < replan->n_rows; i++)
    {
      const LwReplanRow *row = &replan->rows[i];
      /* Translators: number and kind of a step */
      g_autofree char *step = g_strdup_printf (_ ("%u %s"), row->handle.step + 1,
                                               _ (lw_kind_row (batch->steps[row->handle.step].kind)->label));
      g_autofree char *was = lw_say_setting (row->handle.setting, row->was);
      g_autofree char *now = lw_say_setting (row->handle.setting, row->now);
      const char *const words[] = { step, _ (lw_setting_row (row->handle.setting)->label), was, now, row->why, NULL };

      if (row->why != NULL)
        add_row (grid, y++, words, "number");
    }
}

static void
add_aims (GtkWidget      *box,
          const LwReplan *replan)
{
  GtkWidget *grid = grid_new (box, replan->n_aims > 0 ? _ ("Aims ahead") : _ ("No aim is ahead."));
  const char *const heads[] = { _ ("aim"), _ ("foretold"), _ ("as weighed"), _ ("new plan"), "", NULL };

  if (replan->n_aims > 0)
    add_row (grid, 0, heads, "dim-label");
  for (guint i = 0; i < replan->n_aims; i++)
    {
      const LwReplanAim *aim = &replan->aims[i];
      const LwQuantityRow *row = lw_quantity_row (aim->want.of);
      /* Translators: an outcome and where: "Moisture of the tea"; "Moisture after step 3" */
      g_autofree char *name = aim->of_tea ? g_strdup_printf (_ ("%s of the tea"), _ (row->label))
                                          : g_strdup_printf (_ ("%s after step %u"), _ (row->label), aim->want.step + 1);
      g_autofree char *planned = g_strdup_printf ("%.*f", row->digits, aim->planned.value);
      g_autofree char *before = g_strdup_printf ("%.*f", row->digits, aim->before.value);
      g_autofree char *after = g_strdup_printf ("%.*f", row->digits, aim->after.value);
      g_autofree char *missed = lw_replan_say_missed (aim);
      const char *const words[] = { name, planned, before, after, missed != NULL ? missed : _ ("met"), NULL };

      add_row (grid, (int) i + 1, words, "number");
    }
}

GtkWidget *
lw_replan_card_new (const LwReplan *replan,
                    const LwBatch  *batch)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  gtk_widget_add_css_class (box, "replan");
  gtk_box_append (GTK_BOX (box), label_new (replan->finding, "replan-finding"));
  add_points (box, replan->correct);
  add_rows (box, replan, batch);
  add_aims (box, replan);

  return box;
}
