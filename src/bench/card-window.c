/* The card's window. The preview is laid out anew when an edit is over; the advice comes from a thread a moment later. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/card-window-private.h"

#include "bench/ask.h"
#include "bench/card-preview.h"
#include "bench/card-print.h"
#include "bench/card-signs.h"
#include "bench/compat.h"
#include "season/text.h"

typedef struct
{
  LwSeason *season;
  guint batch;
  double load_kg;
} Asked;

G_DEFINE_FINAL_TYPE (LwCardWindow, lw_card_window, GTK_TYPE_WINDOW)

static const LwCard *
card_of (LwCardWindow *self)
{
  return lw_card_preview_card (LW_CARD_PREVIEW (self->preview));
}

static void
lay_out (LwCardWindow *self)
{
  const LwCardWish wish = lw_card_window_wish (self);
  int batch = lw_session_batch_index (self->session);
  const LwTrack *track;
  LwCard *card = NULL;
  const char *told = "";

  lw_session_compute (self->session);
  track = lw_session_track (self->session);
  if (batch >= 0 && track != NULL)
    card = lw_card_new (lw_session_season (self->session), (guint) batch, (LwTrack *) track, self->checkpoints, &wish);
  if (card != NULL && lw_card_n_own (card) > 1)
    told = _ ("The steps do not fit on one page of this paper; they go on to the next.");
  else if (self->job != NULL)
    told = _ ("Advice is being computed…");

  lw_card_preview_show (LW_CARD_PREVIEW (self->preview), card);
  gtk_label_set_label (GTK_LABEL (self->told), told);
  gtk_widget_set_sensitive (self->save, card != NULL);
  gtk_widget_set_sensitive (self->print, card != NULL);
}

static gboolean
due_cb (gpointer data)
{
  LwCardWindow *self = data;

  self->due = 0;
  lay_out (self);

  return G_SOURCE_REMOVE;
}

void
lw_card_window_queue (LwCardWindow *self)
{
  if (self->due == 0)
    self->due = g_idle_add (due_cb, self);
}

/* Lays out what is due now, for paper. */
static void
be_ready (LwCardWindow *self)
{
  lw_card_signs_commit (LW_CARD_SIGNS (self->signs));
  gtk_spin_button_update (GTK_SPIN_BUTTON (self->load));
  if (self->due != 0)
    {
      g_clear_handle_id (&self->due, g_source_remove);
      lay_out (self);
    }
}

static void
asked_free (Asked *asked)
{
  lw_season_unref (asked->season);
  g_free (asked);
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  Asked *asked = data;

  g_task_return_pointer (task, lw_advise (asked->season, asked->batch, asked->load_kg, cancellable),
                         (GDestroyNotify) g_array_unref);
}

static void
advised_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  LwCardWindow *self = LW_CARD_WINDOW (source);
  GArray *checkpoints = g_task_propagate_pointer (G_TASK (result), NULL);

  /* Called off meanwhile. */
  if (g_task_get_cancellable (G_TASK (result)) != self->job)
    {
      g_clear_pointer (&checkpoints, g_array_unref);
      return;
    }

  g_clear_object (&self->job);
  self->checkpoints = checkpoints;
  lw_card_window_queue (self);
}

static void
call_off (LwCardWindow *self)
{
  if (self->job != NULL)
    g_cancellable_cancel (self->job);
  g_clear_object (&self->job);
  g_clear_pointer (&self->checkpoints, g_array_unref);
}

static void
ask_advice (LwCardWindow *self)
{
  g_autoptr (GTask) task = NULL;
  Asked *asked;

  call_off (self);
  if (self->batch < 0)
    return;

  asked = g_new (Asked, 1);
  *asked = (Asked) { lw_season_ref (self->advised), (guint) self->batch, lw_card_window_wish (self).load_kg };
  self->job = g_cancellable_new ();
  task = g_task_new (self, self->job, advised_cb, NULL);
  g_task_set_task_data (task, asked, (GDestroyNotify) asked_free);
  g_task_run_in_thread (task, work);
}

void
lw_card_window_load (LwCardWindow *self)
{
  if (self->filling)
    return;

  ask_advice (self);
  lw_card_window_queue (self);
}

/* A card is for the batch's own leaf until the maker says otherwise. */
static void
show_load (LwCardWindow  *self,
           const LwBatch *batch)
{
  self->batch_kg = batch->fresh_kg;
  self->filling = TRUE;
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->load), batch->fresh_kg);
  self->filling = FALSE;
}

/* While something is dragged the card waits. */
static void
change_cb (LwCardWindow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  LwSeason *season = lw_session_season (self->session);
  int at = lw_session_batch_index (self->session);
  /* Translators: %s is the name of a batch */
  g_autofree char *title = batch != NULL ? g_strdup_printf (_ ("Wall card of %s"), batch->name)
                                         : g_strdup (_ ("Wall card"));

  if (lw_session_is_dragging (self->session))
    return;

  gtk_window_set_title (GTK_WINDOW (self), title);
  if (batch != NULL && (at != self->batch || batch->fresh_kg != self->batch_kg))
    show_load (self, batch);
  if (season != self->advised || at != self->batch)
    {
      g_clear_pointer (&self->advised, lw_season_unref);
      self->advised = lw_season_ref (season);
      self->batch = at;
      if (!self->keeps_advice)
        ask_advice (self);
    }
  self->keeps_advice = FALSE;
  lw_card_window_queue (self);
}

/* Words change no number: what is computed, or being computed, stays right. */
static void
editing_cb (LwCardWindow *self)
{
  self->keeps_advice = TRUE;
}

static void
complain (LwCardWindow *self,
          const char   *heading,
          const GError *error)
{
  const char *answers[] = { _ ("Close"), NULL };

  lw_ask (GTK_WINDOW (self), heading, error != NULL ? error->message : "", answers, NULL, NULL, NULL);
}

void
lw_card_window_save (LwCardWindow *self,
                     const char   *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *said = NULL;

  be_ready (self);
  if (card_of (self) == NULL)
    return;
  if (!lw_card_save (card_of (self), path, &error))
    {
      complain (self, _ ("The card was not saved"), error);
      return;
    }

  said = g_strdup_printf (_ ("Saved in %s."), path);
  gtk_label_set_label (GTK_LABEL (self->told), said);
}

void
lw_card_window_print (LwCardWindow *self,
                      const char   *path)
{
  const LwCardWish wish = lw_card_window_wish (self);
  g_autoptr (GError) error = NULL;

  be_ready (self);
  if (card_of (self) != NULL && !lw_card_print (card_of (self), &wish, GTK_WINDOW (self), path, &error))
    complain (self, _ ("The card was not printed"), error);
}

static void
chosen_cb (GFile   *file,
           gpointer data)
{
  g_autoptr (LwCardWindow) self = data;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    lw_card_window_save (self, path);
}

void
lw_card_window_ask (LwCardWindow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  /* Translators: a file's name; %s is the name of a batch */
  g_autofree char *name = g_strdup_printf (_ ("Card %s.pdf"), batch != NULL ? batch->name : "");

  be_ready (self);
  lw_compat_ask_export (GTK_WINDOW (self), _ ("Save the card"), g_strdelimit (name, "/", '-'), chosen_cb,
                         g_object_ref (self));
}

static gboolean
shortcut_cb (GtkWidget *widget,
             GVariant  *key,
             gpointer   data)
{
  LwCardWindow *self = LW_CARD_WINDOW (widget);

  switch (g_variant_get_int32 (key))
    {
    case GDK_KEY_p:
      lw_card_window_print (self, NULL);
      break;
    case GDK_KEY_s: /* the season, as in the window that it belongs to */
      lw_card_signs_commit (LW_CARD_SIGNS (self->signs));
      g_action_group_activate_action (G_ACTION_GROUP (gtk_window_get_transient_for (GTK_WINDOW (self))), "save", NULL);
      break;
    case GDK_KEY_z:
      lw_session_undo (self->session);
      break;
    default:
      gtk_window_close (GTK_WINDOW (self));
      break;
    }

  return TRUE;
}

static void
lw_card_window_dispose (GObject *object)
{
  LwCardWindow *self = LW_CARD_WINDOW (object);

  call_off (self);
  g_clear_handle_id (&self->due, g_source_remove);
  g_clear_pointer (&self->advised, lw_season_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_card_window_parent_class)->dispose (object);
}

/* What is typed counts, however the window is closed. */
static gboolean
lw_card_window_close_request (GtkWindow *window)
{
  lw_card_signs_commit (LW_CARD_SIGNS (LW_CARD_WINDOW (window)->signs));

  return GTK_WINDOW_CLASS (lw_card_window_parent_class)->close_request (window);
}

static void
lw_card_window_class_init (LwCardWindowClass *klass)
{
  static const struct { guint key; GdkModifierType state; } keys[] = {
    { GDK_KEY_p, GDK_CONTROL_MASK }, { GDK_KEY_s, GDK_CONTROL_MASK }, { GDK_KEY_z, GDK_CONTROL_MASK },
    { GDK_KEY_w, GDK_CONTROL_MASK }, { GDK_KEY_Escape, 0 },
  };

  G_OBJECT_CLASS (klass)->dispose = lw_card_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = lw_card_window_close_request;
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (GTK_WIDGET_CLASS (klass), keys[i].key, keys[i].state, shortcut_cb, "i",
                                  (gint32) keys[i].key);
}

static void
lw_card_window_init (LwCardWindow *self)
{
  self->batch = -1;
}

GtkWidget *
lw_card_window_new (GtkWindow *parent,
                    LwSession *session)
{
  LwCardWindow *self = g_object_new (LW_TYPE_CARD_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->session = g_object_ref (session);
  lw_card_window_fill (self);
  g_signal_connect_object (session, "season", G_CALLBACK (change_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (change_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->signs, "editing", G_CALLBACK (editing_cb), self, G_CONNECT_SWAPPED);
  change_cb (self);

  return GTK_WIDGET (self);
}
