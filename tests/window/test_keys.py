"""Everything by keyboard: moving among blocks, changing, adding, removing, settings, the reading line."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tap
from bench import Bench

BATCH = "1 strong pan, first leaf"
desk = Bench().open(batch=BATCH)


def focused():
    for number, block in enumerate(desk.blocks(), 1):
        if desk.has(block, "focused"):
            return number
    return None


def focus(step):
    """Puts the keyboard on a block by a click on its name."""
    box = desk.bounds(desk.blocks()[step - 1])
    desk.click(box.x + 40, box.y + 12)
    desk.wait_for(lambda: focused() == step, "the focus on step %d" % step)


@tap.case
def arrows_go_from_block_to_block():
    """Left, Right, Home and End move the focus among the blocks."""
    focus(2)
    for key, step in (("Right", 3), ("Right", 4), ("Right", 4), ("Left", 3), ("Home", 1), ("End", 4)):
        desk.key(key)
        desk.wait_for(lambda: focused() == step, "%s to step %d" % (key, step))


@tap.case
def control_arrows_change_time_and_heat():
    """Ctrl and arrows change time and heat by notches, with Shift by ten; a held key is one undo."""
    focus(2)
    before = desk.words(2)
    assert "23 min, 260 °C" in before, before
    desk.key("ctrl+Right", "ctrl+Right")
    desk.wait_for(lambda: "25 min" in desk.words(2), "25 min")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(2) == before, "one undo for both")
    desk.key("ctrl+Up")
    desk.wait_for(lambda: "265 °C" in desk.words(2), "265 °C")
    desk.key("ctrl+shift+Down")
    desk.wait_for(lambda: "215 °C" in desk.words(2), "215 °C")
    desk.key("ctrl+shift+Left")
    desk.wait_for(lambda: "13 min" in desk.words(2), "13 min")
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: desk.words(2) == before, "the undos")


@tap.case
def steps_move_by_keys():
    """Ctrl+Shift+Page Down and Up move a step."""
    focus(2)
    desk.key("ctrl+shift+Next")
    desk.wait_for(lambda: ": fix in pan" in desk.words(3) and focused() == 3, "the pan third")
    desk.key("ctrl+shift+Prior")
    desk.wait_for(lambda: ": fix in pan" in desk.words(2) and focused() == 2, "the pan second")


@tap.case
def delete_and_undo():
    """Delete removes a step, undo brings it back."""
    focus(3)
    desk.key("Delete")
    desk.wait_for(lambda: len(desk.blocks()) == 3, "three blocks")
    desk.key("ctrl+z")
    desk.wait_for(lambda: len(desk.blocks()) == 4, "four blocks")


@tap.case
def insert_adds():
    """Insert offers the kinds of step and adds the chosen one after."""
    focus(3)
    desk.key("Insert")
    desk.get("menu item", "roast")
    desk.key("Down", "Down", "Down", "Return")
    desk.wait_for(lambda: len(desk.blocks()) == 5, "five blocks")
    assert re.match(r"Step 4 of 5", desk.words(4))
    desk.key("ctrl+z")
    desk.wait_for(lambda: len(desk.blocks()) == 4, "four blocks")


@tap.case
def return_opens_settings():
    """Return opens all settings; a value typed there is taken, a bad one refused with the reason."""
    focus(2)
    desk.key("Return")
    wall = desk.get("spin button", "wall")
    tap.equal(desk.value_of(wall), 260.0, "the wall")
    tap.equal(desk.value_of(desk.get("spin button", "time")), 23.0, "the time")
    assert "roasts dry leaf" in (wall.get_description() or ""), "each setting says what it does"

    # The first field has the focus.
    desk.key("ctrl+a")
    desk.type("30 min 30 s\n")
    desk.wait_for(lambda: "30 min 30 s" in desk.words(2), "30 min 30 s")
    desk.key("ctrl+a")
    desk.type("500\n")
    desk.get("label", re.compile("must be a number from 30 s to 1 h 30 min"))
    assert "30 min 30 s" in desk.words(2), "nothing was changed"
    desk.key("Escape")
    desk.wait_for(lambda: desk.find("spin button", "wall") is None, "the settings closed")
    desk.key("ctrl+z")
    desk.wait_for(lambda: "23 min" in desk.words(2), "the undo")


@tap.case
def reading_line_moves_by_ticks():
    """Full stop and comma move the reading line by ticks; its readings stand in the panels."""
    focus(1)

    def readings():
        return [desk.text_of(n) for n in desk.find_all("label", re.compile(r"^[\d.]+ %$"))]
    desk.key("period")
    desk.wait_for(lambda: len(readings()) == 3, "three readings")
    first = readings()
    desk.key("period", "period")
    desk.wait_for(lambda: readings() != first, "other readings")
    desk.key("comma", "comma")
    desk.wait_for(lambda: readings() == first, "the first readings")
    desk.key("Escape")
    desk.wait_for(lambda: not readings(), "no reading")


@tap.case
def tab_reaches_everything():
    """Tab reaches a block, an add button and the list."""
    reached = set()
    for _ in range(24):
        desk.key("Tab")
        for node in desk.walk():
            if desk.has(node, "focused"):
                reached.add(re.sub(r"\d.*", "", "%s %s" % (node.get_role_name(), desk.name_of(node))))
    assert any(r.startswith("list item Step") for r in reached), reached


tap.main(desk.tree)
