"""leafwend-cli log: a table of temperatures is checked, told and put into a batch, or the file stays as it was."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import io
import os
import tempfile
import xml.etree.ElementTree as ElementTree

import program  # first: it knows where tap is
from program import get, run
import tap

NS = "{urn:leafwend:season}"
FOLDER = tempfile.TemporaryDirectory(prefix="log.")
SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="all" share="1" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
  </leaf>
  <batch name="1" start="2026-04-12T10:00" state="made" leaf="leaf" fresh-kg="4">
    <step kind="wither" minutes="60"/>
    <step kind="fix-pan" minutes="25"%s/>
  </batch>
</season>
"""
DATED = ("Time;Leaf;Pan (°F)\n2026-04-12T11:00:00;22,5;482\n2026-04-12T11:01:00;60;OL\n2026-04-12T11:00:30;60;482\n"
         "2026-04-12T11:25:00;80;482\n")


def put(name, text):
    return program.put(FOLDER.name, name, text)


def logs(path):
    return list(ElementTree.parse(path).getroot().iter(NS + "log"))


@tap.case
def table_goes_in():
    """By the clock; what was read is told, what was left out too, by line; the rest of the file is as it was."""
    path, table = put("a.leafwend", SEASON % ""), put("pan 7.csv", DATED)
    said, told = run("log", path, "--import", table, "--batch", "1")
    assert "4 rows, lines 2 to 5. 1 row is left out. Of 1 row a part is left out. It lasts 25 min." in said, said
    assert "“Pan (°F)”: wall, 250.0 to 250.0 °C, turned from °F; 2 points are kept within 0.05 °C." in said, said
    assert table + ":3: “OL” of “Pan (°F)”" in told, told
    assert table + ":4: “2026-04-12T11:00:30” is before the row above" in told, told
    log, = logs(path)
    tap.equal({k: log.get(k) for k in ("id", "name", "minute", "rows", "left-out")},
              {"id": "pan-7", "name": "pan 7", "minute": "60", "rows": "4", "left-out": "1"}, "the log")
    tap.equal([c.text.split() for c in log], [["0", "22.5", "60", "60", "1500", "80"], ["0", "250", "1500", "250"]],
              "its points")
    text = get(path)
    begin, end = text.index("    <log"), text.index("</log>\n") + len("</log>\n")
    tap.equal(text[:begin] + text[end:], SEASON % "", "the rest")


@tap.case
def step_is_named():
    """With a step and minutes the log goes with the step; columns are taken as told."""
    path, table = put("b.leafwend", SEASON % ""), put("b.csv", "t,one,two\n0,20,200\n1,30,210\n")
    run("log", path, "--import", table, "--batch", "1", "--step", "2", "--minute", "-0.5", "--take", "two=wall",
        "--take", "one=none", "--take", "t=minutes")
    log, = ElementTree.parse(path).getroot().find(NS + "batch").findall(NS + "step")[1].findall(NS + "log")
    tap.equal([(c.get("of"), c.text.split()) for c in log], [("wall", ["0", "200", "60", "210"])], "its curve")
    tap.equal(log.get("minute"), "-0.5", "its begin")


@tap.case
def check_writes_nothing():
    """--check tells and leaves the file alone; so do a table that is none and a step that is not there."""
    path, table = put("c.leafwend", SEASON % ""), put("c.csv", DATED)
    said, told = run("log", path, "--import", table, "--batch", "1", "--check")
    assert "4 rows" in said and "OL" in told
    run("log", path, "--import", put("d.csv", "only words\n"), "--batch", "1", expect=1)
    run("log", path, "--import", table, "--batch", "1", "--step", "3", expect=2)
    run("log", path, "--import", table, "--batch", "1", "--take", "Pan=wall", expect=2)
    run("log", path, "--batch", "1", expect=2)
    tap.equal(get(path), SEASON % "", "the file")


@tap.case
def followed_log_is_the_setting():
    """A pan that follows a log which never changes is a pan at that temperature."""
    plain = put("e.leafwend", SEASON % ' wall-c="250"')
    path, table = put("f.leafwend", SEASON % ""), put("f.csv", DATED)
    run("log", path, "--import", table, "--batch", "1")
    text = get(path).replace('minutes="25"', 'minutes="25" wall-log="pan-7"'.replace("pan-7", "f"))
    ends = [list(csv.DictReader(io.StringIO(run("run", file, "--ends")[0])))[-1] for file in (plain, put("f.leafwend", text))]
    for name in ("moisture_wb_pct", "leaf_temp_c", "rupture_pct"):
        one, other = (float(end[name]) for end in ends)
        assert abs(one - other) < 1e-3 * (1 + abs(one)), (name, one, other)


tap.main()
