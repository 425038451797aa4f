/* leafwend-cli card: a batch's wall card, and its batch sheet, as PDF, SVG or PNG. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include "draw/card.h"
#include "season/surround.h"
#include "season/text.h"

#define SAMPLES 240
#define LEAST_KG 0.001
#define MOST_KG 1e5

static const char told[] = N_ (
  "A PDF holds all pages. Of SVG and PNG each page is a file of its own: card.png, card-2.png.\n"
  "The card is for the batch's own fresh leaf unless --load says otherwise.");

/* Exit status. */
static int
write_card (LwSeason         *season,
            guint             at,
            const LwCardWish *wish,
            const char       *output)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (LwPlan) plan = lw_plan_new (season, at);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES });
  g_autoptr (GArray) checkpoints = lw_advise (season, at, wish->load_kg, NULL);
  g_autoptr (LwCard) card = lw_card_new (season, at, track, checkpoints, wish);
  g_autoptr (GError) error = NULL;

  if (!lw_card_save (card, output, &error))
    {
      lw_complain ("%s", error->message);
      return LW_EXIT_WRONG;
    }

  if (lw_card_n_own (card) > 1)
    lw_complain (_ ("%s: its steps do not fit on one page of this paper; they go on to the next"), batch->name);
  if (track->failure.failed)
    {
      g_autofree char *text = lw_plan_failure_text (plan, batch, track);

      lw_complain ("%s: %s", batch->name, text);
    }

  return track->failure.failed ? LW_EXIT_WRONG : 0;
}

int
lw_command_card (int    argc,
                 char **argv)
{
  g_autofree char *name = NULL, *output = NULL, *paper = NULL;
  double load_kg = 0;
  gboolean landscape = FALSE, sheet = FALSE;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING, &name, N_ ("The batch; its name or the name's first word"), N_ ("NAME") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("The card: .pdf, .svg or .png"), N_ ("FILE") },
    { "paper", 'p', 0, G_OPTION_ARG_STRING, &paper, N_ ("A4 (the usual), A3 or Letter"), N_ ("PAPER") },
    { "landscape", 'l', 0, G_OPTION_ARG_NONE, &landscape, N_ ("The long side across"), NULL },
    { "load", 0, 0, G_OPTION_ARG_DOUBLE, &load_kg, N_ ("Fresh leaf that the card is for (the batch's own)"), N_ ("KG") },
    { "sheet", 's', 0, G_OPTION_ARG_NONE, &sheet, N_ ("With the batch sheet, to write on"), NULL },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  guint at;
  int found;

  if (!lw_command_options_told ("card", _ (told), entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (name == NULL || output == NULL)
    {
      lw_complain (name == NULL ? _ ("card: name a batch with --batch; try “leafwend-cli card --help”")
                                : _ ("card: say where with -o FILE"));
      return LW_EXIT_USAGE;
    }
  found = lw_paper_find (paper != NULL ? paper : "A4");
  if (found < 0)
    {
      lw_complain (_ ("card: no paper is called “%s”; there are A4, A3 and Letter"), paper);
      return LW_EXIT_USAGE;
    }
  if (load_kg != 0 && !(load_kg >= LEAST_KG && load_kg <= MOST_KG))
    {
      lw_complain (_ ("card: --load takes kilograms, %g to %g"), LEAST_KG, MOST_KG);
      return LW_EXIT_USAGE;
    }

  season = lw_command_season (path);
  if (season == NULL || !lw_command_batch (season, name, &at))
    return LW_EXIT_WRONG;

  return write_card (season, at,
                     &(LwCardWish) {
                       .paper = (LwPaper) found, .landscape = landscape, .sheet = sheet,
                       .load_kg = load_kg > 0 ? load_kg : season->batches[at]->fresh_kg,
                     },
                     output);
}
