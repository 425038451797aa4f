/* Printing by GtkPrintOperation. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/card-print.h"

static void
begin_cb (GtkPrintOperation *operation,
          GtkPrintContext   *context,
          const LwCard      *card)
{
  gtk_print_operation_set_n_pages (operation, (int) lw_card_pages (card)->n);
}

/* On another paper than the card was laid out for, it is made to fit, in the middle. */
static void
draw_cb (GtkPrintOperation *operation,
         GtkPrintContext   *context,
         int                page,
         const LwCard      *card)
{
  const LwPages *pages = lw_card_pages (card);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width = gtk_print_context_get_width (context), height = gtk_print_context_get_height (context);
  double by = MIN (width / pages->width, height / pages->height);

  cairo_save (cr);
  cairo_translate (cr, (width - by * pages->width) / 2, (height - by * pages->height) / 2);
  cairo_scale (cr, by, by);
  lw_card_draw (cr, card, (guint) page);
  cairo_restore (cr);
}

gboolean
lw_card_print (const LwCard     *card,
               const LwCardWish *wish,
               GtkWindow        *parent,
               const char       *path,
               GError          **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *paper = gtk_paper_size_new (lw_paper_pwg (wish->paper));

  gtk_page_setup_set_paper_size_and_default_margins (setup, paper);
  gtk_paper_size_free (paper);
  gtk_page_setup_set_orientation (setup, wish->landscape ? GTK_PAGE_ORIENTATION_LANDSCAPE : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_cb), (gpointer) card);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_cb), (gpointer) card);
  if (path != NULL)
    gtk_print_operation_set_export_filename (operation, path);

  return gtk_print_operation_run (operation,
                                  path != NULL ? GTK_PRINT_OPERATION_ACTION_EXPORT : GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                                  parent, error) != GTK_PRINT_OPERATION_RESULT_ERROR;
}
