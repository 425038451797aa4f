/* The keyboard of the lane: everything a drag does, by notches, on the block that has
 * the focus. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lane-private.h"

#include "bench/look.h"
#include "bench/telling.h"
#include "draw/block.h"
#include "season/text.h"

#define MANY 10

/* Moves a setting by so many notches; holding the key makes one edit. */
static void
nudge (LwSession *session,
       guint      step,
       LwSetting  setting,
       int        notches)
{
  const LwSeason *base = lw_session_base (session);
  guint at = (guint) lw_session_batch_index (session);
  const LwBatch *batch = base->batches[at];
  const LwStep *here = &batch->steps[step];
  gboolean on_weather;
  double value = setting == LW_SET_MINUTES ? lw_step_get (here, setting)
                                           : lw_block_leading (base, batch, step, &on_weather);
  double notch = setting == LW_SET_MINUTES ? lw_minutes_notch (value + (notches < 0 ? -1e-6 : 0), FALSE)
                                           : lw_setting_row (setting)->notch;
  g_autofree char *label = lw_tell_set (here, setting);
  g_autofree char *key = g_strdup_printf ("set %u %u %d", at, step, (int) setting);
  double next = lw_kind_snap (here->kind, setting, value + notches * notch, FALSE);

  if (next != value || !lw_step_is_given (here, setting))
    lw_session_edit (session, lw_edit_set (base, at, step, setting, next), label, key);
}

static void
move_step (LwLane    *lane,
           LwSession *session,
           guint      step,
           int        by)
{
  const LwBatch *batch = lw_session_batch (session);
  int to = (int) step + by;
  g_autofree char *label = NULL;

  if (to < 0 || to >= (int) batch->n_steps)
    return;

  label = g_strdup_printf (_ ("Move %s"), _ (lw_kind_row (batch->steps[step].kind)->label));
  lw_session_edit (session, lw_edit_move_step (lw_session_base (session), (guint) lw_session_batch_index (session),
                                               step, (guint) to), label, NULL);
  lw_session_compute (session);
  lw_session_choose_step (session, to);
  lw_lane_focus (lane, (guint) to);
  gtk_widget_activate_action (GTK_WIDGET (lane), "board.follow", "u", (guint) to);
}

static void
remove_step (LwLane    *lane,
             LwSession *session,
             guint      step)
{
  const LwBatch *batch = lw_session_batch (session);
  /* Translators: a kind of step */
  g_autofree char *label = g_strdup_printf (_ ("Remove %s"), _ (lw_kind_row (batch->steps[step].kind)->label));

  lw_session_edit (session, lw_edit_remove_step (lw_session_base (session),
                                                 (guint) lw_session_batch_index (session), step), label, NULL);
  lw_session_compute (session);
  lw_lane_focus (lane, (guint) MAX (lw_session_step (session), 0));
}

static void
go_to (LwLane    *lane,
       LwSession *session,
       int        step)
{
  const LwBatch *batch = lw_session_batch (session);

  step = CLAMP (step, 0, (int) batch->n_steps - 1);
  lw_session_choose_step (session, step);
  lw_lane_focus (lane, (guint) step);
  gtk_widget_activate_action (GTK_WIDGET (lane), "board.follow", "u", (guint) step);
}

static gboolean
arrow (LwLane         *lane,
       LwSession      *session,
       guint           step,
       guint           key,
       GdkModifierType state)
{
  gboolean control = (state & GDK_CONTROL_MASK) != 0;
  int many = state & GDK_SHIFT_MASK ? MANY : 1;
  int onward = lw_look_is_rtl (GTK_WIDGET (lane)) ? -1 : 1;
  LwSetting leading = lw_kind_row (lw_session_batch (session)->steps[step].kind)->leading;

  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      onward = -onward;
      G_GNUC_FALLTHROUGH;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      if (control)
        nudge (session, step, LW_SET_MINUTES, onward * many);
      else
        go_to (lane, session, (int) step + onward);
      return TRUE;

    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      if (control)
        nudge (session, step, leading, many);
      return control;

    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      if (control)
        nudge (session, step, leading, -many);
      return control;

    default:
      return FALSE;
    }
}

/* The step whose block has the focus; -1: none. */
static int
focused_step (LwLane *lane)
{
  GtkWidget *focus = gtk_widget_get_focus_child (GTK_WIDGET (lane));
  int step = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (lane)); child;
       child = gtk_widget_get_next_sibling (child))
    {
      if (GTK_IS_MENU_BUTTON (child))
        continue;
      if (child == focus)
        return gtk_widget_is_focus (child) ? step : -1;
      step++;
    }

  return -1;
}

static gboolean
key_cb (LwLane                *lane,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  LwSession *session = lane->session;
  gboolean control_shift = (state & GDK_CONTROL_MASK) && (state & GDK_SHIFT_MASK);
  int step = focused_step (lane);

  if (step < 0 || lw_session_is_dragging (session))
    return FALSE;

  lw_session_choose_step (session, step);
  switch (key)
    {
    case GDK_KEY_Home:
      go_to (lane, session, 0);
      return TRUE;
    case GDK_KEY_End:
      go_to (lane, session, G_MAXINT);
      return TRUE;
    case GDK_KEY_Page_Up:
      if (control_shift)
        move_step (lane, session, (guint) step, -1);
      return control_shift;
    case GDK_KEY_Page_Down:
      if (control_shift)
        move_step (lane, session, (guint) step, 1);
      return control_shift;
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
      remove_step (lane, session, (guint) step);
      return TRUE;
    case GDK_KEY_Insert:
    case GDK_KEY_KP_Insert:
      lw_lane_offer_step (lane, (guint) step + 1);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_Menu:
      lw_lane_settings (lane, (guint) step);
      return TRUE;
    case GDK_KEY_z:
    case GDK_KEY_Z:
      if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
        return FALSE;
      gtk_widget_activate_action (GTK_WIDGET (lane), "board.zoom", "u", (guint) step);
      return TRUE;
    default:
      return arrow (lane, session, (guint) step, key, state);
    }
}

void
lw_lane_add_keys (LwLane *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
