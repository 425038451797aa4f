/* The card. What changes is noted and shown once a frame; a screen reader is told at rest. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/why-card.h"

#include <math.h>

#include "bench/factor-bar.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/why.h"

#define ROWS (LW_FACTORS_MOST + 1) /* the factors, and that parts differ */
#define APART_TOLD 0.02            /* less of it is not worth a row */

typedef struct
{
  GtkWidget *name;
  GtkWidget *bar;
  GtkWidget *number;
} Line;

struct _LwWhyCard
{
  GtkWidget parent_instance;

  LwSession *session;
  LwRate rate;
  LwPlan *plan;       /* (nullable) of the track as it is */
  guint tick;

  GtkWidget *title;
  GtkWidget *choice;
  GtkWidget *pace;    /* the rate itself */
  GtkWidget *ways;
  GtkWidget *best;    /* the pace that the factors lessen */
  Line lines[ROWS];
  GtkWidget *sentence;
};

G_DEFINE_FINAL_TYPE (LwWhyCard, lw_why_card, GTK_TYPE_WIDGET)

/* Empty lines take no room. */
static void
say (GtkWidget  *label,
     const char *words)
{
  gtk_label_set_label (GTK_LABEL (label), words);
  gtk_widget_set_visible (label, words[0] != '\0');
}

/* The moment that is looked at; FALSE if there is none. */
static gboolean
moment (LwWhyCard *self,
        guint     *step,
        double    *minute)
{
  const LwTrack *track = lw_session_track (self->session);
  int in_hand = lw_session_step (self->session);

  if (track == NULL || track->n_steps == 0)
    return FALSE;
  if (lw_session_reading (self->session, step, minute))
    return *step < track->n_steps;

  *step = in_hand >= 0 ? (guint) in_hand : track->n_steps - 1;
  if (*step >= track->n_steps)
    return FALSE;
  *minute = track->steps[*step]->duration_s / 60;

  return TRUE;
}

/* Between an edit and its result the season is ahead of the track. */
static gboolean
plan_fits (LwWhyCard *self,
           guint      step)
{
  const LwTrack *track = lw_session_track (self->session);

  if (self->plan == NULL && lw_session_batch (self->session) != NULL)
    self->plan = lw_plan_new (lw_session_season (self->session), (guint) lw_session_batch_index (self->session));

  return self->plan != NULL && step < self->plan->n_steps
         && self->plan->steps[step].duration_s == track->steps[step]->duration_s;
}

static void
show_line (LwWhyCard  *self,
           guint       row,
           const char *name,
           double      value,
           gboolean    times,
           gboolean    strong)
{
  Line *line = &self->lines[row];
  gboolean shown = name != NULL;

  gtk_widget_set_visible (line->name, shown);
  gtk_widget_set_visible (line->bar, shown);
  gtk_widget_set_visible (line->number, shown);
  if (shown)
    {
      g_autofree char *number = lw_why_say_factor (value, times);

      gtk_label_set_label (GTK_LABEL (line->name), name);
      gtk_label_set_label (GTK_LABEL (line->number), number);
      lw_factor_bar_set (LW_FACTOR_BAR (line->bar), value, times, strong);
      if (!lw_session_is_dragging (self->session))
        lw_factor_bar_tell (LW_FACTOR_BAR (line->bar), name, number);
    }
}

static void
show_lines (LwWhyCard      *self,
            const LwWhyWay *way)
{
  guint row = 0;

  for (guint i = 0; i < way->mean.n; i++)
    show_line (self, row++, lw_factor_label (way->mean.factors[i].name), way->mean.factors[i].value,
               lw_factor_is_times (way->mean.factors[i].name), (int) i == way->holds);
  if (fabs (way->apart - 1) > APART_TOLD)
    show_line (self, row++, _ ("Leaf parts differ"), way->apart, TRUE, FALSE);
  while (row < ROWS)
    show_line (self, row++, NULL, 0, FALSE, FALSE);
}

/* The ways and how much each does, where there is more than one; and the pace that the factors lessen. */
static void
show_ways (LwWhyCard   *self,
           const LwWhy *why)
{
  g_autoptr (GString) words = g_string_new (NULL);
  g_autofree char *best = NULL, *pace = lw_why_say_rate (why, why->ways[0].mean.base);
  guint told = 0;

  for (guint i = 0; i < why->n_ways; i++)
    {
      g_autofree char *rate = lw_why_say_rate (why, why->ways[i].per_s);

      if (i > 0 && fabs (why->ways[i].per_s) < 0.005 * fabs (why->ways[0].per_s))
        continue;

      /* Translators: a way in which it comes about and its rate: "by heat: 12.1 % points an hour" */
      g_string_append_printf (words, _ ("%s: %s"), lw_way_label (why->ways[i].mean.way), rate);
      g_string_append_c (words, '\n');
      told++;
    }
  g_string_truncate (words, words->len - 1);
  say (self->ways, words->str);
  gtk_widget_set_visible (self->ways, told > 1);

  /* Translators: a way ("by heat") and a rate ("12.1 % points an hour"), above a list of factors */
  best = g_strdup_printf (_ ("%s: %s, times"), lw_way_label (why->ways[0].mean.way), pace);
  say (self->best, best);
}

/* (transfer full) */
static char *
title_of (LwRate rate,
          double minute)
{
  /* Translators: {time} stays as it is; "16 min" takes its place. */
  static const char *const titles[LW_N_RATES] = {
    [LW_RATE_OXIDATION] = N_ ("Why here: oxidation at {time}"),
    [LW_RATE_WATER] = N_ ("Why here: water loss at {time}"),
    [LW_RATE_RUPTURE] = N_ ("Why here: cell rupture at {time}"),
    [LW_RATE_ENZYME] = N_ ("Why here: enzyme loss at {time}"),
    [LW_RATE_ROAST] = N_ ("Why here: roast at {time}"),
  };
  g_autoptr (GString) title = g_string_new (_ (titles[rate]));
  g_autofree char *time = lw_say_minutes (minute >= 60 ? round (minute) : minute);

  g_string_replace (title, "{time}", time, 1);

  return g_string_free (g_steal_pointer (&title), FALSE);
}

static void
show_nothing (LwWhyCard *self)
{
  gtk_label_set_label (GTK_LABEL (self->title), _ ("Why here"));
  say (self->pace, "");
  say (self->ways, "");
  say (self->best, "");
  gtk_label_set_label (GTK_LABEL (self->sentence), _ ("Nothing is computed."));
  for (guint row = 0; row < ROWS; row++)
    show_line (self, row, NULL, 0, FALSE, FALSE);
}

static void
refresh (LwWhyCard *self)
{
  g_autoptr (LwWhy) why = NULL;
  g_autofree char *title = NULL, *pace = NULL;
  guint step;
  double minute;

  if (!moment (self, &step, &minute))
    {
      show_nothing (self);
      return;
    }
  if (!plan_fits (self, step))
    return;

  why = lw_why_new (self->plan, lw_session_track (self->session), step, minute, self->rate);
  title = title_of (self->rate, why->minute);
  pace = lw_why_say_rate (why, why->per_s);
  gtk_label_set_label (GTK_LABEL (self->title), title);
  say (self->pace, pace);
  show_ways (self, why);
  show_lines (self, &why->ways[0]);
  gtk_label_set_label (GTK_LABEL (self->sentence), why->sentence);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  LW_WHY_CARD (widget)->tick = 0;
  refresh (LW_WHY_CARD (widget));

  return G_SOURCE_REMOVE;
}

/* A card that nobody sees waits until it is mapped. */
static void
due_cb (LwWhyCard *self)
{
  if (self->tick == 0 && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

static void
track_cb (LwWhyCard *self)
{
  g_clear_pointer (&self->plan, lw_plan_free);
  due_cb (self);
}

static void
chosen_cb (LwWhyCard *self)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));

  if (chosen >= LW_N_RATES)
    return;

  self->rate = chosen;
  due_cb (self);
}

static void
lw_why_card_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (lw_why_card_parent_class)->map (widget);
  refresh (LW_WHY_CARD (widget));
}

static void
lw_why_card_dispose (GObject *object)
{
  LwWhyCard *self = LW_WHY_CARD (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->plan, lw_plan_free);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_why_card_parent_class)->dispose (object);
}

static void
lw_why_card_class_init (LwWhyCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_why_card_dispose;
  widget_class->map = lw_why_card_map;

  gtk_widget_class_set_css_name (widget_class, "whycard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
label_new (const char *class,
           gboolean    wrap)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), wrap);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, class);

  return label;
}

static GtkWidget *
lines_new (LwWhyCard *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 2);
  for (int row = 0; row < ROWS; row++)
    {
      Line *line = &self->lines[row];

      line->name = label_new ("why-name", TRUE);
      line->bar = lw_factor_bar_new ();
      line->number = label_new ("why-number", FALSE);
      gtk_label_set_xalign (GTK_LABEL (line->number), 1);
      gtk_label_set_width_chars (GTK_LABEL (line->number), 7);
      gtk_widget_set_hexpand (line->bar, TRUE);
      gtk_grid_attach (GTK_GRID (grid), line->name, 0, row, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), line->bar, 1, row, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), line->number, 2, row, 1, 1);
    }

  return grid;
}

static void
lw_why_card_init (LwWhyCard *self)
{
  const char *rates[LW_N_RATES + 1] = { NULL };
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  for (LwRate rate = 0; rate < LW_N_RATES; rate++)
    rates[rate] = lw_rate_label (rate);

  self->title = label_new ("why-title", TRUE);
  self->choice = gtk_drop_down_new_from_strings (rates);
  self->pace = label_new ("why-pace", TRUE);
  self->ways = label_new ("why-ways", TRUE);
  self->best = label_new ("why-ways", TRUE);
  self->sentence = label_new ("why-sentence", TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Rate"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Why here"), -1);
  gtk_widget_set_tooltip_text (self->choice, _ ("Which rate is explained"));

  gtk_widget_set_parent (self->title, GTK_WIDGET (self));
  gtk_widget_set_parent (self->choice, GTK_WIDGET (self));
  gtk_widget_set_parent (self->pace, GTK_WIDGET (self));
  gtk_widget_set_parent (self->ways, GTK_WIDGET (self));
  gtk_widget_set_parent (self->best, GTK_WIDGET (self));
  gtk_widget_set_parent (lines_new (self), GTK_WIDGET (self));
  gtk_widget_set_parent (self->sentence, GTK_WIDGET (self));
  g_signal_connect_object (self->choice, "notify::selected", G_CALLBACK (chosen_cb), self, G_CONNECT_SWAPPED);
}

GtkWidget *
lw_why_card_new (LwSession *session)
{
  LwWhyCard *self = g_object_new (LW_TYPE_WHY_CARD, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "reading", G_CALLBACK (due_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "step", G_CALLBACK (due_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
