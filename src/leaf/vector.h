/* Vector kernels for CVODE. Debian's SUNDIALS is built without optimisation, which
 * costs more than the whole leaf model; a vector carries its own kernels. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <nvector/nvector_serial.h>

/* A serial vector whose kernels, and those of its clones, are ours. NULL if memory cannot be had. */
N_Vector lw_vector_new   (sunindextype length,
                          SUNContext   context);

/* The same over somebody else's data, which N_VSetArrayPointer sets. */
N_Vector lw_vector_empty (sunindextype length,
                          SUNContext   context);
