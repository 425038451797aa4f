/* Lessons into the document. Private to writing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/lesson.h"

/* Appends all of the season's lessons. */
void lw_write_lessons (GString        *out,
                       const LwSeason *season);
