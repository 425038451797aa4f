/* Contexts without MPI, and errors that nobody prints. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/sundials.h"

#if SUNDIALS_VERSION_MAJOR >= 7
#define NO_COMM SUN_COMM_NULL

static void
quiet_cb (int line, const char *func, const char *file, const char *msg,
          SUNErrCode code, void *data, SUNContext context)
{
}
#else
#define NO_COMM NULL

static void
quiet_cb (int code, const char *module, const char *function, char *msg, void *data)
{
}
#endif

SUNContext
lw_sundials_new (void)
{
  SUNContext context = NULL;

  return SUNContext_Create (NO_COMM, &context) == 0 ? context : NULL;
}

void
lw_sundials_silence (SUNContext  context,
                     void       *cvode)
{
#if SUNDIALS_VERSION_MAJOR >= 7
  SUNContext_ClearErrHandlers (context);
  SUNContext_PushErrHandler (context, quiet_cb, NULL);
#else
  CVodeSetErrHandlerFn (cvode, quiet_cb, NULL);
#endif
}
