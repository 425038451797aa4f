/* The guide, in the desktop's viewer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/compat.h"
#include "bench/window-private.h"
#include "season/shipped.h"
#include "season/text.h"

static void
shown_cb (GFile        *file,
          const GError *error,
          gpointer      data)
{
  g_autoptr (LwWindow) self = data;
  g_autofree char *path = g_file_get_parse_name (file), *said = NULL;

  if (error == NULL)
    said = g_strdup_printf (_ ("The guide opens in a window of its own: %s"), path);
  else
    /* Translators: a path, and why */
    said = g_strdup_printf (_ ("No viewer opened the guide, which is at %s: %s"), path, error->message);
  if (self->session != NULL) /* not closed meanwhile */
    lw_window_say (self, said);
}

static void
show_guide (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  g_autofree char *path = lw_shipped_docs_path ("guide/index.html");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  if (g_file_query_exists (file, NULL))
    lw_compat_show_file (data, file, shown_cb, g_object_ref (data));
  else
    {
      g_autofree char *said = g_strdup_printf (_ ("The guide should be at %s, but is not there."), path);

      lw_window_say (data, said);
    }
}

void
lw_window_add_guide_action (LwWindow *self)
{
  static const GActionEntry entries[] = { { .name = "guide", .activate = show_guide } };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
}
