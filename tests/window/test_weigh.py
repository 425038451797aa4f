"""Weigh-ins: entered by two keys and by the pointer, told live, refused with the reason, chosen again from a panel
and from the list, changed, removed and undone. All by pointer and keys, and read as a screen reader reads."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re
import time
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

BATCH = "1 strong pan, first leaf"
FRESH = 7.98  # kg, of that batch in the demo season
desk = Bench().open(batch=BATCH)


def weigh_ins(step):
    """Those of a step, from 1, in the saved file."""
    desk.save()
    root = ElementTree.parse(desk.path).getroot()
    batch = next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)
    return [(w.get("of"), w.get("value"), w) for w in batch.findall(NS + "step")[step - 1].findall(NS + "weigh-in")]


def point_in(x, y=0.5):
    """A point of the moisture panel, by shares of its size."""
    box = desk.bounds(desk.place("image", "Moisture"))
    return box.x + round(box.width * x), box.y + round(box.height * y)


def is_open():
    return desk.find("text", "Moment") is not None


def opened():
    desk.wait_for(is_open, "the entry")


def closed():
    desk.wait_for(lambda: not is_open(), "the entry to close")


def points(words):
    """The moisture panel's points that say so."""
    return desk.find_all("push button", re.compile(words), under=desk.place("image", "Moisture"))


def note_row():
    return desk.get("list item", re.compile("^Note "), under=desk.place("list", "Weigh-ins of the batch"))


FIRST = len(weigh_ins(2))


@tap.case
def two_keys_and_a_number_enter_a_weight():
    """M opens the entry at the reading line, W says weight, Return enters; one undo takes it back."""
    desk.move(*point_in(0.45))
    desk.key("m")
    opened()
    desk.key("w")
    desk.type("6.6\t0.35")
    told = desk.get("status bar", re.compile(r"^6\.6 kg less 0\.35 kg tare = 6\.25 kg of %g kg fresh at" % FRESH))
    moisture = float(re.search(r": ([\d.]+) % ± [\d.]+ wet basis", desk.text_of(told))[1])
    fresh = float(re.search(r"fresh at ([\d.]+) %", desk.text_of(told))[1])
    dry = FRESH * (1 - fresh / 100)
    assert abs(moisture - 100 * (1 - dry / 6.25)) < 0.11, (moisture, fresh)
    assert re.search(r"measured, [\d.]+ % by the model", desk.text_of(told)), desk.text_of(told)
    desk.type("\n")
    closed()
    found = [w for o, v, w in weigh_ins(2) if (o, v) == ("weight-kg", "6.6")]
    tap.equal(len(found), 1, "entries of it in the file")
    tap.equal((found[0].get("tare-kg"), found[0].get("sd")), ("0.35", "0.02"), "tare and uncertainty")
    assert points(r"^Weight 6\.6 kg ± 0\.02, tare 0\.35 kg \(fix in pan, \d+ min.*by the model"), "no point says so"
    desk.key("ctrl+z")
    desk.wait_for(lambda: not points(r"^Weight 6\.6 kg"), "the undo")
    desk.key("ctrl+y")
    desk.wait_for(lambda: points(r"^Weight 6\.6 kg"), "the redo")


@tap.case
def the_pointer_enters_a_temperature():
    """The other button of the pointer opens the entry where it is; the moment can be written as the trade does."""
    desk.click(*point_in(0.45), button=3)
    opened()
    desk.key("l")
    desk.type("81\t\t")
    desk.key("ctrl+a")
    desk.type("12 min 30 s\t")
    desk.type("wrist says hot\n")
    closed()
    found = [w for o, v, w in weigh_ins(2) if (o, v) == ("leaf-c", "81")]
    tap.equal([(w.get("minute"), w.get("sd"), w.text) for w in found], [("12.5", "2", "wrist says hot")], "the entry")


@tap.case
def what_cannot_be_is_refused_at_its_field():
    """Words, a vessel heavier than the whole, and a moment after the step's end are refused and change nothing."""
    before = desk.saved_bytes()
    desk.click(*point_in(0.45), button=3)
    opened()
    desk.key("w")
    desk.type("much\n")
    desk.get("status bar", re.compile(r"^Write a number from 0 to"))
    assert desk.has(desk.get("text", "Value"), "invalid_entry") or desk.has(desk.get("text", "Value"), "focused")
    desk.key("ctrl+a")
    desk.type("3\t7\n")
    desk.get("status bar", "The empty vessel must weigh less than the vessel with leaf in it.")
    desk.key("ctrl+a")
    desk.type("0.5\t\t")
    desk.key("ctrl+a")
    desk.type("99\n")
    desk.get("status bar", re.compile(r"^Write a time from the step's start, at most 23 min"))
    assert desk.has(desk.get("text", "Moment"), "focused"), "the field is not in hand"
    desk.key("Escape")
    closed()
    tap.equal(desk.saved_bytes(), before, "the file")
    assert not desk.is_changed(), "something was entered"


@tap.case
def a_note_alone_is_kept():
    """N takes a note of a moment without a value; an empty one is refused."""
    desk.move(*point_in(0.45))
    desk.key("m")
    opened()
    for name in ("Weight", "Leaf temperature", "Wall temperature", "Moisture meter", "Oxidation by colour", "Breakage",
                 "Note"):
        assert desk.find("push button", name), "no measure is called " + name
    desk.key("w")
    desk.key("alt+n")
    desk.wait_for(lambda: desk.find("text", "Value") is None, "no value")
    desk.type("\n")
    desk.get("status bar", "Write the note.")
    desk.type("the stem bends\n")
    closed()
    found = [w for o, _, w in weigh_ins(2) if o == "note"]
    tap.equal([(w.text, w.get("value"), w.get("sd")) for w in found], [("the stem bends", None, None)], "the note")


@tap.case
def a_point_is_chosen_again_and_changed():
    """A click on a point opens it; its number is changed and it is one undo. Keys do the same."""
    mine = points(r"^Weight 6\.6 kg")
    desk.click(mine[0])
    opened()
    desk.key("ctrl+a")
    desk.type("6.5\n")
    closed()
    desk.wait_for(lambda: points(r"^Weight 6\.5 kg") and not points(r"^Weight 6\.6 kg"), "the change")
    assert desk.has(points(r"^Weight 6\.5 kg")[0], "focused"), "the point lost the keyboard"
    tap.equal(len([1 for o, v, _ in weigh_ins(2) if v == "6.5"]), 1, "entries of it")
    desk.key("Return")
    opened()
    desk.key("Escape")
    closed()
    desk.key("Delete")
    desk.wait_for(lambda: not points(r"^Weight 6\.5 kg"), "it to go")
    desk.key("ctrl+z")
    desk.wait_for(lambda: points(r"^Weight 6\.5 kg"), "the undo")


@tap.case
def arrows_go_from_point_to_point():
    """Left and Right go along a panel's points, and the one in hand is told beside the panel's name."""
    mine = points(r"^Weight 6\.5 kg")[0]
    desk.click(mine)
    opened()
    desk.key("Escape")
    closed()
    desk.wait_for(lambda: desk.has(points(r"^Weight 6\.5 kg")[0], "focused"), "the point in hand")
    desk.get("label", "6.5 kg ± 0.02, tare 0.35 kg")
    desk.key("Left")
    desk.wait_for(lambda: any(desk.has(p, "focused") for p in points(r"\(wither, 4 h\)")), "the point before")
    desk.get("label", re.compile(r"^7\.02 kg ± 0\.02$"))


@tap.case
def the_list_tells_and_changes_them():
    """The side column lists all with what the model says; Return changes, Delete removes, M is offered as a button."""
    desk.click(desk.get("page tab", "Weigh-ins"))
    desk.get("push button", "Add a weigh-in…")
    told = desk.entered()
    assert any(re.search(r"^Weight 6\.5 kg.*% measured, .*% by the model: [\d.]+ standard deviations (above|below)", t)
               for t in told), told
    assert any(re.search(r"^Note \(fix in pan.*\)\. the stem bends", t) for t in told), told
    desk.click(note_row())
    opened()
    desk.key("End")
    desk.type(" well\n")
    closed()
    desk.wait_for(lambda: any("the stem bends well" in t for t in desk.entered()), "the change")
    desk.wait_for(lambda: desk.has(note_row(), "focused"), "the row in hand")
    desk.key("Delete")
    desk.wait_for(lambda: not any(t.startswith("Note") for t in desk.entered()), "it to go")
    tap.equal(len(weigh_ins(2)), FIRST + 2, "what is left in the file")


@tap.case
def a_wall_stands_beside_the_leaf():
    """A wall's temperature is a point of the leaf's panel while walls are shown, and can be chosen there."""
    def item(menu, name):
        desk.key(menu)
        desk.act(desk.wait_for(lambda: [n for n in desk.walk() if desk.name_of(n) == name
                                        and "menu" in n.get_role_name()], name)[-1])
        desk.key("Escape")

    def walls():
        panel = desk.place("image", "Leaf temperature")
        return desk.find_all("push button", re.compile("^Wall temperature 251 °C"), under=panel)
    desk.move(*point_in(0.45))
    desk.key("m")
    opened()
    desk.key("a")
    desk.type("251\n")
    closed()
    item("F10", "Leaf temperature, °C")
    desk.get("image", "Leaf temperature")
    assert not walls(), "a wall among leaf temperatures"
    item("alt+b", "Show wall and air")
    desk.wait_for(lambda: len(walls()) == 1, "the point")
    desk.wait_for(lambda: desk.bounds(walls()[0]).width > 10, "its place")
    item("alt+b", "Show wall and air")
    desk.wait_for(lambda: not walls(), "it to go")


@tap.case
def letters_in_fields_are_letters():
    """M typed into the search of batches opens nothing."""
    desk.click(desk.get("entry", "Find batches"))
    desk.type("mm")
    time.sleep(0.3)
    assert not is_open(), "the entry opened"
    desk.key("ctrl+a", "BackSpace")


tap.main(desk.tree)
