/* What comes out: the share of batches inside every aim, and inside each. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-parts.h"

#include <math.h>

#include "bench/look.h"
#include "bench/share-bar.h"
#include "bench/steady-words.h"
#include "season/text.h"

typedef struct
{
  LwSession *session;
  GtkWidget *box;
  GtkWidget *share;
  GtkWidget *words;
  GtkWidget *grid;
  GtkWidget *reading;  /* how the index is read */
} Part;

static void
show_aims (Part           *part,
           const LwSpread *spread)
{
  g_autofree guint *order = g_new (guint, spread->n_aims);
  int y = 0;

  lw_steady_order_aims (spread, order);
  for (guint i = 0; i < spread->n_aims; i++)
    {
      const LwSpreadAim *aim = &spread->aims[order[i]];
      g_autofree char *name = lw_steady_say_aim (&aim->want);
      g_autofree char *share = lw_steady_say_share (aim->share, aim->share_se);
      g_autofree char *more = lw_steady_say_ppk (lw_session_batch (part->session), aim);

      y = lw_steady_attach (GTK_GRID (part->grid), y, name,
                            lw_share_bar_new (aim->share, NAN, aim->share_se, name, share), share, more);
    }
}

static void
result_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  const LwSpread *spread = lw_steady_result (lw_steady_of (part->session));
  g_autofree char *share = NULL, *numbers = NULL, *words = NULL, *failed = NULL;

  gtk_widget_set_visible (box, spread != NULL);
  if (spread == NULL)
    return;

  lw_steady_empty (part->grid);
  gtk_widget_set_visible (part->share, spread->n_aims > 0);
  gtk_widget_set_visible (part->reading, spread->n_aims > 0);
  failed = spread->failed == 0 ? g_strdup ("")
                               : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, " %u sample could not be computed and counts as outside.",
                                                               " %u samples could not be computed and count as outside.",
                                                               spread->failed),
                                                  spread->failed);
  if (spread->n_aims > 0)
    {
      share = lw_steady_say_share (spread->share, spread->share_se);
      numbers = lw_look_numbers (share);
      gtk_label_set_label (GTK_LABEL (part->share), numbers);
      /* Translators: stands under a share in percent; then a sentence about samples that failed, or nothing */
      words = g_strdup_printf (_ ("of %u samples are inside every aim.%s"), spread->samples, failed);
      show_aims (part, spread);
    }
  else
    words = g_strdup_printf (_ ("There is no aim to be inside of: set one in the result.%s"), failed);
  gtk_label_set_label (GTK_LABEL (part->words), words);
}

GtkWidget *
lw_steady_result_new (LwSession *session)
{
  Part *part = g_new0 (Part, 1);
  LwSteady *steady = lw_steady_of (session);

  part->session = session;
  part->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  part->share = lw_steady_label ("", "steady-share");
  part->words = lw_steady_label ("", "steady-name");
  part->grid = gtk_grid_new ();
  part->reading = lw_steady_label (_ ("Each aim: samples inside ± standard error. Ppk (ISO 22514-4) is the distance from their mean "
                                      "to the nearer limit in 3 standard deviations: 1 and more is steady, 0 has the mean "
                                      "on the limit, less has it outside. An end of the scale, such as 0 %, is no limit. It takes them to be "
                                      "normally distributed; where it and the share disagree, believe the share."),
                                   "steady-note");
  gtk_grid_set_column_spacing (GTK_GRID (part->grid), 8);
  gtk_box_append (GTK_BOX (part->box), part->share);
  gtk_box_append (GTK_BOX (part->box), part->words);
  gtk_box_append (GTK_BOX (part->box), part->grid);
  gtk_box_append (GTK_BOX (part->box), part->reading);
  g_object_set_data_full (G_OBJECT (part->box), "part", part, g_free);

  g_signal_connect_object (steady, "result", G_CALLBACK (result_cb), part->box, G_CONNECT_SWAPPED);
  result_cb (part->box);

  return part->box;
}
