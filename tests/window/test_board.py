"""The board's views: time by the clock, more panels, one step large, heights of panels; each by pointer, by
keys, and as a screen reader hears it, and what of it is remembered."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import subprocess

import tap

# Settings that outlive the program, in the empty home of this desk.
os.environ["GSETTINGS_BACKEND"] = "keyfile"
from bench import EDGE_IN, Bench  # noqa: E402
from desk import Missed  # noqa: E402

BATCH = "1 strong pan, first leaf"
USUAL = ["Moisture", "Oxidation", "Cell rupture"]
EXTRA = {"Leaf temperature": "leaf-temp", "Enzyme left": "enzyme", "Roast": "roast", "Green note": "green",
         "Broken leaf": "broken", "Weight": "weight"}
LEAST = 24  # px of a block, to be hit
desk = Bench().open(batch=BATCH)


def again():
    """Closes the program and opens it anew on the same file."""
    desk.key("ctrl+w")
    desk.wait_for(lambda: not desk.is_running(), "the end")
    desk.start(desk.process.args[0], [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    desk.settled()


def boxes():
    return [desk.bounds(b) for b in desk.blocks()]


def resting():
    """The blocks' places when nothing glides any more."""
    def same():
        last.append(boxes())
        return last[-1] == last[-2] and last[-1] == last[-3]
    last = [boxes(), None]
    desk.wait_for(same, "the columns to rest")
    return last[-1]


def changed(before, seconds=10):
    desk.wait_for(lambda: boxes() != before, "other columns", seconds)
    return resting()


def double_click(x, y, before):
    """The columns after it. A window that is held up takes two clicks for single ones, so it is tried again."""
    for _ in range(3):
        desk.click(x, y, times=2)
        try:
            return changed(before, 5)
        except Missed:
            pass
    return changed(before)


def focused(step):
    return desk.has(desk.blocks()[step - 1], "focused")


def focus(step):
    box = desk.bounds(desk.blocks()[step - 1])
    desk.click(box.x + box.width // 2, box.y + 8)
    desk.wait_for(lambda: focused(step), "the focus on step %d" % step)


def panel(name):
    return desk.get("image", name)


def height(name):
    return desk.bounds(panel(name)).height


def heights():
    return [height(name) for name in USUAL]


def rest_heights():
    def same():
        last.append(heights())
        return last[-1] == last[-2]
    last = [None]
    desk.wait_for(same, "the heights to rest")
    return last[-1]


def gap(above="Moisture", below="Oxidation"):
    return desk.get("separator", "Between %s and %s" % (above, below))


def clock_button():
    # GTK 4.8 tells a toggle button as a button that can be pressed.
    return desk.get(None, re.compile("^By clock$"))


def toggle(action):
    """The window's action, as a menu item does it."""
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1",
                    "--method", "org.gtk.Actions.Activate", action, "[]", "{}"],
                   check=True, stdout=subprocess.DEVNULL)


def menu_item(*names):
    """Goes to items of the menu, one under the other, and does them, by keys."""
    desk.key("F10")
    for name in names:
        item = desk.get(None, name)
        for _ in range(30):
            if desk.has(item, "focused"):
                break
            desk.key("Up")
        assert desk.has(item, "focused"), "%s is not reached" % name
        desk.key("Return")


# By clock

@tap.case
def clock_is_even():
    """Ctrl+K lays the columns out by the clock: widths go with time, and short steps can still be hit."""
    before = resting()
    desk.key("ctrl+k")
    places = changed(before)
    wither, pan, roll, sun = places
    # 240 and 255 minutes; short neighbours take a little of the last.
    assert abs(wither.width / (sun.width + EDGE_IN * 2 + 26) - 240 / 255) < 0.05, places
    assert pan.width < 60 and roll.width >= LEAST and pan.width >= LEAST, places
    assert desk.has(clock_button(), "pressed")


@tap.case
def ruler_tells_the_clock():
    """The ruler has the clock's name and says when the batch begins and ends."""
    ruler = desk.get("image", "Time by the clock")
    tap.equal(ruler.get_description(), "From 25 Mar, 09:30 to 25 Mar, 18:12.", "the ruler's words")


@tap.case
def narrow_blocks_are_reached_by_keys():
    """Arrows go through narrow blocks, and Ctrl and arrows change their time."""
    focus(1)
    desk.key("Right", "Right")
    desk.wait_for(lambda: focused(3), "the roll")
    words = desk.words(3)
    desk.key("ctrl+Right")
    desk.wait_for(lambda: desk.words(3) != words, "another time")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(3) == words, "the undo")


@tap.case
def narrow_blocks_are_dragged():
    """A narrow block's end edge is dragged: its time goes with the pointer, other columns keep their width."""
    before, words = resting(), desk.words(3)
    x, y = desk.end_edge(3)
    desk.drag(x, y, x + 60, y, release=False)
    held = boxes()
    assert held[2].width > before[2].width + 20, (before, held)
    for other in (0, 1):
        tap.equal(held[other], before[other], "the place of block %d" % (other + 1))
    desk.let_go()
    desk.wait_for(lambda: desk.words(3) != words, "another time")
    # 522 minutes on the width of all blocks, so 60 px are about half an hour.
    minutes = float(re.search(r"roll, (\d+) min", desk.words(3))[1])
    whole = before[3].x + before[3].width - before[0].x + 2 * EDGE_IN
    assert abs(minutes - 4 - 60 / whole * 522) < 2, (minutes, whole)
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(3) == words, "the undo")
    resting()


@tap.case
def clock_is_remembered_and_left():
    """By clock is remembered; the menu, or the button, leaves it again."""
    again()
    desk.wait_for(lambda: desk.has(clock_button(), "pressed"), "the clock")
    desk.get("image", "Time by the clock")
    desk.click(clock_button())
    desk.get("image", "Time in each step")
    assert all(box.width > 90 for box in resting()), boxes()
    menu_item("Time by clock")
    desk.get("image", "Time by the clock")
    desk.key("ctrl+k")
    desk.get("image", "Time in each step")


# Panels

@tap.case
def panels_are_added_by_keys():
    """The menu adds a panel with its words and puts it away again; the three usual ones are always there."""
    menu_item("Panels", "Enzyme left, %")
    words = panel("Enzyme left").get_description()
    assert re.search(r"fix in pan: from [\d.]+ % to [\d.]+ %", words), words
    for name in USUAL:
        panel(name)
    assert height("Enzyme left") >= 96
    again()
    panel("Enzyme left")
    menu_item("Panels", "Enzyme left, %")
    desk.wait_for(lambda: desk.find("image", "Enzyme left") is None, "the panel put away")
    again()
    assert desk.find("image", "Enzyme left") is None


@tap.case
def many_panels_scroll_under_the_blocks():
    """With all panels shown none is too low to be read; they scroll, and the blocks stay in sight."""
    for name in EXTRA.values():
        toggle("panel-" + name)
    for name in USUAL + list(EXTRA):
        assert height(name) >= 96, (name, height(name))
        assert panel(name).get_description(), name
    tops = [desk.bounds(panel(name)).y for name in USUAL + list(EXTRA)]
    tap.equal(tops, sorted(tops), "the order")
    foot = desk.bounds(desk.windows()[0]).height
    assert tops[-1] > foot, (tops, foot)
    before = boxes()
    x, y = desk.bounds(panel("Oxidation")).middle
    for _ in range(40):
        if desk.bounds(panel("Weight")).y + 96 < foot:
            break
        desk.click(x, y, button=5)
    assert desk.bounds(panel("Weight")).y + 96 < foot, "the last panel comes up"
    tap.equal(boxes(), before, "the blocks")
    for name in EXTRA.values():
        toggle("panel-" + name)
    desk.wait_for(lambda: not any(desk.find("image", name) for name in EXTRA), "the extra panels put away")


# One step large

@tap.case
def key_zooms_and_goes_back():
    """Z gives the block's step the width, arrows take that along, Z or Escape go back."""
    before = resting()
    whole = before[-1].x + before[-1].width - before[0].x
    focus(2)
    desk.key("z")
    large = changed(before)
    assert large[1].width > whole * 0.7, large
    assert all(box.width >= LEAST for box in large), large
    desk.get(None, re.compile("^Step 2, fix in pan, over the width"))
    desk.key("Right")
    next_large = changed(large)
    assert focused(3) and next_large[2].width > whole * 0.7, next_large
    desk.key("z")
    tap.equal(changed(next_large), before, "the columns")
    desk.key("z")
    changed(before)
    desk.key("Escape")
    desk.wait_for(lambda: resting() == before, "the old columns")


@tap.case
def double_click_zooms():
    """A double click on a panel's or the ruler's column makes that step large, another goes back."""
    before = resting()
    for name in ("Oxidation", "Time in each step"):
        place = desk.bounds(panel(name))
        at = (before[2].x + before[2].width // 2, place.y + place.height // 2)
        large = double_click(*at, before)
        assert large[2].width > 3 * before[2].width, large
        tap.equal(double_click(large[2].x + large[2].width // 2, at[1], large), before, "the columns")


@tap.case
def large_step_is_dragged():
    """In a large step the end edge is dragged finely; the zoom stays, and ends with the batch."""
    before, words = resting(), desk.words(2)
    focus(2)
    desk.key("z")
    large = changed(before)
    x, y = desk.end_edge(2)
    desk.drag(x, y, x - 100, y)
    desk.wait_for(lambda: desk.words(2) != words, "another time")
    minutes = float(re.search(r"fix in pan, (\d+) min", desk.words(2))[1])
    assert 8 < minutes < 23, minutes
    tap.equal(resting(), large, "the columns after the drag")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(2) == words, "the undo")
    desk.choose("2 long wither, covered")
    assert all(box.width > 60 for box in resting()), boxes()
    desk.choose(BATCH)
    tap.equal(resting(), before, "the columns")


# Heights

@tap.case
def gap_is_dragged():
    """Dragging a gap gives to one panel what it takes from the next, and no more than that has."""
    before = rest_heights()
    x, y = desk.bounds(gap()).middle
    desk.drag(x, y, x, y + 40)
    now = rest_heights()
    assert abs(now[0] - before[0] - 40) <= 1 and abs(now[1] - before[1] + 40) <= 1, (before, now)
    assert abs(now[2] - before[2]) <= 1, (before, now)
    x, y = desk.bounds(gap()).middle
    desk.drag(x, y, x, y - 400)
    now = rest_heights()
    assert min(now) >= 96 and now[0] == 96, now


@tap.case
def double_click_evens():
    """A double click on a gap makes all panels alike."""
    desk.click(*desk.bounds(gap()).middle, times=2)
    desk.wait_for(lambda: max(rest_heights()) - min(rest_heights()) <= 1, "equal heights")


@tap.case
def gap_moves_by_keys():
    """Tab reaches a gap; Up and Down move it and its words say the shares; Return evens."""
    before = rest_heights()
    focus(1)
    for _ in range(40):
        if desk.has(gap(), "focused"):
            break
        desk.key("Tab")
    assert desk.has(gap(), "focused"), "the gap is not reached"
    said = gap().get_description()
    assert "Moisture has 33 % of the height" in said, said
    desk.key("shift+Down")
    now = rest_heights()
    assert abs(now[0] - before[0] - 50) <= 1, (before, now)
    desk.wait_for(lambda: gap().get_description() != said, "other words")
    desk.key("Up")
    assert abs(rest_heights()[0] - before[0] - 40) <= 1, (before, heights())
    desk.key("Return")
    desk.wait_for(lambda: rest_heights() == before, "equal heights")


@tap.case
def heights_are_remembered():
    """Heights are remembered; the menu makes all panels alike."""
    before = rest_heights()
    x, y = desk.bounds(gap("Oxidation", "Cell rupture")).middle
    desk.drag(x, y, x, y - 30)
    moved = rest_heights()
    assert moved[1] < before[1] - 25, (before, moved)
    again()
    desk.wait_for(lambda: rest_heights() == moved, "the heights %s, not %s" % (moved, heights()))
    menu_item("Panels", "All equally high")
    desk.wait_for(lambda: rest_heights() == before, "equal heights")


@tap.case
def a_step_becomes_another_kind():
    """The last row of a step's settings makes a pan a drum, with a drum's usual time and heat; one undo."""
    desk.choose(BATCH)
    before = desk.words(2)
    desk.click(desk.blocks()[1])
    desk.key("Return")
    kinds = desk.get("combo box", "kind of step")
    desk.key("shift+Tab")  # from the first row to the last
    desk.wait_for(lambda: any(desk.has(node, "focused") for node in desk.walk(kinds)), "the keys on the kinds")
    desk.key("space")
    desk.wait_for(lambda: desk.find_all("label", "fix by steam"), "the kinds")
    desk.key(*["Down"] * 3, "Return")  # wither, tumble, fix in pan, fix in drum
    desk.wait_for(lambda: "fix in drum" in desk.words(2), "a drum")
    desk.settled()
    assert "5 min 30 s, 350 °C wall" in desk.words(2), desk.words(2)
    desk.save()
    assert abs(desk.computed(BATCH, 2) - desk.moisture(2)) < 0.06
    desk.key("Return")
    desk.get("combo box", "kind of step")
    desk.act(desk.get("push button", re.compile("^Undo")))
    desk.wait_for(lambda: desk.words(2) == before, "the undo")
    desk.wait_for(lambda: not desk.find("combo box", "kind of step"), "settings of the drum that is none to go")


tap.main(desk.tree)
