"""Weather in the window: a table comes in as one edit, a batch follows one of the weathers, nights are told."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import subprocess
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

BATCH = "4 white, two days"
TABLE = "Time;Temperature (°C);Humidity (%);Cloud (%);Wind (m/s);Rain (mm)\n" + "".join(
    "29.03.2026 %d:00;30,5;30;0;2;%s\n" % (hour, "1,5" if hour in (13, 14) else "") for hour in range(11, 24))
desk = Bench().open(batch=BATCH)


def act(action, target):
    """The window's action, as a menu item does it."""
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1",
                    "--method", "org.gtk.Actions.Activate", action, "[<%s>]" % target, "{}"],
                   check=True, stdout=subprocess.DEVNULL)


def put(text):
    path = os.path.join(desk.folder, "gate 2026.csv")
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return "b'%s'" % path


def saved():
    """Ids of the weathers in the saved file, and the one that the batch has."""
    root = ElementTree.parse(desk.path).getroot()
    batch = next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)
    return [w.get("id") for w in root.iter(NS + "weather")], batch.get("weather")


@tap.case
def nights_are_told():
    """A step through two nights says so; one by day does not."""
    assert re.search(r"At night: \d+ h", desk.words(1)), desk.words(1)
    assert "night" not in desk.words(2), desk.words(2)


@tap.case
def table_is_one_edit():
    """The table is in the season after one edit, under the file's name; undo takes it out again."""
    before = saved()[0]
    act("import-table", put(TABLE))
    desk.get(None, re.compile("^“gate 2026” is in the season, 13 hours"))
    desk.save()
    tap.equal(saved()[0], before + ["gate-2026"], "the weathers")
    desk.key("ctrl+z")
    desk.save()
    tap.equal(saved()[0], before, "after undo")
    desk.key("ctrl+shift+z")
    desk.save()
    tap.equal(saved()[0], before + ["gate-2026"], "after redo")


@tap.case
def batch_follows_it():
    """The batch follows the new weather, or none; each is one undo."""
    said = desk.words(1)
    act("batch-weather", "'gate-2026'")
    desk.wait_for(lambda: "30" in desk.words(1) and "In rain: 2 h of it." in desk.words(1), "the new weather")
    desk.settled()
    desk.save()
    tap.equal(saved()[1], "gate-2026", "the batch's weather")
    act("batch-weather", "''")
    desk.wait_for(lambda: "It follows the weather" not in desk.words(1), "no weather")
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: desk.words(1) == said, "the first weather")


@tap.case
def bad_table_tells_its_problems():
    """A bad table shows its problems with their lines; the season stays as it is."""
    desk.save()
    before = desk.saved_bytes()
    act("import-table", put(TABLE.replace("12:00;30,5", "12:00;hot")))
    told = desk.get("label", re.compile(r"gate 2026\.csv:3: .*“hot”"))
    close = desk.get("push button", "Close", under=desk.window_of(told))
    at = desk.resting(told)
    assert at.y + at.height <= desk.bounds(close).y, "the words are cut off"
    desk.act(close)
    assert not desk.is_changed()
    desk.key("ctrl+s")
    tap.equal(desk.saved_bytes(), before, "the file")


@tap.case
def menu_by_keys():
    """The menus open by keys; that of the batch has the weathers of the season, the window's the import."""
    desk.key("alt+b")
    desk.get("menu item", re.compile("Weather of this batch"))
    desk.key("Escape", "F10")
    desk.get("menu item", re.compile("Import weather…"))
    desk.key("Escape")


tap.main(desk.tree)
