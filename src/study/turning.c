/* The table of what turns are called. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/turning.h"

#include "season/text.h"
#include "season/wording.h"

#define OF(quantity) (1u << (quantity))

G_STATIC_ASSERT (LW_N_QUANTITIES <= 32);

/* Translators: {time} and {step} stay as they are; a time, as "4 min 10 s", and a number take their place. */
static const struct
{
  guint32 concerns;     /* bits of LwQuantity */
  gboolean again;       /* each time counts */
  const char *word;
  const char *sentence;
} turns[LW_N_TURNS] = {
  [LW_TURN_WATER_HALF] = { OF (LW_MOISTURE) | OF (LW_WEIGHT), FALSE, N_ ("half dried"),
                           N_ ("After {time} of step {step} half of the water is gone.") },
  [LW_TURN_MOISTURE_REACHED] = { OF (LW_MOISTURE), FALSE, N_ ("at aim"),
                                 N_ ("After {time} of step {step} the leaf has dried to its aim.") },
  [LW_TURN_MOISTURE_PASSED] = { OF (LW_MOISTURE), FALSE, N_ ("past aim"),
                                N_ ("After {time} of step {step} the leaf is drier than its aim.") },
  [LW_TURN_SURFACE_DRY] = { OF (LW_MOISTURE) | OF (LW_UNEVEN) | OF (LW_NEARLY_DRY), FALSE, N_ ("surface dry"),
                            N_ ("After {time} of step {step} the leaf at the surface is nearly dry.") },
  [LW_TURN_HOT] = { OF (LW_LEAF_TEMP) | OF (LW_ENZYME) | OF (LW_OXIDATION), TRUE, N_ ("80 °C"),
                    N_ ("After {time} of step {step} the leaf passes 80 °C.") },
  [LW_TURN_ENZYME_HALF] = { OF (LW_ENZYME) | OF (LW_OXIDATION), FALSE, N_ ("enzyme half"),
                            N_ ("After {time} of step {step} half of the enzyme is gone.") },
  [LW_TURN_ENZYME_GONE] = { OF (LW_ENZYME) | OF (LW_OXIDATION), FALSE, N_ ("enzyme 1 %"),
                            N_ ("After {time} of step {step} less than 1 % of the enzyme is left.") },
  [LW_TURN_OXIDATION_HALF] = { OF (LW_OXIDATION), FALSE, N_ ("half"),
                               N_ ("After {time} of step {step} half is oxidised.") },
  [LW_TURN_RUPTURE_HALF] = { OF (LW_RUPTURE), FALSE, N_ ("half"),
                             N_ ("After {time} of step {step} half of the cells are ruptured.") },
  [LW_TURN_HEAT_LEADS] = { OF (LW_RUPTURE), TRUE, N_ ("heat leads"),
                           N_ ("After {time} of step {step} heat has become the main source of rupture.") },
  [LW_TURN_ROLLING_LEADS] = { OF (LW_RUPTURE), TRUE, N_ ("pressure leads"),
                              N_ ("After {time} of step {step} pressure has become the main source of rupture.") },
  [LW_TURN_ROASTED] = { OF (LW_ROAST) | OF (LW_ROASTED), FALSE, N_ ("roasted"),
                        N_ ("After {time} of step {step} the leaf is roasted.") },
};

GArray *
lw_turns_of (const LwTrack *track)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (LwTurnAt));
  gboolean seen[LW_N_TURNS] = { FALSE };

  for (guint step = 0; step < track->n_steps; step++)
    for (guint i = 0; i < track->steps[step]->n_turns; i++)
      {
        const LwTurn *turn = &track->steps[step]->turns[i];
        LwTurnAt at = { turn->kind, step, turn->time_s / 60 };

        if (seen[turn->kind] && !turns[turn->kind].again)
          continue;

        seen[turn->kind] = TRUE;
        g_array_append_val (found, at);
      }

  return found;
}

gboolean
lw_turn_concerns (LwTurnKind kind,
                  LwQuantity quantity)
{
  return (turns[kind].concerns & OF (quantity)) != 0;
}

const char *
lw_turn_word (LwTurnKind kind)
{
  return _ (turns[kind].word);
}

char *
lw_turn_sentence (const LwTurnAt *turn)
{
  g_autoptr (GString) said = g_string_new (_ (turns[turn->kind].sentence));
  g_autofree char *time = lw_say_minutes (turn->minute), *step = g_strdup_printf ("%u", turn->step + 1);

  g_string_replace (said, "{time}", time, 1);
  g_string_replace (said, "{step}", step, 1);

  return g_string_free (g_steal_pointer (&said), FALSE);
}
