/* GSL's objects freed when they go out of scope. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <gsl/gsl_matrix.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_vector.h>

G_DEFINE_AUTOPTR_CLEANUP_FUNC (gsl_vector, gsl_vector_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (gsl_matrix, gsl_matrix_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (gsl_qrng, gsl_qrng_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (gsl_rng, gsl_rng_free)
