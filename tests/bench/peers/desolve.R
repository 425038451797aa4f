# desolve.R OBJECT SEASON BATCH TOLERANCE: time R's lsoda (package deSolve) on a batch, its right-hand
# side the compiled one of OBJECT. Prints, for a full and a banded Jacobian, its name, the
# milliseconds of the processor for a batch and all outcomes at the steps' ends.
# SPDX-License-Identifier: GPL-3.0-or-later
suppressPackageStartupMessages (library (deSolve))

args <- commandArgs (trailingOnly = TRUE)
object <- args[1]
tolerance <- as.numeric (args[4])
dyn.load (object)
name <- sub ("[.]so$", "", basename (object))

sizes <- .C ("leaf_open", args[2], args[3], sizes = integer (3))$sizes
n <- sizes[2] * sizes[3]
atol <- tolerance * .C ("leaf_sizes", size = double (n))$size

batch <- function (jacobian, keep) {
  state <- double (n)
  told <- NULL
  for (step in seq_len (sizes[1])) {
    begun <- .C ("leaf_begin", as.integer (step - 1), duration = double (1), state = state)
    # Parts hardly act on each other, so the band is as wide as one part.
    state <- lsoda (begun$state, c (0, begun$duration), "leaf_rates", NULL, rtol = tolerance, atol = atol,
                    dllname = name, initfunc = NULL, jactype = jacobian, maxsteps = 1e6,
                    bandup = sizes[3] - 1, banddown = sizes[3] - 1)[2, -1]
    if (keep)
      told <- c (told, .C ("leaf_outcomes", as.double (state), out = double (13 * (sizes[2] + 1)))$out)
  }
  told
}

for (jacobian in c ("fullint", "bandint")) {
  told <- batch (jacobian, TRUE)
  took <- replicate (7, { begin <- sum (proc.time ()[1:2])
                          for (i in 1:20) batch (jacobian, FALSE)
                          50 * (sum (proc.time ()[1:2]) - begin) })
  cat (jacobian, median (took), sprintf ("%.12g", told), "\n")
}
