/* The checks, by subject; each makes claims (claim.h). */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

void check_sorption  (void);
void check_finished  (void);
void check_wither    (void);
void check_spreading (void);
void check_skin      (void);
void check_area      (void);
void check_drying    (void);
void check_sun       (void);
void check_speeds    (void);
void check_enzyme    (void);
void check_fixing    (void);
void check_oxidation (void);
void check_rupture   (void);
void check_laws      (void);
