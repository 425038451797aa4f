"""leafwend-cli teas: the kinds of tea that ship, or those of a season's file, with the source of each window."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import io
import os
import tempfile
import xml.etree.ElementTree as ElementTree

import program  # first: it knows where tap is
import tap

NS = "{urn:leafwend:season}"
TEAS = os.path.join(os.environ["LEAFWEND_DATA"], "kinds-of-tea.leafwend")
FOLDER = tempfile.TemporaryDirectory(prefix="teas.")
OWN = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="Ours">
  <place altitude-m="0" latitude-deg="0"/>
  <leaf id="any" name="Any" fresh-moisture-pct="77" green="0.25">
    <part name="all" share="1" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
  </leaf>
  <batch name="ours, smoky" start="2026-01-01T00:00" state="planned" leaf="any" fresh-kg="1">
    <aim of="moisture" low="3.25">a | "b"
c</aim>
    <aim of="green" high="0.5"/>
  </batch>
</season>
"""


def put(name, text):
    path = os.path.join(FOLDER.name, name)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return path


def run(*arguments, expect=0, **env):
    """Runs the command: (stdout, stderr)."""
    return program.run("teas", *arguments, expect=expect, **env)


@tap.case
def csv_has_every_aim():
    """As CSV there is a row for each aim of each kind, with its sides and its source."""
    said, complained = run("--csv")
    tap.equal(complained, "", "complaints")
    rows = list(csv.DictReader(io.StringIO(said)))
    kinds = ElementTree.parse(TEAS).getroot().findall(NS + "batch")
    tap.equal([(r["tea"], r["aim"], r["low"], r["high"], r["source"]) for r in rows],
              [(k.get("name"), a.get("of"), a.get("low", ""), a.get("high", ""), a.text)
               for k in kinds for a in k.findall(NS + "aim")], "the rows")
    assert all(r["source"] for r in rows) and len(rows) > 40


@tap.case
def table_has_a_heading_for_each():
    """Without --csv each kind has a heading, what it is, and a table."""
    said = run()[0]
    for kind in ElementTree.parse(TEAS).getroot().findall(NS + "batch"):
        begin = "## %s\n\n%s\n\n| aim | low | high | unit | source |\n|---|---|---|---|---|\n| " % (
            kind.get("name"), kind.find(NS + "note").text)
        assert begin in said, begin


@tap.case
def seasons_of_ones_own():
    """A season of one's own is listed as well, and odd letters stay in their cell."""
    path = put("own.leafwend", OWN)
    tap.equal(list(csv.reader(io.StringIO(run(path, "--csv")[0])))[1:],
              [["ours, smoky", "moisture", "3.25", "", "% wet basis", 'a | "b"\nc'],
               ["ours, smoky", "green", "", "0.5", "", ""]], "the rows")
    tap.equal(run(path)[0].splitlines()[-2:],
              ['| moisture | 3.25 |  | % wet basis | a \\| "b" c |', "| green |  | 0.5 |  |  |"], "the table")


@tap.case
def where_they_ship():
    """The kinds are those in the folder that LEAFWEND_DATA names; if they are not there, the complaint names the file."""
    put("kinds-of-tea.leafwend", OWN)
    assert "ours, smoky" in run(LEAFWEND_DATA=FOLDER.name)[0]
    said, complained = run(expect=1, LEAFWEND_DATA=os.path.join(FOLDER.name, "gone"))
    assert said == "" and "gone/kinds-of-tea.leafwend: " in complained, complained


@tap.case
def output_and_usage():
    """-o writes the same to a file; two files or an unknown option are wrong usage."""
    path = os.path.join(FOLDER.name, "list.md")
    tap.equal(run("-o", path), ("", ""), "said")
    with open(path, encoding="utf-8") as file:
        tap.equal(file.read(), run()[0], "the file")
    for arguments in ((TEAS, TEAS), ("--batch", "white")):
        said, complained = run(*arguments, expect=2)
        assert said == "" and complained.startswith("leafwend-cli: teas"), complained


tap.main()
