"""Temperature logs in the window: a file is looked at, its columns are changed, it comes in as one edit; a step's
wall follows it, and what is set by hand goes back."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import subprocess
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

BATCH = "1 strong pan, first leaf"
desk = Bench().open(batch=BATCH)


def act(action, target):
    """The window's action, as a menu item does it."""
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1",
                    "--method", "org.gtk.Actions.Activate", action, "[<%s>]" % target, "{}"],
                   check=True, stdout=subprocess.DEVNULL)


def put(name, text):
    path = os.path.join(desk.folder, name)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return "b'%s'" % path


# A pan that is cold at first; three rows are broken.
ROWS = ["%d,%.1f,%s" % (s, 22 + 60 * min(s / 600, 1), "OL" if 100 <= s < 130 else "%.1f" % (60 + min(s / 5, 60)))
        for s in range(0, 1500, 10)]
TABLE = "Elapsed (s),Sensor 1,Pan\n" + "\n".join(ROWS) + "\n"


def batch():
    root = ElementTree.parse(desk.path).getroot()
    return next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)


def choose(name, item):
    """Takes an item of a drop-down, from 0, by the pointer and keys."""
    window = desk.window_of(desk.get("push button", "Import"))
    desk.click(desk.get("combo box", name, under=window))
    desk.key("Home", *["Down"] * item, "Return")


@tap.case
def file_is_looked_at():
    """The window shows the rows, what is read of them and, by line, what is left out; nothing is changed yet."""
    act("import-log-table", put("pan 1.csv", TABLE))
    desk.get("label", re.compile(r"^150 rows, lines 2 to 151\. 3 rows are left out\."), seconds=20)
    assert desk.find("label", "Elapsed (s)"), "headings"
    assert desk.find("label", "22.0"), "cells as they stand"
    desk.get("label", re.compile(r"^Line 12: “OL” of “Pan” is what a broken .* The next 2 rows are alike"))
    assert desk.find("label", re.compile("“Pan”: wall, 60.0 to 120.0 °C")), "the curve"
    assert not desk.find("label", re.compile("“Sensor 1”: leaf")), "not guessed"
    assert not desk.is_changed()


@tap.case
def columns_are_changed():
    """A column is made leaf by pointer and keys, and the time a clock, which it is not; what is shown follows."""
    choose("What “Sensor 1” is", 7)
    desk.get("label", re.compile("“Sensor 1”: leaf, 22.0 to 82.0 °C"))
    choose("What “Elapsed (s)” is", 1)
    desk.get("label", re.compile("Choose the column of the times"))
    assert not desk.has(desk.get("push button", "Import"), "sensitive"), "times are no clock"
    choose("What “Elapsed (s)” is", 3)
    desk.wait_for(lambda: desk.has(desk.get("push button", "Import"), "sensitive"), "seconds again")


@tap.case
def it_comes_in_as_one_edit():
    """Begun with the pan and half a minute before it, by keys; imported, undone and redone as one."""
    choose("It begins", 1)
    later = desk.get("spin button", "minutes later")
    desk.set_value(later, -0.5)
    desk.click(desk.get("push button", "Import"))
    desk.get("status bar", re.compile("^“pan 1” is a log of this batch"))
    assert desk.get("image", "Leaf temperature"), "its panel is shown"
    desk.save()
    log, = list(batch().iter(NS + "step"))[1].iter(NS + "log")
    tap.equal({k: log.get(k) for k in ("id", "name", "minute", "rows", "left-out", "first-line", "last-line")},
              {"id": "pan-1", "name": "pan 1", "minute": "-0.5", "rows": "150", "left-out": "0", "first-line": "2",
               "last-line": "151"}, "the log")
    tap.equal([(c.get("of"), c.get("heading")) for c in log], [("leaf", "Sensor 1"), ("wall", "Pan")], "its curves")
    desk.key("ctrl+z")
    desk.save()
    tap.equal(list(batch().iter(NS + "log")), [], "undone")
    desk.key("ctrl+shift+z")
    desk.save()
    tap.equal(len(list(batch().iter(NS + "log"))), 1, "redone")


def open_settings(step):
    box = desk.bounds(desk.blocks()[step - 1])
    desk.click(box.x + 40, box.y + 12)
    desk.key("Return")
    return desk.get("combo box", "What wall follows")


@tap.case
def wall_follows_it():
    """In the settings the wall follows the log: its field rests, the block says so, the leaf is reckoned with it."""
    before = desk.moisture(2)
    choice = open_settings(2)
    for _ in range(12):
        if any(desk.has(node, "focused") for node in desk.walk(choice)):
            break
        desk.key("Tab")
    desk.key("space", "Home", "Down", "Return")
    desk.wait_for(lambda: not desk.has(desk.get("spin button", "wall"), "sensitive"), "the field at rest")
    desk.key("Escape")
    desk.wait_for(lambda: "It follows a temperature log." in desk.words(2), "the block's words")
    desk.settled()
    assert desk.moisture(2) > before + 5, "a pan at 120 °C dries less than one at 260"
    desk.save()
    tap.equal(desk.saved(BATCH)[1]["wall-log"], "pan-1", "in the file")
    tap.equal(round(desk.computed(BATCH, 2), 1), desk.moisture(2), "the command line reckons the same")


@tap.case
def heat_dragged_is_heat_set():
    """Dragging the line of such a step sets the wall; undo lets it follow again."""
    said = desk.words(2)
    assert "It follows a temperature log." in said, said
    box = desk.bounds(desk.blocks()[1])
    middle = box.x + box.width / 2
    line = next(y for y in range(int(box.y + box.height) - 8, int(box.y) + 30, -4) if try_line(middle, y, said))
    assert line
    assert "log" not in desk.words(2)
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(2) == said, "the log again")


def try_line(x, y, said):
    desk.drag(x, y, x, y - 20)
    desk.settled()
    if desk.words(2) != said and "follows" not in desk.words(2) and "wall" in desk.words(2):
        return True
    if desk.is_changed():
        desk.key("ctrl+z")
    return False


@tap.case
def hopeless_file_tells_why():
    """A file without a table shows why; the season stays as it is."""
    desk.save()
    before = desk.saved_bytes()
    act("import-log-table", put("words.csv", "only words\n"))
    told = desk.get("label", re.compile("There is no table in it"))
    desk.act(desk.get("push button", "Close", under=desk.window_of(told)))
    desk.wait_for(lambda: len(desk.windows()) == 1, "it is closed")
    desk.key()
    assert not desk.is_changed()
    tap.equal(desk.saved_bytes(), before, "the file")


@tap.case
def log_is_removed():
    """Removing the log is one edit: the wall is what was set again."""
    assert "log" in desk.words(2), desk.words(2)
    act("remove-log", "'pan-1'")
    desk.wait_for(lambda: "260 °C wall" in desk.words(2), "the wall as it was set")
    desk.save()
    tap.equal(list(batch().iter(NS + "log")), [], "the logs")


@tap.case
def menu_by_keys():
    """The menu opens by a key and has the import and the batch's logs."""
    desk.key("alt+b")
    desk.get("menu item", re.compile("Import a temperature log…"))
    desk.get("menu item", re.compile("Temperature logs of this batch"))
    desk.key("Escape")


tap.main(desk.tree)
