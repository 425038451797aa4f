"""Files: new, save, reopen, a broken file, the question about unsaved changes, batches as a whole."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re

import tap
from bench import LEAFWEND, Bench

BATCH = "1 strong pan, first leaf"
desk = Bench().open(batch=BATCH)


def change():
    """Some change by keys."""
    box = desk.bounds(desk.blocks()[1])
    desk.click(box.x + 40, box.y + 12)
    desk.key("ctrl+Right")
    desk.wait_for(desk.is_changed, "a change")


@tap.case
def save_and_reopen():
    """What was changed and saved is there when the file is opened again."""
    change()
    desk.save()
    said = desk.words(2)
    desk.start(LEAFWEND, [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    desk.choose(BATCH)
    tap.equal(desk.words(2), said, "the pan")


@tap.case
def saving_unchanged_gives_the_same_bytes():
    """Saving without a change leaves the bytes as they are."""
    before = desk.saved_bytes()
    desk.key("ctrl+s")
    desk.get(None, re.compile("^Saved in"))
    tap.equal(desk.saved_bytes(), before, "the file")


@tap.case
def closing_asks_about_changes():
    """Closing with unsaved changes asks; Cancel keeps the window, Save saves and closes."""
    change()
    desk.key("ctrl+w")
    desk.act(desk.get("push button", "Cancel"))
    desk.wait_for(lambda: desk.find("push button", "Cancel") is None, "the question gone")
    assert desk.is_running() and desk.is_changed()
    before = desk.saved_bytes()
    desk.key("ctrl+w")
    question = desk.get(None, re.compile("^Save the changes"))
    desk.act(desk.get("push button", "Save", under=desk.window_of(question)))
    tap.equal(desk.process.wait(10), 0, "the exit status")
    assert desk.saved_bytes() != before


@tap.case
def discarding_discards():
    """Discard closes and leaves the file as it was."""
    desk.start(LEAFWEND, [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    desk.choose(BATCH)
    before = desk.saved_bytes()
    change()
    desk.key("ctrl+w")
    desk.act(desk.get("push button", "Discard changes"))
    tap.equal(desk.process.wait(10), 0, "the exit status")
    tap.equal(desk.saved_bytes(), before, "the file")


@tap.case
def broken_file_tells_its_problems():
    """A broken file shows its problems with line numbers and leaves the open season alone."""
    broken = os.path.join(desk.folder, "broken.leafwend")
    with open(desk.path, encoding="utf-8") as good, open(broken, "w", encoding="utf-8") as bad:
        bad.write(good.read().replace('kind="fix-pan"', 'kind="fix-pot"', 1))
    desk.start(LEAFWEND, [broken])
    told = desk.get("label", re.compile(r"broken\.leafwend:\d+: .*fix-pot"))
    desk.act(desk.get("push button", "Close", under=desk.window_of(told)))
    desk.wait_for(desk.blocks, "the season in hand")
    tap.equal(desk.close(), 0, "the exit status")


@tap.case
def a_failed_save_loses_nothing():
    """A save that fails says why and keeps the changes in hand."""
    desk.start(LEAFWEND, [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    desk.choose(BATCH)
    change()
    kept, away = desk.path, desk.folder + ".away"
    os.rename(desk.folder, away)
    desk.key("ctrl+s")
    told = desk.get(None, re.compile("^The season was not saved"))
    desk.act(desk.get("push button", "Close", under=desk.window_of(told)))
    os.rename(away, desk.folder)
    desk.wait_for(lambda: desk.find(None, re.compile("^The season was not saved")) is None, "the message gone")
    assert desk.is_changed()
    desk.save()
    assert os.path.exists(kept)


@tap.case
def batches_repeat_rename_and_go():
    """A batch is repeated, renamed and removed; undo brings each back."""
    desk.choose("12 long wither, gentle pan")
    desk.key("ctrl+r")
    desk.get("label", "12 long wither, gentle pan (2)")
    desk.key("F2")
    desk.set_text(desk.get("text", "Name"), "17 the same again")
    desk.act(desk.get("push button", "Apply"))
    desk.get("label", "17 the same again")
    desk.key("ctrl+z")
    desk.get("label", "12 long wither, gentle pan (2)")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.find("label", "12 long wither, gentle pan (2)") is None, "the copy gone")


@tap.case
def search_finds_batches():
    """The search narrows the list by any word of name, leaf, tea or note."""
    entry = desk.get("entry", "Find batches")
    desk.set_text(entry, "drum")
    desk.wait_for(lambda: desk.find("label", BATCH) is None, "the pan batch hidden")
    assert desk.find("label", "3 drum, firm roll")
    desk.set_text(entry, "")
    desk.get("label", BATCH)


@tap.case
def new_season():
    """A new season has a batch of four steps and no file."""
    desk.save()
    desk.key("ctrl+n")
    desk.get("label", "not in a file yet")
    tap.equal(len(desk.blocks()), 4, "the number of steps")


@tap.case
def no_batch_has_no_result():
    """Without a batch nothing is told of one, nor a step offered; undo brings the batch and its result back."""
    desk.get("list item", re.compile(r"^Moisture [\d.]+ %"))
    desk.get(None, "Add a step at place 1")
    desk.key("alt+b")
    desk.get("menu item", re.compile("Remove this batch"))
    desk.key("v")
    desk.get("label", re.compile("^The season has no batch"))
    assert desk.find("list item", re.compile(r"^Moisture [\d.]+ %")) is None, "the result of a batch that is gone"
    assert desk.find(None, "Add a step at place 1") is None, "a step offered to no batch"
    desk.key("ctrl+z")
    desk.get("list item", re.compile(r"^Moisture [\d.]+ %"))


tap.main(desk.tree)
