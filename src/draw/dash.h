/* Dashes by number: what tells lines apart besides their colour. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

/* 0 is unbroken; the patterns repeat. */
void lw_dash_use (cairo_t *cr,
                  guint    dash);
