/* Names of batches laid over, each at its line's end: in the gutter beyond the last
 * column, spread so that none lies on another, or in the plot where a line ends earlier. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/elide.h"
#include "draw/labels.h"
#include "draw/space.h"

#define SMALL 0.8
#define EDGE_IN 3.0    /* of the panel */
#define LEAD 11.0      /* from a line's end to its name */
#define TAG_GAP 4.0
#define MOST_TRIES 7    /* of places for a name in the plot */
#define LEAST_NAME 18.0 /* px of a name, else its tag alone */

typedef struct
{
  const LwPanelOverlay *overlay;
  LwSpot end;
} Ended;

static double
text_height (const LwSpace *space)
{
  return ceil (lw_letter_line (space->letter) * SMALL * 0.94);
}

static LwInk
ink_of_words (const LwSpace        *space,
              const LwPanelOverlay *overlay)
{
  return lw_ink_mix (overlay->ink, space->palette->ink, 0.35);
}

static double
tag_width (const LwSpace        *space,
           const LwPanelOverlay *overlay)
{
  double width = 0;

  if (overlay->tag != NULL)
    lw_letter_size (space->cr, space->letter, SMALL, TRUE, overlay->tag, &width, NULL);

  return width;
}

/* Draws tag and as many words of the name as there is room for, from `x` on in reading direction; y is the top. A name
 * without a tag is all there is to know the line by. */
static void
draw_words (LwSpace              *space,
            const LwPanelOverlay *overlay,
            double                x,
            double                y,
            double                room)
{
  double way = space->letter->rtl ? -1 : 1, used = tag_width (space, overlay);
  g_autofree char *name = NULL;

  lw_ink_use (space->cr, ink_of_words (space, overlay));
  if (used > 0)
    {
      lw_letter_draw (space->cr, space->letter, x, y, LW_TEXT_START, SMALL, TRUE, 0, overlay->tag);
      used += TAG_GAP;
    }
  if (overlay->name == NULL || room - used < LEAST_NAME)
    return;

  name = lw_elide_name (space->cr, space->letter, SMALL, FALSE, room - used, overlay->name);
  if (name != NULL || overlay->tag == NULL)
    lw_letter_draw (space->cr, space->letter, x + way * used, y, LW_TEXT_START, SMALL, FALSE, room - used,
                    name != NULL ? name : overlay->name);
}

static double
words_width (const LwSpace        *space,
             const LwPanelOverlay *overlay)
{
  double tag = tag_width (space, overlay), name = 0;

  if (overlay->name != NULL)
    lw_letter_size (space->cr, space->letter, SMALL, FALSE, overlay->name, &name, NULL);

  return tag + (tag > 0 && name > 0 ? TAG_GAP : 0) + name;
}

static void
draw_leader (LwSpace              *space,
             const LwPanelOverlay *overlay,
             LwSpot                from,
             double                x,
             double                y)
{
  cairo_move_to (space->cr, from.x, from.y);
  cairo_line_to (space->cr, x, y);
  cairo_set_line_width (space->cr, 1);
  lw_ink_use (space->cr, lw_ink_thin (overlay->ink, 0.8));
  cairo_stroke (space->cr);
}

static void
draw_in_gutter (LwSpace     *space,
                const Ended *ended,
                guint        n)
{
  g_autofree LwLabel *labels = g_new0 (LwLabel, MAX (n, 1));
  double height = text_height (space), way = space->letter->rtl ? -1 : 1;
  guint lanes;

  for (guint i = 0; i < n; i++)
    labels[i].want = ended[i].end.y;
  lanes = lw_labels_place (labels, n, EDGE_IN, space->height - EDGE_IN, height);
  if (lanes == 0)
    return;

  for (guint i = 0; i < n; i++)
    {
      double beyond = way > 0 ? space->width - ended[i].end.x : ended[i].end.x, room = (beyond - LEAD - EDGE_IN) / lanes;
      double x = ended[i].end.x + way * (LEAD + labels[i].lane * room);

      if (room < tag_width (space, ended[i].overlay))
        continue;

      /* A lane's leaders end before the first, so as not to cross the names in between. */
      draw_leader (space, ended[i].overlay, ended[i].end, ended[i].end.x + way * (LEAD - 2), labels[i].y);
      draw_words (space, ended[i].overlay, x, labels[i].y - height / 2, room - TAG_GAP);
    }
}

/* Before the line's end, near it, where nothing else stands: with its name if there is room and there are few, else its
 * letter alone. */
static void
draw_in_plot (LwSpace     *space,
              const Ended *ended,
              guint        column,
              double       in)
{
  double way = space->letter->rtl ? -1 : 1, tag = tag_width (space, ended->overlay);
  double reach = fabs (ended->end.x - lw_scale_x (space->look->scale, 0, 0)) - in;
  gboolean few = tag <= 0 || space->look->n_overlays <= LW_N_OVER;
  const double widths[] = { few ? MIN (words_width (space, ended->overlay), MAX (reach, tag)) : tag, tag };
  LwBox box = { .height = text_height (space) };

  /* Letters go a little further in where others stand already. */
  for (guint i = 0; i < MOST_TRIES; i++)
    {
      double width = widths[MIN (i, 1)], x = ended->end.x - way * (in + width + MAX ((int) i - 1, 0) * (tag + TAG_GAP));

      box.width = width;
      box.x = way > 0 ? x : x - box.width;
      if (box.width <= 0 || !lw_space_find (space, &box, ended->end.y, ended->end.y, space->height))
        continue;

      lw_space_plate (space, column, &box);
      lw_space_take (space, box);
      draw_words (space, ended->overlay, x, box.y, box.width + 1);
      return;
    }
}

void
lw_space_labels (LwSpace *space,
                 double   axis_words)
{
  const LwPanelLook *look = space->look;
  g_autofree Ended *ended = g_new (Ended, MAX (look->n_overlays, 1));
  guint n = 0;

  for (guint i = 0; i < look->n_overlays; i++)
    {
      Ended one = { .overlay = &look->overlays[i] };
      gboolean last;
      guint column;

      if ((one.overlay->name == NULL && one.overlay->tag == NULL)
          || !lw_space_overlay_end (space, one.overlay, &column, &one.end, &last))
        continue;

      if (last && look->gutter)
        ended[n++] = one;
      else
        draw_in_plot (space, &one, column,
                      last ? lw_space_words_in (space, column) + axis_words : look->scale->view.by_clock
                      ? 3 : lw_space_words_in (space, column));
    }
  draw_in_gutter (space, ended, n);
}
