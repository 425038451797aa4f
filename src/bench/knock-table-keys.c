/* The keyboard in the table: arrows from cell to cell and to the headings, Return and Space to choose.
 * Tab passes by the table as a whole. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-table-private.h"
#include "bench/look.h"

static gboolean
choose_by_key (LwKnockTable *self)
{
  /* A heading is a button and knows these keys itself. */
  if (self->row == LW_KNOCK_HEADS)
    return FALSE;

  lw_knock_table_choose (self, self->row, self->column);

  return TRUE;
}

static gboolean
key_cb (LwKnockTable          *self,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  int forward = lw_look_is_rtl (GTK_WIDGET (self)) ? -1 : 1, row = self->row, column = self->column;
  int last = (int) lw_knock_table_n_rows (self) - 1;
  gboolean far = (state & GDK_CONTROL_MASK) != 0;

  if (last < 0 || (state & (GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0)
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      row = far ? 0 : row - 1;
      break;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      row = far ? last : row + 1;
      break;
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      column -= forward;
      break;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      column += forward;
      break;
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      row = MAX (row - lw_knock_table_page (self), 0);
      break;
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      row += lw_knock_table_page (self);
      break;
    case GDK_KEY_Home:
    case GDK_KEY_KP_Home:
      column = LW_KNOCK_FIRST;
      row = far ? 0 : row;
      break;
    case GDK_KEY_End:
    case GDK_KEY_KP_End:
      column = LW_N_QUANTITIES - 1;
      row = far ? last : row;
      break;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_space:
    case GDK_KEY_KP_Space:
      return choose_by_key (self);
    default:
      return FALSE;
    }

  lw_knock_table_go (self, row, column);

  return TRUE;
}

void
lw_knock_table_add_keys (LwKnockTable *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  /* Before a heading's button takes the arrows. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
