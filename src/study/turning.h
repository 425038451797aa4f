/* Turning points in words: what they are called, and which quantities they concern. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/track.h"
#include "season/quantity.h"

typedef struct
{
  LwTurnKind kind;
  guint step;
  double minute;  /* of the step */
} LwTurnAt;

/* (transfer full) array of LwTurnAt in the order of time; what can come again with the weather only once. */
GArray     *lw_turns_of      (const LwTrack  *track);

/* Whether the turn belongs on the quantity's curve. */
gboolean    lw_turn_concerns (LwTurnKind      kind,
                              LwQuantity      quantity);

/* (transfer none, translated) at most two words: "half gone". */
const char *lw_turn_word     (LwTurnKind      kind);

/* (transfer full) "After 4 min 10 s of step 2 half of the enzyme is gone." */
char       *lw_turn_sentence (const LwTurnAt *turn);
