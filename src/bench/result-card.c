/* The card. What changes is noted and shown once a frame; a screen reader is told at rest. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/result-card.h"

#include <math.h>

#include "bench/result-list.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/heat.h"
#include "study/reach.h"

static const LwQuantity shown[] = {
  LW_MOISTURE, LW_OXIDATION, LW_RUPTURE, LW_ENZYME, LW_ROAST, LW_GREEN, LW_BROKEN, LW_TWIST, LW_WEIGHT, LW_UNEVEN,
  LW_NEARLY_DRY, LW_ROASTED,
};

#define N_SHOWN G_N_ELEMENTS (shown)
#define READABLE_US 50000 /* nobody reads numbers that change faster */

struct _LwResultCard
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *choice;          /* the finished tea, or the end of the step in hand */
  LwResultRow *rows[N_SHOWN];
  GtkWidget *list;
  GtkWidget *unlock;
  GtkWidget *cost;
  GtkWidget *place;           /* says which step's end it is */
  guint tick;
  gint64 shown_us;            /* by the frame clock */
};

G_DEFINE_FINAL_TYPE (LwResultCard, lw_result_card, GTK_TYPE_WIDGET)

/* The aim there: of the finished tea also one at the end of the last step. `at`: where it stands. */
static const LwAim *
aim_at (const LwBatch *batch,
        int            place,
        LwQuantity     of,
        int           *at)
{
  const LwAim *aim = lw_batch_aim (batch, place, of);

  *at = place;
  if (aim == NULL && place < 0 && batch->n_steps > 0)
    {
      aim = lw_batch_aim (batch, (int) batch->n_steps - 1, of);
      if (aim != NULL)
        *at = (int) batch->n_steps - 1;
    }

  return aim;
}

static void
show_rows (LwResultCard *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  int place = lw_session_place (self->session), at;
  LwOutcome now, before;
  gboolean computed = lw_session_outcome (self->session, lw_session_track (self->session), place, &now);
  gboolean compared = lw_session_outcome (self->session, lw_session_ghost (self->session), place, &before);

  for (guint i = 0; i < N_SHOWN; i++)
    {
      const LwAim *aim = aim_at (batch, place, shown[i], &at);
      g_autofree char *more = NULL;
      LwOutcomeLook look = {
        .quantity = shown[i], .value = NAN, .change = NAN, .held = NAN, .tolerance = lw_want_tolerance (shown[i]),
      };

      gtk_widget_set_visible (GTK_WIDGET (self->rows[i]), computed);
      if (!computed)
        continue;

      look.value = lw_quantity_of (shown[i], &now);
      if (compared)
        look.change = look.value - lw_quantity_of (shown[i], &before);
      if (aim != NULL)
        {
          look.aimed = TRUE;
          look.low = aim->low;
          look.high = aim->high;
          look.why = aim->note;
        }
      lw_session_locked (self->session, at, shown[i], &look.held);
      if (shown[i] == LW_RUPTURE)
        look.more = more = g_strdup_printf (_ ("wilting %.0f, heat %.0f, rolling %.0f"), now.rupture_wilt_pct,
                                            now.rupture_heat_pct, now.rupture_roll_pct);
      lw_result_row_show (self->rows[i], at, &look);
    }
}

/* Heat, hands and hours up to where it is looked at. */
static void
show_cost (LwResultCard *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  const LwTrack *track = lw_session_track (self->session);
  g_autoptr (LwPlan) plan = lw_plan_new (lw_session_season (self->session),
                                         (guint) lw_session_batch_index (self->session));
  g_autoptr (LwHeat) heat = NULL;
  g_autofree char *time = NULL, *words = NULL;
  int place = lw_session_place (self->session);
  double minutes = 0, fuel_j = 0, hands_h = 0;

  gtk_label_set_label (GTK_LABEL (self->cost), "");
  if (plan == NULL || track == NULL || batch->n_steps == 0)
    return;

  heat = lw_heat_new (plan, batch, track);
  for (guint i = 0; i < heat->n_steps && (place < 0 || (int) i <= place); i++)
    {
      minutes += lw_step_get (&batch->steps[i], LW_SET_MINUTES);
      fuel_j += heat->steps[i].fuel_j;
      hands_h += heat->steps[i].hands_h;
    }
  time = lw_say_minutes (round (minutes));
  /* Translators: heat of the fuel, hours that hands are bound, time from the batch's start */
  words = g_strdup_printf (_ ("Fuel heat %.1f kWh, hands %.1f h, %s in all"), fuel_j / LW_J_PER_KWH, hands_h, time);
  gtk_label_set_label (GTK_LABEL (self->cost), words);
}

static void
show_place (LwResultCard *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  int place = lw_session_place (self->session);
  g_autofree char *words = NULL;

  if (batch != NULL && batch->n_steps == 0)
    words = g_strdup (_ ("The batch has no steps yet. The + over the panels adds one."));
  else if (place >= 0)
    /* Translators: number of a step, of how many, its kind */
    words = g_strdup_printf (_ ("At the end of step %d of %u, %s"), place + 1, batch->n_steps,
                             _ (lw_kind_row (batch->steps[place].kind)->label));
  else if (lw_session_looks_at_step (self->session))
    words = g_strdup (lw_session_step (self->session) < 0 ? _ ("Choose a step by a click on its block.")
                                                          : _ ("The last step leaves the finished tea."));
  gtk_label_set_label (GTK_LABEL (self->place), words != NULL ? words : "");
  gtk_widget_set_visible (self->place, words != NULL);
}

static void
show_unlock (LwResultCard *self)
{
  guint n = lw_session_n_locks (self->session);
  g_autofree char *words = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Let go %u lock", "Let go %u locks", n), n);

  gtk_widget_set_visible (self->unlock, n > 0);
  gtk_button_set_label (GTK_BUTTON (self->unlock), words);
}

static void
refresh (LwResultCard *self)
{
  gboolean any = lw_session_batch (self->session) != NULL;

  gtk_widget_set_visible (self->choice, any);
  gtk_widget_set_visible (self->list, any);
  gtk_widget_set_visible (self->cost, any);
  if (!any)
    {
      gtk_widget_set_visible (self->unlock, FALSE);
      gtk_label_set_label (GTK_LABEL (self->place), _ ("The season has no batch. A new season begins with one."));
      gtk_widget_set_visible (self->place, TRUE);
      return;
    }

  show_rows (self);
  gtk_widget_queue_draw (self->list);
  show_cost (self);
  if (lw_session_is_dragging (self->session))
    return;

  show_place (self);
  show_unlock (self);
  for (guint i = 0; i < N_SHOWN; i++)
    lw_result_row_tell (self->rows[i]);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  LwResultCard *self = LW_RESULT_CARD (widget);
  gint64 now_us = gdk_frame_clock_get_frame_time (clock);

  if (lw_session_is_dragging (self->session) && now_us - self->shown_us < READABLE_US)
    return G_SOURCE_CONTINUE;

  self->tick = 0;
  self->shown_us = now_us;
  refresh (self);

  return G_SOURCE_REMOVE;
}

static void
due_cb (LwResultCard *self)
{
  if (self->tick == 0 && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

static void
chosen_cb (LwResultCard *self)
{
  lw_session_look_at_step (self->session, gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice)) == 1);
}

/* The widget */

static void
lw_result_card_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lw_result_card_parent_class)->map (widget);
  refresh (LW_RESULT_CARD (widget));
}

static void
lw_result_card_dispose (GObject *object)
{
  LwResultCard *self = LW_RESULT_CARD (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_result_card_parent_class)->dispose (object);
}

static void
lw_result_card_class_init (LwResultCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_result_card_dispose;
  widget_class->map = lw_result_card_map;

  gtk_widget_class_set_css_name (widget_class, "resultcard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_result_card_init (LwResultCard *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Result"), -1);

  self->choice = gtk_drop_down_new_from_strings ((const char *[]) { _ ("Finished tea"), _ ("After the step in hand"), NULL });
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Result of"), -1);
  gtk_widget_set_parent (self->choice, GTK_WIDGET (self));
}

static GtkWidget *
list_new (LwResultCard *self)
{
  GtkWidget *list = lw_result_list_new ();

  for (guint i = 0; i < N_SHOWN; i++)
    {
      self->rows[i] = LW_RESULT_ROW (lw_result_row_new (self->session, shown[i]));
      lw_result_list_add (LW_RESULT_LIST (list), self->rows[i]);
    }

  return list;
}

static GtkWidget *
label_new (LwResultCard *self)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "result-words");
  gtk_widget_set_parent (label, GTK_WIDGET (self));

  return label;
}

GtkWidget *
lw_result_card_new (LwSession *session)
{
  LwResultCard *self = g_object_new (LW_TYPE_RESULT_CARD, NULL);

  self->session = g_object_ref (session);
  self->place = label_new (self);
  self->list = list_new (self);
  gtk_widget_set_parent (self->list, GTK_WIDGET (self));

  self->unlock = gtk_button_new ();
  gtk_widget_set_visible (self->unlock, FALSE);
  gtk_widget_set_parent (self->unlock, GTK_WIDGET (self));
  g_signal_connect_object (self->unlock, "clicked", G_CALLBACK (lw_session_unlock), session, G_CONNECT_SWAPPED);

  self->cost = label_new (self);

  g_signal_connect_object (session, "track", G_CALLBACK (due_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "locks", G_CALLBACK (due_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "step", G_CALLBACK (due_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->choice, "notify::selected", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
