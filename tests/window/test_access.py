"""What a screen reader meets: a name on everything that can be used, words for what is drawn."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tap
from bench import Bench

USABLE = {"push button", "toggle button", "entry", "text", "spin button", "check box", "list", "list item", "menu item"}
# Rows of the list, the buttons inside menu buttons and spin buttons speak through what is in or around them.
desk = Bench().open(batch="2 long wither, covered")


@tap.case
def everything_usable_has_a_name():
    """Every button, field and list has a name of its own, not its type's."""
    nameless = [desk.name_of(n) + " " + n.get_role_name() for n in desk.walk()
                if n.get_role_name() in USABLE - {"list item"} and desk.has(n, "visible")
                and (not desk.name_of(n) or desk.name_of(n).startswith("Gtk"))
                and not desk.name_of(n.get_parent())]
    tap.equal(nameless, [], "things without a name")


@tap.case
def blocks_tell_kind_time_setting_and_result():
    """Each block tells its kind, its time, its setting and what it did."""
    for number, block in enumerate(desk.blocks(), 1):
        words = desk.name_of(block)
        assert re.match(r"Step %d of \d+: [a-z ]+, \d+ (min|h)" % number, words), words
        assert re.search(r"Moisture then [\d.]+ % wet basis. Oxidation then [\d.]+ %.", words), words


@tap.case
def panels_tell_their_curves():
    """Each panel has its quantity's name and says in words how it goes."""
    for name in ("Moisture", "Oxidation", "Cell rupture"):
        panel = desk.get("image", name)
        assert re.search(r"wither: from [\d.]+ % .*to [\d.]+ %", panel.get_description() or ""), panel.get_description()


@tap.case
def right_to_left_runs_the_other_way():
    """In a language read from the right, time runs from the right."""
    desk.start(desk.process.args[0], [desk.path], env={"GTK_DEBUG": "invert-text-dir"})
    desk.wait_for(lambda: len(desk.blocks()) > 2, "the blocks")
    desk.settled()
    first, second = (desk.bounds(b) for b in desk.blocks()[:2])
    assert first.x > second.x, (first, second)
    # Taking hold of the end edge, which is now at the left.
    before = desk.words(1)
    desk.drag(first.x - 3, first.y + 12, first.x + 40, first.y + 12)
    desk.wait_for(lambda: desk.words(1) != before, "another time")


tap.main(desk.tree)
