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

/* (transfer full) so many digits, very small ones as makers write them: "6.7×10⁻⁵". */
char *lw_fit_number_say      (double              value,
                              int                 digits);

/* (transfer full) one or two sentences. */
char *lw_fit_warning_say     (const LwFit        *fit,
                              const LwFitWarning *warning);

/* (transfer full) what is expected before anything was weighed: "0.00017 m/s ± 30 %". `leaf` (nullable) keeps the value. */
char *lw_fit_prior_say       (LwFitWhat           what,
                              const LwProfile    *leaf);

/* (transfer full) how far the model missed the weigh-ins before and after; `batch` (nullable) of one alone. */
char *lw_fit_miss_say        (const LwFit        *fit,
                              const LwFitBatch   *batch);

/* (transfer full) every weigh-in of the batch beside what the model says of it, for one who cannot see the picture. */
char *lw_fit_points_say      (const LwFit        *fit,
                              const LwFitBatch   *batch);

/* (transfer full) (nullable) how well a batch is foretold that was not fitted to: any, or the one that is named; NULL where
 * that was not asked for or is not known. */
char *lw_fit_unseen_say      (const LwFit        *fit,
                              const LwFitBatch   *batch);  /* (nullable) */

/* (transfer full) where the fitted profile comes from, with its values: a note for it. */
char *lw_fit_history_say     (const LwFit        *fit,
                              const LwProfile    *from);
