/* The desktop's preference for dark comes through the settings portal; GTK 4.8 does not
 * ask it by itself. Where there is none, GTK's own setting counts. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/desktop.h"

#include "config.h"

#define PORTAL "org.freedesktop.portal.Desktop"
#define PORTAL_PATH "/org/freedesktop/portal/desktop"
#define PORTAL_SETTINGS "org.freedesktop.portal.Settings"
#define APPEARANCE "org.freedesktop.appearance"
#define PREFER_DARK 1

static GtkCssProvider *colors;

GSettings *
lw_desktop_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = NULL;

  if (source != NULL)
    schema = g_settings_schema_source_lookup (source, LW_APP_ID, TRUE);

  return schema != NULL ? g_settings_new_full (schema, NULL, NULL) : NULL;
}

/* A theme can be dark by name, by setting, or by the GTK_THEME variable. */
static gboolean
is_dark (GtkSettings *settings)
{
  const char *forced = g_getenv ("GTK_THEME");
  g_autofree char *theme = NULL;
  gboolean prefer;

  if (forced != NULL)
    return g_str_has_suffix (forced, ":dark") || g_str_has_suffix (forced, "-dark");

  g_object_get (settings, "gtk-theme-name", &theme, "gtk-application-prefer-dark-theme", &prefer, NULL);

  return prefer || (theme != NULL && g_str_has_suffix (theme, "-dark"));
}

static void
load_colors (GtkSettings *settings)
{
  gtk_css_provider_load_from_resource (colors, is_dark (settings) ? "/page/leafwend/Leafwend/dark.css"
                                                                  : "/page/leafwend/Leafwend/paper.css");
}

static void
prefer (GVariant *value)
{
  g_autoptr (GVariant) plain = g_variant_ref (value);

  while (g_variant_is_of_type (plain, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *inner = g_variant_get_variant (plain);

      g_variant_unref (plain);
      plain = inner;
    }
  if (g_variant_is_of_type (plain, G_VARIANT_TYPE_UINT32))
    g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme",
                  g_variant_get_uint32 (plain) == PREFER_DARK, NULL);
}

static void
changed_cb (GDBusConnection *bus,
            const char      *sender,
            const char      *path,
            const char      *interface,
            const char      *signal,
            GVariant        *values,
            gpointer         data)
{
  const char *space, *key;
  g_autoptr (GVariant) value = NULL;

  g_variant_get (values, "(&s&sv)", &space, &key, &value);
  if (g_str_equal (space, APPEARANCE) && g_str_equal (key, "color-scheme"))
    prefer (value);
}

static void
read_cb (GObject      *bus,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (GVariant) values = g_dbus_connection_call_finish (G_DBUS_CONNECTION (bus), result, NULL);

  if (values != NULL)
    {
      g_autoptr (GVariant) value = g_variant_get_child_value (values, 0);

      prefer (value);
    }
}

static void
bus_cb (GObject      *source,
        GAsyncResult *result,
        gpointer      data)
{
  GDBusConnection *bus = g_bus_get_finish (result, NULL);

  if (bus == NULL)
    return;

  g_dbus_connection_signal_subscribe (bus, PORTAL, PORTAL_SETTINGS, "SettingChanged", PORTAL_PATH, APPEARANCE,
                                      G_DBUS_SIGNAL_FLAGS_NONE, changed_cb, NULL, NULL);
  g_dbus_connection_call (bus, PORTAL, PORTAL_PATH, PORTAL_SETTINGS, "Read",
                          g_variant_new ("(ss)", APPEARANCE, "color-scheme"), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NO_AUTO_START, -1, NULL, read_cb, NULL);
  /* The connection is the process's own and stays. */
  g_object_unref (bus);
}

void
lw_desktop_style (GdkDisplay *display)
{
  GtkSettings *settings = gtk_settings_get_for_display (display);
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();

  colors = gtk_css_provider_new ();
  load_colors (settings);
  gtk_css_provider_load_from_resource (style, "/page/leafwend/Leafwend/bench.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (colors), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (style), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_signal_connect (settings, "notify::gtk-application-prefer-dark-theme", G_CALLBACK (load_colors), NULL);
  g_signal_connect (settings, "notify::gtk-theme-name", G_CALLBACK (load_colors), NULL);
  g_bus_get (G_BUS_TYPE_SESSION, NULL, bus_cb, NULL);
}
