"""leafwend-cli knockon and reach: what they write, that it is what `run` says of the changed batch, and how they
refuse."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import tempfile

from program import run, refused  # first: it knows where tap is
import tap

FOLDER = tempfile.TemporaryDirectory(prefix="cli-study.")
OUTCOMES = {"moisture": "moisture_wb_pct", "oxidation": "oxidation_pct", "rupture": "rupture_pct",
            "leaf-temp": "leaf_temp_c", "enzyme": "enzyme_left_pct", "roast": "roast_min", "green": "green_note",
            "broken": "broken_pct", "twist": "twist_pct", "weight": "kg_per_kg_fresh"}
BATCH_ONLY = ["uneven", "nearly-dry", "roasted"]
HEADER = ["step", "kind", "setting", "unit", "value", "notch", *OUTCOMES, *BATCH_ONLY]

SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="blade" share="0.8" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
    <part name="stem" share="0.2" exposure="1" area="1" cuticle="1" ruptured="0.02"/>
  </leaf>
  <batch name="1 pan" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="240"/>
    <step kind="fix-pan" minutes="%(pan)s" wall-c="%(wall)s">
      <aim of="moisture" low="55" high="58"/>
    </step>
    <step kind="roll" minutes="3"/>
    <aim of="rupture" low="%(rupture)s"/>
  </batch>
  <batch name="2 aimless" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="240"/>
  </batch>
  <batch name="3 bare" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4"/>
</season>
"""


def path(name):
    return os.path.join(FOLDER.name, name)


def put(name, pan="20", wall="260", rupture="30"):
    with open(path(name), "w", encoding="utf-8") as file:
        file.write(SEASON % {"pan": pan, "wall": wall, "rupture": rupture})
    return path(name)


GOOD = put("good.leafwend")


def read(text):
    return list(csv.DictReader(text.splitlines()))


def ends(season, batch="1"):
    """The outcomes at the batch's last step, as `run` tells them."""
    return read(run("run", season, "--batch", batch, "--ends")[0])[-1]


def settings(season):
    """(step, setting) to value, of the settings given in the file."""
    done = {}
    with open(season, encoding="utf-8") as file:
        for line in (l for l in file if "<step" in l):
            step = len({s for s, _ in done}) + 1
            for name, value in (p.split("=") for p in line.split()[1:] if "=" in p):
                if name != "kind":
                    done[(step, name)] = float(value.strip('"/>'))
            if step == 3:
                break
    return done


@tap.case
def knockon_columns():
    """knockon: a row for each setting, a column for each outcome, names as in the document"""
    text = run("knockon", GOOD, "--batch", "1")[0]
    rows = read(text)
    tap.equal(list(rows[0]), HEADER, "the columns")
    tap.equal(list(dict.fromkeys((r["step"], r["kind"]) for r in rows)), [("1", "wither"), ("2", "fix-pan"),
                                                                          ("3", "roll")], "the steps")
    by = {(r["step"], r["setting"]): r for r in rows}
    tap.equal((by["2", "wall-c"]["value"], by["2", "wall-c"]["notch"], by["2", "wall-c"]["unit"]), ("260", "5", "°C"))
    tap.equal((by["1", "minutes"]["value"], by["1", "minutes"]["notch"]), ("240", "5"))
    assert all(len(r) == len(HEADER) and None not in r.values() for r in rows)


@tap.case
def knockon_is_what_run_says():
    """knockon: the numbers are the difference between two runs"""
    rows = {(r["step"], r["setting"]): r for r in read(run("knockon", GOOD, "--batch", "1")[0])}
    base = ends(GOOD)
    for moved, row in ((put("hot.leafwend", wall="265"), rows["2", "wall-c"]),
                       (put("long.leafwend", pan="21"), rows["2", "minutes"])):
        there = ends(moved)
        for of, column in OUTCOMES.items():
            difference = float(there[column]) - float(base[column])
            assert abs(float(row[of]) - difference) <= 2e-3 + 1e-2 * abs(difference), (of, row[of], difference)
    assert float(rows["2", "wall-c"]["moisture"]) < -0.1


@tap.case
def knockon_at_a_step():
    """knockon --step: what comes later does nothing to what was before"""
    rows = read(run("knockon", GOOD, "--batch", "1", "--step", "2")[0])
    assert all(float(r[of]) == 0 for r in rows if r["step"] == "3" for of in OUTCOMES)
    assert any(float(r["moisture"]) != 0 for r in rows if r["step"] == "1")
    run("knockon", GOOD, "--batch", "1", "-o", path("out.csv"))
    with open(path("out.csv"), encoding="utf-8") as file:
        tap.equal(file.read(), run("knockon", GOOD, "--batch", "1", "--step", "3")[0], "the file")


@tap.case
def reach_meets():
    """reach: exit status 0, the aims are met, and the file written says so too"""
    wet = put("wet.leafwend", pan="15", rupture="35")
    before = os.stat(wet).st_mtime_ns
    text = run("reach", wet, "--batch", "1", "-o", path("met.leafwend"))[0]
    assert "met" in text and "missed" not in text, text
    tap.equal(os.stat(wet).st_mtime_ns, before, "the season's own file")
    pan = read(run("run", path("met.leafwend"), "--batch", "1", "--ends")[0])[1]
    assert 54.7 <= float(pan["moisture_wb_pct"]) <= 58.3, pan["moisture_wb_pct"]
    assert float(ends(path("met.leafwend"))["rupture_pct"]) >= 34.4
    run("check", path("met.leafwend"))
    again = run("reach", path("met.leafwend"), "--batch", "1")[0]
    assert "missed" not in again


@tap.case
def reach_free_and_pin():
    """reach: --free turns only what it names, --pin leaves what it names"""
    wet = put("wet.leafwend", pan="15", rupture="10")
    old = settings(wet)
    run("reach", wet, "--batch", "1", "--free", "2:minutes", "-o", path("free.leafwend"))
    new = settings(path("free.leafwend"))
    tap.equal([k for k in new if new[k] != old.get(k)], [(2, "minutes")], "what was turned")
    assert new[2, "minutes"] > 15
    run("reach", wet, "--batch", "1", "--pin", "2:minutes", "--pin", "1:minutes", "-o", path("pin.leafwend"))
    new = settings(path("pin.leafwend"))
    tap.equal((new[1, "minutes"], new[2, "minutes"]), (240.0, 15.0), "what was pinned")
    assert new[2, "wall-c"] > 260


@tap.case
def reach_misses():
    """reach: exit status 3 and the amount where an aim cannot be met"""
    text = run("reach", put("far.leafwend", rupture="99"), "--batch", "1", "--free", "2:minutes",
               "-o", path("far-out.leafwend"), expect=3)[0]
    assert "too little" in text, text
    run("check", path("far-out.leafwend"))


@tap.case
def refusals():
    """What is wrong is said, and nothing is written"""
    refused("knockon", GOOD, words=["--batch"])
    refused("reach", GOOD, words=["--batch"])
    refused("knockon", GOOD, "--batch", "9", status=1, words=["9", "2 aimless"])
    refused("knockon", GOOD, "--batch", "1", "--step", "4", status=1, words=["3 steps"])
    refused("knockon", GOOD, "--batch", "1", "--step", "-1", words=["--step"])
    refused("knockon", GOOD, "--batch", "3", status=1, words=["0 steps"])
    refused("reach", GOOD, "--batch", "2", status=1, words=["2 aimless", "aim"])
    for wrong in ("2", "2:", "0:minutes", "4:minutes", "2:press-kpa", "2:nothing", "x:minutes", "-1:minutes"):
        refused("reach", GOOD, "--batch", "1", "--free", wrong, words=[wrong])
        refused("reach", GOOD, "--batch", "1", "--pin=" + wrong, words=[wrong])
    wet = put("wet.leafwend", pan="15")
    _, complained = run("reach", wet, "--batch", "1", "-o", path("no/such.leafwend"), expect=1)
    assert "such.leafwend" in complained, complained


@tap.case
def help_tells():
    """The help of both tells its columns, options and exit statuses"""
    told = run("knockon", "--help")[0]
    for word in ("--batch", "--step", "--output", "notch", "setting, unit"):
        assert word in told, word
    told = run("reach", "--help")[0]
    for word in ("--free", "--pin", "STEP:SETTING", "2:wall-c", "3 an aim is missed"):
        assert word in told, word
    told = run("--help")[0]
    for word in ("knockon", "reach", "3 an aim is missed"):
        assert word in told, word


tap.main()
