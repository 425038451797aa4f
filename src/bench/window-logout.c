/* The desktop is asked to wait with the session's end while there are unsaved changes; it shows why. Where nobody looks
 * after sessions this does nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"
#include "season/text.h"

#define COOKIE "logout-cookie"

static void
let_go (GtkApplication *app,
        LwWindow       *self)
{
  guint cookie = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (self), COOKIE));

  if (cookie != 0)
    gtk_application_uninhibit (app, cookie);
  g_object_set_data (G_OBJECT (self), COOKIE, NULL);
}

static void
season_cb (LwWindow *self)
{
  GtkApplication *app = gtk_window_get_application (GTK_WINDOW (self));
  gboolean waits = g_object_get_data (G_OBJECT (self), COOKIE) != NULL;
  gboolean unsaved = !lw_session_is_saved (self->session);

  if (app == NULL || waits == unsaved)
    return;
  if (!unsaved)
    let_go (app, self);
  else
    g_object_set_data (G_OBJECT (self), COOKIE,
                       GUINT_TO_POINTER (gtk_application_inhibit (app, GTK_WINDOW (self), GTK_APPLICATION_INHIBIT_LOGOUT,
                                                                  _ ("A season has changes that are not saved."))));
}

static void
removed_cb (GtkApplication *app,
            GtkWindow      *window,
            LwWindow       *self)
{
  if (window == GTK_WINDOW (self))
    let_go (app, self);
}

void
lw_window_add_logout (LwWindow *self)
{
  GApplication *app = g_application_get_default ();

  if (app == NULL)
    return;

  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (app, "window-removed", G_CALLBACK (removed_cb), self, 0);
}
