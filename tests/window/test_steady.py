"""Steady through the weather: amounts typed, samples computed and called off, the bands, what a drag makes of them,
steadier settings taken and undone. By pointer and keys, read as a screen reader reads, beside the command line."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import subprocess
import time

import tap
from bench import CLI, Bench

BATCH = "1 strong pan, first leaf"
SAMPLES, WALL, SEED = 300, 9, 4
LABELS = {"oxidation": "speed of oxidation (leaf)", "air": "air of room and weather (weather)",
          "skin": "skin of the leaf (leaf)", "enzyme": "speed of enzyme loss (leaf)"}
desk = Bench().open(batch=BATCH)


def page():
    """The page's parts."""
    return desk.place("panel", "Steady through the weather")


def field(name):
    return desk.get("text", name, under=page())


def fill(name, text):
    """Types into a field that Tab leads to; the page scrolls there by itself."""
    ask = field(name)
    lead(ask)
    desk.key("ctrl+a")
    desk.type(str(text))
    desk.wait_for(lambda: desk.text_of(ask) == str(text), "%s %s" % (name, text))


def lead(node):
    """Brings the keyboard there by Tab, on or back."""
    here = next((n for n in desk.walk(page()) if desk.has(n, "focused") and desk.has(n, "focusable")), None)
    way = "shift+Tab" if here is not None and desk.bounds(here).y > desk.bounds(node).y else "Tab"

    def is_there():
        if not desk.has(node, "focused"):
            desk.key(way)
            time.sleep(0.05)
        return desk.has(node, "focused")
    desk.wait_for(is_there, "%s to lead to %s" % (way, desk.name_of(node)), 20)


def compute():
    desk.act(desk.get("push button", re.compile("^Compute "), under=page()))


def note(pattern, seconds=60):
    return desk.get("label", re.compile(pattern), under=page(), seconds=seconds)


def number(name):
    """What stands beside the bar of that name."""
    labels = [desk.text_of(n) for n in desk.find_all("label", under=page())]
    return labels[next(i for i, words in enumerate(labels) if words.startswith(name)) + 1]


def told(panel):
    return desk.get("image", panel).get_description()


def by_cli():
    """The same spread by the command line, figures by (step, outcome, source, figure)."""
    rows = subprocess.run([CLI, "spread", desk.path, "--batch", BATCH, "--samples", str(SAMPLES), "--seed", str(SEED),
                           "--vary", "wall=%d" % WALL, "--csv"], check=True, stdout=subprocess.PIPE,
                          text=True).stdout.splitlines()
    return {(r["step"], r["outcome"], r["source"], r["figure"]): float(r["value"]) for r in csv.DictReader(rows)
            if r["value"]}


def picture():
    path = os.path.join(desk.folder, "picture.png")
    desk.screenshot(path)
    box, (left, top) = desk.bounds(desk.get("image", "Moisture")), desk.window_position()
    return subprocess.run(["convert", path, "-crop", "%dx%d+%d+%d" % (box.width, box.height, left + box.x, top + box.y),
                           "rgb:-"], check=True, stdout=subprocess.PIPE).stdout


@tap.case
def numbers_are_those_of_the_command_line():
    """Amounts, samples and seed are typed; share, each aim, the sources and the bands are the command line's."""
    before = picture()
    desk.click(desk.get("page tab", "Steady"))
    fill("wall temperature", WALL)
    fill("samples", SAMPLES)
    fill("seed", SEED)
    compute()
    share = desk.text_of(note(r"^[\d.]+ ± [\d.]+ %$"))
    figures = by_cli()
    tap.equal(share.split(" ")[0], "%.1f" % (100 * figures["", "", "", "inside"]), "the share")
    ppk = figures["4", "moisture", "", "ppk"]
    assert note(r"^Ppk %.2f$" % ppk), ppk
    tap.equal(number("Moisture 4.0 to").split(" ")[0], "%.1f" % (100 * figures["4", "moisture", "", "inside"]), "the aim")
    humidity = 100 * figures["4", "moisture", "humidity", "first"]
    tap.equal(number("humidity (weather)").split(" ")[0], "%.0f" % humidity, "humidity's share")
    assert note(r"^Moisture: most of the difference comes from humidity, %.0f %%" % humidity)
    band = re.search(r"nine in ten end between ([\d.]+) and ([\d.]+), half", told("Moisture"))
    tap.equal(band.groups(), ("%.1f" % figures["4", "moisture", "", "q05"], "%.1f" % figures["4", "moisture", "", "q95"]),
              "the band")
    assert picture() != before, "no bands are seen"


@tap.case
def another_outcome_is_told():
    """The outcome is chosen by keys, and the sources are told of it."""
    choice = desk.get("combo box", "What varies most in", under=page())
    lead(desk.children(choice)[0])
    desk.key("space")
    desk.key("Down", "Return")
    note("^Oxidation: ")
    most, figure = max((value, key[2]) for key, value in by_cli().items()
                       if key[:2] == ("4", "oxidation") and key[3] == "total")
    assert "%.0f ±" % (100 * most) in number(LABELS[figure]), (most, figure, number(LABELS[figure]))


@tap.case
def a_bad_amount_is_refused():
    """What is no amount is refused beside the fields and changes nothing."""
    fill("wall temperature", "many")
    note("^Write a number from 0 to 100")
    desk.act(desk.get("push button", "Usual amounts", under=page()))
    desk.wait_for(lambda: desk.text_of(field("wall temperature")) == "5", "the usual amount")
    assert not desk.find("label", re.compile("^Write a number"), under=page())
    note("^Outdated")
    fill("wall temperature", "many")
    note("^Write a number from 0 to 100")
    fill("wall temperature", WALL)
    desk.wait_for(lambda: not desk.find("label", re.compile("^Write a number"), under=page()), "the refusal to go")
    note("^The bands in the panels")


@tap.case
def what_is_under_way_is_cancelled():
    """Cancel ends it and leaves what was there, outdated by the other number of samples."""
    fill("samples", 16384)
    note("^Outdated")
    assert "nine in ten" not in told("Moisture"), "bands of what is outdated"
    compute()
    note("^The batch is being computed")
    desk.act(desk.get("push button", "Cancel", under=page()))
    note("^Outdated")
    fill("samples", SAMPLES)
    note("^The bands in the panels")
    assert "nine in ten" in told("Moisture")


@tap.case
def a_drag_makes_it_outdated():
    """Bands go while a block is dragged and stay away; undo brings them back."""
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 30, y, release=False)
    note("^Outdated")
    desk.let_go()
    desk.settled()
    assert "nine in ten" not in told("Moisture"), told("Moisture")
    desk.key("ctrl+z")
    note("^The bands in the panels")
    desk.wait_for(lambda: "nine in ten" in told("Moisture"), "the bands")


@tap.case
def steadier_settings_are_taken_and_undone():
    """What is found is shown with its gain, taken by a button, and gone by one undo."""
    before = [desk.words(i) for i in range(1, 5)]
    seek = desk.get("push button", "Look for steadier settings", under=page())
    lead(seek)
    desk.key("space")
    stop = desk.get("push button", "Stop looking", under=page())
    desk.wait_for(lambda: desk.has(stop, "focused"), "the keyboard to be where the search can be stopped")
    desk.key("space")
    desk.wait_for(lambda: desk.has(seek, "focused") and desk.has(seek, "sensitive"), "the search to have stopped")
    desk.act(seek)
    found = re.match(r"Inside every aim: ([\d.]+) → ([\d.]+) %, the difference ± ([\d.]+)",
                     desk.text_of(note("^Inside every aim: ", 120)))
    assert float(found[2]) > float(found[1]) + float(found[3]), found[0]
    changes = desk.text_of(note("^Step 1, "))
    assert " → " in changes, changes
    desk.act(desk.get("push button", "Take", under=page()))
    note("^Outdated")
    desk.wait_for(lambda: [desk.words(i) for i in range(1, 5)] != before, "other settings")
    desk.key("ctrl+z")
    desk.wait_for(lambda: [desk.words(i) for i in range(1, 5)] == before, "one undo")
    assert not desk.is_changed(), "more than one undo"


@tap.case
def missed_aims_come_first():
    """A plan that misses its aims is told to reach them, and nothing is looked for."""
    x, y = desk.end_edge(4)
    desk.drag(x, y, x - 150, y)
    desk.settled()
    desk.act(desk.get("push button", "Look for steadier settings", under=page()))
    note("^The plan itself misses its aims")
    desk.act(desk.get("push button", "Reach the aims", under=page()))
    desk.get("status bar", "All aims are met.")


@tap.case
def without_steps_nothing_is_offered():
    """A batch that has lost its steps says why nothing can be computed, and offers neither; undo brings both back"""
    run, seek = (desk.get("push button", re.compile(name), under=page()) for name in ("^Compute ", "^Look for"))
    for left in range(len(desk.blocks()) - 1, -1, -1):
        box = desk.bounds(desk.blocks()[0])
        desk.click(box.x + box.width / 2, box.y + 12)
        desk.key("Delete")
        desk.wait_for(lambda: len(desk.blocks()) == left, "%d steps" % left)
    note("^The batch has no steps yet")
    assert not desk.has(run, "sensitive") and not desk.has(seek, "sensitive")
    desk.key("ctrl+z")
    desk.wait_for(lambda: desk.has(run, "sensitive") and desk.has(seek, "sensitive"), "both to be offered")


tap.main(desk.tree)
