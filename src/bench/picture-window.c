/* The window asks for a size, then for a file; the file's suffix decides what is written. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/picture-window.h"

#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/modal.h"
#include "draw/sheet.h"
#include "season/csv.h"
#include "season/export.h"
#include "season/surround.h"
#include "season/text.h"

#define LEAST 300
#define MOST 10000
#define USUAL_WIDTH 1000
#define USUAL_HEIGHT 700
#define EVERY_S 60.0

typedef struct
{
  GtkWidget *window;
  LwSession *session;
  GtkWidget *width;
  GtkWidget *height;
} Fields;

static void
fields_free (Fields *fields)
{
  g_object_unref (fields->session);
  g_free (fields);
}

/* A row a minute, as the command line writes it. */
static gboolean
save_table (LwSeason   *season,
            guint       batch,
            const char *path,
            GError    **error)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .every_s = EVERY_S });
  g_autoptr (GString) csv = g_string_new (NULL);

  lw_csv_append_header (csv);
  lw_csv_append_track (csv, season->batches[batch], lw_season_profile (season, season->batches[batch]->leaf), track, 0);

  return lw_export_save (path, csv->str, csv->len, error);
}

static gboolean
save (Fields     *fields,
      const char *path,
      GError    **error)
{
  LwSeason *season = lw_session_season (fields->session);
  guint batch = (guint) lw_session_batch_index (fields->session);
  g_autofree char *lower = g_ascii_strdown (path, -1);

  if (g_str_has_suffix (lower, ".csv"))
    return save_table (season, batch, path, error);

  lw_session_compute (fields->session);

  return lw_sheet_save (path, gtk_spin_button_get_value (GTK_SPIN_BUTTON (fields->width)),
                        gtk_spin_button_get_value (GTK_SPIN_BUTTON (fields->height)), season, batch,
                        lw_session_track (fields->session), error);
}

static void
chosen_cb (GFile   *file,
           gpointer data)
{
  g_autoptr (GtkWidget) window = data;
  Fields *fields = g_object_get_data (G_OBJECT (window), "fields");
  const char *answers[] = { _ ("Close"), NULL };
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL || lw_session_batch (fields->session) == NULL)
    return;
  if (save (fields, path, &error))
    gtk_window_close (GTK_WINDOW (window));
  else
    lw_ask (GTK_WINDOW (window), _ ("The picture was not saved"), error->message, answers, NULL, NULL, NULL);
}

static void
save_cb (Fields *fields)
{
  g_autofree char *name = g_strconcat (lw_session_batch (fields->session)->name, ".png", NULL);

  lw_compat_ask_export (GTK_WINDOW (fields->window), _ ("Save a picture"), g_strdelimit (name, "/", '-'), chosen_cb,
                         g_object_ref (fields->window));
}

static GtkWidget *
number_new (GtkGrid    *grid,
            int         y,
            const char *name,
            double      value)
{
  GtkWidget *label = gtk_label_new (name), *number = gtk_spin_button_new_with_range (LEAST, MOST, 10);

  gtk_spin_button_set_value (GTK_SPIN_BUTTON (number), value);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (number), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_grid_attach (grid, label, 0, y, 1, 1);
  gtk_grid_attach (grid, number, 1, y, 1, 1);

  return number;
}

void
lw_picture_window_open (GtkWindow *parent,
                        LwSession *session)
{
  Fields *fields = g_new0 (Fields, 1);
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());
  GtkWidget *words = gtk_label_new (_ ("The file's name decides: .png, .svg or .pdf for the blocks and curves, .csv for "
                                       "the numbers, a row a minute."));
  GtkWidget *button = gtk_button_new_with_label (_ ("Save as…"));

  fields->window = lw_modal_new (parent, _ ("Save a picture"));
  fields->session = g_object_ref (session);
  g_object_set_data_full (G_OBJECT (fields->window), "fields", fields, (GDestroyNotify) fields_free);
  gtk_window_set_resizable (GTK_WINDOW (fields->window), FALSE);

  gtk_widget_add_css_class (GTK_WIDGET (grid), "ask");
  gtk_grid_set_column_spacing (grid, 10);
  gtk_grid_set_row_spacing (grid, 8);
  fields->width = number_new (grid, 0, _ ("Width, px"), USUAL_WIDTH);
  fields->height = number_new (grid, 1, _ ("Height, px"), USUAL_HEIGHT);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (words), 40);
  gtk_label_set_max_width_chars (GTK_LABEL (words), 40);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_grid_attach (grid, words, 0, 2, 2, 1);
  gtk_widget_add_css_class (button, "suggested-action");
  gtk_widget_set_halign (button, GTK_ALIGN_END);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (save_cb), fields);
  gtk_grid_attach (grid, button, 0, 3, 2, 1);
  gtk_window_set_child (GTK_WINDOW (fields->window), GTK_WIDGET (grid));
  gtk_window_set_default_widget (GTK_WINDOW (fields->window), button);
  gtk_window_present (GTK_WINDOW (fields->window));
}
