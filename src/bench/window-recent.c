/* The files that were opened or saved last, in the menu. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"
#include "season/document.h"

#define MOST_RECENT 8

void
lw_window_refill_recent (LwWindow *self)
{
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  int n = 0;

  g_menu_remove_all (self->recent_menu);
  for (GList *l = items; l != NULL && n < MOST_RECENT; l = l->next)
    {
      GtkRecentInfo *info = l->data;
      g_autoptr (GMenuItem) item = NULL;

      if (!gtk_recent_info_has_application (info, "Leafwend") || !gtk_recent_info_exists (info))
        continue;

      item = g_menu_item_new (gtk_recent_info_get_display_name (info), NULL);
      g_menu_item_set_action_and_target (item, "win.open-recent", "s", gtk_recent_info_get_uri (info));
      g_menu_append_item (self->recent_menu, item);
      n++;
    }
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
}

void
lw_window_note_recent (LwWindow   *self,
                       const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
    .mime_type = (char *) LW_SEASON_MIME, .app_name = (char *) "Leafwend", .app_exec = (char *) "leafwend %f",
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
  lw_window_refill_recent (self);
}
