"""The result: aims set by typing, from what the batch gives, and by dragging; locks that hold while a step is
dragged; the search for the aims. All by pointer and keys, and read as a screen reader reads."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

BATCH = "1 strong pan, first leaf"
CAUTION = re.compile("^A model's estimate\\..* follow local codes and licensed practice\\.$")
desk = Bench().open(batch=BATCH)


def row(outcome):
    """What the row of an outcome says."""
    return desk.get("list item", re.compile("^" + outcome + r" [\d.]"), under=desk.place("panel", "Result"))


def says(outcome, pattern):
    return re.search(pattern, desk.name_of(row(outcome)))


def value(outcome):
    return float(re.match(outcome + r" ([\d.]+)", desk.name_of(row(outcome)))[1])


def aims():
    """The finished tea's aims in the saved file."""
    desk.save()
    root = ElementTree.parse(desk.path).getroot()
    batch = next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)
    return {aim.get("of"): aim for aim in batch.findall(NS + "aim")}


def panel(name):
    return desk.bounds(desk.get("image", name))


def column_end(step):
    box = desk.bounds(desk.blocks()[step - 1])
    return box.x + box.width + 1


@tap.case
def the_row_says_value_aim_and_verdict():
    """A row tells the value that the command line computes, its aim and how it stands."""
    assert says("Moisture", r"Aim: [\d.]+ to [\d.]+\. within"), desk.name_of(row("Moisture"))
    told = desk.computed(BATCH, 4)
    assert abs(told - value("Moisture")) < 0.06, "window %g, command line %g" % (value("Moisture"), told)


@tap.case
def typing_sets_an_aim():
    """Return on a row opens its aim; two numbers and Return set it, one undo takes it back."""
    desk.click(row("Roast"))
    desk.wait_for(lambda: desk.find("text", "From"), "the aim's fields")
    desk.type("2\t9\t")
    desk.type("our own\n")
    desk.wait_for(lambda: says("Roast", r"Aim: 2\.0 to 9\.0\. below"), "the aim")
    aim = aims()["roast"]
    tap.equal((aim.get("low"), aim.get("high"), aim.text), ("2", "9", "our own"), "the saved aim")
    desk.key("ctrl+z")
    desk.wait_for(lambda: not says("Roast", "Aim"), "the undo")


@tap.case
def a_bad_number_is_refused():
    """What is no number, and an aim upside down, are refused at the field and change nothing."""
    desk.click(row("Roast"))
    desk.wait_for(lambda: desk.find("text", "From"), "the aim's fields")
    desk.type("many\n")
    desk.get("label", re.compile(r"^Write a number from 0 to"))
    desk.key("ctrl+a")
    desk.type("9\t2\n")
    desk.get("label", "The second number must be the larger one.")
    desk.key("Escape")
    desk.wait_for(lambda: not desk.find("text", "From"), "the fields to go")
    assert not says("Roast", "Aim")


@tap.case
def as_now_aims_at_what_it_gives():
    """The button aims at the present value, so close."""
    now = value("Cell rupture")
    desk.click(row("Cell rupture"))
    desk.act(desk.get("push button", "Aim at what it gives now"))
    desk.wait_for(lambda: says("Cell rupture", r"Aim: .* within"), "the aim")
    aim = aims()["rupture"]
    assert float(aim.get("low")) < now < float(aim.get("high")), (aim.attrib, now)
    assert float(aim.get("high")) - float(aim.get("low")) < 2
    desk.key("ctrl+z")


@tap.case
def dragging_along_the_edge_makes_an_aim():
    """A drag along a column's end edge makes a bracket, a drag of its side moves that side, Escape puts it back."""
    # Where the axis reaches anyway, so that it stays.
    box, x = panel("Cell rupture"), column_end(4)
    top, bottom = box.y + box.height * 4 // 9, box.y + box.height * 6 // 9
    desk.drag(x, bottom, x, top)
    desk.wait_for(lambda: says("Cell rupture", r"Aim: [\d.]+ to [\d.]+"), "the new aim")
    first = aims()["rupture"]
    low, high = float(first.get("low")), float(first.get("high"))
    assert low < high
    desk.drag(x - 5, top, x - 5, top + 10, release=False)
    desk.key("Escape")
    desk.let_go()
    tap.equal(aims()["rupture"].attrib, first.attrib, "the aim after Escape")
    desk.drag(x - 5, top, x - 5, top + 10)
    desk.wait_for(lambda: not says("Cell rupture", r"to %.1f" % high), "a lower upper side")
    last = aims()["rupture"]
    tap.equal(last.get("low"), first.get("low"), "the other side")
    assert float(last.get("high")) < high
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: not says("Cell rupture", "Aim"), "both undone")


@tap.case
def what_is_locked_is_held_by_a_drag():
    """With outcomes locked, dragging the wither shorter moves later steps and keeps them; it is one undo."""
    assert not desk.find("label", CAUTION), "a caution before anything moves by itself"
    before = [desk.words(i) for i in range(1, 5)]
    held = {name: value(name) for name in ("Moisture", "Oxidation", "Cell rupture")}
    for name in held:
        desk.act(desk.get("push button", "Hold " + name))
    desk.wait_for(lambda: all(says(name, "held") for name in held), "the locks")
    desk.get("label", CAUTION)
    x, y = desk.end_edge(1)
    desk.drag(x, y, x - 20, y)
    # An answer to an earlier motion is told, too: the last one may still be to come, so all is asked at once.
    desk.wait_for(lambda: all(abs(value(name) - was) < 0.7 and says(name, "held") for name, was in held.items())
                  and desk.find("status bar", "All that is locked is held.")
                  and all(desk.words(i).split("Moisture")[0] != before[i - 1].split("Moisture")[0] for i in (1, 2)),
                  "what is locked to be held")
    desk.key("ctrl+z")
    desk.wait_for(lambda: [desk.words(i) for i in range(1, 5)] == before, "one undo")


@tap.case
def a_pinned_setting_does_not_move():
    """What is pinned in a step's settings stays while others hold the result."""
    desk.click(desk.blocks()[1])
    desk.key("Return")
    for name in ("Pin time", "Pin wall"):
        pin = desk.get("push button", name)
        desk.act(pin)
        desk.wait_for(lambda: desk.has(pin, "pressed"), name)
    desk.key("Escape")
    before = desk.words(2).split("Moisture")[0]
    x, y = desk.end_edge(1)
    desk.drag(x, y, x - 12, y)
    desk.wait_for(lambda: desk.find("status bar", re.compile("All that is locked is held|This cannot be held")),
                  "an end of the search")
    desk.settled()
    tap.equal(desk.words(2).split("Moisture")[0], before, "the pinned step")
    desk.key("ctrl+z")


@tap.case
def what_cannot_be_held_is_told():
    """Where every later setting is pinned or powerless, the amount that is missed is said."""
    x, y = desk.end_edge(2)
    desk.act(desk.get("push button", re.compile(r"^Let go 3 locks")))
    desk.act(desk.get("push button", "Hold Oxidation"))
    desk.act(desk.get("push button", "Hold Enzyme left"))
    # Without any firing the enzyme stays.
    desk.drag(x, y, x - 300, y)
    desk.get("status bar", re.compile(r"^This cannot be held: .*Enzyme left ends [\d.]+ % above"))
    assert says("Enzyme left", r"\+[\d.]+ off"), desk.name_of(row("Enzyme left"))
    desk.act(desk.get("push button", re.compile(r"^Let go 2 locks")))
    desk.key("ctrl+z")


@tap.case
def reach_meets_a_new_aim():
    """Reach the aims turns settings until a new aim is met, as one edit that the command line agrees with."""
    desk.click(row("Cell rupture"))
    desk.wait_for(lambda: desk.find("text", "From"), "the aim's fields")
    desk.type("50\t55\n")
    desk.wait_for(lambda: says("Cell rupture", "below"), "the aim")
    desk.wait_for(lambda: not desk.find("label", CAUTION), "the caution to go with the locks")
    desk.key("ctrl+e")
    desk.get("status bar", "All aims are met.", seconds=20)
    desk.get("label", CAUTION)
    desk.wait_for(lambda: says("Cell rupture", r"within"), "rupture within its aim")
    desk.save()
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: not says("Cell rupture", "Aim"), "both undone")


@tap.case
def the_step_in_hand_has_its_own_result():
    """The result can be that of the step in hand, and the column can be put away."""
    desk.click(desk.blocks()[0])
    choice = desk.get("combo box", "Result of")
    desk.click(choice)
    desk.key("Down", "Return")
    desk.get("label", "At the end of step 1 of 4, wither")
    assert abs(value("Moisture") - desk.moisture(1)) < 0.06
    desk.key("F9")
    desk.wait_for(lambda: not desk.find("list item", re.compile(r"^Oxidation [\d.]")), "the column to go")
    desk.key("F9")
    row("Oxidation")


tap.main(desk.tree)
