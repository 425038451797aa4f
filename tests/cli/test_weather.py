"""leafwend-cli weather: a table of hours goes into a season's file, or the file stays as it was."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import tempfile
import xml.etree.ElementTree as ElementTree

import program  # first: it knows where tap is
from program import get, run
import tap

NS = "{urn:leafwend:season}"
FOLDER = tempfile.TemporaryDirectory(prefix="weather.")
SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="all" share="1" exposure="1" area="1" cuticle="1" ruptured="0.005"/>
  </leaf>
%s  <batch name="1" start="2026-04-12T10:30" state="planned" leaf="leaf" %sfresh-kg="4">
    <step kind="dry-sun" minutes="120"/>
  </batch>
</season>
"""
TABLE = ("Date;Time;Temperature (°C);Humidity (%);Cloud (%);Wind (km/h)\n"
         "12.4.2026;10:00;20,5;60;25;7,2\n12.4.2026;11:00;21;55;50;9\n12.4.2026;12:00;22;50;100;9\n")
STEADY = ('  <weather id="steady" name="Steady">\n'
          '    <constant temp-c="25" humidity-pct="60" cloud-pct="%d" wind-m-s="1"/>\n  </weather>\n')


def put(name, text):
    return program.put(FOLDER.name, name, text)


def weathers(path):
    return list(ElementTree.parse(path).getroot().iter(NS + "weather"))


@tap.case
def table_goes_in():
    """The table is a weather of the season, and the rest of the file is as it was."""
    path = put("a.leafwend", SEASON % ("", ""))
    table = put("a.csv", TABLE)
    tap.equal(run("weather", path, "--import", table, "--id", "station", "--name", "At the gate"), ("", ""), "said")
    found, = weathers(path)
    tap.equal(found.attrib, {"id": "station", "name": "At the gate", "start": "2026-04-12T10:00"}, "the weather")
    hours = [dict(h.attrib) for h in found]
    tap.equal(hours[0], {"temp-c": "20.5", "humidity-pct": "60", "cloud-pct": "25", "wind-m-s": "2"}, "an hour")
    tap.equal(len(hours), 3, "hours")
    text = get(path)
    begin, end = text.index("  <weather"), text.index("</weather>\n") + len("</weather>\n")
    tap.equal(text[:begin] + text[end:], SEASON % ("", ""), "the rest")
    assert "sound" in run("check", path)[0]


@tap.case
def same_id_is_replaced():
    """A weather of the same id is replaced, keeps its name and its place, and the batch follows the new one."""
    path = put("b.leafwend", SEASON % (STEADY % 0, 'weather="steady" '))
    before = run("run", path, "--ends")[0]
    run("weather", path, "--import", put("b.csv", TABLE), "--id", "steady")
    found, = weathers(path)
    tap.equal((found.get("name"), len(found)), ("Steady", 3), "the weather")
    assert run("run", path, "--ends")[0] != before


@tap.case
def output_elsewhere():
    """With -o the season's own file stays; - is standard output."""
    path, table = put("c.leafwend", SEASON % ("", "")), put("c.csv", TABLE)
    other = os.path.join(FOLDER.name, "c2.leafwend")
    run("weather", path, "-i", table, "--id", "w", "-o", other)
    tap.equal(get(path), SEASON % ("", ""), "the season")
    tap.equal(len(weathers(other)), 1, "weathers")
    tap.equal(run("weather", path, "-i", table, "--id", "w", "-o", "-")[0], get(other), "standard output")


@tap.case
def bad_table_changes_nothing():
    """Each problem of the table is told with its line, and the season stays as it was."""
    path = put("d.leafwend", SEASON % ("", ""))
    table = put("d.csv", TABLE.replace("12.4.2026;11:00;21", "12.4.2026;14:00;warm"))
    said, complained = run("weather", path, "--import", table, "--id", "w", expect=1)
    tap.equal(said, "", "standard output")
    assert table + ":3: 3 hours are missing" in complained and "“warm”" in complained, complained
    assert table + ":4: " in complained, complained
    tap.equal(get(path), SEASON % ("", ""), "the season")
    for gone in (os.path.join(FOLDER.name, "gone.csv"), FOLDER.name):
        assert run("weather", path, "--import", gone, "--id", "w", expect=1)[1].startswith(gone + ": ")


@tap.case
def wrong_usage():
    """What is missing or cannot be an id or a name is wrong usage."""
    path, table = put("e.leafwend", SEASON % ("", "")), put("e.csv", TABLE)
    for arguments in ([], [path], [path, "--id", "w"], [path, "-i", table], [path, "-i", table, "--id", "Gate 1"],
                      [path, "-i", table, "--id", "w" * 65], [path, "-i", table, "--id", "w", "--name", ""],
                      [path, path, "-i", table, "--id", "w"]):
        said, complained = run("weather", *arguments, expect=2)
        assert said == "" and complained.startswith("leafwend-cli: weather"), complained
    said, complained = run("weather", "--help")
    assert "--import" in said and "SEASON" in said and complained == "", said


@tap.case
def room_for_fifty():
    """The fifty-first weather is refused; one of the fifty can still be replaced."""
    many = "".join(STEADY.replace('"steady"', '"w%d"' % i) % 0 for i in range(50))
    path, table = put("f.leafwend", SEASON % (many, "")), put("f.csv", TABLE)
    assert "no room" in run("weather", path, "-i", table, "--id", "w50", expect=1)[1]
    run("weather", path, "-i", table, "--id", "w49")
    tap.equal([len(w) for w in weathers(path)], [1] * 49 + [3], "hours")


@tap.case
def sun_comes_through_the_clouds():
    """Under a closed cover a leaf dries more slowly in the sun; at night without sun more slowly still."""
    moisture = []
    for cloud, start in ((0, "11:00"), (100, "11:00"), (0, "22:00")):
        text = SEASON % (STEADY % cloud, 'weather="steady" ')
        path = put("g.leafwend", text.replace("10:30", start))
        end = run("run", path, "--ends")[0].splitlines()[-1].split(",")
        moisture.append(float(end[5]))
    assert moisture[0] + 1 < moisture[1] and moisture[1] + 0.2 < moisture[2], moisture


tap.main()
