/* leafwend: the workbench in its window. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/app.h"

#include <gsl/gsl_errno.h>
#include <libxml/parser.h>
#include <locale.h>
#include <signal.h>

#include "season/text.h"

int
main (int    argc,
      char **argv)
{
  g_autoptr (GtkApplication) app = NULL;

  gsl_set_error_handler_off ();
  /* A file that may not grow is a save that fails, not the end of the program. */
  signal (SIGXFSZ, SIG_IGN);
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("LEAFWEND_LOCALE") ? g_getenv ("LEAFWEND_LOCALE") : LW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  xmlInitParser ();

  app = lw_app_new ();

  return g_application_run (G_APPLICATION (app), argc, argv);
}
