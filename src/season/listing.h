/* A list of rows, as a Markdown table or as CSV, or straight to standard output. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* (transfer full) in the C locale. */
char *lw_listing_number      (double             value);

/* (transfer full) with so many digits after the point, in the C locale; "" for NAN, and no minus before zeros. */
char *lw_listing_fixed       (double             value,
                              int                digits);

/* Prints the text, padded to so many characters (not bytes). */
void  lw_listing_cell        (const char        *text,
                              int                width);

/* The columns' names. */
void  lw_listing_append_head (GString           *to,
                              gboolean           csv,
                              guint              n,
                              const char *const *cells);

void  lw_listing_append_row  (GString           *to,
                              gboolean           csv,
                              guint              n,
                              const char *const *cells);
