/* Windows of our own, since GTK's message dialogs differ between its versions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/ask.h"

#include "bench/modal.h"
#include "season/problem.h"
#include "season/text.h"

#define ENTRY_CHARS 36 /* a name, or a sentence of a lesson */

typedef struct
{
  LwAnswered answered;
  gpointer data;
  GtkWidget *entry; /* (nullable) */
  int answer;
} Question;

static void
answer_cb (GtkButton *button,
           Question  *question)
{
  question->answer = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "answer"));
  gtk_window_close (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (button))));
}

static gboolean
close_cb (GtkWindow *window,
          Question  *question)
{
  g_autofree char *text = question->entry != NULL ? g_strdup (gtk_editable_get_text (GTK_EDITABLE (question->entry)))
                                                  : NULL;
  Question done = *question;

  gtk_window_destroy (window);
  if (done.answered != NULL)
    done.answered (done.answer, text, done.data);

  return TRUE;
}

static GtkWidget *
wrapped_label (const char *text,
               const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 60);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);

  return label;
}

static GtkWidget *
window_new (GtkWindow  *parent,
            const char *heading,
            const char *words,
            GtkWidget **box)
{
  GtkWidget *window = lw_modal_new (parent, heading);

  *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_add_css_class (*box, "ask");
  gtk_box_append (GTK_BOX (*box), wrapped_label (heading, "ask-heading"));
  if (words != NULL && words[0] != '\0')
    gtk_box_append (GTK_BOX (*box), wrapped_label (words, "ask-words"));

  gtk_window_set_child (GTK_WINDOW (window), *box);

  return window;
}

static void
add_answers (GtkWidget         *window,
             GtkWidget         *box,
             const char *const *answers,
             Question          *question)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *button = NULL;

  gtk_widget_set_halign (row, GTK_ALIGN_END);
  for (int i = 0; answers[i] != NULL; i++)
    {
      /* No mnemonics: GTK 4.8 would read their underscores out. */
      button = gtk_button_new_with_label (answers[i]);
      g_object_set_data (G_OBJECT (button), "answer", GINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (answer_cb), question);
      gtk_box_append (GTK_BOX (row), button);
    }
  gtk_box_append (GTK_BOX (box), row);
  gtk_widget_add_css_class (button, "suggested-action");
  gtk_window_set_default_widget (GTK_WINDOW (window), button);
  if (question->entry == NULL)
    gtk_widget_grab_focus (button);
}

void
lw_ask (GtkWindow         *parent,
        const char        *heading,
        const char        *words,
        const char *const *answers,
        const char        *entry,
        LwAnswered         answered,
        gpointer           data)
{
  Question *question = g_new0 (Question, 1);
  GtkWidget *box, *window = window_new (parent, heading, words, &box);

  *question = (Question) { .answered = answered, .data = data, .answer = -1 };
  if (entry != NULL)
    {
      question->entry = gtk_entry_new ();
      gtk_editable_set_text (GTK_EDITABLE (question->entry), entry);
      gtk_editable_set_width_chars (GTK_EDITABLE (question->entry), ENTRY_CHARS);
      gtk_entry_set_activates_default (GTK_ENTRY (question->entry), TRUE);
      gtk_accessible_update_property (GTK_ACCESSIBLE (question->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, heading, -1);
      gtk_box_append (GTK_BOX (box), question->entry);
    }

  g_object_set_data_full (G_OBJECT (window), "question", question, g_free);
  add_answers (window, box, answers, question);
  g_signal_connect (window, "close-request", G_CALLBACK (close_cb), question);
  gtk_window_present (GTK_WINDOW (window));
}

void
lw_tell_list (GtkWindow  *parent,
              const char *heading,
              const char *words,
              GStrv       lines)
{
  const char *answers[] = { _ ("Close"), NULL };
  Question *question = g_new0 (Question, 1);
  GtkWidget *box, *window = window_new (parent, heading, words, &box);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkWidget *list = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      GtkWidget *label = wrapped_label (lines[i], "ask-line");

      gtk_label_set_selectable (GTK_LABEL (label), TRUE);
      gtk_box_append (GTK_BOX (list), label);
    }
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 360);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), list);
  gtk_box_append (GTK_BOX (box), scrolled);

  *question = (Question) { .answer = -1 };
  g_object_set_data_full (G_OBJECT (window), "question", question, g_free);
  add_answers (window, box, answers, question);
  g_signal_connect (window, "close-request", G_CALLBACK (close_cb), question);
  gtk_window_present (GTK_WINDOW (window));
}

void
lw_tell_problems (GtkWindow  *parent,
                  const char *heading,
                  const char *words,
                  GPtrArray  *problems,
                  const char *file_name)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();
  g_auto (GStrv) all = NULL;

  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *line = lw_problem_text (g_ptr_array_index (problems, i), file_name);

      g_strv_builder_add (lines, line);
    }
  all = g_strv_builder_end (lines);
  lw_tell_list (parent, heading, words, all);
}
