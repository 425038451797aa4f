/* Translation marks, for the floors that speak to people without GTK. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "config.h"

#include <glib/gi18n-lib.h>
