/* leafwend-cli reach: settings that meet a batch's aims. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <math.h>
#include <stdio.h>

#include "season/listing.h"
#include "season/document.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/reach.h"

static const char told[] = N_ (
  "Turns settings by as little as meets the aims that the batch and its steps state, rounds them to notches, and\n"
  "checks the answer by a full run. What cannot be met is told with its amount. Without --free the times, the\n"
  "leading settings, covers and pressures of all steps are turned.\n"
  "  STEP:SETTING  a step, from 1, and a setting as in the season's file: 2:wall-c\n"
  "Exit status: 0 every aim is met, 1 the file or the work failed, 2 wrong usage, 3 an aim is missed.");

/* FALSE and a complaint unless `text` says a setting of the batch that can be turned. */
static gboolean
parse_handle (const LwSeason *season,
              guint           batch,
              const char     *text,
              LwHandle       *handle)
{
  g_autoptr (GArray) all = lw_handles_of (season, batch);
  char *end;
  guint64 step = g_ascii_strtoull (text, &end, 10);
  int setting = *end == ':' ? lw_setting_find (end + 1) : -1;

  for (guint i = 0; i < all->len; i++)
    {
      *handle = g_array_index (all, LwHandle, i);
      if (handle->step + 1 == step && setting >= 0 && handle->setting == (LwSetting) setting)
        return TRUE;
    }

  lw_complain (_ ("reach: “%s” is no step and setting of the batch that can be turned, such as 1:minutes"), text);
  return FALSE;
}

static int
find_handle (const GArray   *handles,
             const LwHandle *handle)
{
  for (guint i = 0; i < handles->len; i++)
    {
      const LwHandle *one = &g_array_index (handles, LwHandle, i);

      if (one->step == handle->step && one->setting == handle->setting)
        return (int) i;
    }

  return -1;
}

/* (transfer full) NULL and a complaint if a name is not right. */
static GArray *
handles_for (const LwSeason *season,
             guint           batch,
             char          **freed,
             char          **pinned)
{
  g_autoptr (GArray) handles = freed == NULL ? lw_reach_free (season, batch, 0)
                                             : g_array_new (FALSE, FALSE, sizeof (LwHandle));
  LwHandle handle;

  for (guint i = 0; freed != NULL && freed[i] != NULL; i++)
    {
      if (!parse_handle (season, batch, freed[i], &handle))
        return NULL;
      if (find_handle (handles, &handle) < 0)
        g_array_append_val (handles, handle);
    }

  for (guint i = 0; pinned != NULL && pinned[i] != NULL; i++)
    {
      int at;

      if (!parse_handle (season, batch, pinned[i], &handle))
        return NULL;
      at = find_handle (handles, &handle);
      if (at >= 0)
        g_array_remove_index (handles, (guint) at);
    }

  if (handles->len > LW_REACH_FREE)
    {
      lw_complain (_ ("reach: %u settings at a time are too many; %d are the most"), handles->len, LW_REACH_FREE);
      return NULL;
    }

  return g_steal_pointer (&handles);
}

static void
print_settings (const LwBatch *before,
                const LwBatch *after,
                const GArray  *handles)
{
  printf ("%s\n", _ ("Settings, before and after:"));
  for (guint i = 0; i < handles->len; i++)
    {
      const LwHandle *handle = &g_array_index (handles, LwHandle, i);
      double was = lw_step_get (&before->steps[handle->step], handle->setting);
      double is = lw_step_get (&after->steps[handle->step], handle->setting);
      g_autofree char *step = g_strdup_printf ("%u", handle->step + 1);
      g_autofree char *was_text = lw_say_setting (handle->setting, was);
      g_autofree char *is_text = lw_say_setting (handle->setting, is);

      lw_listing_cell (step, 3);
      lw_listing_cell (_ (lw_kind_row (before->steps[handle->step].kind)->label), 16);
      lw_listing_cell (_ (lw_setting_row (handle->setting)->label), 16);
      lw_listing_cell (was_text, 16);
      printf ("  %s\n", was == is ? _ ("as it is") : is_text);
    }
}

static char *
say_window (const LwWant *want)
{
  int digits = lw_quantity_row (want->of)->digits;

  if (want->low == want->high)
    return g_strdup_printf ("%.*f", digits, want->low);
  if (isinf (want->low))
    return g_strdup_printf (_ ("at most %.*f"), digits, want->high);
  if (isinf (want->high))
    return g_strdup_printf (_ ("at least %.*f"), digits, want->low);

  return g_strdup_printf (_ ("%.*f to %.*f"), digits, want->low, digits, want->high);
}

static char *
say_met (const LwWant *want,
         const LwMet  *met)
{
  int digits = lw_quantity_row (want->of)->digits + 1;

  if (met->met)
    return g_strdup (_ ("met"));
  if (met->missed > 0)
    return g_strdup_printf (_ ("missed: %.*f too much"), digits, met->missed);

  return g_strdup_printf (_ ("missed: %.*f too little"), digits, -met->missed);
}

static void
print_wants (const LwBatch   *batch,
             const GArray    *wants,
             const LwReached *before,
             const LwReached *after)
{
  printf ("%s\n", _ ("Aims, before and after:"));
  for (guint i = 0; i < wants->len; i++)
    {
      const LwWant *want = &g_array_index (wants, LwWant, i);
      const LwQuantityRow *row = lw_quantity_row (want->of);
      g_autofree char *step = g_strdup_printf ("%u", want->step + 1);
      g_autofree char *was = g_strdup_printf ("%.*f", row->digits, before->wants[i].value);
      g_autofree char *is = g_strdup_printf ("%.*f", row->digits, after->wants[i].value);
      g_autofree char *window = say_window (want), *met = say_met (want, &after->wants[i]);

      /* The wants of the finished tea come last. */
      lw_listing_cell (i + batch->n_aims >= wants->len ? _ ("tea") : step, 3);
      lw_listing_cell (_ (row->label), 16);
      lw_listing_cell (lw_unit_words (row->unit), 14);
      lw_listing_cell (was, 7);
      lw_listing_cell (is, 7);
      lw_listing_cell (window, 16);
      printf ("  %s\n", met);
    }
}

/* The exit status. */
static int
reach (LwSeason     *season,
       guint         batch,
       const GArray *handles,
       const char   *output)
{
  const LwBatch *here = season->batches[batch];
  g_autoptr (GArray) wants = lw_wants_of_aims (here);
  g_autoptr (LwReached) before = NULL, after = NULL;
  g_autoptr (GError) error = NULL;

  if (wants->len == 0)
    {
      lw_complain (_ ("%s: neither the batch nor one of its steps has an aim"), here->name);
      return LW_EXIT_WRONG;
    }

  before = lw_reach_judge (season, batch, wants);
  after = before != NULL ? lw_reach (season, batch, wants, handles, NULL, NULL) : NULL;
  if (after == NULL)
    {
      lw_complain (_ ("%s: the batch cannot be computed; “leafwend-cli run” tells why"), here->name);
      return LW_EXIT_WRONG;
    }

  print_settings (here, after->season->batches[batch], handles);
  print_wants (here, wants, before, after);
  if (output != NULL && !lw_document_save (after->season, output, &error))
    {
      lw_complain ("%s", error->message);
      return LW_EXIT_WRONG;
    }

  return after->all_met ? 0 : LW_EXIT_MISSED;
}

int
lw_command_reach (int    argc,
                  char **argv)
{
  g_auto (GStrv) freed = NULL, pinned = NULL;
  g_autofree char *name = NULL, *output = NULL;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING, &name, N_ ("The batch; its name or the name's first word"), N_ ("NAME") },
    { "free", 'f', 0, G_OPTION_ARG_STRING_ARRAY, &freed, N_ ("Turn this setting, and only those named so"),
      N_ ("STEP:SETTING") },
    { "pin", 'p', 0, G_OPTION_ARG_STRING_ARRAY, &pinned, N_ ("Leave this setting as it is"), N_ ("STEP:SETTING") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write the season with the settings found here"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GArray) handles = NULL;
  guint at;

  if (!lw_command_options_told ("reach", _ (told), entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (name == NULL)
    {
      lw_complain (_ ("reach: name a batch with --batch; try “leafwend-cli reach --help”"));
      return LW_EXIT_USAGE;
    }

  season = lw_command_season (path);
  if (season == NULL || !lw_command_batch (season, name, &at))
    return LW_EXIT_WRONG;
  handles = handles_for (season, at, freed, pinned);

  return handles != NULL ? reach (season, at, handles, output) : LW_EXIT_USAGE;
}
