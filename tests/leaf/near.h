/* One assertion for numbers: within a relative bound, with both said. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>
#include <math.h>

#define assert_within(got, expected, bound, what)                                              \
  G_STMT_START {                                                                               \
    double got_ = (got), expected_ = (expected), off_ = fabs (got_ - expected_);               \
    if (!(off_ <= (bound)))                                                                    \
      g_error ("%s:%d: %s is %.10g, expected %.10g, off by %.3g, allowed %.3g", __FILE__,      \
               __LINE__, (what), got_, expected_, off_, (double) (bound));                     \
  } G_STMT_END

#define assert_relative(got, expected, bound, what) \
  assert_within (got, expected, (bound) * fabs (expected), what)
