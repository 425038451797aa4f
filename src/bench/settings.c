/* The settings popover. Each change is an edit at once; changes of one field in a row
 * are one undo. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/settings.h"

#include "bench/entry.h"
#include "bench/popover.h"
#include "bench/settings-log.h"
#include "bench/telling.h"
#include "draw/block.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/reach.h"

/* One field's row. */
typedef struct
{
  LwSession *session; /* outlives the popover */
  guint step;
  LwSetting setting;
  GtkWidget *entry;
  GtkWidget *weather; /* (nullable) */
} Row;

static const LwStep *
step_of (const Row *row)
{
  return &lw_session_batch (row->session)->steps[row->step];
}

static void
edit (const Row *row,
      LwSeason  *season)
{
  g_autofree char *label = lw_tell_set (step_of (row), row->setting);
  g_autofree char *key = g_strdup_printf ("set %d %u %d", lw_session_batch_index (row->session), row->step,
                                          (int) row->setting);

  lw_session_edit (row->session, season, label, key);
}

static void
value_cb (GtkSpinButton *spin,
          const Row     *row)
{
  double value = gtk_spin_button_get_value (spin);

  if (lw_step_is_given (step_of (row), row->setting) && lw_step_get (step_of (row), row->setting) == value)
    return;

  edit (row, lw_edit_set (lw_session_base (row->session), (guint) lw_session_batch_index (row->session), row->step,
                          row->setting, value));
}

static void
weather_cb (GtkCheckButton *check,
            const Row      *row)
{
  const LwSeason *base = lw_session_base (row->session);
  guint batch = (guint) lw_session_batch_index (row->session);
  gboolean follow = gtk_check_button_get_active (check);

  gtk_widget_set_sensitive (row->entry, !follow);
  edit (row, follow ? lw_edit_unset (base, batch, row->step, row->setting)
                    : lw_edit_set (base, batch, row->step, row->setting,
                                   gtk_spin_button_get_value (GTK_SPIN_BUTTON (row->entry))));
}

static char *
range_text (LwKind    kind,
            LwSetting setting)
{
  const LwKindSetting *range = lw_kind_setting (kind, setting);
  const LwSettingRow *row = lw_setting_row (setting);
  g_autofree char *low = setting == LW_SET_MINUTES ? lw_say_minutes (range->low)
                                                   : g_strdup_printf ("%.*f", row->digits, range->low);
  g_autofree char *high = lw_say_setting (setting, range->high);
  /* Translators: lowest and highest value of a setting */
  g_autofree char *text = g_strdup_printf (_ ("%s to %s"), low, high);
  g_autoptr (GString) line = g_string_new (text);

  /* A range is read at once, on one line: spaces that hold, and a joiner after the slash of a unit. */
  g_string_replace (line, " ", "\u00a0", 0);
  g_string_replace (line, "/", "/\u2060", 0);

  return g_string_free (g_steal_pointer (&line), FALSE);
}

static GtkWidget *
small_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 46);
  gtk_widget_add_css_class (label, "small");

  return label;
}

static void
add_weather (Row     *row,
             GtkGrid *grid,
             int      y)
{
  GtkWidget *check = gtk_check_button_new_with_label (_ ("weather"));
  gboolean follow = !lw_step_is_given (step_of (row), row->setting);

  row->weather = check;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), follow);
  gtk_widget_set_sensitive (row->entry, !follow);
  gtk_widget_set_tooltip_text (check, _ ("Follow the weather of the batch"));
  g_signal_connect (check, "toggled", G_CALLBACK (weather_cb), row);
  gtk_grid_attach (grid, check, 3, y, 1, 1);
}

static void
pin_cb (GtkToggleButton *pin,
        const Row       *row)
{
  lw_session_pin (row->session, row->step, row->setting, gtk_toggle_button_get_active (pin));
}

static void
add_pin (Row     *row,
         GtkGrid *grid,
         int      y)
{
  GtkWidget *pin = gtk_toggle_button_new ();
  /* Translators: a setting that the program may not move */
  g_autofree char *name = g_strdup_printf (_ ("Pin %s"), _ (lw_setting_row (row->setting)->label));

  gtk_button_set_icon_name (GTK_BUTTON (pin), "view-pin-symbolic");
  gtk_widget_add_css_class (pin, "flat");
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (pin), lw_session_pinned (row->session, row->step, row->setting));
  gtk_widget_set_tooltip_text (pin, _ ("Never move this setting to hold or reach a result"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (pin), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (pin, "toggled", G_CALLBACK (pin_cb), row);
  gtk_grid_attach (grid, pin, 4, y, 1, 1);
}

/* Four lines of the grid: the field, hidden, a refusal, what it does and its range, and which log it follows, if any. */
static void
add_row (GtkGrid             *grid,
         int                  y,
         LwSession           *session,
         guint                step,
         const LwKindSetting *range)
{
  const LwSeason *season = lw_session_season (session);
  const LwBatch *batch = lw_session_batch (session);
  const LwStep *here = &batch->steps[step];
  const LwSettingRow *setting = lw_setting_row (range->setting);
  g_autofree char *limits = range_text (here->kind, range->setting);
  g_autofree char *told = g_strdup_printf ("%s %s.", _ (setting->effect), limits);
  GtkWidget *name = gtk_label_new (_ (setting->label));
  GtkWidget *unit = gtk_label_new (range->setting == LW_SET_MINUTES ? "" : lw_unit_words (setting->unit));
  GtkWidget *effect = small_label (told), *refused = small_label ("");
  gboolean on_weather, leading = lw_kind_row (here->kind)->leading == range->setting;
  /* What follows a log goes back to what was set. */
  gboolean logged = lw_step_log (here, range->setting) != NULL;
  double value = leading && !logged ? lw_block_leading (season, batch, step, &on_weather) : lw_step_get (here, range->setting);
  Row *row = g_new0 (Row, 1);

  *row = (Row) { .session = session, .step = step, .setting = range->setting };
  row->entry = lw_entry_new (here->kind, range->setting, value, GTK_LABEL (refused));
  g_object_set_data_full (G_OBJECT (row->entry), "row", row, g_free);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (unit), 0);
  gtk_widget_add_css_class (effect, "dim-label");
  gtk_widget_add_css_class (refused, "refused");
  gtk_widget_set_visible (refused, FALSE);
  gtk_grid_attach (grid, name, 0, y, 1, 1);
  gtk_grid_attach (grid, row->entry, 1, y, 1, 1);
  gtk_grid_attach (grid, unit, 2, y, 1, 1);
  gtk_grid_attach (grid, refused, 0, y + 1, 5, 1);
  gtk_grid_attach (grid, effect, 0, y + 2, 5, 1);

  if (range->weather && batch->weather != NULL)
    add_weather (row, grid, y);
  if (lw_reach_turns (here->kind, range->setting))
    add_pin (row, grid, y);
  lw_settings_add_log (grid, y + 3, session, step, range->setting, row->entry);
  g_signal_connect (row->entry, "value-changed", G_CALLBACK (value_cb), row);
}

static void
kind_cb (GtkDropDown *kinds,
         GParamSpec  *pspec,
         gpointer     data)
{
  LwSession *session = g_object_get_data (G_OBJECT (kinds), "session");
  guint step = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (kinds), "step"));
  LwKind kind = (LwKind) gtk_drop_down_get_selected (kinds);
  g_autofree char *label = NULL;

  if (step >= lw_session_batch (session)->n_steps || lw_session_batch (session)->steps[step].kind == kind)
    return;

  /* Translators: a step is made one of another kind */
  label = g_strdup_printf (_ ("Make step %u %s"), step + 1, _ (lw_kind_row (kind)->label));
  lw_session_edit (session, lw_edit_set_kind (lw_session_base (session), (guint) lw_session_batch_index (session), step, kind),
                   label, NULL);
}

static GtkWidget *
kinds_new (LwSession *session,
           guint      step)
{
  const char *labels[LW_N_KINDS + 1] = { NULL };
  GtkWidget *kinds;

  for (guint i = 0; i < LW_N_KINDS; i++)
    labels[i] = _ (lw_kind_row ((LwKind) i)->label);
  kinds = gtk_drop_down_new_from_strings (labels);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (kinds), lw_session_batch (session)->steps[step].kind);
  gtk_widget_set_halign (kinds, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (kinds, _ ("Make it a step of another kind"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (kinds), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("kind of step"), -1);
  g_object_set_data_full (G_OBJECT (kinds), "session", g_object_ref (session), g_object_unref);
  g_object_set_data (G_OBJECT (kinds), "step", GUINT_TO_POINTER (step));
  g_signal_connect (kinds, "notify::selected", G_CALLBACK (kind_cb), NULL);

  return kinds;
}

typedef struct
{
  LwSession *session;  /* outlives the popover */
  int batch;
  guint n_steps;
  guint step;
  LwKind kind;
} Opened;

/* Another step, or one of another kind, has other settings: the popover goes, whoever changed it. */
static void
season_cb (GtkPopover *popover)
{
  const Opened *opened = g_object_get_data (G_OBJECT (popover), "opened");
  const LwBatch *batch = lw_session_batch (opened->session);

  if (batch == NULL || lw_session_batch_index (opened->session) != opened->batch || batch->n_steps != opened->n_steps
      || batch->steps[opened->step].kind != opened->kind)
    gtk_popover_popdown (popover);
}

static void
close_in_time (GtkWidget *popover,
               LwSession *session,
               guint      step)
{
  const LwBatch *batch = lw_session_batch (session);
  Opened *opened = g_new (Opened, 1);

  *opened = (Opened) { session, lw_session_batch_index (session), batch->n_steps, step, batch->steps[step].kind };
  g_object_set_data_full (G_OBJECT (popover), "opened", opened, g_free);
  g_signal_connect_object (session, "season", G_CALLBACK (season_cb), popover, G_CONNECT_SWAPPED);
}

void
lw_settings_open (GtkWidget *block,
                  LwSession *session,
                  guint      step)
{
  const LwKindRow *kind = lw_kind_row (lw_session_batch (session)->steps[step].kind);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *title = gtk_label_new (_ (kind->label)), *kinds = gtk_label_new (_ ("kind of step"));

  gtk_widget_add_css_class (title, "heading");
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 10);
  gtk_widget_add_css_class (grid, "settings");
  gtk_grid_attach (GTK_GRID (grid), title, 0, 0, 4, 1);
  for (guint i = 0; i < kind->n_settings; i++)
    add_row (GTK_GRID (grid), 1 + 4 * (int) i, session, step, &kind->settings[i]);
  lw_settings_add_import (GTK_GRID (grid), 1 + 4 * (int) kind->n_settings, step);
  gtk_label_set_xalign (GTK_LABEL (kinds), 0);
  gtk_grid_attach (GTK_GRID (grid), kinds, 0, 2 + 4 * (int) kind->n_settings, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), kinds_new (session, step), 1, 2 + 4 * (int) kind->n_settings, 3, 1);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 460);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), grid);
  close_in_time (lw_popover_open (block, scrolled, GTK_POS_BOTTOM, _ (kind->label)), session, step);
}
