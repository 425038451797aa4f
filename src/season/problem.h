/* What is wrong with a file: where, what, and what to do about it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef struct
{
  guint line;     /* 0: the file as a whole */
  char *what;     /* translated, a sentence */
  char *remedy;   /* translated, what to do */
} LwProblem;

/* Problems in a GPtrArray that frees them. */
GPtrArray *lw_problems_new  (void);
void       lw_problems_add  (GPtrArray       *problems,
                             guint            line,
                             const char      *remedy,
                             const char      *format,
                             ...) G_GNUC_PRINTF (4, 5);

/* (transfer full) "file:line: what remedy", as compilers write it. */
char      *lw_problem_text  (const LwProblem *problem,
                             const char      *file_name);
