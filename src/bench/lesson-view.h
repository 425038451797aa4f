/* The lesson's picture as a widget. It shows what it is given; signal "pointed" (double) tells the value that was clicked
 * at in the panel that is asked for. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draw/lesson.h"

#define LW_TYPE_LESSON_VIEW (lw_lesson_view_get_type ())
G_DECLARE_FINAL_TYPE (LwLessonView, lw_lesson_view, LW, LESSON_VIEW, GtkWidget)

GtkWidget *lw_lesson_view_new  (void);

/* Borrows all, until the next call; NULL: nothing, and `words` say why. */
void       lw_lesson_view_show (LwLessonView       *self,
                                const LwLessonLook *look,
                                const char         *words);
/* What a screen reader is told. */
void       lw_lesson_view_tell (LwLessonView       *self,
                                const char         *label,
                                const char         *description);
