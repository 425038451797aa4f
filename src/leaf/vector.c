/* The kernels that BDF and the Newton iteration call, as plain loops for the compiler. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/vector.h"

#include <math.h>

/* Four numbers at a time where the processor can; the sums are the same. */
#if defined (__x86_64__) && defined (__GNUC__)
#define WIDE __attribute__ ((target_clones ("avx2", "default")))
#else
#define WIDE
#endif

#define DATA(v) (((N_VectorContent_Serial) (v)->content)->data)
#define LENGTH(v) (((N_VectorContent_Serial) (v)->content)->length)

WIDE static void
linear_sum (sunrealtype a,
            N_Vector    x,
            sunrealtype b,
            N_Vector    y,
            N_Vector    z)
{
  const sunrealtype *xd = DATA (x), *yd = DATA (y);
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  for (sunindextype i = 0; i < n; i++)
    zd[i] = a * xd[i] + b * yd[i];
}

WIDE static void
scale (sunrealtype c,
       N_Vector    x,
       N_Vector    z)
{
  const sunrealtype *xd = DATA (x);
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  for (sunindextype i = 0; i < n; i++)
    zd[i] = c * xd[i];
}

static void
fill (sunrealtype c,
      N_Vector    z)
{
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  for (sunindextype i = 0; i < n; i++)
    zd[i] = c;
}

static void
magnitude (N_Vector x,
           N_Vector z)
{
  const sunrealtype *xd = DATA (x);
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  for (sunindextype i = 0; i < n; i++)
    zd[i] = fabs (xd[i]);
}

static void
reciprocal (N_Vector x,
            N_Vector z)
{
  const sunrealtype *xd = DATA (x);
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  for (sunindextype i = 0; i < n; i++)
    zd[i] = 1 / xd[i];
}

WIDE static void
add_const (N_Vector    x,
           sunrealtype b,
           N_Vector    z)
{
  const sunrealtype *xd = DATA (x);
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  for (sunindextype i = 0; i < n; i++)
    zd[i] = xd[i] + b;
}

WIDE static sunrealtype
weighted_rms (N_Vector x,
              N_Vector w)
{
  const sunrealtype *xd = DATA (x), *wd = DATA (w);
  sunindextype n = LENGTH (x);
  sunrealtype sum = 0;

  for (sunindextype i = 0; i < n; i++)
    {
      sunrealtype one = xd[i] * wd[i];

      sum += one * one;
    }

  return sqrt (sum / (sunrealtype) n);
}

WIDE static int
linear_combination (int          n_vectors,
                    sunrealtype *c,
                    N_Vector    *x,
                    N_Vector     z)
{
  sunrealtype *zd = DATA (z);
  sunindextype n = LENGTH (z);

  /* The first vector may be the result itself; the others never are. */
  if (x[0] != z)
    scale (c[0], x[0], z);
  else if (c[0] != 1)
    scale (c[0], z, z);

  for (int k = 1; k < n_vectors; k++)
    {
      const sunrealtype *xd = DATA (x[k]);
      sunrealtype ck = c[k];

      for (sunindextype i = 0; i < n; i++)
        zd[i] += ck * xd[i];
    }

  return 0;
}

static N_Vector
with_kernels (N_Vector v)
{
  if (v == NULL)
    return NULL;

  v->ops->nvlinearsum = linear_sum;
  v->ops->nvscale = scale;
  v->ops->nvconst = fill;
  v->ops->nvabs = magnitude;
  v->ops->nvinv = reciprocal;
  v->ops->nvaddconst = add_const;
  v->ops->nvwrmsnorm = weighted_rms;
  v->ops->nvlinearcombination = linear_combination;

  return v;
}

N_Vector
lw_vector_new (sunindextype length,
               SUNContext   context)
{
  return with_kernels (N_VNew_Serial (length, context));
}

N_Vector
lw_vector_empty (sunindextype length,
                 SUNContext   context)
{
  return with_kernels (N_VNewEmpty_Serial (length, context));
}
