/* The table as a widget that scrolls: its parts, its properties, what the pointer does. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-table-private.h"

#include "bench/knock-cell.h"
#include "season/text.h"

enum
{
  PROP_0,
  PROP_HADJUSTMENT,
  PROP_VADJUSTMENT,
  PROP_HSCROLL_POLICY,
  PROP_VSCROLL_POLICY,
};

G_DEFINE_FINAL_TYPE_WITH_CODE (LwKnockTable, lw_knock_table, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_SCROLLABLE, NULL))

static void
sort_cb (LwKnockTable    *self,
         GParamSpec      *spec,
         GtkToggleButton *heading)
{
  if (!gtk_toggle_button_get_active (heading))
    return;

  self->by = -1;
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    if (lw_knock_strip_cell (LW_KNOCK_STRIP (self->heads), q) == GTK_WIDGET (heading))
      self->by = (int) q;
  self->row = LW_KNOCK_HEADS;
  self->column = self->by >= 0 ? self->by : LW_KNOCK_FIRST;
  if (self->list == NULL)
    return;

  lw_knock_list_sort (self->list, self->by);
  lw_knock_table_unbind (self);
  gtk_adjustment_set_value (self->adjustments[GTK_ORIENTATION_VERTICAL], 0);
  lw_knock_table_bind (self);
}

static void
released_cb (LwKnockTable    *self,
             int              presses,
             double           x,
             double           y,
             GtkGestureClick *click)
{
  GtkWidget *at = gtk_widget_pick (GTK_WIDGET (self), x, y, GTK_PICK_DEFAULT);

  if (at == NULL || !LW_IS_KNOCK_CELL (at))
    return;

  for (guint i = 0; i < self->slots->len; i++)
    for (guint q = 0; q < LW_N_QUANTITIES; q++)
      if (lw_knock_strip_cell (self->slots->pdata[i], q) == at)
        {
          lw_knock_table_choose (self, g_array_index (self->slot_rows, int, i), (int) q);
          return;
        }
}

static void
lw_knock_table_css_changed (GtkWidget         *widget,
                            GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_knock_table_parent_class)->css_changed (widget, change);
  LW_KNOCK_TABLE (widget)->columns_due = TRUE;
}

static gboolean
lw_knock_table_grab_focus (GtkWidget *widget)
{
  LwKnockTable *self = LW_KNOCK_TABLE (widget);

  if (lw_knock_table_n_rows (self) == 0)
    return FALSE;

  lw_knock_table_go (self, self->row, self->column);

  return TRUE;
}

/* Tab comes in where the keyboard was and goes out again; arrows are in knock-table-keys.c. */
static gboolean
lw_knock_table_focus (GtkWidget       *widget,
                      GtkDirectionType direction)
{
  if (gtk_widget_get_focus_child (widget) != NULL || gtk_widget_is_focus (widget))
    return FALSE;

  return gtk_widget_grab_focus (widget);
}

/* One for all cells, whose words change often. */
static gboolean
lw_knock_table_query_tooltip (GtkWidget  *widget,
                              int         x,
                              int         y,
                              gboolean    by_keys,
                              GtkTooltip *tooltip)
{
  GtkWidget *at = gtk_widget_pick (widget, x, y, GTK_PICK_DEFAULT);
  graphene_rect_t box;

  if (at == NULL || !LW_IS_KNOCK_CELL (at) || !gtk_widget_compute_bounds (at, widget, &box))
    return FALSE;

  gtk_tooltip_set_text (tooltip, lw_knock_cell_said (LW_KNOCK_CELL (at)));
  gtk_tooltip_set_tip_area (tooltip, &(GdkRectangle) { (int) box.origin.x, (int) box.origin.y, (int) box.size.width,
                                                       (int) box.size.height });

  return TRUE;
}

static void
scrolled_cb (LwKnockTable *self)
{
  if (self->laying_out)
    return;

  lw_knock_table_move_columns (self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* NULL: one of our own. */
static void
set_adjustment (LwKnockTable  *self,
                GtkOrientation orientation,
                GtkAdjustment *adjustment)
{
  GtkAdjustment *before = self->adjustments[orientation];

  if (adjustment == NULL)
    adjustment = gtk_adjustment_new (0, 0, 0, 0, 0, 0);
  self->adjustments[orientation] = g_object_ref_sink (adjustment);
  g_signal_connect_object (adjustment, "value-changed", G_CALLBACK (scrolled_cb), self, G_CONNECT_SWAPPED);
  if (before != NULL)
    {
      g_signal_handlers_disconnect_by_func (before, scrolled_cb, self);
      g_object_unref (before);
    }
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
lw_knock_table_set_property (GObject      *object,
                             guint         property,
                             const GValue *value,
                             GParamSpec   *spec)
{
  LwKnockTable *self = LW_KNOCK_TABLE (object);

  switch (property)
    {
    case PROP_HADJUSTMENT:
      set_adjustment (self, GTK_ORIENTATION_HORIZONTAL, g_value_get_object (value));
      break;
    case PROP_VADJUSTMENT:
      set_adjustment (self, GTK_ORIENTATION_VERTICAL, g_value_get_object (value));
      break;
    case PROP_HSCROLL_POLICY:
      self->policies[GTK_ORIENTATION_HORIZONTAL] = g_value_get_enum (value);
      break;
    case PROP_VSCROLL_POLICY:
      self->policies[GTK_ORIENTATION_VERTICAL] = g_value_get_enum (value);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property, spec);
    }
}

static void
lw_knock_table_get_property (GObject    *object,
                             guint       property,
                             GValue     *value,
                             GParamSpec *spec)
{
  LwKnockTable *self = LW_KNOCK_TABLE (object);

  switch (property)
    {
    case PROP_HADJUSTMENT:
      g_value_set_object (value, self->adjustments[GTK_ORIENTATION_HORIZONTAL]);
      break;
    case PROP_VADJUSTMENT:
      g_value_set_object (value, self->adjustments[GTK_ORIENTATION_VERTICAL]);
      break;
    case PROP_HSCROLL_POLICY:
      g_value_set_enum (value, self->policies[GTK_ORIENTATION_HORIZONTAL]);
      break;
    case PROP_VSCROLL_POLICY:
      g_value_set_enum (value, self->policies[GTK_ORIENTATION_VERTICAL]);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property, spec);
    }
}

static void
lw_knock_table_dispose (GObject *object)
{
  LwKnockTable *self = LW_KNOCK_TABLE (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->adjustments[GTK_ORIENTATION_HORIZONTAL]);
  g_clear_object (&self->adjustments[GTK_ORIENTATION_VERTICAL]);

  G_OBJECT_CLASS (lw_knock_table_parent_class)->dispose (object);
}

static void
lw_knock_table_finalize (GObject *object)
{
  LwKnockTable *self = LW_KNOCK_TABLE (object);

  g_clear_pointer (&self->list, lw_knock_list_free);
  g_ptr_array_unref (self->slots);
  g_array_unref (self->slot_rows);

  G_OBJECT_CLASS (lw_knock_table_parent_class)->finalize (object);
}

static void
lw_knock_table_class_init (LwKnockTableClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = lw_knock_table_set_property;
  object_class->get_property = lw_knock_table_get_property;
  object_class->dispose = lw_knock_table_dispose;
  object_class->finalize = lw_knock_table_finalize;
  widget_class->measure = lw_knock_table_measure;
  widget_class->size_allocate = lw_knock_table_size_allocate;
  widget_class->css_changed = lw_knock_table_css_changed;
  widget_class->grab_focus = lw_knock_table_grab_focus;
  widget_class->focus = lw_knock_table_focus;
  widget_class->query_tooltip = lw_knock_table_query_tooltip;

  g_object_class_override_property (object_class, PROP_HADJUSTMENT, "hadjustment");
  g_object_class_override_property (object_class, PROP_VADJUSTMENT, "vadjustment");
  g_object_class_override_property (object_class, PROP_HSCROLL_POLICY, "hscroll-policy");
  g_object_class_override_property (object_class, PROP_VSCROLL_POLICY, "vscroll-policy");
  g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_UINT,
                G_TYPE_UINT);

  gtk_widget_class_set_css_name (widget_class, "knocktable");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GRID);
}

static void
add_heads (LwKnockTable *self)
{
  GtkWidget *cells[LW_N_QUANTITIES], *corner = lw_knock_corner_new ();

  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (corner), TRUE);
  g_signal_connect_swapped (corner, "notify::active", G_CALLBACK (sort_cb), self);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      cells[q] = lw_knock_heading_new (q);
      gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (cells[q]), GTK_TOGGLE_BUTTON (corner));
      g_signal_connect_swapped (cells[q], "notify::active", G_CALLBACK (sort_cb), self);
    }
  self->heads = lw_knock_strip_new (&self->columns, corner, cells, GTK_ACCESSIBLE_ROLE_ROW);
  gtk_widget_add_css_class (self->heads, "heads");
  gtk_widget_set_parent (self->heads, GTK_WIDGET (self));
}

static void
lw_knock_table_init (LwKnockTable *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->by = -1;
  self->columns_due = TRUE;
  self->slots = g_ptr_array_new ();
  self->slot_rows = g_array_new (FALSE, FALSE, sizeof (int));
  set_adjustment (self, GTK_ORIENTATION_HORIZONTAL, NULL);
  set_adjustment (self, GTK_ORIENTATION_VERTICAL, NULL);
  add_heads (self);
  lw_knock_table_add_slot (self);
  lw_knock_table_add_keys (self);
  g_signal_connect_swapped (click, "released", G_CALLBACK (released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Knock-on"), -1);
}

GtkWidget *
lw_knock_table_new (void)
{
  return g_object_new (LW_TYPE_KNOCK_TABLE, NULL);
}
