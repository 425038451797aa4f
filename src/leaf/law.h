/* The parameters of the leaf model and their table: name, unit, starting
 * value, sensible range and source. This is the one place that holds values. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* One plain number per parameter, in the unit the table states. */
typedef struct
{
  double sla_m2_kg;
  double c_dry_j_kgk;
  double c_water_j_kgk;
  double halsey_a;
  double halsey_b_k;
  double halsey_c;
  double cut_m_s;
  double cut_rupture;
  double falling_water;
  double shrink;
  double even_s;
  double wilt_s;
  double wilt_water;
  double age_s;
  double heat_s;
  double heat_z_k;
  double roll_s_kpa;
  double soft;
  double oxidise_s;
  double oxidise_j_mol;
  double oxidise_water;
  double yellow_s;
  double inactivate_s;
  double inactivate_j_mol;
  double roast_z_k;
  double green_s;
  double green_z_k;
  double green_form;
  double break_s_kpa;
  double break_water;
  double twist_s;
  double sun_absorbed;
  double leaf_length_m;
  double film_floor_w_m2k;
} LwLaw;

/* A row of the parameter table. `symbol` is the name used in documents and in
 * docs/model.md; `source` says where the value comes from. */
typedef struct
{
  const char *symbol;
  const char *unit;
  gsize offset;
  double value;
  double low;
  double high;
  const char *meaning;
  const char *source;
} LwLawField;

#define LW_N_LAW (sizeof (LwLaw) / sizeof (double))

/* The table, LW_N_LAW rows in the order of LwLaw's members. */
const LwLawField *lw_law_fields (void);

/* The row whose symbol is `symbol`, or -1. */
int               lw_law_find   (const char *symbol);

/* The large-leaf starting values. */
LwLaw             lw_law_start  (void);

double            lw_law_get    (const LwLaw *law,
                                 guint        field);
void              lw_law_set    (LwLaw       *law,
                                 guint        field,
                                 double       value);
