"""Re-planning the rest by real pointer and keys: the answer is shown and told, left without a trace, taken as one edit
with the curve's jump and the new settings, and undone at once."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tap
from maker import RAINED as BATCH, Rained


desk = Rained().open(batch=BATCH)


def labels():
    """What the window of the new plan says, in its order; spaces that hold numbers together are as others."""
    return [desk.name_of(n).replace("\u00a0", " ") for n in desk.find_all("label")]


def answered():
    desk.get("label", "Weighed and judged", seconds=60)
    return desk.get("push button", "Take the new plan")


def closed():
    desk.wait_for(lambda: desk.find("label", "Weighed and judged") is None, "the window closed")


def before_the_drum():
    """Chooses that the drum has not begun."""
    desk.click(desk.get("combo box", "How far it has come"))
    desk.get(None, "Before step 2 begins")
    desk.key("End", "Return")
    desk.wait_for(lambda: desk.find("label", re.compile("^Moisture of the tea")), "the answer", seconds=60)
    desk.wait_for(lambda: "Before step 2 begins" in labels(), "the choice")


@tap.case
def menu_opens_and_escape_leaves():
    """The menu's item opens it; Escape leaves the season as it was, with nothing to undo."""
    kept, words = desk.saved_bytes(), [desk.words(s) for s in range(1, 6)]
    desk.key("alt+b")
    desk.get("menu item", re.compile("^Re-plan the rest"))
    desk.key("t")
    answered()
    desk.key("Escape")
    closed()
    desk.wait_for(lambda: [desk.words(s) for s in range(1, 6)] == words, "the blocks as they were")
    assert not desk.is_changed()
    assert desk.saved_bytes() == kept
    assert not desk.has(desk.get("push button", "Undo"), "sensitive")


@tap.case
def the_answer_tells_all():
    """Measured, expected and together with their errors; was, now and why; the aims; and the caution."""
    desk.key("ctrl+j")
    answered()
    before_the_drum()
    told = labels()
    for head in ("expected", "measured", "together", "was", "now", "why", "foretold", "as weighed", "new plan"):
        assert head in told, (head, told)
    at = told.index("step 1, 5 h 30 min")
    assert told[at + 1] == "weight, kg" and told[at + 3] == "24.57 ± 0.02", told[at:at + 5]
    assert all(re.fullmatch(r"[\d.]+ ± [\d.]+", t) for t in told[at + 2:at + 5]), told[at:at + 5]
    at = told.index("2 fix in drum")
    assert told[at + 1:at + 3] == ["time", "5 min 30 s"] and re.match("With 5 min 30 s, .* its aim", told[at + 4]), told[at:]
    assert any("local codes and licensed practice" in t for t in told), told
    assert "Moisture of the tea" in told


@tap.case
def taking_is_one_edit():
    """Return takes it: blocks and file have correction and settings; the correction can go alone; one undo takes both."""
    words = desk.words(2)
    assert not desk.is_changed()
    assert desk.has(desk.get("push button", "Take the new plan"), "focused")
    desk.key("Return")
    closed()
    desk.settled()
    assert desk.is_changed()
    assert re.search(r"fix in drum, (7|8) min", desk.words(2)), desk.words(2)
    assert "Corrected by its weigh-ins." in desk.words(1), desk.words(1)
    desk.save()
    text = desk.saved_bytes().decode("utf-8")
    assert text.count("<correction") == 1 and text.count("<shift") == 4, text.count("<correction")
    assert abs(desk.computed(BATCH, 5) - desk.moisture(5)) < 0.06
    assert desk.computed(BATCH, 5) < 7.4
    desk.key("ctrl+j")
    answered()
    desk.click(desk.get("push button", "Remove the correction"))
    closed()
    desk.wait_for(lambda: "Corrected" not in desk.words(1), "no correction")
    assert re.search(r"fix in drum, (7|8) min", desk.words(2)), desk.words(2)
    desk.key("ctrl+z")
    desk.wait_for(lambda: "Corrected" in desk.words(1), "the correction")
    desk.key("ctrl+z")
    desk.wait_for(lambda: "fix in drum, 5 min 30 s" in desk.words(2), "the old time")
    desk.settled()
    desk.save()
    assert "<correction" not in desk.saved_bytes().decode("utf-8")
    assert words.split(",")[0] == desk.words(2).split(",")[0]


@tap.case
def the_pointer_leaves_it():
    """A click on “Leave it” takes nothing, and the board is as it was."""
    kept, words = desk.saved_bytes(), desk.words(2)
    desk.key("ctrl+j")
    answered()
    desk.click(desk.get("push button", "Leave it"))
    closed()
    desk.wait_for(lambda: desk.words(2) == words, "the block as it was")
    assert not desk.is_changed() and desk.saved_bytes() == kept


@tap.case
def what_is_pinned_stays():
    """A setting pinned in its step is not changed; the others are."""
    def pin(pinned):
        desk.take(2)
        desk.key("Return")
        button = desk.get("push button", "Pin time")
        desk.act(button)
        desk.wait_for(lambda: desk.has(button, "pressed") == pinned, "the pin")
        desk.key("Escape")
        desk.wait_for(lambda: not desk.find_all("spin button"), "the settings to close")
    pin(True)
    desk.key("ctrl+j")
    answered()
    before_the_drum()
    told = labels()
    changed = [told[i:i + 2] for i, words in enumerate(told) if re.match(r"\d fix in drum|\d dry", words)]
    assert changed and ["2 fix in drum", "time"] not in changed, changed
    desk.key("Escape")
    closed()
    pin(False)


@tap.case
def without_weigh_ins():
    """A batch without any says so."""
    desk.choose("8 drum, long roll")
    desk.key("ctrl+j")
    desk.get(None, re.compile("no weigh-in that tells of its leaf"))


tap.main(desk.tree)
