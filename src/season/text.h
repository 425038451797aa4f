/* Translation marks, for the floors that speak to people without GTK. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "config.h"

#include <glib/gi18n-lib.h>

/* A unit in the user's language; "" where there is none, for which gettext would answer with the catalogue's own head. */
static inline const char *
lw_unit_words (const char *unit)
{
  return unit[0] != '\0' ? _ (unit) : "";
}
