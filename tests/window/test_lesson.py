"""The window of lessons by pointer and keys: it plays as the clock goes, steps from one turning point to the next, asks
first and tells how far off the marks are, and keeps lessons in the season."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import subprocess
import time
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

# Ten times as fast, so that nobody waits.
os.environ["LEAFWEND_CLOCK"] = "%d,10" % time.time()
desk = Bench().open("ondry-ridge-lessons.leafwend")


def window():
    return next((w for w in desk.windows() if desk.name_of(w) == "Lesson"), None)


def view():
    return desk.get("image", re.compile("^Lesson"), under=desk.wait_for(window, "the lesson's window"))


def told():
    return (view().get_description() or "").split("\n")


def opened():
    """Opens the window and waits until it has the keys."""
    desk.key("ctrl+t")
    view()
    desk.wait_for(lambda: subprocess.run(["xdotool", "getactivewindow", "getwindowname"], stdout=subprocess.PIPE, check=False,
                                         stderr=subprocess.DEVNULL, text=True).stdout.strip() == "Lesson", "the keys")
    desk.wait_for(lambda: desk.has(view(), "focused"), "the picture to have the keys")


def says(*words, seconds=10):
    """Waits until what is told has all the words; the lines of it."""
    seen = {}

    def all_there():
        seen["lines"] = told()
        return all(word in "\n".join(seen["lines"]) for word in words)
    try:
        desk.wait_for(all_there, "the lesson to tell %r" % (words,), seconds)
    except AssertionError as missed:
        raise AssertionError("%s\n%s" % (missed, seen.get("lines"))) from missed
    return seen["lines"]


def choose(name, down):
    """Chooses a lesson in the list by keys, then gives the keys to the picture again."""
    combo = desk.get("combo box", "Lesson", under=window())
    for _ in range(40):
        if any(desk.has(n, "focused") for n in desk.walk(combo)):
            break
        desk.key("Tab")
    desk.key("space")
    desk.wait_for(lambda: len([n for n in desk.walk(combo) if n.get_role_name() == "list item"]) > 1, "the list")
    desk.key(*["Down"] * down, "Return")
    desk.wait_for(lambda: desk.name_of(view()) == "Lesson: " + name, name)


def menu(letter):
    """An item of the window's menu by its letter."""
    desk.click(desk.find_all("push button", "Lessons of this season", under=window())[-1])
    desk.get("menu item", re.compile("^New lesson"))
    desk.key(letter)


def lessons():
    return {e.get("name"): e for e in ElementTree.parse(desk.path).getroot().iter(NS + "lesson")}


@tap.case
def steps_from_turn_to_turn():
    """Its key opens it on the batch in hand; arrows and a remote's keys go from one turning point to the next."""
    opened()
    says("Space plays", "1. wither, 0 s", "Short wither: Moisture 76.5 %")
    desk.key("Right")
    first = says("of step 2", "2. fix in pan")[0]
    assert re.match(r"After .* of step 2 (half of the enzyme is gone|heat has become)", first), first
    desk.key("Page_Down")
    second = desk.wait_for(lambda: told()[0] != first and told()[0], "the next one")
    desk.key("Page_Up")
    desk.wait_for(lambda: told()[0] == first, "the one before")
    desk.key("Right")
    desk.wait_for(lambda: told()[0] == second, "the next one by an arrow")
    desk.key("Left", "Left")
    says("Space plays", "1. wither, 0 s")
    nameless = [n.get_role_name() for n in desk.walk(window())
                if n.get_role_name() in ("text", "check box", "combo box") and not desk.name_of(n)]
    tap.equal(nameless, [], "controls without a name")


@tap.case
def plays_as_the_clock_goes():
    """Space plays and pauses; slower and faster by keys; at the end it stands and tells what came out."""
    desk.key("minus")
    desk.get("label", "0.5×", under=window())
    desk.key("space")
    desk.get("push button", "Pause (Space)", under=window())
    desk.wait_for(lambda: not told()[1].startswith("1. wither, 0 s"), "the head to move")
    desk.key("space")
    desk.get("push button", "Play (Space)", under=window())
    stood = told()
    time.sleep(0.3)
    tap.equal(told(), stood, "what is told while it is paused")
    desk.key("plus", "plus")
    desk.get("label", "2×", under=window())
    desk.key("space")
    lines = says("At the end: Moisture", "4. dry in sun, 5 h", seconds=20)
    tap.equal(re.search(r"Moisture ([\d.]+)", lines[0])[1], "%.1f" % desk.computed("Short wither", 4), "what came out")
    desk.get("push button", "Play (Space)", under=window())


@tap.case
def asks_first():
    """A question stops the play; marks by pointer and by keys under names; the answer tells and ranks the distances."""
    choose("Slow pan and reddening", 5)
    desk.key("space")
    says("The pan begins. Where does the oxidation", "2. fix in pan, 0 s", "Strong pan: Oxidation")
    box = desk.bounds(view())
    desk.click(box.x + 0.7 * box.width, box.y + 0.38 * box.height, window=window())
    low = float(re.search(r"Pointed at ([\d.]+)", says("Pointed at")[-1])[1])
    # Beside the plot; the name still has the keys.
    desk.click(box.x + 0.7 * box.width, box.y + 0.97 * box.height, window=window())
    desk.type("drum hand\n")
    says("drum hand marked %.1f %%." % low)
    desk.key("Up", "Up", "Up", "Return")
    high = float(re.search(r"Pointed at ([\d.]+)", says("Pointed at")[-1])[1])
    desk.type("apprentice\n")
    says("apprentice marked %.1f %%." % high)
    desk.key("Page_Down")  # a remote has no other key; no mark is lost
    line = says("Oxidation ends at", seconds=20)[0]
    truth = float(re.search(r"ends at ([\d.]+) %", line)[1])
    ranks = re.findall(r"(\d)\. ([a-z ]+): off by ([+−]?[\d.]+) % points", line)
    wanted = sorted((("drum hand", low - truth), ("apprentice", high - truth)), key=lambda one: abs(one[1]))
    tap.equal([(rank, name) for rank, name, _ in ranks], [(str(i + 1), n) for i, (n, _) in enumerate(wanted)], "ranks")
    for (_, _, off), (_, by) in zip(ranks, wanted):
        assert abs(float(off.replace("−", "-")) - by) < 0.11, (line, wanted)
    desk.key("Page_Down")
    lines = says("After", "of step 2")
    assert "marked" not in "\n".join(lines), lines


@tap.case
def keeps_what_is_said():
    """What is added to a lesson is one edit of the season, saved and read again; so is a new lesson, and its end."""
    before = len(lessons()["Slow pan and reddening"].findall(NS + "moment"))
    menu("s")
    desk.get("label", "What is said here")
    desk.type("Smell it.\n")
    says("Smell it.")
    menu("n")
    desk.get("label", "Name of the new lesson")
    desk.key("ctrl+a")
    desk.type("Mine\n")
    desk.wait_for(lambda: desk.name_of(view()) == "Lesson: Mine", "the new lesson")
    desk.key("Escape")
    desk.wait_for(lambda: window() is None, "the lesson closed")
    desk.save()
    moments = lessons()["Slow pan and reddening"].findall(NS + "moment")
    tap.equal(len(moments), before + 1, "moments")
    assert "Smell it." in [m.text for m in moments], moments
    tap.equal([s.get("batch") for s in lessons()["Mine"].findall(NS + "show")], ["Slow pan", "Strong pan"], "shown")

    desk.start(os.environ["LEAFWEND"], [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    opened()
    says("Space plays")
    choose("Mine", 7)
    menu("r")
    desk.wait_for(lambda: desk.name_of(view()) == "Lesson: Short wither", "the batch in hand again")
    desk.key("F11")
    desk.wait_for(lambda: not desk.find("combo box", "Lesson", under=window()), "the picture alone")
    desk.key("F11", "Escape")
    desk.wait_for(lambda: window() is None, "the lesson closed")
    desk.save()
    assert "Mine" not in lessons(), lessons()
    desk.key("ctrl+z")
    desk.wait_for(desk.is_changed, "the edit taken back")
    desk.save()
    assert "Mine" in lessons(), lessons()


tap.main(desk.tree)
