/* Batches into the document. Private to writing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

void lw_write_batch (GString       *out,
                     const LwBatch *batch);
