"""leafwend-cli heat: its columns, its sums, what costs fuel and what does not, and that the leaf that is left
is the one that `run` tells."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import tempfile

import program  # first: it knows where tap is
import tap

SEASON = os.path.join(os.environ["LEAFWEND_DATA"], "ondry-ridge-2026.leafwend")
HEADER = ["batch", "step", "kind", "minutes", "loads", "heat_kwh", "free_heat_kwh", "fuel_kwh", "water_kg", "hands_h",
          "made_kg", "fuel_kwh_per_kg_made"]
FREE = {"wither", "tumble", "roll", "rest", "dry-sun"}


def run(*arguments, expect=0):
    """What the program writes."""
    return program.run(*arguments, expect=expect)[0]


def read(text):
    return list(csv.DictReader(text.splitlines()))


ROWS = read(run("heat", SEASON))


def batches():
    names = list(dict.fromkeys(r["batch"] for r in ROWS))
    return [(name, [r for r in ROWS if r["batch"] == name]) for name in names]


def near(got, expected, bound, what):
    assert abs(got - expected) <= bound, "%s is %r, not %r" % (what, got, expected)


@tap.case
def columns_are_as_documented():
    """The columns are these, and the help tells each of them."""
    tap.equal(list(ROWS[0]), HEADER, "the columns")
    told = run("heat", "--help")
    for column in HEADER:
        assert column in told, column


@tap.case
def step_0_is_the_sum():
    """The last row of a batch is step 0 and the sum of its steps."""
    for name, rows in batches():
        *steps, whole = rows
        tap.equal([int(r["step"]) for r in rows], [*range(1, len(rows)), 0], name)
        tap.equal(whole["kind"], "batch", name)
        for column in ("minutes", "heat_kwh", "free_heat_kwh", "fuel_kwh", "water_kg", "hands_h"):
            near(float(whole[column]), sum(float(r[column]) for r in steps), 1e-6, name + " " + column)
        tap.equal(whole["made_kg"], steps[-1]["made_kg"], name)
        near(float(whole["fuel_kwh_per_kg_made"]), float(whole["fuel_kwh"]) / float(whole["made_kg"]), 1e-6, name)
        assert all(r["fuel_kwh_per_kg_made"] == "" for r in steps), name


@tap.case
def only_fires_cost_fuel():
    """Sun, room air and rolling cost no fuel; every fire costs more than it gives the leaf."""
    assert {r["kind"] for r in ROWS} > FREE
    for row in ROWS:
        heat, fuel = float(row["heat_kwh"]), float(row["fuel_kwh"])
        if row["kind"] in FREE:
            tap.equal((heat, fuel), (0, 0), row["kind"])
        else:
            assert fuel >= heat, row


@tap.case
def leaf_left_is_that_of_run():
    """The weight at each step's end is the one that run tells."""
    ends = read(run("run", SEASON, "--ends"))
    steps = [r for r in ROWS if r["step"] != "0"]
    tap.equal([(r["batch"], r["step"]) for r in steps], [(r["batch"], r["step"]) for r in ends], "the steps")
    for name, rows in batches():
        told = [float(r["kg_per_kg_fresh"]) for r in ends if r["batch"] == name]
        fresh = float(rows[-1]["made_kg"]) + float(rows[-1]["water_kg"])
        for row, share in zip(rows, told):
            near(float(row["made_kg"]), share * fresh, 1e-6, name)


@tap.case
def one_batch_into_a_file():
    """--batch chooses, -o writes a file, and a batch that is not there is refused."""
    with tempfile.TemporaryDirectory(prefix="heat.") as folder:
        path = os.path.join(folder, "heat.csv")
        tap.equal(run("heat", SEASON, "--batch", "4", "-o", path), "", "standard output")
        with open(path, encoding="utf-8") as file:
            tap.equal({r["batch"] for r in read(file.read())}, {"4 white, two days"}, "the batch")
    run("heat", SEASON, "--batch", "99", expect=1)
    run("heat", expect=2)


tap.main()
