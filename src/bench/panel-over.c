/* What a panel shows of the batches laid over. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/panel-over.h"

#include "bench/look.h"
#include "draw/words.h"
#include "season/text.h"

#define GUTTER_LEAST 64.0
#define GUTTER_MOST 150.0
#define GUTTER_SHARE 0.16 /* of the board */

struct _LwPanelOver
{
  LwOverlays *overlays;
  LwQuantity of;
  GtkWidget *panel;       /* not owned */
  GArray *looks;          /* LwPanelOverlay */
  GPtrArray *words;       /* tags and names of these */
  LwPanelKept *kept;
  guint stamp;            /* of `looks` */
  const LwPalette *palette;
};

LwPanelOver *
lw_panel_over_new (LwSession *session,
                   GtkWidget *panel,
                   LwQuantity of,
                   GCallback  changed)
{
  LwPanelOver *over = g_new0 (LwPanelOver, 1);

  over->overlays = g_object_ref (lw_overlays_of (session));
  over->of = of;
  over->panel = panel;
  over->looks = g_array_new (FALSE, TRUE, sizeof (LwPanelOverlay));
  over->words = g_ptr_array_new_with_free_func (g_free);
  over->kept = lw_panel_kept_new ();
  g_signal_connect_object (over->overlays, "changed", changed, panel, G_CONNECT_SWAPPED);

  return over;
}

void
lw_panel_over_free (LwPanelOver *over)
{
  lw_panel_kept_free (over->kept);
  g_array_unref (over->looks);
  g_ptr_array_unref (over->words);
  g_object_unref (over->overlays);
  g_free (over);
}

static char *
keep (LwPanelOver *over,
      char        *words)
{
  g_ptr_array_add (over->words, words);

  return words;
}

static void
add_look (LwPanelOver *over,
          LwLaid      *laid)
{
  LwPanelOverlay look = {
    .curves = lw_laid_curves (laid, over->of),
    .minutes = laid->minutes,
    .n = lw_laid_batch (laid)->n_steps,
    .columns = laid->columns,
    .begins = lw_overlays_begins (over->overlays, laid),
    .tag = keep (over, lw_laid_tag (laid)),
    .name = keep (over, lw_laid_name (laid)),
    .ink = lw_laid_ink (laid, over->palette),
    .dash = lw_laid_dash (laid),
    .thin = lw_laid_is_thin (laid),
  };

  if (look.curves != NULL)
    g_array_append_val (over->looks, look);
}

void
lw_panel_over_look (LwPanelOver *over,
                    LwPanelLook *look)
{
  guint n = lw_overlays_n (over->overlays), stamp = lw_overlays_stamp (over->overlays);
  const LwPalette *palette = lw_look_palette (over->panel);

  if (stamp != over->stamp || palette != over->palette)
    {
      over->stamp = stamp;
      over->palette = palette;
      g_array_set_size (over->looks, 0);
      g_ptr_array_set_size (over->words, 0);
      for (guint i = 0; i < n; i++)
        add_look (over, lw_overlays_nth (over->overlays, i));
    }

  look->overlays = (const LwPanelOverlay *) (gpointer) over->looks->data;
  look->n_overlays = over->looks->len;
  look->gutter = TRUE;
  look->kept = over->kept;
  look->overlays_stamp = stamp;
  look->pixels = gtk_widget_get_scale_factor (over->panel);
}

static void
tell_one (LwPanelOver *over,
          LwLaid      *laid,
          GString     *words)
{
  g_autofree char *tag = lw_laid_tag (laid), *name = lw_laid_name (laid), *value = NULL;
  LwOutcome end;

  if (laid->track == NULL)
    {
      g_string_append_printf (words, " %s %s: %s.", tag, name, laid->failure != NULL ? laid->failure : _ ("being computed"));
      return;
    }
  if (laid->track->n_steps == 0)
    return;

  end = lw_track_end (laid->track, laid->track->n_steps - 1, -1);
  value = lw_words_value (over->of, lw_quantity_of (over->of, &end));
  g_string_append (words, " ");
  /* Translators: a batch's letter, its name, and what its finished tea has: "A 2025 · 13 long wither: 6.1 % at the end." */
  g_string_append_printf (words, _ ("%s %s: %s at the end."), tag, name, value);
}

char *
lw_panel_over_tell (LwPanelOver *over,
                    const char  *words)
{
  GString *all = g_string_new (words);
  guint n = lw_overlays_n (over->overlays);

  if (n > 0)
    g_string_append_printf (all, " %s", _ ("Laid over:"));
  for (guint i = 0; i < n; i++)
    tell_one (over, lw_overlays_nth (over->overlays, i), all);

  return g_string_free (all, FALSE);
}

double
lw_panel_over_gutter (LwSession *session,
                      double     width,
                      double     columns)
{
  double wish = MAX (MIN (GUTTER_SHARE * width, GUTTER_MOST), GUTTER_LEAST);

  return lw_overlays_n (lw_overlays_of (session)) == 0 ? 0 : CLAMP (width - columns, GUTTER_LEAST, wish);
}
