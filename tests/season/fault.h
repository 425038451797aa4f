/* Calls to the system that fail, or at which the program stops. Linked into a test they take the place of libc's;
 * as a module before libc they do so in a whole program, told by the file that $FAULT_FILE names: "write 28". That file
 * also sets the wall clock: "clock -3600". */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#define FAULT_STOP (-1)  /* instead of an error: the program stops there, to be killed */
#define FAULT_SHORT (-2) /* instead of an error: a write of a few bytes only */

/* From the `nth` on, counted from 1, of the calls by that name ("write", "fsync", "fchmod", "rename", "faccessat", or
 * "any") on, all of them fail with `code`. NULL: none fails. */
void  fault_arm   (const char *call,
                   guint       nth,
                   int         code);
/* Calls since then. */
guint fault_calls (void);
