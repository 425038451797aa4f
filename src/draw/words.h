/* What a quantity's value is called in a picture, as short as can be. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/quantity.h"

/* (transfer full) "14.2 %", "62 °C", "0.244": with its unit only where that is one sign. */
char    *lw_words_value       (LwQuantity quantity,
                               double     value);

/* Whether lw_words_value says the quantity's unit. */
gboolean lw_words_say_unit    (LwQuantity quantity);

/* (transfer full) a change of the quantity, always with its sign: "+0.4", "−1.2"; without one where it rounds to
 * nothing: "0.0". Just "0" where nothing changed at all, a dash for NAN. */
char    *lw_words_change      (LwQuantity quantity,
                               double     change);

/* Whether it rounds to nothing so, or is nothing. */
gboolean lw_words_change_rounds_off (LwQuantity quantity,
                                     double     change);

/* The unit of such a change: "% points" for all percentages; "" where there is none. Translated. */
const char *lw_words_change_unit (LwQuantity quantity);

/* Whether people read this language from the right. */
gboolean lw_words_from_right  (void);
