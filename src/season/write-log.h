/* Writing the logs of a step or of a batch. Private to writing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* Those that go with `step`, or with the batch: -1. */
gboolean lw_write_has_logs (const LwBatch *batch,
                            int            step);
void     lw_write_logs     (GString       *out,
                            int            depth,
                            const LwBatch *batch,
                            int            step);
