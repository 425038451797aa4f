/* What lies over the batch in hand: batches of other seasons, the same kind last year, none, and the differences. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include "bench/ask.h"
#include "bench/compat.h"
#include "bench/last-year.h"
#include "bench/over-pick.h"
#include "bench/over-table.h"
#include "bench/over-watch.h"
#include "season/document.h"
#include "season/same-file.h"
#include "season/text.h"

static LwOverWatch *
watch_of (LwWindow *self)
{
  return g_object_get_data (G_OBJECT (self), "over-watch");
}

/* Last year */

static void
found_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (LwBatch) batch = data;
  g_autoptr (LwLastYear) last = lw_last_year_finish (result);
  g_autofree char *said = lw_last_year_say (last, batch);
  LwWindow *self = LW_WINDOW (source);

  /* The window was closed, or another batch taken in hand meanwhile. */
  if (self->session == NULL || lw_session_batch (self->session) != batch)
    return;

  if (last->season != NULL && last->path != NULL)
    lw_over_watch_file (watch_of (self), last->path);
  if (last->season != NULL)
    lw_overlays_lay (lw_overlays_of (self->session), last->season, last->path, last->found.batch, TRUE);
  lw_window_say (self, said);
}

static void
last_year (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  LwWindow *self = data;
  LwSeason *base = lw_session_base (self->session);
  int batch = lw_session_batch_index (self->session);

  if (batch < 0 || lw_session_is_dragging (self->session))
    return;

  lw_window_say (self, _ ("Looking for the same kind last year …"));
  lw_last_year_find (base, (guint) batch, lw_session_path (self->session), G_OBJECT (self), found_cb,
                     lw_batch_ref (base->batches[batch]));
}

/* Another season */

typedef struct
{
  char *path;
  GPtrArray *problems;
} Other;

static void
other_free (Other *other)
{
  g_free (other->path);
  g_ptr_array_unref (other->problems);
  g_free (other);
}

static void
load (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  Other *other = data;

  g_task_return_pointer (task, lw_document_load (other->path, other->problems), (GDestroyNotify) lw_season_unref);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  LwWindow *self = LW_WINDOW (source);
  Other *other = g_task_get_task_data (G_TASK (result));
  g_autoptr (LwSeason) season = g_task_propagate_pointer (G_TASK (result), NULL);
  g_autofree char *base = g_path_get_basename (other->path), *name = g_filename_display_name (base);
  g_autofree char *heading = g_strdup_printf (_ ("%s cannot be opened"), name);

  if (self->session == NULL)
    return;
  if (season == NULL)
    lw_tell_problems (GTK_WINDOW (self), heading, _ ("Nothing of it is laid over, and nothing else has changed."),
                      other->problems, name);
  else if (season->n_batches == 0)
    lw_window_say (self, _ ("That season has no batches to lay over."));
  else
    lw_over_pick (GTK_WINDOW (self), lw_overlays_of (self->session), season, other->path);
}

static void
chosen_cb (GFile   *file,
           gpointer data)
{
  g_autoptr (LwWindow) self = data;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;
  g_autoptr (GTask) task = NULL;
  Other *other;

  if (file == NULL || self->session == NULL)
    return;
  if (path == NULL || lw_same_file (lw_session_path (self->session), path))
    {
      lw_window_say (self, path == NULL ? _ ("Only files on this computer can be opened.")
                           : _ ("That is the season in hand: tick its batches in the list."));
      return;
    }

  lw_over_watch_file (watch_of (self), path);
  other = g_new (Other, 1);
  *other = (Other) { g_steal_pointer (&path), lw_problems_new () };
  task = g_task_new (self, NULL, loaded_cb, NULL);
  g_task_set_task_data (task, other, (GDestroyNotify) other_free);
  g_task_run_in_thread (task, load);
}

static void
other_season (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  lw_compat_ask_open (GTK_WINDOW (data), chosen_cb, g_object_ref (data));
}

/* By its path, for whom the chooser is in the way. */
static void
other_path (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  g_autoptr (GFile) file = g_file_new_for_path (g_variant_get_bytestring (target));

  chosen_cb (file, g_object_ref (data));
}

/* All of them */

static void
none (GSimpleAction *action,
      GVariant      *target,
      gpointer       data)
{
  LwWindow *self = data;

  lw_overlays_clear (lw_overlays_of (self->session));
  lw_window_say (self, _ ("Nothing lies over the batch."));
}

static void
table_gone_cb (LwWindow *self)
{
  self->differences = NULL;
}

static void
table (GSimpleAction *action,
       GVariant      *target,
       gpointer       data)
{
  LwWindow *self = data;

  if (self->differences == NULL)
    {
      self->differences = lw_over_table_new (GTK_WINDOW (self), self->session);
      g_signal_connect_object (self->differences, "destroy", G_CALLBACK (table_gone_cb), self, G_CONNECT_SWAPPED);
    }
  gtk_window_present (GTK_WINDOW (self->differences));
}

static void
changed_cb (LwWindow *self)
{
  LwOverlays *overlays = lw_overlays_of (self->session);

  lw_window_enable (self, "over-none", lw_overlays_chosen (overlays) > 0);
  lw_window_enable (self, "over-table", lw_overlays_n (overlays) > 0);
}

static void
season_cb (LwWindow *self)
{
  lw_window_enable (self, "over-last-year", lw_session_batch (self->session) != NULL);
}

void
lw_window_add_over_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "over-last-year", .activate = last_year },
    { .name = "over-other", .activate = other_season },
    { .name = "over-path", .activate = other_path, .parameter_type = "ay" },
    { .name = "over-none", .activate = none },
    { .name = "over-table", .activate = table },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_object_set_data_full (G_OBJECT (self), "over-watch", lw_over_watch_new (lw_overlays_of (self->session)), g_object_unref);
  g_signal_connect_object (watch_of (self), "said", G_CALLBACK (lw_window_say), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_overlays_of (self->session), "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
}
