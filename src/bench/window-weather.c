/* Weather in the window: tables of hours come into the season, a batch follows one of
 * its weathers. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/menu.h"
#include "bench/window-private.h"

#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/facts-windows.h"
#include "season/document.h"
#include "season/import.h"
#include "season/text.h"
#include "season/weather-csv.h"

static void
tell_problems (LwWindow   *self,
               const char *path,
               GPtrArray  *problems)
{
  g_autofree char *base = g_path_get_basename (path);
  g_autofree char *name = g_filename_display_name (base);
  g_autofree char *heading = g_strdup_printf (_ ("%s cannot be imported"), name);

  lw_tell_problems (GTK_WINDOW (self), heading, _ ("The season stays as it is."), problems, name);
}

static void
import_path (LwWindow   *self,
             const char *path)
{
  const LwSeason *base = lw_session_base (self->session);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *name = lw_import_name (path), *id = lw_import_weather_id (base, name);
  g_autofree char *said = NULL;
  LwWeather *weather;

  if (base->n_weathers >= LW_MAX_WEATHERS)
    {
      lw_window_say (self, _ ("The season has no room for one more weather; nothing was changed."));
      return;
    }

  weather = lw_weather_csv_load (path, id, name, problems);
  if (weather == NULL)
    {
      tell_problems (self, path, problems);
      return;
    }

  said = g_strdup_printf (ngettext ("“%s” is in the season, %u hour. Choose it under Weather of this batch.",
                                    "“%s” is in the season, %u hours. Choose it under Weather of this batch.",
                                    weather->n_hours), name, weather->n_hours);
  lw_session_edit (self->session, lw_edit_add_weather (base, weather), _ ("Import weather"), NULL);
  lw_window_say (self, said);
}

static void
table_chosen_cb (GFile   *file,
                 gpointer data)
{
  g_autoptr (LwWindow) self = data;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    import_path (self, path);
  else if (file != NULL)
    lw_window_say (self, _ ("Only files on this computer can be opened."));
}

static void
import_weather (GSimpleAction *action,
                GVariant      *target,
                gpointer       data)
{
  lw_compat_ask_table (GTK_WINDOW (data), _ ("Import weather"), table_chosen_cb, g_object_ref (data));
}

static void
import_table (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  import_path (LW_WINDOW (data), g_variant_get_bytestring (target));
}

static void
choose_weather (GSimpleAction *action,
                GVariant      *target,
                gpointer       data)
{
  LwWindow *self = data;
  const LwSeason *base = lw_session_base (self->session);
  const char *id = g_variant_get_string (target, NULL);
  int batch = lw_session_batch_index (self->session);

  if (batch < 0 || g_strcmp0 (base->batches[batch]->weather != NULL ? base->batches[batch]->weather : "", id) == 0)
    return;
  if (*id != '\0' && lw_season_weather (base, id) == NULL)
    return;

  lw_session_edit (self->session, lw_edit_set_batch_weather (base, (guint) batch, *id != '\0' ? id : NULL),
                   _ ("Set weather of batch"), NULL);
}

static void
make_weather (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;

  if (lw_session_base (self->session)->n_weathers < LW_MAX_WEATHERS)
    lw_weather_facts_open (GTK_WINDOW (self), self->session, FALSE);
  else
    lw_window_say (self, _ ("The season has no room for one more weather; nothing was changed."));
}

static void
change_weather (GSimpleAction *action,
                GVariant      *target,
                gpointer       data)
{
  lw_weather_facts_open (data, LW_WINDOW (data)->session, TRUE);
}

/* Whether it has an hour for each of the batch's. */
static gboolean
covers (const LwWeather *weather,
        const LwBatch   *batch)
{
  double minutes = 0;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes += lw_step_get (&batch->steps[i], LW_SET_MINUTES);

  return weather->form != LW_WEATHER_HOURS
         || (weather->start_s <= batch->when_s
             && (double) batch->when_s + 60 * minutes <= (double) weather->start_s + 3600.0 * weather->n_hours);
}

static void
add_weather (GMenu           *menu,
             const LwWeather *weather,
             const LwBatch   *batch)
{
  /* Translators: a weather that has no hours for the days of the batch */
  g_autofree char *off = g_strdup_printf (_ ("%s · not on this batch's days"), weather->name);

  lw_menu_add_choice (menu, batch == NULL || covers (weather, batch) ? weather->name : off, "win.batch-weather", weather->id);
}

/* The season's weathers as they are now, and which of them the batch has. */
static void
season_cb (LwWindow *self)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  GSimpleAction *action = G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "batch-weather"));
  g_autoptr (GMenu) menu = g_menu_new ();

  lw_menu_add_choice (menu, _ ("None"), "win.batch-weather", "");
  for (guint i = 0; i < season->n_weathers; i++)
    add_weather (menu, season->weathers[i], batch);
  lw_menu_refill (self->weather_menu, menu);

  g_simple_action_set_enabled (action, batch != NULL);
  lw_window_enable (self, "make-weather", batch != NULL);
  lw_window_enable (self, "change-weather", lw_weather_facts_can_change (self->session));
  g_simple_action_set_state (action, g_variant_new_string (batch != NULL && batch->weather != NULL ? batch->weather : ""));
}

void
lw_window_add_weather_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "import-weather", .activate = import_weather },
    { .name = "import-table", .activate = import_table, .parameter_type = "ay" },
    { .name = "make-weather", .activate = make_weather },
    { .name = "change-weather", .activate = change_weather },
    { .name = "batch-weather", .activate = choose_weather, .parameter_type = "s", .state = "''" },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}
