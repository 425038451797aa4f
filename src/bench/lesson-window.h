/* The window of lessons: big blocks, three big curves, a play head and a caption. It follows the season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_LESSON_WINDOW (lw_lesson_window_get_type ())
G_DECLARE_FINAL_TYPE (LwLessonWindow, lw_lesson_window, LW, LESSON_WINDOW, GtkWindow)

GtkWidget *lw_lesson_window_new (GtkWindow *parent,
                                 LwSession *session);
