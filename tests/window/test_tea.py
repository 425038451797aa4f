"""Kind of tea in the window: choosing one gives the batch its name and the finished tea its aims, as one edit."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import xml.etree.ElementTree as ElementTree

import tap
from bench import DATA, NS, Bench

BATCH = "4 white, two days"
KINDS = {b.get("name"): b for b in ElementTree.parse(os.path.join(DATA, "kinds-of-tea.leafwend")).iter(NS + "batch")}
desk = Bench().open(batch=BATCH)


def aims_of(batch):
    return [(dict(a.attrib), a.text) for a in batch.findall(NS + "aim")]


def saved_tea():
    """The tea of the batch in the saved file, and the finished tea's aims with their notes."""
    desk.save()
    root = ElementTree.parse(desk.path).getroot()
    batch = next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)
    return batch.get("tea"), aims_of(batch)


def shown():
    """The kinds in the open menu, and whether each is marked. Items of a closed menu have no size."""
    return {desk.name_of(n): desk.has(n, "checked") for n in desk.find_all("menu item")
            if desk.name_of(n) in [*KINDS, "None"] and desk.bounds(n).width > 0}


def open_menu():
    """Opens the menu of kinds: the batch's menu by the pointer, then its letter."""
    desk.wait_for(lambda: not shown(), "the menu's end")
    desk.click(desk.get("push button", "Batch"))
    desk.wait_for(lambda: desk.bounds(desk.get("menu item", "Kind of tea")).width > 0, "the menu")
    desk.key("k")
    return desk.wait_for(shown, "the kinds")


def choose(kind):
    """Takes a kind by keys."""
    open_menu()
    desk.key(*["Down"] * (1 + ["None", *KINDS].index(kind)), "Return")
    desk.wait_for(lambda: not shown(), "the menu's end")


def wait_for_tea(said):
    desk.get("status bar", re.compile(said))
    desk.settled()


@tap.case
def the_kind_is_marked():
    """The menu has every kind that ships, in the file's order, and marks the one the batch is."""
    marks = open_menu()
    tap.equal(list(marks), ["None", *KINDS], "the kinds")
    tap.equal([kind for kind, marked in marks.items() if marked], ["white"], "what is marked")
    desk.key("Escape")


@tap.case
def a_kind_is_one_edit():
    """Choosing a kind sets the tea and its aims with their sources; undo brings back both, redo takes both."""
    before = saved_tea()
    tap.equal(before[0], "white", "the tea")
    choose("pan green")
    wait_for_tea("^“pan green” sets %d aims" % len(aims_of(KINDS["pan green"])))
    taken = ("pan green", aims_of(KINDS["pan green"]))
    tap.equal(saved_tea(), taken, "the batch")
    assert all(note for _, note in taken[1]), taken
    desk.key("ctrl+z")
    tap.equal(saved_tea(), before, "after undo")
    desk.key("ctrl+shift+z")
    tap.equal(saved_tea(), taken, "after redo")


@tap.case
def the_same_again_is_no_edit():
    """Choosing the kind that the batch is changes nothing."""
    choose("pan green")
    desk.wait_for(lambda: not shown(), "the menu's end")
    desk.settled()
    assert not desk.is_changed()


@tap.case
def none_clears():
    """None takes away the tea and the finished tea's aims; other batches keep theirs."""
    choose("None")
    wait_for_tea("^The batch is no kind of tea")
    tap.equal(saved_tea(), (None, []), "the batch")
    root = ElementTree.parse(desk.path).getroot()
    others = [b for b in root.iter(NS + "batch") if b.get("name") != BATCH]
    assert others and all(b.get("tea") and aims_of(b) for b in others)
    marks = open_menu()
    tap.equal([kind for kind, marked in marks.items() if marked], ["None"], "what is marked")
    desk.key("Escape")


@tap.case
def without_the_file():
    """Where no kinds ship, None alone is there."""
    desk.start(desk.process.args[0], [desk.path], env={"LEAFWEND_DATA": desk.folder})
    desk.wait_for(desk.blocks, "the blocks")
    tap.equal(list(open_menu()), ["None"], "the kinds")


tap.main(desk.tree)
