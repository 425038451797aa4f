/* The application. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/app.h"

#include "bench/desktop.h"
#include "bench/window.h"
#include "season/document.h"
#include "season/edit.h"
#include "season/shipped.h"
#include "season/text.h"

#define DEMO "ondry-ridge-2026" LW_SEASON_SUFFIX

static const struct
{
  const char *action;
  const char *keys[3];
} accels[] = {
  { "win.new", { "<Control>n" } },
  { "win.open", { "<Control>o" } },
  { "win.find-batches", { "<Control>f" } },
  { "win.save", { "<Control>s" } },
  { "win.save-as", { "<Control><Shift>s" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z", "<Control>y" } },
  { "win.guide", { "F1" } },
  { "win.show-side", { "F9" } },
  { "win.reach-aims", { "<Control>e" } },
  { "win.replan", { "<Control>j" } },
  { "win.repeat-batch", { "<Control>r" } },
  { "win.batch-facts", { "F2" } },
  { "win.fit-leaf", { "<Control><Shift>f" } },
  { "win.over-last-year", { "<Control>l" } },
  { "win.over-other", { "<Control><Shift>l" } },
  { "win.over-table", { "<Control>d" } },
  { "win.wall-card", { "<Control>p" } },
  { "win.lesson", { "<Control>t" } },
  { "win.by-clock", { "<Control>k" } },
  { "win.run-pause", { "F7" } },
  { "win.run-next", { "F8" } },
  { "window.close", { "<Control>w" } },
  { "app.quit", { "<Control>q" } },
};

static void
quit (GSimpleAction *action,
      GVariant      *target,
      gpointer       data)
{
  GtkApplication *app = data;
  /* Held, since one may take others with it. */
  GList *windows = g_list_copy_deep (gtk_application_get_windows (app), (GCopyFunc) (void (*) (void)) g_object_ref, NULL);

  /* Each asks about its own changes; the program ends with the last. */
  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (l->data);
  g_list_free_full (windows, g_object_unref);
}

static void
startup_cb (GtkApplication *app)
{
  static const GActionEntry entries[] = { { .name = "quit", .activate = quit } };

  g_action_map_add_action_entries (G_ACTION_MAP (app), entries, G_N_ELEMENTS (entries), app);
  for (guint i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (app, accels[i].action, accels[i].keys);

  lw_desktop_style (gdk_display_get_default ());
  gtk_window_set_default_icon_name (LW_APP_ID);
}

/* The demo is opened as a copy without a file, so that saving asks where and the demo stays whole. */
static LwSeason *
first_season (void)
{
  g_autofree char *path = lw_shipped_path (DEMO);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwSeason *season = lw_document_load (path, problems);

  return season != NULL ? season : lw_edit_new_season (12 * 3600);
}

static LwWindow *
window_new (GtkApplication *app)
{
  g_autoptr (LwSeason) season = first_season ();
  GtkWidget *window = lw_window_new (app, season, NULL);

  gtk_window_present (GTK_WINDOW (window));

  return LW_WINDOW (window);
}

static void
activate_cb (GtkApplication *app)
{
  GtkWindow *active = gtk_application_get_active_window (app);

  if (active != NULL)
    gtk_window_present (active);
  else
    window_new (app);
}

static void
open_cb (GtkApplication *app,
         GFile         **files,
         int             n,
         const char     *hint)
{
  for (int i = 0; i < n; i++)
    lw_window_open_file (window_new (app), files[i]);
}

static int
local_options_cb (GApplication *app,
                  GVariantDict *options)
{
  if (!g_variant_dict_contains (options, "version"))
    return -1;

  g_print ("leafwend (Leafwend) %s\n", LW_VERSION);

  return 0;
}

GtkApplication *
lw_app_new (void)
{
  GtkApplication *app = gtk_application_new (LW_APP_ID, G_APPLICATION_HANDLES_OPEN);
  const GOptionEntry entries[] = {
    { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Show the version"), NULL },
    G_OPTION_ENTRY_NULL
  };

  /* So that it is asked before the desktop's session ends; bench/window-logout.c answers. */
  g_object_set (app, "register-session", TRUE, NULL);
  g_application_add_main_option_entries (G_APPLICATION (app), entries);
  g_application_set_option_context_parameter_string (G_APPLICATION (app), _ ("[SEASON]..."));
  g_signal_connect (app, "handle-local-options", G_CALLBACK (local_options_cb), NULL);
  g_signal_connect (app, "startup", G_CALLBACK (startup_cb), NULL);
  g_signal_connect (app, "activate", G_CALLBACK (activate_cb), NULL);
  g_signal_connect (app, "open", G_CALLBACK (open_cb), NULL);

  return app;
}
