/* Heat transfer between leaf and air, leaf and wall, and how much of a leaf
 * meets the air. Pure functions, SI. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Film coefficient of a leaf of `length_m` in air of `speed_m_s`, W/m2K: laminar plate,
 * Nu = 0.664 Re^1/2 Pr^1/3 (textbook), air at 25 C, not under `floor_w_m2k`. */
double lw_film_w_m2k       (double speed_m_s,
                            double length_m,
                            double floor_w_m2k);

/* Volumetric heat of dry air, J/m3K. */
double lw_film_air_j_m3k   (double temp_c,
                            double pressure_pa);

/* Mean exposure of the leaf in a layer `layers` leaves deep, 0..1: 1 for a single one,
 * 3 / layers for a deep heap (assumed, fitted to common practice). */
double lw_film_exposure    (double layers);

/* Skin of a semi-infinite solid at `temp_c` after `touch_s` against a wall through a film
 * (H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., section 2.7):
 * the share of the difference to the wall that the skin has taken, 0..1. */
double lw_film_skin        (double film_w_m2k,
                            double touch_s,
                            double conduct_w_mk,
                            double heat_j_m3k);

/* exp (b^2) erfc (b), b >= 0, without overflow; 1e-12 relative. */
double lw_film_erfcx       (double b);
