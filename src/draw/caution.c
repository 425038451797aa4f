/* Which steps have which dangers, in a table. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/caution.h"

#include "season/text.h"

#define OF(kind) (1u << LW_KIND_##kind)
#define VESSELS (OF (FIX_PAN) | OF (FIX_DRUM))
#define FIRES (VESSELS | OF (FIX_STEAM) | OF (DRY_AIR) | OF (ROAST))
#define TURNING (OF (FIX_DRUM) | OF (ROLL) | OF (TUMBLE) | OF (DRY_AIR))
#define ALL (~0u)

static const struct
{
  guint kinds;
  const char *words;
} cautions[] = {
  { VESSELS | OF (DRY_AIR) | OF (ROAST), N_ ("Hot walls, trays and hot leaf burn at a touch: dry gloves of the right kind, long sleeves, no loose cloth.") },
  { VESSELS | OF (FIX_STEAM), N_ ("Steam burns without being seen, and leaf from the fire holds it.") },
  { FIRES, N_ ("Charcoal, wood and gas make carbon monoxide, which has no smell and kills: a flue that draws or open air, and an "
               "alarm. Headache or sickness: out into the air, all of you, and call for help.") },
  { FIRES, N_ ("Dry leaf, dust and cloth burn: leave nothing hot alone, and keep at hand what puts a fire out.") },
  { TURNING, N_ ("Drums, rollers and fans draw in fingers, hair and sleeves: guards stay on, nobody reaches into what turns, "
                 "power is cut and locked off before cleaning.") },
  { OF (REST), N_ ("A warm heap of damp leaf may go on warming by itself, or spoil: smell it, and spread it.") },
  { ALL, N_ ("Leaf is food: clean hands, mats and water. Damp tea moulds: cool it, wait a day, weigh it again, pack it dry and "
             "tight. These numbers are a model's estimate and no measurement.") },
  { ALL, N_ ("Follow local codes and licensed practice.") },
};

GStrv
lw_cautions (const LwBatch *batch)
{
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();
  guint kinds = 0;

  for (guint i = 0; i < batch->n_steps; i++)
    kinds |= 1u << batch->steps[i].kind;
  for (guint i = 0; i < G_N_ELEMENTS (cautions); i++)
    if (cautions[i].kinds == ALL || (cautions[i].kinds & kinds) != 0)
      g_strv_builder_add (words, _ (cautions[i].words));

  return g_strv_builder_end (words);
}
