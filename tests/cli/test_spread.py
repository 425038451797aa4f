"""leafwend-cli spread and compare: what they write, that it hangs together with `run`, and how they refuse."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import tempfile

from program import run, refused  # first: it knows where tap is
import tap

FOLDER = tempfile.TemporaryDirectory(prefix="cli-spread.")

SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="blade" share="1" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
  </leaf>
  <batch name="1 pan" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="fix-pan" minutes="%(pan)s" wall-c="260">
      <aim of="moisture" low="68" high="73"/>
    </step>
    <step kind="roll" minutes="3"/>
  </batch>
  <batch name="2 aimless, rested" start="2026-04-13T11:00" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="fix-pan" minutes="12"/>
    <step kind="rest" minutes="30"/>
    <step kind="roll" minutes="3"/>
  </batch>
  <batch name="3 bare" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4"/>
</season>
"""


def path(name):
    return os.path.join(FOLDER.name, name)


def put(name, pan="10"):
    with open(path(name), "w", encoding="utf-8") as file:
        file.write(SEASON % {"pan": pan})
    return path(name)


GOOD = put("good.leafwend")


def read(text):
    rows = list(csv.DictReader(text.splitlines()))
    assert all(None not in r and None not in r.values() for r in rows), "a row of another length"
    return rows


def spread(*arguments, season=GOOD, batch="1", expect=0):
    """(step, outcome, source, figure) to value."""
    text = run("spread", season, "--batch", batch, "--csv", *arguments, expect=expect)[0]
    return {(r["step"], r["outcome"], r["source"], r["figure"]): float(r["value"]) for r in read(text)}


def ends(season, batch="1"):
    return read(run("run", season, "--batch", batch, "--ends")[0])


@tap.case
def spread_hangs_together():
    """spread: around what run says, shares and aims in their bounds"""
    got = spread("--samples", "256", "--rows", "64")
    tap.equal(got["", "", "", "samples"], 256)
    tap.equal(got["", "", "", "failed"], 0)
    nominal = float(ends(GOOD)[-2]["moisture_wb_pct"])
    mean, sd = got["1", "moisture", "", "mean"], got["1", "moisture", "", "sd"]
    assert abs(mean - nominal) < sd / 2 and sd > 0.1, (mean, nominal, sd)
    assert got["1", "moisture", "", "q05"] < got["1", "moisture", "", "q50"] < got["1", "moisture", "", "q95"]
    tap.equal(got["", "", "", "inside"], got["1", "moisture", "", "inside"], "one aim is all aims")
    ppk = min(73 - mean, mean - 68) / (3 * sd)
    assert abs(got["1", "moisture", "", "ppk"] - ppk) < 1e-6, (got["1", "moisture", "", "ppk"], ppk)
    totals = {k[2]: v for k, v in got.items() if k[:2] == ("1", "moisture") and k[3] == "total"}
    assert 0.7 < sum(totals.values()) < 1.6 and totals["pressure"] == 0 and totals["moisture"] > 0.1, totals


@tap.case
def spread_seeds():
    """spread: the same seed, the same bytes; another seed, other numbers"""
    once = run("spread", GOOD, "--batch", "1", "--samples", "64", "--rows", "8", "--seed", "5", "--csv")[0]
    tap.equal(run("spread", GOOD, "--batch", "1", "--samples", "64", "--rows", "8", "--seed", "5", "--csv")[0], once)
    assert run("spread", GOOD, "--batch", "1", "--samples", "64", "--rows", "8", "--seed", "6", "--csv")[0] != once


@tap.case
def spread_vary():
    """spread --vary: nothing, one source, more of it"""
    still = spread("--vary", "all=0", "--samples", "8", "--rows", "8")
    assert still["2", "moisture", "", "sd"] < 1e-9
    tap.equal(still["1", "moisture", "wall", "total"], 0, "of what does not vary")
    little = spread("--vary", "all=0", "--vary", "wall=3", "--samples", "128", "--rows", "0")
    much = spread("--vary", "all=0", "--vary", "wall=9/batch", "--samples", "128", "--rows", "0")
    assert 2 < much["1", "moisture", "", "sd"] / little["1", "moisture", "", "sd"] < 4
    assert ("1", "moisture", "wall", "total") not in little, "no rows were asked for"
    both = spread("--vary", "all=0", "--vary", "time=5%", "--samples", "64", "--rows", "0")
    roll = spread("--vary", "all=0", "--vary", "time=5%/step2", "--samples", "64", "--rows", "0")
    assert roll["1", "moisture", "", "sd"] < 1e-9 < both["1", "moisture", "", "sd"], "the pan's time stays"
    assert roll["2", "rupture", "", "sd"] > 0.01, "the roll's time varies"


@tap.case
def spread_tables():
    """spread: tables to read, the amounts and the most telling source first; the help lists the amounts"""
    text = run("spread", GOOD, "--batch", "1", "--samples", "64", "--rows", "32", "--vary", "wall=12")[0]
    for word in ("| wall |", "| 12/step |", "Inside every aim:", "Ppk", "alone", "1 pan: 64 samples, seed 1"):
        assert word in text, "no %r in %s" % (word, text)
    run("spread", GOOD, "--batch", "1", "--samples", "64", "--rows", "32", "--vary", "wall=12", "-o", path("out.md"))
    with open(path("out.md"), encoding="utf-8") as file:
        tap.equal(file.read(), text, "the file")
    sources = text.partition("alone")[2].splitlines()[2:]
    shares = [float(line.split("|")[5].split()[0]) for line in sources if "|" in line]
    assert shares, text
    tap.equal(shares, sorted(shares, reverse=True), "the order of sources")
    told = run("spread", "--help")[0]
    for word in ("wall=5", "| humidity |", "common practice, no source", "3 nothing steadier", "ISO 22514-4"):
        assert word in told, "no %r in the help" % word


@tap.case
def spread_bands():
    """spread --bands: low, middle and high of every outcome along each step"""
    rows = read(run("spread", GOOD, "--batch", "1", "--samples", "32", "--bands")[0])
    tap.equal(list(rows[0]), ["step", "share", "outcome", "low", "middle", "high"])
    tap.equal(len(rows), 2 * 25 * 13)
    assert all(float(r["low"]) <= float(r["middle"]) <= float(r["high"]) for r in rows)
    last = [r for r in rows if (r["step"], r["share"], r["outcome"]) == ("2", "1", "moisture")][0]
    assert float(last["low"]) < float(ends(GOOD)[-1]["moisture_wb_pct"]) < float(last["high"])


@tap.case
def spread_steadier():
    """spread --steadier: more inside, in the file too; status 3 where there is nothing better"""
    long = put("long.leafwend", pan="14")
    few = ("--vary", "all=0", "--vary", "wall=4", "--vary", "moisture=0.5", "--samples", "64", "--rows", "0")
    got = spread("--steadier", "--season", path("found.leafwend"), *few, season=long)
    assert got["", "", "", "steadier-found"] == 1
    assert got["", "", "", "steadier-after"] > got["", "", "", "steadier-before"] + 0.3, got
    turned = [k for k in got if k[3] in ("minutes", "wall-c", "cover-pct", "press-kpa")]
    assert turned, "no setting was turned"
    run("check", path("found.leafwend"))
    again = spread("--seed", "77", *few, season=path("found.leafwend"))
    assert abs(again["", "", "", "inside"] - got["", "", "", "steadier-after"]) < 0.15
    text = run("spread", path("found.leafwend"), "--batch", "1", "--steadier", "--vary", "all=0", "--samples", "8",
               "--rows", "0", expect=3)[0]
    assert "Nothing steadier was found" in text, text


@tap.case
def spread_refuses():
    """spread: what is wrong is told, with the status that the help states"""
    refused("spread", GOOD, words=["--batch"])
    refused("spread", "--batch", "1", words=["name a season"])
    refused("spread", GOOD, GOOD, "--batch", "1")
    for option, value in (("--samples", "1"), ("--samples", "-4"), ("--samples", "16385"), ("--samples", "x"),
                          ("--samples", "99999999999999999999"), ("--rows", "-1"), ("--rows", "999999"),
                          ("--seed", "0"), ("--seed", "-1"), ("--seed", "4294967296"), ("--seed", "1.5")):
        refused("spread", GOOD, "--batch", "1", option, value)
    for text in ("", "wall", "wall=", "wall=-5", "wall=1e400", "wall=nan", "no=5", "skin=5", "moisture=5%",
                 "air=1/step", "wall=5/day", "wall=5/step0", "=5", "wall=5%%%s%n", "w" * 5000 + "=1", "all=5"):
        refused("spread", GOOD, "--batch", "1", "--vary", text, words=["spread"])
    refused("spread", GOOD, "--batch", "1", "--vary", "wall=5/step2", words=["step 2", "wall temperature"])
    refused("spread", GOOD, "--batch", "1", "--bands", "--steadier")
    refused("spread", GOOD, "--batch", "1", "--season", path("x"))
    refused("spread", path("none"), "--batch", "1", status=1)
    refused("spread", GOOD, "--batch", "nine", status=1, words=["no batch"])
    refused("spread", GOOD, "--batch", "3", status=1, words=["cannot be computed"])
    refused("spread", GOOD, "--batch", "2", "--steadier", "--samples", "8", "--rows", "0", status=1, words=["aim"])
    refused("spread", GOOD, "--batch", "1", "--samples", "8", "-o", path("no/where"), status=1)


@tap.case
def spread_widest():
    """spread: the widest amounts there can be still give an answer"""
    wide = ["moisture=20", "skin=100%", "oxidation=100%", "enzyme=100%", "air=20", "humidity=40", "sun=100%",
            "wall=100%", "hot-air=100", "time=100%", "load=100%", "layer=100%", "pressure=100%"]
    got = spread("--samples", "64", "--rows", "4", *(a for w in wide for a in ("--vary", w)))
    assert got["", "", "", "failed"] <= 6, got["", "", "", "failed"]
    assert got["1", "moisture", "", "sd"] > 5


def compared(*arguments):
    return read(run("compare", *arguments, "--csv")[0])


@tap.case
def compare_steps():
    """compare: steps of a kind are matched, the gap is shown, and the difference is that of two runs"""
    rows = compared(GOOD, "1", "2")
    pairs = list(dict.fromkeys((r["step"], r["kind"], r["other step"], r["other kind"]) for r in rows))
    tap.equal(pairs, [("1", "fix-pan", "1", "fix-pan"), ("", "", "2", "rest"), ("2", "roll", "3", "roll")])
    moisture = [r for r in rows if r["outcome"] == "moisture"]
    this, that = ends(GOOD), ends(GOOD, "2")
    for row, a, b in ((moisture[0], this[-2], that[-3]), (moisture[2], this[-1], that[-1])):
        assert abs(float(row["this"]) - float(a["moisture_wb_pct"])) < 1e-6
        assert abs(float(row["that"]) - float(b["moisture_wb_pct"])) < 1e-6
        assert abs(float(row["difference"]) - (float(row["that"]) - float(row["this"]))) < 1e-6
    tap.equal((moisture[1]["this"], moisture[1]["difference"]), ("", ""), "where one has no step")
    minutes = [r for r in rows if r["outcome"] == "minutes"]
    tap.equal([(r["this"], r["that"], r["difference"]) for r in minutes],
              [("10", "12", "2"), ("", "30", ""), ("3", "3", "0")])


@tap.case
def compare_clock():
    """compare --by clock: a row wherever a step of either ends, by the time of day"""
    rows = [r for r in compared(GOOD, "1", "2", "--by", "clock") if r["outcome"] == "moisture"]
    tap.equal([(r["clock"], r["step"], r["other step"]) for r in rows],
              [("10:40", "1", ""), ("10:43", "2", ""), ("11:12", "", "1"), ("11:42", "", "2"), ("11:45", "", "3")])


@tap.case
def compare_two_files():
    """compare: batches of two files; a batch with itself differs in nothing; a table to read"""
    other = put("other.leafwend", pan="11")
    rows = compared(GOOD, "1", other, "1")
    assert float([r for r in rows if r["outcome"] == "moisture"][0]["difference"]) < -0.1
    assert all(float(r["difference"]) == 0 for r in compared(GOOD, "1", GOOD, "1"))
    text = run("compare", GOOD, "1", "2")[0]
    caption, empty, head = text.splitlines()[:3]
    name, start = rows[0]["batch"], rows[0]["start"]
    assert caption.startswith("This: %s, %s. That: " % (name, start)), caption
    assert re.match(r"\d{4}-\d\d-\d\d \d\d:\d\d$", start), start
    assert empty == "" and head.startswith("| step | kind |") and "|---|" in text and "| -0.0 |" not in text, text
    run("compare", GOOD, "1", "2", "-o", path("c.md"))
    with open(path("c.md"), encoding="utf-8") as file:
        tap.equal(file.read(), text, "the file")


@tap.case
def compare_refuses():
    """compare: what is wrong is told, with the status that the help states"""
    for arguments in ((), (GOOD,), (GOOD, "1"), (GOOD, "1", GOOD, "1", "2"), (GOOD, "1", "2", "--by", "moon"),
                      (GOOD, "1", "2", "--by", ""), (GOOD, "1", "2", "--unknown")):
        refused("compare", *arguments, words=["compare"])
    refused("compare", GOOD, "1", "nine", status=1, words=["no batch"])
    other = put("second.leafwend")
    refused("compare", GOOD, "1", other, "nine", status=1, words=["no batch", "“nine” was looked for in " + other])
    refused("compare", GOOD, "nine", other, "1", status=1, words=["“nine” was looked for in " + GOOD])
    refused("compare", GOOD, "", "1", status=1)
    refused("compare", GOOD, "1", path("none"), "1", status=1)
    refused("compare", GOOD, "1", "2", "-o", path("no/where"), status=1)
    assert "2 wrong usage" in run("compare", "--help")[0]
    bare = compared(GOOD, "3", "1")
    assert all(r["this"] == "" for r in bare) and bare


tap.main()
