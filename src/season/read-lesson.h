/* A lesson from its element. Private to reading. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/lesson.h"
#include "season/reader.h"

LwLesson *lw_read_lesson (LwReader *reader,
                          xmlNode  *node);
