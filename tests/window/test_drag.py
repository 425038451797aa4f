"""Dragging blocks with a real pointer: time, heat and place; Escape, undo and redo; what is saved."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tap
from bench import Bench

BATCH = "1 strong pan, first leaf"
desk = Bench().open(batch=BATCH)


@tap.case
def dragging_the_edge_changes_time_file_and_moisture():
    """Dragging the pan's edge changes its time, the final moisture and the saved file."""
    before, first = desk.moisture(2), desk.saved(BATCH)
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 30, y)
    desk.wait_for(lambda: desk.moisture(2) < before - 2, "a drier pan")
    shown = desk.moisture(2)
    desk.save()
    after = desk.saved(BATCH)
    assert float(after[1]["minutes"]) > float(first[1]["minutes"]) + 3
    tap.equal([s["minutes"] for i, s in enumerate(after) if i != 1],
              [s["minutes"] for i, s in enumerate(first) if i != 1], "the other times")
    told = desk.computed(BATCH, 2)
    assert abs(told - shown) < 0.06, "window %g, command line %g" % (shown, told)


@tap.case
def a_drag_is_one_undo():
    """One undo takes a whole drag back, one redo brings it again."""
    dragged, name = desk.moisture(2), desk.words(2)
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.moisture(2) > dragged + 2, "the undo")
    assert not desk.has(desk.get("push button", "Undo"), "sensitive")
    desk.key("ctrl+shift+z")
    desk.wait_for(lambda: desk.words(2) == name, "the redo")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.moisture(2) > dragged + 2, "the undo")


@tap.case
def escape_restores():
    """Escape in the middle of a drag puts everything back and leaves nothing to undo."""
    before = [desk.words(i) for i in range(1, 5)]
    desk.save()
    kept = desk.saved_bytes()
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 60, y, release=False)
    desk.key("Escape")
    desk.let_go()
    desk.wait_for(lambda: [desk.words(i) for i in range(1, 5)] == before, "the old words")
    assert not desk.is_changed()
    desk.key("ctrl+s")
    tap.equal(desk.saved_bytes(), kept, "the file")


@tap.case
def dragging_the_line_changes_heat():
    """Dragging the pan's line up makes the wall hotter, in notches of 5 degrees."""
    desk.choose("2 long wither, covered")
    desk.choose(BATCH)
    box = desk.bounds(desk.blocks()[1])
    # 260 °C stands a little above the middle of the range 80 to 400.
    words = desk.words(2)
    assert "260 °C wall" in words, words
    hit = None
    for y in range(box.y + 50, box.y + box.height - 8, 4):
        desk.drag(box.x + box.width // 2, y, box.x + box.width // 2, y - 12, steps=6)
        if desk.words(2) != words:
            hit = y
            break
    assert hit, "the line was not found"
    desk.wait_for(lambda: "260 °C" not in desk.words(2) and "Moisture" in desk.words(2), "another heat")
    wall = float(re.search(r"(\d+) °C wall", desk.words(2))[1])
    assert wall > 260 and wall % 5 == 0, wall
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(2) == words, "the undo")


@tap.case
def alt_makes_fine_steps():
    """With Alt held, time moves in finer notches."""
    before = desk.words(2)
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 5, y, steps=5, hold=["alt"])
    desk.wait_for(lambda: desk.words(2) != before, "another time")
    desk.save()
    fine = float(desk.saved(BATCH)[1]["minutes"])
    assert fine != round(fine), fine
    assert abs(fine * 4 - round(fine * 4)) < 1e-9, "a quarter of a minute"
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.words(2) == before, "the undo")


@tap.case
def dragging_the_body_reorders():
    """Dragging a block's body sideways moves the step to another place."""
    kinds = [s["kind"] for s in desk.saved(BATCH)]
    roll, sun = (desk.bounds(desk.blocks()[i]) for i in (2, 3))
    desk.drag(roll.x + 30, roll.y + 12, sun.x + sun.width - 20, sun.y + 12)
    desk.wait_for(lambda: ": roll," in desk.words(4), "roll at the end")
    desk.save()
    tap.equal([s["kind"] for s in desk.saved(BATCH)], [kinds[0], kinds[1], kinds[3], kinds[2]], "the order")
    desk.key("ctrl+z")
    desk.wait_for(lambda: ": roll," in desk.words(3), "roll back")


@tap.case
def every_block_of_three_batches_can_be_dragged():
    """Every block of three batches takes a drag of its edge and gives it back."""
    for batch in ("2 long wither, covered", "3 drum, firm roll", "5 steamed, two rolls"):
        desk.choose(batch)
        for step in range(1, len(desk.blocks()) + 1):
            before = desk.words(step)
            x, y = desk.end_edge(step)
            desk.drag(x, y, x - 14, y, steps=6)
            desk.wait_for(lambda: desk.words(step) != before, "%s, step %d" % (batch, step))
            desk.key("ctrl+z")
            desk.wait_for(lambda: desk.words(step) == before, "the undo")


tap.main(desk.tree)
