"""leafwend-cli replan: what it prints, what it writes, what it leaves alone, and how it refuses."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import tempfile

from program import run, refused  # first: it knows where tap is
import tap

FOLDER = tempfile.TemporaryDirectory(prefix="cli-replan.")

SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="blade" share="0.8" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
    <part name="stem" share="0.2" exposure="1" area="1" cuticle="1" ruptured="0.02"/>
  </leaf>
  <batch name="1 pan" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="240">
      %(weighed)s
    </step>
    <step kind="fix-pan" minutes="20">
      <aim of="moisture" low="%(low)s" high="%(high)s"/>
    </step>
    <step kind="dry-air" minutes="40"/>
    <aim of="moisture" low="%(tea_low)s" high="%(tea_high)s"/>
  </batch>
  <batch name="2 bare" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="240"/>
  </batch>
</season>
"""


def put(name, kg, low="56", high="58", tea_low="1", tea_high="3"):
    path = os.path.join(FOLDER.name, name)
    weighed = '<weigh-in minute="240" of="weight-kg" value="%s" sd="0.02"/>' % kg
    with open(path, "w", encoding="utf-8") as file:
        file.write(SEASON % {"weighed": weighed, "low": low, "high": high, "tea_low": tea_low, "tea_high": tea_high})
    return path


def out(name):
    return os.path.join(FOLDER.name, name)


def rows(season):
    return list(csv.DictReader(run("run", season, "--batch", "1", "--ends")[0].splitlines()))


PLAIN = put("plain.leafwend", "3.6")
FORETOLD = 4 * float(rows(PLAIN)[0]["kg_per_kg_fresh"])


def around(season):
    """Aims after the pan and of the tea that the batch meets as planned."""
    pan, tea = (float(rows(season)[i]["moisture_wb_pct"]) for i in (1, 2))
    return {"low": "%.2f" % (pan - 1), "high": "%.2f" % (pan + 1),
            "tea_low": "%.2f" % (tea - 0.5), "tea_high": "%.2f" % (tea + 0.5)}


@tap.case
def heavier():
    """A batch heavier than foretold: told, planned anew, and the file written is what `run` then says"""
    heavy = put("heavy.leafwend", "%.2f" % (FORETOLD * 1.03), **around(PLAIN))
    before = rows(heavy)
    text = run("replan", heavy, "--batch", "1", "--at", "step 2 minute 0", "-o", out("new.leafwend"))[0]
    assert "%.2f kg measured" % (FORETOLD * 1.03) in text, text
    assert re.search(r"Step 1, 4 h, weight: .* expected, together", text), text
    assert "was, now and why" in text and re.search(r"2 +fix in pan +time +20 min +\d+ min", text), text
    assert "local codes and licensed practice" in text
    run("check", out("new.leafwend"))
    after = rows(out("new.leafwend"))
    assert abs(4 * float(after[0]["kg_per_kg_fresh"]) - FORETOLD * 1.03) < 0.02, after[0]
    told = re.search(r"2 +Moisture +% wet basis +([\d.]+) +([\d.]+) +([\d.]+)", text)
    tap.equal(told.group(1), "%.1f" % float(before[1]["moisture_wb_pct"]), "foretold before")
    tap.equal(told.group(3), "%.1f" % float(after[1]["moisture_wb_pct"]), "with the new plan")
    with open(out("new.leafwend"), encoding="utf-8") as file:
        written = file.read()
    assert '<step kind="wither" minutes="240">' in written and written.count("<shift") == 2, written


@tap.case
def last_weigh_in():
    """Without --at the rest begins at the last weigh-in; the file given stays as it is"""
    same = put("same.leafwend", "%.2f" % FORETOLD, **around(PLAIN))
    with open(same, "rb") as file:
        before = file.read()
    text = run("replan", same, "--batch", "1")[0]
    assert "No setting need change." in text and "as it was expected" in text, text
    with open(same, "rb") as file:
        tap.equal(file.read(), before, "the file")


@tap.case
def again():
    """Re-planning what was re-planned changes nothing more"""
    heavy = put("heavy.leafwend", "%.2f" % (FORETOLD * 1.03), **around(PLAIN))
    run("replan", heavy, "--batch", "1", "--at", "step 2 minute 0", "-o", out("once.leafwend"))
    text = run("replan", out("once.leafwend"), "--batch", "1", "--at", "step 2 minute 0", "-o", out("twice.leafwend"))[0]
    assert "No setting need change." in text, text
    with open(out("once.leafwend"), encoding="utf-8") as once, open(out("twice.leafwend"), encoding="utf-8") as twice:
        tap.equal(once.read(), twice.read(), "the season")


@tap.case
def escapes():
    """What cannot be had is told with its amount, exit status 3, and the file is written all the same"""
    far = put("far.leafwend", "%.2f" % FORETOLD, low="76", high="77")
    text = run("replan", far, "--batch", "1", "--at", "step 3 minute 0", "-o", out("far-out.leafwend"))[0]
    assert "step 2" not in text.split("Aims ahead")[1], text
    text = run("replan", far, "--batch", "1", "--at", "step 2 minute 19", "-o", out("far-out.leafwend"), expect=3)[0]
    assert re.search(r"Moisture after step 2 escapes: [\d.]+ % wet basis, [\d.]+ below its aim", text), text
    run("check", out("far-out.leafwend"))


@tap.case
def suspicious():
    """A weight that cannot be is told on standard error"""
    slip = put("slip.leafwend", "1.5")
    _, complained = run("replan", slip, "--batch", "1", "--at", "step 2 minute 0", expect=3)
    assert "Weighed 1.50 kg where" in complained and "check scale and tare" in complained, complained


@tap.case
def refusals():
    """What is wrong is said"""
    refused("replan", PLAIN, words=["--batch"])
    refused("replan", PLAIN, "--batch", "7", status=1, words=["7"])
    refused("replan", PLAIN, "--batch", "2", status=1, words=["2 bare", "weighed"])
    refused("replan", PLAIN, "--batch", "1", "--at", "step 1 minute 10", status=1, words=["1 pan", "weighed"])
    for wrong in ("", "1", "step 0 minute 1", "step 4 minute 1", "step 1", "step 1 minute -1", "step 1 minute 99999"):
        refused("replan", PLAIN, "--batch", "1", "--at=" + wrong, words=["moment"])
    told = run("replan", "--help")[0]
    for word in ("--at", "--output", "step 2 minute 4.5", "3 an aim is missed"):
        assert word in told, word
    assert "replan" in run("--help")[0]


tap.main()
