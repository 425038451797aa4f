/* Problems of a file, gathered and put into words. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/problem.h"

static void
problem_free (LwProblem *problem)
{
  g_free (problem->what);
  g_free (problem->remedy);
  g_free (problem);
}

GPtrArray *
lw_problems_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) problem_free);
}

void
lw_problems_add (GPtrArray  *problems,
                 guint       line,
                 const char *remedy,
                 const char *format,
                 ...)
{
  LwProblem *problem = g_new0 (LwProblem, 1);
  va_list args;

  va_start (args, format);
  problem->line = line;
  problem->what = g_strdup_vprintf (format, args);
  problem->remedy = g_strdup (remedy);
  va_end (args);

  g_ptr_array_add (problems, problem);
}

char *
lw_problem_text (const LwProblem *problem,
                 const char      *file_name)
{
  if (problem->line == 0)
    return g_strdup_printf ("%s: %s %s", file_name, problem->what, problem->remedy);

  return g_strdup_printf ("%s:%u: %s %s", file_name, problem->line, problem->what, problem->remedy);
}
