"""The leaf window by real keys: what is typed changes the result and the file, what is wrong is refused with
its reason, undo restores."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import re
import subprocess
import xml.etree.ElementTree as ElementTree

import tap
from bench import CLI, NS, Bench

BATCH = "1 strong pan, first leaf"
desk = Bench().open(batch=BATCH)


def field(name):
    """What can be used under this name, not the label beside it."""
    def found():
        for window in reversed(desk.windows()):
            for node in desk.find_all(None, name, under=window):
                if node.get_role_name() != "label":
                    return node
        return None
    return desk.wait_for(found, name)


def opened():
    """Opens the window by the menu's keys and returns its first share."""
    desk.key("alt+b")
    desk.get("menu item", re.compile("^Leaf of this batch"))
    desk.key("l")
    desk.get("menu item", re.compile("^Change this leaf"))
    desk.key("c")
    return field("share, part 1")


def closed():
    desk.wait_for(lambda: desk.find(None, "share, part 1") is None, "the leaf window closed")


def focus(name):
    """Goes to a field by Tab, as often as it takes."""
    node = field(name)
    for _ in range(80):
        if desk.has(node, "focused"):
            return
        desk.key("Tab")
    raise AssertionError("Tab never reached " + name)


def type_into(name, text):
    focus(name)
    desk.key("ctrl+a")
    desk.type(text)


def saved_leaf():
    """The leaf of the batch in the saved file, and the batch."""
    root = ElementTree.parse(desk.path).getroot()
    batch = next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)
    return next(f for f in root.iter(NS + "leaf") if f.get("id") == batch.get("leaf")), batch


def shares():
    return [float(p.get("share")) for p in saved_leaf()[0].iter(NS + "part")]


def uneven():
    """Unevenness at the wither's end in the saved file: between parts, by the command line."""
    told = subprocess.run([CLI, "run", desk.path, "--batch", BATCH, "--ends", "--parts"], check=True,
                          stdout=subprocess.PIPE, text=True).stdout.splitlines()
    rows = [r for r in csv.DictReader(told) if r["step"] == "1" and r["part"] != "mean"]
    wet, share = [float(r["moisture_wb_pct"]) for r in rows], shares()
    mean = sum(s * w for s, w in zip(share, wet))
    return sum(s * (w - mean) ** 2 for s, w in zip(share, wet)) ** 0.5


BEFORE = {}


@tap.case
def every_field_tells_its_name_and_meaning():
    """Each field has a name and says what it means, with its range."""
    BEFORE.update(shares=shares(), uneven=uneven(), words=desk.words(1))
    opened()
    for name, meaning in (("share, part 1", "all together 1. 0.000001 to 1"), ("skin, part 3", "0.01 to 100"),
                          ("torn cells, part 4", "0 to 0.99"), ("fresh moisture", "50 to 92"),
                          ("green note", "0 to 10")):
        told = field(name).get_description() or ""
        assert meaning in told, (name, told)
    for name in ("name of the leaf", "name, part 1", "Remove, part 4", "fresh moisture of this batch alone"):
        field(name)


@tap.case
def wrong_numbers_are_refused_with_reasons():
    """A share that is none, out of range or too much is refused; Apply waits for a leaf that can be."""
    apply = desk.get("push button", "Apply")
    assert desk.has(apply, "sensitive")
    for typed, reason in (("x", "must be a number: 0.000001 to 1"), ("2", "must be a number: 0.000001 to 1"),
                          ("0.9", "The shares add up to")):
        type_into("share, part 2", typed)
        desk.get("label", re.compile(reason))
        assert not desk.has(apply, "sensitive"), typed


@tap.case
def button_makes_shares_add_up():
    """The button makes the shares add up, and Apply is then one edit."""
    focus("Make shares add up to 1")
    desk.key("space")
    desk.wait_for(lambda: desk.has(desk.get("push button", "Apply"), "sensitive"), "Apply")
    focus("Apply")
    desk.key("Return")
    closed()
    desk.wait_for(lambda: desk.words(1) != BEFORE["words"], "another result")
    desk.save()
    assert shares() != BEFORE["shares"] and abs(sum(shares()) - 1) < 1e-6, shares()
    assert shares()[1] > BEFORE["shares"][1], shares()
    assert abs(uneven() - BEFORE["uneven"]) > 0.1, (uneven(), BEFORE)


@tap.case
def undo_restores():
    """One undo brings the leaf and the result back."""
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(1) == BEFORE["words"], "the old result")
    desk.save()
    tap.equal(shares(), BEFORE["shares"], "the shares")


@tap.case
def parts_come_and_go():
    """A part is added and removed by keys; Escape leaves all as it was."""
    opened()
    n = len(BEFORE["shares"])
    focus("Add a part")
    desk.key("space")
    field("share, part %d" % (n + 1))
    desk.get("label", re.compile("The shares add up to 1.1;"))
    focus("Remove, part 1")
    desk.key("space")
    desk.wait_for(lambda: desk.find(None, "share, part %d" % (n + 1)) is None, "a part fewer")
    desk.key("Escape")
    closed()
    assert not desk.is_changed()


@tap.case
def batch_has_moisture_of_its_own():
    """The fresh moisture of this batch alone goes into the file, and out of it again."""
    opened()
    focus("fresh moisture of this batch")
    desk.key("space")
    type_into("fresh moisture of this batch alone", "70.5\n")
    closed()
    desk.save()
    tap.equal(saved_leaf()[1].get("fresh-moisture-pct"), "70.5", "the batch's fresh moisture")
    desk.key("ctrl+z")
    desk.save()
    assert saved_leaf()[1].get("fresh-moisture-pct") != "70.5"


@tap.case
def a_batch_is_of_another_leaf():
    """Another leaf of the season is chosen in the menu; a new one like it is a leaf of its own, and the window opens on it."""
    desk.save()
    before = saved_leaf()[0].get("id")
    desk.key("alt+b", "l")
    desk.act(desk.get("menu item", "Brook Side"))
    desk.key("Escape", "Escape")
    desk.wait_for(desk.is_changed, "the change")
    desk.save()
    tap.equal(saved_leaf()[0].get("id"), "brook-side", "the leaf")
    desk.settled()
    assert abs(desk.computed(BATCH, 1) - desk.moisture(1)) < 0.06, "the window computes another leaf"
    desk.key("alt+b", "l")
    desk.get("menu item", re.compile("^New leaf like this one"))
    desk.key("n")
    tap.equal(desk.text_of(field("name of the leaf")), "Brook Side (2)", "its name")
    type_into("name of the leaf", "South Wall")
    desk.act(field("Apply"))
    closed()
    desk.save()
    leaf, batch = saved_leaf()
    tap.equal((leaf.get("id"), leaf.get("name")), ("brook-side--2-", "South Wall"), "the new leaf")
    desk.key("ctrl+z", "ctrl+z", "ctrl+z")
    desk.save()
    tap.equal(saved_leaf()[0].get("id"), before, "the leaf after undo")


tap.main(desk.tree)
