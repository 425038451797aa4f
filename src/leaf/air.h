/* Moist air: saturation, boiling, the standard atmosphere, wet bulb.
 * Temperatures in C, pressures in Pa. Pure functions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#define LW_ZERO_C 273.15
#define LW_GAS 8.314462618         /* J/(mol K), CODATA 2018 */
#define LW_WATER_KG_MOL 0.01801528 /* IAPWS */

/* Vapour pressure over liquid water, Pa; 0.01 to 373 C, 0.01 % there.
 * IAPWS SR1-86(1992), W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22:783 (1993). */
double lw_air_saturation_pa (double temp_c);

/* Temperature at which water boils under `pressure_pa`; the inverse of the above. */
double lw_air_boiling_c     (double pressure_pa);

/* A vapour pressure as it can stand in open air: bends off under 99.95 % of the place's, without a
 * corner, so that a wet leaf stays just below boiling however hard it is heated. */
double lw_air_below_boiling_pa (double vapour_pa,
                                double pressure_pa);

/* Latent heat of evaporation, J/kg: cubic fitted to IAPWS-IF97, 0 to 120 C within 0.01 %. */
double lw_air_latent_j_kg   (double temp_c);

/* Pressure of the standard atmosphere at a geometric altitude, Pa; -500 to 11000 m. ISO 2533:1975. */
double lw_air_pressure_pa   (double altitude_m);

/* kg water per kg dry air at a vapour pressure. */
double lw_air_humidity      (double vapour_pa,
                             double pressure_pa);

/* Temperature at which the vapour would be saturated, C. */
double lw_air_dew_point_c   (double vapour_pa);

/* Thermodynamic wet bulb, C, by bisection on the enthalpy balance of
 * ASHRAE Handbook Fundamentals 2017, chapter 1, equation 33. */
double lw_air_wet_bulb_c    (double temp_c,
                             double vapour_pa,
                             double pressure_pa);
