/* Inks and dashes of logs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/log-look.h"

LwInk
lw_log_ink (LwLogOf          of,
            const LwPalette *palette)
{
  return of == LW_LOG_LEAF ? palette->ink : of == LW_LOG_WALL ? palette->heat : palette->curve[LW_MOISTURE];
}

guint
lw_log_dash (LwLogOf of)
{
  return of == LW_LOG_LEAF ? 0 : of == LW_LOG_WALL ? 1 : 2;
}
