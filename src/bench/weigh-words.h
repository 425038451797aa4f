/* What the window says of weigh-ins: their names, values, what they mean and how the model stands to them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"
#include "study/beside.h"

/* The measure's name with its key underlined by "_", translated. Its letter is the key that chooses it. */
const char *lw_weigh_name    (LwMeasure        of);

/* (transfer full) the same without a key: "Weight". */
char       *lw_weigh_title   (LwMeasure        of);

/* (transfer full) "7.1 kg ± 0.02, tare 0.35 kg"; of a note nothing but its name. */
char       *lw_weigh_value   (const LwWeighIn *weigh_in);

/* (transfer full) "wither, 2 h 30 min". */
char       *lw_weigh_moment  (const LwBatch   *batch,
                              guint            step,
                              double           minute);

/* (transfer full) "63.3 % measured, 62.1 % by the model: 1.2 standard deviations above". */
char       *lw_weigh_beside  (const LwBeside  *beside);

/* (transfer full) what a weight means: "7.1 kg less 0.35 kg tare = 6.75 kg of 10 kg fresh at 75.2 %: 63.3 % wet basis";
 * NULL where it is no weight or means nothing. */
char       *lw_weigh_meaning (const LwWeighIn *weigh_in,
                              double           fresh_kg,
                              double           fresh_moisture_pct);

/* (nullable, translated) why a weight can hardly be: more than the fresh leaf, or less than the same leaf without any
 * water. */
const char *lw_weigh_doubt   (const LwWeighIn *weigh_in,
                              double           fresh_kg,
                              double           fresh_moisture_pct);

/* (transfer full) all of it for a screen reader and a tooltip. `track` (nullable). */
char       *lw_weigh_tell    (const LwSeason  *season,
                              const LwBatch   *batch,
                              guint            step,
                              const LwWeighIn *weigh_in,
                              const LwTrack   *track);
