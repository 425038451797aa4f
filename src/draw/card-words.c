/* What the card says of each step and of the batch. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/block.h"
#include "draw/caution.h"
#include "draw/card-private.h"
#include "season/text.h"
#include "season/wording.h"

#define MOST_NAME 120  /* characters of a name; a document allows 4000 */
#define MOST_BOUND 28  /* of what is kept on one line: as much fits in the narrowest cell */
#define TEN_KG 10.0

double
lw_card_moisture (const LwCard *card)
{
  const LwProfile *leaf = lw_season_profile (card->season, card->batch->leaf);

  return isnan (card->batch->fresh_moisture_pct) && leaf != NULL ? leaf->fresh_moisture_pct
                                                                 : card->batch->fresh_moisture_pct;
}

char *
lw_card_cut (const char *text,
             guint       most)
{
  g_autofree char *start = NULL;

  if (g_utf8_strlen (text, -1) <= (glong) most)
    return g_strdup (text);

  start = g_utf8_substring (text, 0, most);

  return g_strconcat (g_strchomp (start), "…", NULL);
}

/* (transfer full) words that a line does not break, if they are short. */
static char *
bound (const char *words)
{
  GString *text = g_string_new (words);

  if (g_utf8_strlen (words, -1) <= MOST_BOUND)
    g_string_replace (text, " ", LW_PAGES_NO_BREAK, 0);

  return g_string_free (text, FALSE);
}

char *
lw_card_bind_figures (char     *words,
                      gboolean  named)
{
  GString *text = g_string_new (NULL);

  for (const char *at = words; *at != '\0'; at++)
    if (*at == ' ' && ((at > words && g_ascii_isdigit (at[-1])) || (named && g_ascii_isdigit (at[1]))))
      g_string_append (text, LW_PAGES_NO_BREAK);
    else
      g_string_append_c (text, *at);
  g_free (words);
  if (named)
    g_string_replace (text, "/", "/" LW_PAGES_JOINED, 0);

  return g_string_free (text, FALSE);
}

/* Its first letter a capital, where the language has such. */
static char *
capital (const char *text)
{
  g_autofree char *first = g_utf8_substring (text, 0, MIN (1, g_utf8_strlen (text, -1)));
  g_autofree char *upper = g_utf8_strup (first, -1);

  return g_strconcat (upper, text + strlen (first), NULL);
}

static char *
say_leading (const LwCard *card,
             guint         i)
{
  LwSetting leading = lw_kind_row (card->batch->steps[i].kind)->leading;
  gboolean on_weather;
  double value = lw_block_leading (card->season, card->batch, i, &on_weather);
  g_autofree char *said = lw_say_setting (leading, value);

  /* Translators: about; the mean of the weather's temperature */
  return on_weather ? g_strdup_printf (_ ("~%s"), said) : g_steal_pointer (&said);
}

/* What the large setting is, and the others that the maker has set. */
static char *
say_settings (const LwCard *card,
              guint         i)
{
  const LwStep *step = &card->batch->steps[i];
  const LwKindRow *row = lw_kind_row (step->kind);
  GString *text = g_string_new (_ (lw_setting_row (row->leading)->label));
  gboolean on_weather;

  lw_block_leading (card->season, card->batch, i, &on_weather);
  if (on_weather)
    g_string_append_printf (text, ", %s", _ ("as the weather is"));
  for (guint k = 0; k < row->n_settings; k++)
    {
      LwSetting setting = row->settings[k].setting;
      g_autofree char *said = NULL;

      if (setting == LW_SET_MINUTES || setting == row->leading || !lw_step_is_given (step, setting))
        continue;
      said = lw_say_setting (setting, lw_step_get (step, setting));
      g_string_append_printf (text, LW_PAGES_NO_BREAK "· %s %s", _ (lw_setting_row (setting)->label), said);
    }

  return lw_card_bind_figures (g_string_free (text, FALSE), TRUE);
}

LwCardRow
lw_card_row (const LwCard *card,
             guint         i)
{
  const LwStep *step = &card->batch->steps[i];
  g_autofree char *kind = capital (_ (lw_kind_row (step->kind)->label));
  LwCardRow row = {
    .kind = step->kind,
    .time = lw_say_minutes (lw_step_get (step, LW_SET_MINUTES)),
    .leading = say_leading (card, i),
    /* Translators: a step's number and kind */
    .name = g_strdup_printf (_ ("%u. %s"), i + 1, kind),
    .settings = say_settings (card, i),
    /* Translators: what the maker looks, listens or smells for in a step */
    .sign = step->sign != NULL ? g_strdup_printf (_ ("Look for: %s"), step->sign) : g_strdup (""),
  };

  if (i < card->track->n_steps)
    {
      double share = lw_track_end (card->track, i, -1).kg_per_kg_fresh;
      g_autofree char *ten = lw_say_kg (TEN_KG * share);

      row.weight = lw_say_kg (card->wish.load_kg * share);
      /* Translators: %s is a weight */
      row.per_ten = lw_card_bind_figures (g_strdup_printf (_ ("10 kg fresh leaf should now weigh %s"), ten), FALSE);
    }
  else
    {
      row.weight = g_strdup ("–");
      row.per_ten = g_strdup (_ ("not computed"));
    }
  row.advice = card->checkpoints != NULL && i < card->checkpoints->len
                 ? lw_card_bind_figures (lw_advice_say (card->batch,
                                                        &g_array_index (card->checkpoints, LwCheckpoint, i),
                                                        card->wish.load_kg), FALSE)
                 : g_strdup ("");

  return row;
}

void
lw_card_row_clear (LwCardRow *row)
{
  char **texts[] = {
    &row->time, &row->leading, &row->name, &row->settings, &row->weight, &row->per_ten, &row->sign, &row->advice,
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_clear_pointer (texts[i], g_free);
}

static void
append (GString    *text,
        const char *words)
{
  g_autofree char *cut = words != NULL ? lw_card_cut (words, MOST_NAME) : NULL;
  g_autofree char *whole = cut != NULL ? bound (cut) : NULL;

  if (whole != NULL && whole[0] != '\0')
    g_string_append_printf (text, "%s%s", text->len > 0 ? LW_PAGES_NO_BREAK LW_PAGES_NO_BREAK "·  " : "", whole);
}

/* A load as exactly as the weights that follow from it. */
static char *
say_load (double kg)
{
  gboolean hundredths = kg >= 1 && fabs (kg * 10 - round (kg * 10)) > 0.05;

  /* Translators: a weight */
  return hundredths ? g_strdup_printf (_ ("%.2f kg"), kg) : lw_say_kg (kg);
}

/* Tea, season, date, leaf, its weight, weather, all the time. */
static char *
say_about (const LwCard *card)
{
  const LwBatch *batch = card->batch;
  const LwProfile *leaf = lw_season_profile (card->season, batch->leaf);
  const LwWeather *weather = batch->weather != NULL ? lw_season_weather (card->season, batch->weather) : NULL;
  g_autofree char *date = lw_say_date (batch->when_s);
  g_autofree char *load = say_load (card->wish.load_kg);
  /* Translators: %s is a weight */
  g_autofree char *fresh = g_strdup_printf (_ ("%s fresh leaf"), load);
  /* Translators: %s is the name of a weather */
  g_autofree char *under = weather != NULL ? g_strdup_printf (_ ("weather: %s"), weather->name) : NULL;
  GString *text = g_string_new (NULL);
  double minutes = 0;
  g_autofree char *time = NULL, *all = NULL;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes += lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  time = lw_say_minutes (minutes);
  /* Translators: %s is the time that all steps take */
  all = g_strdup_printf (_ ("%s in all"), time);

  append (text, batch->tea);
  append (text, card->season->name);
  append (text, date);
  append (text, batch->made ? _ ("made") : _ ("planned"));
  append (text, leaf != NULL ? leaf->name : NULL);
  append (text, fresh);
  append (text, under);
  append (text, all);

  return g_string_free (text, FALSE);
}

void
lw_card_say (LwCard *card)
{
  for (guint i = 0; i < card->batch->n_steps; i++)
    {
      LwCardRow row = lw_card_row (card, i);

      g_array_append_val (card->rows, row);
    }
  card->name = lw_card_cut (card->batch->name, MOST_NAME);
  card->about = say_about (card);
  card->cautions = lw_cautions (card->batch);
  /* Translators: %s is the version of the program */
  card->foot = g_strdup_printf (_ ("Leafwend %s · a model's estimate: believe scale, thermometer and your senses"),
                                LW_VERSION);
}
