/* Amounts that are not the usual ones, in the notation of the command line, and how it is computed. The seed is not
 * kept: a new session begins with the same luck as the command line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-memory.h"

#include "bench/desktop.h"

#define AMOUNTS "steady-amounts"
#define SAMPLES "steady-samples"
#define GOES_ON "steady-goes-on"

void
lw_steady_memory_recall (LwSteady *steady)
{
  g_autoptr (GSettings) settings = lw_desktop_settings ();
  g_auto (GStrv) amounts = settings != NULL ? g_settings_get_strv (settings, AMOUNTS) : NULL;
  LwVary varies[LW_N_VARY];

  if (settings == NULL)
    return;

  lw_vary_usual (varies);
  /* What cannot be read is of another version, and left. */
  for (guint i = 0; amounts[i] != NULL; i++)
    lw_vary_parse (amounts[i], varies, NULL);
  for (guint i = 0; i < LW_N_VARY; i++)
    lw_steady_vary (steady, i, varies[i]);
  lw_steady_sample (steady, g_settings_get_uint (settings, SAMPLES), lw_steady_ask (steady)->seed);
  lw_steady_go_on (steady, g_settings_get_boolean (settings, GOES_ON));
}

void
lw_steady_memory_keep (LwSteady *steady)
{
  g_autoptr (GSettings) settings = lw_desktop_settings ();
  const LwSpreadAsk *ask = lw_steady_ask (steady);
  g_autoptr (GStrvBuilder) amounts = g_strv_builder_new ();
  g_auto (GStrv) texts = NULL;
  LwVary usual[LW_N_VARY];

  if (settings == NULL)
    return;

  lw_vary_usual (usual);
  for (guint i = 0; i < LW_N_VARY; i++)
    {
      g_autofree char *text = lw_vary_text (ask->varies[i]), *as_usual = lw_vary_text (usual[i]);
      g_autofree char *whole = g_strdup_printf ("%s=%s", lw_vary_row (i)->id, text);

      if (!g_str_equal (text, as_usual))
        g_strv_builder_add (amounts, whole);
    }
  texts = g_strv_builder_end (amounts);
  g_settings_set_strv (settings, AMOUNTS, (const char *const *) texts);
  g_settings_set_uint (settings, SAMPLES, ask->samples);
  g_settings_set_boolean (settings, GOES_ON, lw_steady_goes_on (steady));
}
