"""speed.py BENCH-SPEED OBJECT BUILDTYPE: how fast one batch of four steps and four parts is computed by
this program, by SciPy (the peer of tests/peers) and by R's deSolve (OBJECT holds the same compiled
right-hand side), at the same tolerance, beside the goals. Asserts nothing."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import shutil
import subprocess
import sys
import time

import numpy as np
import scipy

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "..", "peers"))
from leafpeer import Told, Values, march_outcomes, off, read_season, root_mean_square  # noqa: E402

BENCH, OBJECT, BUILDTYPE = sys.argv[1:4]
CLI = os.environ["LEAFWEND_CLI"]
SEASON = os.path.join(os.environ["LEAFWEND_DATA"], "ondry-ridge-2026.leafwend")
TOLERANCE = 3e-6
METHODS = ("LSODA", "BDF", "Radau")
JACOBIANS = {"fullint": "full Jacobian", "bandint": "banded Jacobian"}
ROUNDS = 3  # all take turns, and the quickest of each counts: other work on the machine can only slow them


def lines_of(*command):
    return subprocess.run(command, stdout=subprocess.PIPE, check=True).stdout.decode("utf-8").splitlines()


def program(batch, *what):
    """What the program says of itself: text by name."""
    return dict(row.split("\t") for row in lines_of(BENCH, SEASON, batch.name, "%g" % TOLERANCE, *what))


def by_scipy(batch, values):
    """(milliseconds, outcomes) by method."""
    found = {}
    for method in METHODS:
        begin = time.process_time()
        told = march_outcomes(batch, values, relative=TOLERANCE, method=method)
        found[method] = 1e3 * (time.process_time() - begin), told
    return found


def rscript():
    """R's command if its package deSolve is there."""
    r = shutil.which("Rscript")
    found = r and subprocess.run([r, "-e", "library (deSolve)"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                 check=False).returncode == 0
    return r if found else None


def by_desolve(r, batch):
    """(milliseconds, outcomes) by kind of Jacobian."""
    found = {}
    for row in lines_of(r, os.path.join(HERE, "desolve.R"), OBJECT, SEASON, batch.name, "%g" % TOLERANCE):
        jacobian, took, *told = row.split()
        found[jacobian] = float(took), np.array([float(number) for number in told])
    return found


def quickest(rounds):
    """By key, of rounds of (milliseconds, outcomes)."""
    return {key: min((one[key] for one in rounds), key=lambda found: found[0]) for key in rounds[0]}


def line(what, value, note=""):
    print("  %-46s %10s  %s" % (what, value, note), flush=True)


def ms(value):
    return "%.3f ms" % value if value < 100 else "%.0f ms" % value


def far(told, exact):
    return "%.0e off" % root_mean_square(off(told.reshape(exact.shape), exact))


def say_program(number, many, distance):
    print("\nThis program")
    line("full batch, curves of 160 points a step", ms(number["full"]))
    line("full batch, step ends", ms(number["ends"]), distance)
    line("last step changed, curves", ms(number["last"]))
    line("floor: its right-hand-side calls alone", ms(number["floor"]),
         "%.0f calls of one part, %.0f solver steps" % (number["count of rate calls"], number["count of solver steps"]))
    for what, counts in (("parts", (1, 4, 16, 64)), ("steps", (1, 2, 4, 8))):
        for count in counts:
            took = number["%s %d" % (what, count)]
            line("%d %s" % (count, what if count > 1 else what[:-1]), ms(took),
                 "%.1f times one" % (took / number[what + " 1"]))
    same = many["sum on 1"] == many["sum on 2"]
    line("10,000 batches on one thread", "%.2f s" % (float(many["many on 1"]) / 1e3), "sum " + many["sum on 1"][:12])
    line("10,000 batches on two threads", "%.2f s" % (float(many["many on 2"]) / 1e3),
         "sum %s, %s" % (many["sum on 2"][:12], "the same to the bit" if same else "NOT THE SAME"))


def say_others(title, found, names, exact):
    print("\n" + title)
    for key, (took, told) in found.items():
        line("%s, step ends" % names.get(key, key), ms(took), far(told, exact))


def say_goal(goal, value, met):
    line(goal, "%.3g" % value, "met" if met else "NOT met")


def say_goals(number, many_s, scipy_ms, desolve_ms):
    print("\nGoals")
    say_goal("full batch, curves: under 1 ms", number["full"], number["full"] < 1)
    say_goal("last step changed: under 0.3 ms", number["last"], number["last"] < 0.3)
    say_goal("10,000 batches, two threads: under 10 s", many_s, many_s < 10)
    over = number["ends"] / number["floor"]
    say_goal("over the floor: under 3 times", over, over < 3)
    for name, took, times in (("SciPy", scipy_ms, 300), ("deSolve", desolve_ms, 3)):
        if took is not None:
            say_goal("faster than %s: over %d times" % (name, times), took / number["ends"],
                     took / number["ends"] > times)


def main():
    values, r = Values(CLI), rscript()
    batch = next(b for b in read_season(SEASON).values() if len(b.steps) == 4 and len(b.leaf.parts) == 4)
    print('"%s": %s; %s' % (batch.name, ", ".join(kind for kind, _ in batch.steps), ", ".join(batch.leaf.parts)))
    print("Relative tolerance %g, built as %s, load of the machine at the start %.1f on %d processors."
          % (TOLERANCE, BUILDTYPE, os.getloadavg()[0], os.cpu_count()))
    print("Processor time, the quickest of %d rounds; 10,000 batches by the clock." % ROUNDS)
    print('"off" is the distance from a solution at 1e-9.', flush=True)
    exact = march_outcomes(batch, values)

    own, pythons, rs = [], [], []
    for _ in range(ROUNDS):
        own.append(program(batch))
        pythons.append(by_scipy(batch, values))
        if r:
            rs.append(by_desolve(r, batch))
    number = {name: min(float(one[name]) for one in own) for name in own[0]}
    many = program(batch, "many")

    say_program(number, many, far(Told(CLI, SEASON).outcomes(batch), exact))
    found = quickest(pythons)
    say_others("SciPy %s, NumPy right-hand side over all parts at once" % scipy.__version__, found, {}, exact)
    scipy_ms, desolve_ms = min(took for took, _ in found.values()), None
    title = "R's deSolve, lsoda, the program's own compiled right-hand side"
    if r:
        found = quickest(rs)
        say_others(title, found, JACOBIANS, exact)
        desolve_ms = min(took for took, _ in found.values())
    else:
        print("\n%s\n  not measured: R or its package deSolve is not installed (r-base-core, r-cran-desolve)" % title)
    say_goals(number, float(many["many on 2"]) / 1e3, scipy_ms, desolve_ms)


main()
