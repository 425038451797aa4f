/* The rows, made anew when others lie over, and under them one line for what has no room in them: all that the row with
 * the keys says, else the names of batches that no list has. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-rows.h"

#include <string.h>

#include "bench/over-row.h"
#include "season/text.h"

#define SHARE 0.24  /* of the board's height */
#define SPACING 2
#define KEY_LINES 3

struct _LwOverRows
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *scrolled;
  GtkWidget *box;
  GtkWidget *key;
  GtkWidget *focused; /* (nullable) the row with the keys */
  guint due;          /* source that shows the key, 0: none */
  GPtrArray *laid;    /* LwLaid of the rows there are */
};

G_DEFINE_FINAL_TYPE (LwOverRows, lw_over_rows, GTK_TYPE_WIDGET)

static gboolean
same_rows (LwOverRows *self,
           LwOverlays *overlays)
{
  if (lw_overlays_n (overlays) != self->laid->len)
    return FALSE;

  for (guint i = 0; i < self->laid->len; i++)
    if (lw_overlays_nth (overlays, i) != self->laid->pdata[i])
      return FALSE;

  return TRUE;
}

/* Which row has the keys; -1: none. */
static int
row_in_hand (LwOverRows *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  int i = 0;

  for (GtkWidget *row = gtk_widget_get_first_child (self->box); focus != NULL && row != NULL;
       row = gtk_widget_get_next_sibling (row), i++)
    if (row == focus || gtk_widget_is_ancestor (focus, row))
      return i;

  return -1;
}

/* The row that now stands there, or the last, so that the keys are not lost with a row that goes. */
static void
hand_to (LwOverRows *self,
         int         at)
{
  GtkWidget *row = gtk_widget_get_first_child (self->box);

  for (int i = 0; i < at && row != NULL && gtk_widget_get_next_sibling (row) != NULL; i++)
    row = gtk_widget_get_next_sibling (row);
  if (at >= 0 && row != NULL)
    gtk_widget_grab_focus (row);
}

/* (transfer full) the same, to be broken into lines only between steps and between batches. */
static char *
unbroken (const char *words)
{
  GString *all = g_string_new (NULL);

  for (const char *c = words; *c != '\0'; c++)
    if (*c == ' ' && c > words && strchr (";:", c[-1]) == NULL)
      g_string_append (all, "\u00a0");
    else
      g_string_append_c (all, *c);

  return g_string_free (all, FALSE);
}

/* (transfer full) */
static char *
key_words (LwOverRows *self,
           int         width)
{
  g_autoptr (GString) all = g_string_new (NULL);

  for (GtkWidget *row = gtk_widget_get_first_child (self->box); row != NULL; row = gtk_widget_get_next_sibling (row))
    {
      g_autofree char *words = row == self->focused ? lw_over_row_words (LW_OVER_ROW (row))
                                                    : lw_over_row_unnamed (LW_OVER_ROW (row), width);

      if (row == self->focused)
        return g_steal_pointer (&words);
      if (words != NULL)
        g_string_append_printf (all, "%s%s", all->len > 0 ? "; " : "", words);
    }

  return g_strdup (all->str);
}

/* A drag moves nothing about. */
static gboolean
show_key_cb (gpointer data)
{
  LwOverRows *self = data;
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  g_autofree char *words = NULL, *lines = NULL;

  self->due = 0;
  if (width <= 0 || lw_session_is_dragging (self->session))
    return G_SOURCE_REMOVE;

  words = key_words (self, width);
  lines = unbroken (words);
  if (strcmp (lines, gtk_label_get_label (GTK_LABEL (self->key))) == 0)
    return G_SOURCE_REMOVE;

  gtk_label_set_label (GTK_LABEL (self->key), lines);
  gtk_widget_set_tooltip_text (self->key, words);
  gtk_widget_set_visible (self->key, words[0] != '\0');

  return G_SOURCE_REMOVE;
}

/* Not at once: it may be that widgets are just being laid out. */
static void
show_key (LwOverRows *self)
{
  if (self->due == 0)
    self->due = g_idle_add (show_key_cb, self);
}

static void
focus_cb (LwOverRows              *self,
          GParamSpec              *spec,
          GtkEventControllerFocus *focus)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (focus));

  if (gtk_event_controller_focus_is_focus (focus))
    self->focused = row;
  else if (self->focused == row)
    self->focused = NULL;
  show_key (self);
}

static GtkWidget *
row_new (LwOverRows *self,
         LwLaid     *laid)
{
  GtkWidget *row = lw_over_row_new (self->session, laid);
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_object (focus, "notify::is-focus", G_CALLBACK (focus_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (row, focus);

  return row;
}

static void
changed_cb (LwOverRows *self)
{
  LwOverlays *overlays = lw_overlays_of (self->session);
  int at = row_in_hand (self);
  GtkWidget *child;

  if (same_rows (self, overlays))
    return;

  self->focused = NULL;
  while ((child = gtk_widget_get_first_child (self->box)) != NULL)
    gtk_box_remove (GTK_BOX (self->box), child);
  g_ptr_array_set_size (self->laid, 0);
  lw_overlays_stamp (overlays);
  for (guint i = 0; i < lw_overlays_n (overlays); i++)
    {
      LwLaid *laid = lw_overlays_nth (overlays, i);

      g_ptr_array_add (self->laid, lw_laid_ref (laid));
      gtk_box_append (GTK_BOX (self->box), row_new (self, laid));
    }
  gtk_widget_set_visible (GTK_WIDGET (self), self->laid->len > 0);
  hand_to (self, at);
}

void
lw_over_rows_moved (LwOverRows *self)
{
  for (GtkWidget *row = gtk_widget_get_first_child (self->box); row != NULL; row = gtk_widget_get_next_sibling (row))
    lw_over_row_moved (LW_OVER_ROW (row));
}

static int
key_height (LwOverRows *self,
            int         width)
{
  int height = 0;

  if (gtk_widget_get_visible (self->key))
    gtk_widget_measure (self->key, GTK_ORIENTATION_VERTICAL, width > 0 ? width : -1, &height, NULL, NULL, NULL);

  return height;
}

int
lw_over_rows_height (LwOverRows *self,
                     int         width,
                     int         height)
{
  GtkWidget *row = gtk_widget_get_first_child (self->box);
  int one, key, n;

  if (row == NULL)
    return 0;

  show_key (self);
  gtk_widget_measure (row, GTK_ORIENTATION_VERTICAL, -1, &one, NULL, NULL, NULL);
  key = key_height (self, width);
  n = CLAMP (((int) (SHARE * height) + SPACING) / (one + SPACING), 1, (int) self->laid->len);

  return n * (one + SPACING) - SPACING + key;
}

/* The board knows how high they are. */
static void
lw_over_rows_measure (GtkWidget     *widget,
                      GtkOrientation orientation,
                      int            for_size,
                      int           *minimum,
                      int           *natural,
                      int           *minimum_baseline,
                      int           *natural_baseline)
{
  *minimum = *natural = 1;
}

static void
lw_over_rows_size_allocate (GtkWidget *widget,
                            int        width,
                            int        height,
                            int        baseline)
{
  LwOverRows *self = LW_OVER_ROWS (widget);
  int key = key_height (self, width);

  gtk_widget_size_allocate (self->scrolled, &(GtkAllocation) { 0, 0, width, MAX (height - key, 1) }, -1);
  if (key > 0)
    gtk_widget_size_allocate (self->key, &(GtkAllocation) { 0, MAX (height - key, 1), width, key }, -1);
}

static void
lw_over_rows_dispose (GObject *object)
{
  LwOverRows *self = LW_OVER_ROWS (object);

  g_clear_handle_id (&self->due, g_source_remove);
  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_pointer (&self->key, gtk_widget_unparent);
  g_clear_pointer (&self->laid, g_ptr_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_over_rows_parent_class)->dispose (object);
}

static void
lw_over_rows_class_init (LwOverRowsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_over_rows_dispose;
  GTK_WIDGET_CLASS (klass)->measure = lw_over_rows_measure;
  GTK_WIDGET_CLASS (klass)->size_allocate = lw_over_rows_size_allocate;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "overrows");
}

static void
lw_over_rows_init (LwOverRows *self)
{
  self->laid = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_laid_unref);
  self->box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", SPACING,
                            "accessible-role", GTK_ACCESSIBLE_ROLE_LIST, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->box), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Batches laid over"), -1);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_EXTERNAL, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->box);
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));
  self->key = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->key), 0);
  gtk_label_set_wrap (GTK_LABEL (self->key), TRUE);
  gtk_label_set_lines (GTK_LABEL (self->key), KEY_LINES);
  gtk_label_set_ellipsize (GTK_LABEL (self->key), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (self->key, "over-key");
  gtk_widget_set_visible (self->key, FALSE);
  gtk_widget_set_parent (self->key, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
lw_over_rows_new (LwSession *session)
{
  LwOverRows *self = g_object_new (LW_TYPE_OVER_ROWS, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (lw_overlays_of (session), "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
