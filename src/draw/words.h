/* What a quantity's value is called in a picture, as short as can be. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/quantity.h"

/* (transfer full) "14.2 %", "62 °C", "0.244": with its unit only where that is one sign. */
char    *lw_words_value       (LwQuantity quantity,
                               double     value);

/* Whether lw_words_value says the quantity's unit. */
gboolean lw_words_say_unit    (LwQuantity quantity);

/* Whether people read this language from the right. */
gboolean lw_words_from_right  (void);
