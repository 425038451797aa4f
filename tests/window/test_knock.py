"""The knock-on card beside the board, by pointer and keys: what it says of its cells, how it is ordered and scrolled,
what choosing a cell does, and that it follows a drag when that has ended."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re

import tap
from bench import DATA, Bench

BATCH = "3 drum, firm roll"
SEASON = os.path.join(DATA, "ondry-ridge-2026.leafwend")


class Card(Bench):
    """The board and the card in a window."""

    def open_card(self):
        self.start(os.environ["KNOCK_WINDOW"], [SEASON, BATCH])
        self.settled()
        self.wait_for(self.cells, "the table")
        return self

    def cells(self, pattern="."):
        return self.find_all("table cell", re.compile(pattern))

    def cell(self, pattern):
        return self.get("table cell", re.compile(pattern))

    def heading(self, name):
        return self.get("push button", re.compile("^%s: " % name))

    def focused(self):
        """What the focused widget says."""
        return next((self.name_of(n) for n in self.walk() if self.has(n, "focused") and self.has(n, "focusable")), "")

    def in_table(self):
        """Whether the table or something in it has the keyboard."""
        return any(self.has(n, "focused") for n in self.walk(self.get("table")))

    def rows(self):
        """The names of the rows in sight, from the top."""
        names = self.find_all(None, re.compile(r"^\d+ .* · .* [+−]"))
        return [self.name_of(n) for n in sorted(names, key=lambda n: self.bounds(n).y)]

    def effect(self, cell):
        """The number that a cell says."""
        words = self.name_of(cell)
        found = re.search(r": .* (plus|minus) ([\d.]+)", words)
        return float(found[2]) * (-1 if found[1] == "minus" else 1) if found else 0.0

    def column(self, outcome):
        """The effects on an outcome of the rows in sight, from the top."""
        cells = sorted(self.cells(": %s " % outcome), key=lambda n: self.bounds(n).y)
        return [self.effect(c) for c in cells]

    def title(self):
        return self.name_of(self.get("label", re.compile("^Knock-on at ")))

    def hand(self):
        """The step whose block has the keyboard, 0 for none."""
        found = re.match(r"Step (\d+) of", self.focused())
        return int(found[1]) if found else 0

    def is_fresh(self):
        return self.find("label", re.compile("^What one more notch")) is not None


desk = Card().open_card()


@tap.case
def cells_are_told():
    """Every cell says its setting, its step, the notch, the outcome and the change."""
    said = desk.name_of(desk.cell("^time of step 2, .*: Moisture"))
    assert re.match(r"time of step 2, plus 30 s: Moisture minus \d+\.\d % points$", said), said
    for cell in desk.cells():
        assert re.match(r".+ of step \d, (plus|minus) .+: .+ (plus|minus|no change|next to no change)", desk.name_of(cell)), \
            desk.name_of(cell)
    tap.equal(desk.title(), "Knock-on at the batch's end", "the title")


@tap.case
def heading_orders():
    """A click on a heading puts the largest effects first, one on the first heading the batch's order."""
    before = desk.rows()
    assert before[0].startswith("1 wither · time"), before
    desk.click(desk.heading("Moisture"))
    desk.wait_for(lambda: desk.rows() != before, "another order")
    sizes = [abs(n) for n in desk.column("Moisture")]
    tap.equal(sizes, sorted(sizes, reverse=True), "the sizes")
    assert sizes[0] > 0.3, sizes
    assert desk.has(desk.heading("Moisture"), "pressed"), "the heading is not pressed"
    desk.click(desk.heading("Settings"))
    desk.wait_for(lambda: desk.rows() == before, "the batch's order")


@tap.case
def click_chooses():
    """A click on a cell takes its step in hand and leaves the outcomes asked for."""
    desk.click(desk.cell("^wall of step 2, .*: Oxidation"))
    desk.wait_for(lambda: desk.hand() == 2, "the block")
    tap.equal(desk.title(), "Knock-on at the batch's end", "the title")


@tap.case
def step_in_hand_is_followed():
    """A step taken in hand on the board makes its end the one that is told; later settings do nothing to it."""
    desk.click(desk.blocks()[2])
    desk.wait_for(lambda: desk.title() == "Knock-on at the end of step 3, roll", "the title")
    desk.wait_for(desk.is_fresh, "the numbers")
    desk.click(desk.blocks()[0])
    desk.wait_for(lambda: desk.title() == "Knock-on at the end of step 1, wither", "the title")
    desk.wait_for(lambda: desk.cells("^time of step 2, .*: Moisture no change$"), "no effect of a later step")


@tap.case
def keys_go_everywhere():
    """Tab comes in; arrows go from cell to cell, over the edge of what is in sight, and to the headings; Return orders,
    Space chooses."""
    desk.click(desk.get("push button", "Copy as CSV"))
    desk.key("Tab")
    desk.wait_for(lambda: desk.in_table() and "of step" in desk.focused(), "a cell")
    desk.key("ctrl+Home", "ctrl+Up", "Home")
    desk.wait_for(lambda: re.match("time of step 1, .*: Moisture", desk.focused()), "the first cell")
    desk.key("Right")
    desk.wait_for(lambda: re.match("time of step 1, .*: Oxidation", desk.focused()), "the next column")
    desk.key("Down")
    desk.wait_for(lambda: re.match("air speed of step 1, .*: Oxidation", desk.focused()), "the next row")
    desk.key("End")
    desk.wait_for(lambda: re.match("air speed of step 1, .*: Roasted leaf", desk.focused()), "the last column")
    at, table = desk.bounds(desk.cell("air speed of step 1, .*: Roasted leaf")), desk.bounds(desk.get("table"))
    assert table.x < at.x and at.x + at.width <= table.x + table.width, (at, table)
    desk.key("ctrl+Down")
    desk.wait_for(lambda: re.search("of step 5, .*: Roasted leaf", desk.focused()), "the last row")
    desk.key("space")
    desk.wait_for(lambda: desk.hand() == 5, "the block")
    tap.equal(desk.title(), "Knock-on at the end of step 1, wither", "the title")

    desk.click(desk.get("push button", "Copy as CSV"))
    desk.key("Tab", "ctrl+Up", "Home", "Up")
    desk.wait_for(lambda: desk.focused().startswith("Moisture: "), "the heading")
    desk.key("Return")
    desk.wait_for(lambda: desk.has(desk.heading("Moisture"), "pressed"), "the order")
    desk.key("Left", "Return")
    desk.wait_for(lambda: desk.rows()[0].startswith("1 wither · time"), "the batch's order")
    desk.key("Tab")
    desk.wait_for(lambda: desk.focused() and not desk.in_table(), "the way out")
    desk.key("shift+Tab")
    desk.wait_for(desk.in_table, "the way back")


@tap.case
def wheel_keeps_the_keyboard():
    """A cell that the wheel turns out of sight does not take the keyboard with it: the next arrow goes on from it."""
    desk.click(desk.get("push button", "Copy as CSV"))
    desk.key("Tab", "ctrl+Up", "Home")
    desk.wait_for(lambda: re.match("time of step 1, .*: Moisture", desk.focused()), "the first cell")
    first = desk.rows()[0]
    desk.click(desk.cell("^sun of step 1, .*: Moisture"), button=5, times=4)
    desk.wait_for(lambda: desk.rows()[0] != first, "other rows")
    desk.key("Down")
    desk.wait_for(lambda: re.match("air speed of step 1, .*: Moisture", desk.focused()), "the next row")


@tap.case
def drag_is_followed():
    """While a block is dragged the numbers are those from before, and said to be; after it they are new ones."""
    desk.click(desk.blocks()[1])
    desk.wait_for(lambda: desk.title() == "Knock-on at the end of step 2, fix in drum", "the title")
    desk.wait_for(desk.is_fresh, "the numbers")
    before = desk.name_of(desk.cell("^time of step 2, .*: Moisture"))
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 40, y, release=False)
    desk.wait_for(lambda: desk.find("label", re.compile("^From before the change")), "the word that they are old")
    tap.equal(desk.name_of(desk.cell("^time of step 2, .*: Moisture")), before, "the number while dragging")
    desk.let_go()
    desk.wait_for(desk.is_fresh, "the new numbers")
    assert desk.name_of(desk.cell("^time of step 2, .*: Moisture")) != before, before


@tap.case
def copied_by_keys():
    """Ctrl+C in the table copies it and says so."""
    desk.click(desk.heading("Moisture"))
    desk.wait_for(desk.is_fresh, "the numbers")
    desk.key("Down", "ctrl+c")
    desk.get("label", re.compile("^The table is on the clipboard"))


tap.main(desk.tree)
