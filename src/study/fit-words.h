/* A fit in words: what differs, by how much, and what to beware of. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/fit.h"

/* (transfer full) "openness of the skin", "fresh moisture, Upper Terrace". */
char *lw_fit_param_label     (const LwFit        *fit,
                              const LwFitParam   *param);

/* (transfer full) "× 1.180 ± 0.040", "+0.80 ± 0.20 % points". */
char *lw_fit_param_say       (const LwFitParam   *param);

/* (transfer full) what it makes of the leaf: "0.00017 → 0.000205 ± 3e-06 m/s"; "" where no leaf keeps it. */
char *lw_fit_param_say_value (const LwFitParam   *param,
                              const LwProfile    *leaf);

/* (transfer full) one or two sentences. */
char *lw_fit_warning_say     (const LwFit        *fit,
                              const LwFitWarning *warning);

/* (transfer full) where the fitted profile comes from, with its values: a note for it. */
char *lw_fit_history_say     (const LwFit        *fit,
                              const LwProfile    *from);
