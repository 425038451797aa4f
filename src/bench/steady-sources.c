/* What matters most: each source's share of how an outcome of the finished tea varies. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-parts.h"

#include "bench/share-bar.h"
#include "bench/steady-words.h"
#include "season/text.h"

static const LwQuantity shown[] = {
  LW_MOISTURE, LW_OXIDATION, LW_RUPTURE, LW_ENZYME, LW_ROAST, LW_GREEN, LW_BROKEN, LW_TWIST, LW_WEIGHT, LW_UNEVEN,
};

typedef struct
{
  LwSession *session;
  GtkWidget *choice;
  GtkWidget *sentence;
  GtkWidget *grid;
} Part;

static int
attach_source (Part           *part,
               int             y,
               const LwSpread *spread,
               LwVarySource    source,
               const LwIndex  *index)
{
  const LwVaryRow *row = lw_vary_row (source);
  /* A share that chance put below 0 is none; an error is never told as none. */
  double alone = MAX (100 * index->first, 0), total = 100 * index->total;
  double alone_error = MAX (100 * index->first_se, 1), error = MAX (100 * index->total_se, 1);
  /* Translators: shares in percent with their standard errors, of a source by itself and together with others */
  g_autofree char *number = g_strdup_printf (_ ("%.0f ± %.0f · %.0f ± %.0f %%"), alone, alone_error, total, error);
  g_autofree char *words = g_strdup_printf (_ ("alone %.0f ± %.0f %%, with others %.0f ± %.0f %%"), alone, alone_error, total,
                                            error);
  /* Translators: a source of variation; whether it comes from leaf, weather or hand */
  g_autofree char *name = g_strdup_printf (_ ("%s (%s)"), _ (row->label), _ (row->from));

  return lw_steady_attach (GTK_GRID (part->grid), y, name,
                           lw_share_bar_new (index->first, index->total, index->total_se, name, words), number, NULL);
}

static void
result_cb (GtkWidget *box)
{
  Part *part = g_object_get_data (G_OBJECT (box), "part");
  const LwSpread *spread = lw_steady_result (lw_steady_of (part->session));
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (part->choice)), order[LW_N_VARY], n, end;
  g_autofree char *sentence = NULL;
  int y = 0;

  gtk_widget_set_visible (box, spread != NULL);
  if (spread == NULL || chosen >= G_N_ELEMENTS (shown))
    return;

  end = spread->n_ends - 1;
  sentence = lw_steady_say_sources (spread, end, shown[chosen]);
  gtk_label_set_label (GTK_LABEL (part->sentence), sentence);
  lw_steady_empty (part->grid);
  n = lw_steady_order_sources (spread, end, shown[chosen], order);
  for (guint i = 0; i < n; i++)
    y = attach_source (part, y, spread, spread->sources[order[i]],
                       lw_spread_index (spread, end, shown[chosen], order[i]));
}

GtkWidget *
lw_steady_sources_new (LwSession *session)
{
  Part *part = g_new0 (Part, 1);
  const char *names[G_N_ELEMENTS (shown) + 1] = { NULL };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);

  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    names[i] = _ (lw_quantity_row (shown[i])->label);
  part->session = session;
  part->choice = gtk_drop_down_new_from_strings (names);
  part->sentence = lw_steady_label ("", "steady-sentence");
  part->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (part->grid), 8);
  gtk_accessible_update_property (GTK_ACCESSIBLE (part->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("What varies most in"), -1);
  gtk_widget_set_tooltip_text (part->choice, _ ("Of which outcome of the finished tea it is told"));

  gtk_box_append (GTK_BOX (box), lw_steady_label (_ ("What matters most"), "steady-heading"));
  gtk_box_append (GTK_BOX (box), part->choice);
  gtk_box_append (GTK_BOX (box), part->sentence);
  gtk_box_append (GTK_BOX (box), part->grid);
  gtk_box_append (GTK_BOX (box),
                  lw_steady_label (_ ("Shares of the variance (Sobol’ indices). Filled: of the source alone, that would go if it were "
                                      "held. Hatched: with what it does together with others, that would be left if all "
                                      "else were held."), "steady-note"));
  g_object_set_data_full (G_OBJECT (box), "part", part, g_free);

  g_signal_connect_object (part->choice, "notify::selected", G_CALLBACK (result_cb), box, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_steady_of (session), "result", G_CALLBACK (result_cb), box, G_CONNECT_SWAPPED);
  result_cb (box);

  return box;
}
