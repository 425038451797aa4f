"""leafwend-cli fit: the table, the profile it writes, and what it says where there is not enough data."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import subprocess
import tempfile
import xml.etree.ElementTree as ElementTree

import program  # first: it knows where tap is
import tap
from program import CLI

DEMO = os.path.join(os.environ["LEAFWEND_DATA"], "ondry-ridge-2026.leafwend")
NS = "{urn:leafwend:season}"
FOLDER = tempfile.TemporaryDirectory(prefix="cli-fit.")
COLUMNS = ["parameter", "of", "change_unit", "change", "change_error", "decided", "unit", "start", "value", "value_error"]
ONE = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="all" share="1" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
  </leaf>
  <batch name="1" start="2026-04-12T10:30" state="made" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="240">
      <weigh-in minute="240" of="weight-kg" value="3.5" sd="0.02"/>
    </step>
  </batch>
  <batch name="2 plan" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="240"/>
  </batch>
</season>
"""


def path(name):
    return os.path.join(FOLDER.name, name)


with open(path("one.leafwend"), "w", encoding="utf-8") as one:
    one.write(ONE)


def run(*arguments, expect=0):
    """Runs the command: (stdout, stderr)."""
    return program.run("fit", *arguments, expect=expect)


def rows(*arguments):
    return list(csv.DictReader(run(*arguments, "--csv")[0].splitlines()))


@tap.case
def demo_leaf():
    """The demo's season: a row for each change in each leaf, values and errors that agree with each other"""
    told = rows(DEMO)
    tap.equal(list(told[0]), COLUMNS, "the columns")
    tap.equal({(r["parameter"], r["of"]) for r in told},
              {(p, l) for p in ("g-cut", "k-ox", "k-heat", "k-roll", "fresh-moisture", "torn")
               for l in ("upper-terrace", "brook-side", "east-wall")}, "the rows")
    for row in told:
        n = {k: float(row[k]) for k in COLUMNS[3:6] + COLUMNS[7:]}
        made = n["value"] / n["start"] if row["change_unit"] == "factor" else n["value"] - n["start"]
        assert abs(made - n["change"]) < 1e-6, row
        assert 0 < n["change_error"] and 0 < n["value_error"] and 0.5 < n["decided"] <= 1, row
    skin = {r["of"]: r for r in told if r["parameter"] == "g-cut"}
    tap.equal(skin["upper-terrace"]["change"], skin["east-wall"]["change"], "one change for every leaf")


@tap.case
def writes_a_leaf():
    """-o: the season with a new leaf, sound, its batches and its old leaves as they were"""
    told = rows(DEMO, "--leaf", "upper-terrace", "-o", path("out.leafwend"))
    subprocess.run([CLI, "check", "--quiet", path("out.leafwend")], check=True)
    before, after = (ElementTree.parse(p).getroot() for p in (DEMO, path("out.leafwend")))
    old = [ElementTree.tostring(e) for e in before]
    new = [e for e in after if ElementTree.tostring(e) not in old]
    tap.equal([e.get("id") for e in new], ["upper-terrace-fitted"], "what is new")
    tap.equal(len(after), len(before) + 1, "nothing is gone")
    value = float(next(r["value"] for r in told if r["parameter"] == "g-cut"))
    assert abs(float(new[0].find(NS + "law").get("g-cut")) / value - 1) < 1e-3
    note = new[0].find(NS + "note").text
    assert "Upper Terrace" in note and "12 long wither, gentle pan" in note and "±" in note, note
    assert "3 drum" not in note, note


@tap.case
def free_and_batches():
    """--free and --batch: only what is named"""
    told = rows(DEMO, "--batch", "1", "--batch", "14", "--free", "g-cut", "--free", "pan-contact")
    tap.equal([(r["parameter"], r["of"]) for r in told],
              [("g-cut", "upper-terrace"), ("g-cut", "east-wall"), ("pan-contact", "")], "the rows")
    tap.equal((told[2]["value"], told[2]["unit"]), ("", ""), "no leaf keeps the pan")


@tap.case
def foretells():
    """--leave-one-out: two columns more; beside a CSV it is told"""
    lines = [l for l in run(DEMO, "--leaf", "upper-terrace", "--leave-one-out")[0].splitlines() if l.startswith("| all")]
    tap.equal(lines[0].count("|"), 7, "columns")
    assert 0.5 < float(lines[0].split("|")[6]) < 1.6, lines
    written, told = run(DEMO, "--leaf", "upper-terrace", "--leave-one-out", "--csv")
    assert all(line.count(",") == len(COLUMNS) - 1 for line in written.splitlines()), written
    assert "It foretells an unseen batch to within" in told and told.count("The others foretell it to within") == 4, told
    lines = [l for l in run(DEMO, "--leaf", "upper-terrace")[0].splitlines() if l.startswith("| all")]
    tap.equal(lines[0].count("|"), 5, "columns without")


@tap.case
def not_enough():
    """One batch with one weight: said, exit status 3, and nothing is written"""
    said, _ = run(path("one.leafwend"), "-o", path("none.leafwend"), expect=3)
    assert "Not enough data" in said, said
    assert not os.path.exists(path("none.leafwend"))
    said, complained = run(path("one.leafwend"), "--csv", "--free", "g-cut", expect=3)
    assert "Not enough data" in complained and said.startswith("parameter,"), complained
    said, complained = run(path("one.leafwend"), "--batch", "2", expect=3)
    assert said == "" and "no batch" in complained, complained


@tap.case
def refusals():
    """What is wrong is said"""
    for arguments, status, word in (([DEMO, "--free", "nothing"], 2, "nothing"), ([DEMO, "--free", "batch-weight"], 2,
                                                                                 "batch-weight"),
                                    ([DEMO, "--leaf", "nowhere"], 1, "east-wall"), ([DEMO, "--batch", "99"], 1, "99"),
                                    ([], 2, "season"), ([path("no.leafwend")], 1, "no.leafwend")):
        said, complained = run(*arguments, expect=status)
        assert said == "" and word in complained, complained
    _, complained = run(DEMO, "--leaf", "upper-terrace", "-o", path("no/such.leafwend"), expect=1)
    assert "such.leafwend" in complained, complained


@tap.case
def help_tells():
    """The help tells what may differ and the exit statuses"""
    told = run("--help")[0]
    for word in ("--free", "--leave-one-out", "* g-cut", "  pan-contact", "± 1.5", "3 there is not enough data"):
        assert word in told, word


@tap.case
def documented():
    """docs/study.md has a row for each thing that may differ, with its spread"""
    with open(os.path.join(os.environ["LEAFWEND_DATA"], "..", "docs", "study.md"), encoding="utf-8") as file:
        section = file.read().split("## Fit the leaf\n")[1].split("\n## ")[0]
    rows_told = {l.split("`")[1]: [c.strip() for c in l.split("|")] for l in section.splitlines() if l.startswith("| `")}
    offered = {l[2:].split()[0]: l for l in run("--help")[0].splitlines() if "(± " in l}
    tap.equal(sorted(rows_told), sorted(offered), "the rows")
    for name, line in offered.items():
        tap.equal(rows_told[name][3], line.split("(± ")[1].rstrip(")"), name)
        tap.equal(rows_told[name][5], "yes" if line.startswith("*") else "", name)


tap.main()
