/* A choice between what is set and the logs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/settings-log.h"

#include "season/log-say.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;   /* outlives the popover */
  guint step;
  LwSetting setting;
  GtkWidget *entry;
  GStrv ids;            /* of the items after the first */
  GtkWidget *off;       /* how far off the log may be */
} Choice;

static void
choice_free (Choice *choice)
{
  g_strfreev (choice->ids);
  g_free (choice);
}

static void
show_off (Choice *choice,
          guint   chosen)
{
  const LwBatch *batch = lw_session_batch (choice->session);
  const char *id = chosen > 0 ? choice->ids[chosen - 1] : NULL;
  double from_s;
  const LwFollowed *followed = lw_batch_would_follow (batch, choice->step, choice->setting, id, &from_s);
  g_autofree char *words = followed != NULL ? lw_say_log_off (followed) : NULL;
  gtk_label_set_label (GTK_LABEL (choice->off), words != NULL ? words : "");
  gtk_widget_set_visible (choice->off, words != NULL);
}

static void
chosen_cb (GtkWidget  *drop_down,
           GParamSpec *spec,
           Choice     *choice)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down));
  const char *id = chosen > 0 ? choice->ids[chosen - 1] : NULL;
  guint batch = (guint) lw_session_batch_index (choice->session);
  const LwStep *here = &lw_session_batch (choice->session)->steps[choice->step];
  g_autofree char *label = NULL;

  gtk_widget_set_sensitive (choice->entry, id == NULL);
  show_off (choice, chosen);
  if (g_strcmp0 (lw_step_log (here, choice->setting), id) == 0)
    return;

  /* Translators: a setting, a kind of step: "Let wall of fix in pan follow a log" */
  label = g_strdup_printf (id != NULL ? _ ("Let %s of %s follow a log") : _ ("Let %s of %s follow no log"),
                           _ (lw_setting_row (choice->setting)->label), _ (lw_kind_row (here->kind)->label));
  lw_session_edit (choice->session,
                   lw_edit_follow_log (lw_session_base (choice->session), batch, choice->step, choice->setting, id), label,
                   NULL);
}

void
lw_settings_add_log (GtkGrid   *grid,
                     int        y,
                     LwSession *session,
                     guint      step,
                     LwSetting  setting,
                     GtkWidget *entry)
{
  const LwBatch *batch = lw_session_batch (session);
  const char *followed = lw_step_log (&batch->steps[step], setting);
  g_autoptr (GtkStringList) items = gtk_string_list_new (NULL);
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  /* Translators: a setting, such as wall or air */
  g_autofree char *name = g_strdup_printf (_ ("What %s follows"), _ (lw_setting_row (setting)->label));
  GtkWidget *drop_down, *box;
  guint chosen = 0, n = 0;
  Choice *choice;
  LwLogOf of;

  if (!lw_log_of_setting (setting, &of))
    return;

  gtk_string_list_append (items, _ ("as set here"));
  for (guint i = 0; i < batch->n_logs; i++)
    {
      const LwLog *log = batch->logs[i].log;
      /* Translators: the name of a temperature log */
      g_autofree char *item = g_strdup_printf (_ ("follows the log “%s”"), log->name);

      if (lw_log_curve (log, of) == NULL)
        continue;

      n++;
      if (g_strcmp0 (followed, log->id) == 0)
        chosen = n;
      gtk_string_list_append (items, item);
      g_strv_builder_add (ids, log->id);
    }
  if (n == 0)
    return;

  choice = g_new0 (Choice, 1);
  *choice = (Choice) { session, step, setting, entry, g_strv_builder_end (ids), gtk_label_new (NULL) };
  drop_down = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&items)), NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), chosen);
  gtk_widget_set_sensitive (entry, chosen == 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text (drop_down, name);
  box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_label_set_xalign (GTK_LABEL (choice->off), 0);
  gtk_label_set_wrap (GTK_LABEL (choice->off), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (choice->off), 46);
  gtk_widget_add_css_class (choice->off, "small");
  gtk_widget_add_css_class (box, "log-choice");
  gtk_box_append (GTK_BOX (box), drop_down);
  gtk_box_append (GTK_BOX (box), choice->off);
  show_off (choice, chosen);
  g_object_set_data_full (G_OBJECT (drop_down), "choice", choice, (GDestroyNotify) choice_free);
  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (chosen_cb), choice);
  gtk_grid_attach (grid, box, 0, y, 5, 1);
}

void
lw_settings_add_import (GtkGrid *grid,
                        int      y,
                        guint    step)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Import a temperature log…"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.import-log");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "i", (gint32) step);
  gtk_grid_attach (grid, button, 0, y, 5, 1);
}
