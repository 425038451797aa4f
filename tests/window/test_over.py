"""Batches laid over: ticked in the list by pointer and by keys, of another season's file, last year's of the same
kind; as a screen reader hears them; the table of differences, copied and saved, beside the command line's; off again."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import shutil
import subprocess

import tap
from bench import CLI, DATA, Bench
from desk import ask

BATCH = "2 long wither, covered"
OTHER = "4 long wither, bare mats"
LAST = "ondry-ridge-2025.leafwend"
places = {}
desk = Bench().open(batch=BATCH)
last = os.path.join(desk.folder, LAST)
shutil.copy(os.path.join(DATA, LAST), last)
shutil.copy(os.path.join(DATA, "kinds-of-tea.leafwend"), desk.folder)


def tick(batch, window=None):
    return desk.get("check box", "Lay over: " + batch, window or desk.place("list", "Batches"))


def rows():
    """What the rows of batches laid over say, from the top."""
    top = desk.place("list", "Batches laid over")
    return [desk.name_of(row) for row in desk.children(top)] if top else []


def told(panel="Moisture"):
    """What a panel says of what lies over it: letter and name, and what the finished tea has."""
    words = desk.place("image", panel).get_description().partition("Laid over:")[2]
    return dict(re.findall(r"([A-Z] .*?): ([\d.]+) % at the end\.", words))


def laid(*names):
    desk.wait_for(lambda: list(told()) == list(names), "%s laid over, not %s" % (names, list(told())))


def key_line():
    return desk.find("label", re.compile(r"^[A-Z]\u00a0\S+\u00a0"))


def key():
    """The line under the rows, "" if there is none."""
    found = key_line()
    return desk.name_of(found).replace("\u00a0", " ") if found else ""


def windows_named(name):
    return [w for w in desk.windows() if desk.name_of(w) == name]


def window_named(name):
    return desk.wait_for(lambda: windows_named(name), "the window " + name)[0]


def said(pattern):
    if "status" not in places:
        places["status"] = desk.get("status bar", re.compile(pattern))
    desk.wait_for(lambda: re.search(pattern, desk.name_of(places["status"])), pattern)
    return desk.name_of(places["status"])


def act(name, target=None):
    """An action of the window, as a menu item does it."""
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1", "--method", "org.gtk.Actions.Activate", name,
                    "[<b'%s'>]" % target if target else "[]", "{}"], check=True, stdout=subprocess.DEVNULL)


def compare(*options):
    return subprocess.run([CLI, "compare", desk.path, BATCH, last, OTHER, *options], check=True,
                          stdout=subprocess.PIPE, text=True).stdout


@tap.case
def ticks():
    """A click on a tick and Space on a row lay batches over; panels and rows tell them, with gaps and values."""
    desk.click(tick("1 strong pan, first leaf"))
    laid("A 1 strong pan, first leaf")
    desk.click(desk.get("label", BATCH))
    desk.key("Down")
    desk.wait_for(lambda: "3 drum" in desk.name_of(desk.windows()[0]), "the next batch")
    desk.key("space", "Up")
    desk.wait_for(lambda: BATCH in desk.name_of(desk.windows()[0]), "the batch")
    laid("A 1 strong pan, first leaf", "B 3 drum, firm roll")
    assert desk.has(tick("3 drum, firm roll"), "checked")
    one, other = rows()
    assert one.startswith("A 1 strong pan, first leaf: wither, 4 h · "), one
    assert other.startswith("B 3 drum, firm roll: "), other
    row = desk.children(desk.place("list", "Batches laid over"))[1]
    gaps = row.get_description()
    tap.equal(tick("3 drum, firm roll").get_description(), "Laid over as B", "what the tick says")
    for tag in "AB":
        desk.get("label", tag, desk.place("list", "Batches"))
    tap.equal(key(), "", "the key, since the list tells both")
    assert "Without a match in the batch in hand: fix in drum" in gaps and "no match for step 2, fix in pan" in gaps, gaps
    end = subprocess.run([CLI, "run", desk.path, "--batch", "1 strong", "--ends"], check=True, stdout=subprocess.PIPE,
                         text=True).stdout.splitlines()
    column = end[0].split(",").index("moisture_wb_pct")
    # The name has a comma, and quotes around it.
    moisture = float(end[-1].replace("1 strong pan, first leaf", "1").split(",")[column])
    assert abs(float(told()["A 1 strong pan, first leaf"]) - moisture) < 0.06, (told(), moisture)


@tap.case
def by_clock():
    """By the clock a row says what of its time is not shown."""
    def described():
        return desk.children(desk.place("list", "Batches laid over"))[0].get_description()

    by_step = described()
    desk.click(desk.get(None, "By clock"))
    desk.wait_for(lambda: described() == "By the clock it begins 1 h 30 min before the batch in hand.", "what is not shown")
    desk.click(desk.get(None, "By clock"))
    desk.wait_for(lambda: described() == by_step, "what has no match")


@tap.case
def in_hand():
    """A batch does not lie over itself: taken in hand it gives way, and lies over again after that."""
    desk.choose("1 strong pan, first leaf")
    laid("B 3 drum, firm roll")
    desk.choose(BATCH)
    laid("A 1 strong pan, first leaf", "B 3 drum, firm roll")


@tap.case
def dragged():
    """A drag of the batch in hand leaves what lies over as it was; it stays after undo."""
    before = told("Oxidation")
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 40, y)
    desk.settled()
    tap.equal(told("Oxidation"), before, "what lies over")
    desk.key("ctrl+z")
    desk.settled()
    tap.equal(told("Oxidation"), before, "what lies over after undo")


@tap.case
def last_year():
    """Ctrl+L lays last year's batch of the same kind over, from the file beside, and says why; none is said plainly."""
    desk.key("ctrl+l")
    laid("A 1 strong pan, first leaf", "B 3 drum, firm roll", "C 2025 · " + OTHER)
    assert "29 Mar 2025" in said("^Laid over: " + OTHER) and "5" in said("nearest in date of 5")
    desk.wait_for(lambda: key() == "C 2025 · " + OTHER, "the name that no list has and no row has room for")
    act("over-none")
    desk.wait_for(lambda: not rows() and not told(), "nothing over")
    with open(last, encoding="utf-8") as file:
        text = file.read()
    with open(last, "w", encoding="utf-8") as file:
        file.write(text.replace('start="2025', 'start="2024'))
    desk.key("ctrl+l")
    said("^No batch of 2025 is this kind of tea or has the same steps; 2 other seasons looked through")
    assert not rows()
    with open(last, "w", encoding="utf-8") as file:
        file.write(text)


@tap.case
def another_season():
    """The file chooser leads to another season's batches; a click on a tick there lays one over; the file is only read."""
    with open(last, "rb") as file:
        before = file.read()
    desk.click(desk.get("label", BATCH))
    desk.key("ctrl+shift+l")
    desk.wait_for(lambda: len(desk.windows()) == 2, "the chooser")
    desk.type(last + "\n")
    window = window_named("Ondry Ridge, spring 2025")
    desk.click(tick(OTHER, window))
    laid("A 2025 · " + OTHER)
    desk.click(desk.get("label", "5 white, two days", window))
    desk.key("space")
    laid("A 2025 · " + OTHER, "B 2025 · 5 white, two days")
    desk.key("space")
    laid("A 2025 · " + OTHER)
    desk.wait_for(lambda: key() == "A 2025 · " + OTHER, "its name")
    row, line = (desk.resting(n) for n in (desk.children(desk.place("list", "Batches laid over"))[0], key_line()))
    assert row.y + row.height <= line.y + 1 and line.y + line.height <= desk.bounds(desk.place("image", "Moisture")).y, (row, line)
    desk.key("Escape")
    desk.wait_for(lambda: not windows_named("Ondry Ridge, spring 2025"), "its end")
    with open(last, "rb") as file:
        tap.equal(file.read(), before, "the other file")
    assert not desk.is_changed()


@tap.case
def changed_meanwhile():
    """What somebody changes in the other file lies over as it is then; a damaged or removed file leaves it as it was."""
    name = "A 2025 · " + OTHER
    before = told("Moisture")[name]
    with open(last, encoding="utf-8") as file:
        text = file.read()

    def write(words):
        with open(last + ".new", "w", encoding="utf-8") as file:
            file.write(words)
        os.replace(last + ".new", last)

    at = text.index('name="%s"' % OTHER)
    start = text.index('minutes="', at)
    longer = text[:start] + re.sub(r'minutes="[^"]*"', 'minutes="30"', text[start:], count=1)
    write(longer)
    said("^ondry-ridge-2025.leafwend was changed: what lies over of it is as it is there now")
    desk.wait_for(lambda: told("Moisture").get(name) not in (None, before), "another curve")
    changed = told("Moisture")[name]
    assert "wither, 30 min" in rows()[0], rows()
    write("<season")
    said("^ondry-ridge-2025.leafwend was changed and cannot be read now")
    tap.equal(told("Moisture")[name], changed, "what lies over of a damaged file")
    os.remove(last)
    said("^ondry-ridge-2025.leafwend is gone")
    write(text)
    said("^ondry-ridge-2025.leafwend was changed: what lies over of it")
    desk.wait_for(lambda: told("Moisture").get(name) == before, "the first curve")


@tap.case
def removed():
    """A batch removed while it lies over goes, and lies over again after undo."""
    desk.click(tick("1 strong pan, first leaf"))
    laid("A 2025 · " + OTHER, "B 1 strong pan, first leaf")
    desk.choose("1 strong pan, first leaf")
    act("remove-batch")
    desk.wait_for(lambda: not desk.find("label", "1 strong pan, first leaf"), "the removal")
    desk.choose(BATCH)
    laid("A 2025 · " + OTHER)
    desk.key("ctrl+z")
    desk.get("label", "1 strong pan, first leaf")
    desk.choose(BATCH)
    laid("A 2025 · " + OTHER, "B 1 strong pan, first leaf")
    desk.click(tick("1 strong pan, first leaf"))
    laid("A 2025 · " + OTHER)


@tap.case
def damaged():
    """A damaged file tells its problems with file and line, and what lies over stays."""
    bad = os.path.join(desk.folder, "bad.leafwend")
    with open(last, encoding="utf-8") as good, open(bad, "w", encoding="utf-8") as file:
        file.write(good.read().replace('kind="fix-pan"', 'kind="fix-pot"', 1))
    act("over-path", bad)
    desk.get("label", re.compile(r"bad\.leafwend:\d+: .*fix-pot"))
    desk.key("Escape")
    desk.wait_for(lambda: len(desk.windows()) == 1, "its end")
    os.remove(bad)
    laid("A 2025 · " + OTHER)
    act("over-path", desk.path)
    said("^That is the season in hand")


def shown(window):
    """The table's numbers by place and outcome, as far as they are on the screen."""
    found = {}
    for cell in desk.find_all("label", re.compile(r"^\+|^−|^0|^–"), window):
        match = re.match(r"(.*); (.*): this (\S+), that (\S+), difference (\S+)$",
                         ask(cell.get_description) or "")
        if match:
            found[match[2], match[1].partition(",")[0]] = [n.replace("−", "-").lstrip("+") for n in match.group(3, 4, 5)]
    return found


@tap.case
def differences():
    """Ctrl+D shows the numbers of leafwend-cli compare; its CSV, saved by the dialog, is the command line's."""
    desk.key("ctrl+d")
    window = window_named("Differences")
    table = desk.wait_for(lambda: shown(window), "the table")
    lines = [[cell.strip() for cell in line.strip("|").split("|")] for line in compare().splitlines()[2:]]
    cli = {(line[0], line[5]): line[7:] for line in lines}
    for outcome, label in (("minutes", "Time in the step"), ("moisture", "Moisture"), ("oxidation", "Oxidation"),
                           ("rupture", "Cell rupture"), ("enzyme", "Enzyme left")):
        tap.equal(table["1 wither", label], cli["1", outcome], label)
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 30, y, release=False)
    desk.get("label", re.compile("^From before the change"), window)
    desk.let_go()
    desk.wait_for(lambda: shown(window) and shown(window) != table, "numbers of the change")
    desk.get("label", re.compile("^This: "), window)
    desk.act(desk.get("push button", re.compile("^Undo")))
    desk.wait_for(lambda: shown(window) == table, "the numbers of before")

    path = os.path.join(desk.folder, "differences.csv")
    desk.click(desk.get("push button", re.compile("^Save as CSV"), window))
    desk.wait_for(lambda: len(desk.windows()) == 3, "the dialog")
    desk.key("ctrl+a")
    desk.type(path + "\n")
    desk.wait_for(lambda: os.path.exists(path), "the file")
    with open(path, encoding="utf-8", newline="") as file:
        text = file.read()
    tap.equal(text, compare("--csv"), "the saved table")
    for line in csv.DictReader(text.splitlines()):
        tap.equal((line["batch"], line["other batch"], line["other start"][:10]), (BATCH, OTHER, "2025-03-29"), "the batches")
        this, that, difference = (float(line[name] or "nan") for name in ("this", "that", "difference"))
        assert abs(that - this - difference) <= 1e-6 * max(1, abs(this)), line
        assert None not in line and None not in line.values(), line

    desk.click(desk.get("check box", "By the time of day", window))
    desk.wait_for(lambda: any(re.match(r"day 2, \d\d:\d\d$", place) for place, _ in shown(window)), "times of day")
    desk.get(None, "Time of day", window)
    desk.get("label", re.compile("^This: %s, 26 Mar 2026. That: %s, 29 Mar 2025. " % (BATCH, OTHER)), window)
    desk.click(desk.get("push button", "Copy as text", window))
    desk.get("label", "The table is on the clipboard as text.", window)
    desk.key("Escape")
    desk.wait_for(lambda: not windows_named("Differences"), "its end")
    find = desk.get("entry", "Find batches")
    desk.click(find)
    desk.key("ctrl+v")
    desk.wait_for(lambda: desk.text_of(find), "the text from the clipboard")
    tap.equal(desk.text_of(find), compare("--by", "clock"), "the copied table")
    desk.key("ctrl+a", "Delete")


@tap.case
def off():
    """Delete on a row and its button take a batch off; an untick, too."""
    desk.click(tick("1 strong pan, first leaf"))
    laid("A 2025 · " + OTHER, "B 1 strong pan, first leaf")
    desk.click(desk.get("push button", "Take off 2025 · " + OTHER, desk.place("list", "Batches laid over")))
    laid("B 1 strong pan, first leaf")
    desk.click(tick("3 drum, firm roll"))
    laid("A 3 drum, firm roll", "B 1 strong pan, first leaf")
    row = desk.children(desk.place("list", "Batches laid over"))[0]
    box = desk.bounds(row)
    desk.click(box.x + 40, box.y + box.height // 2)
    desk.wait_for(lambda: desk.has(row, "focused"), "the row's focus")
    desk.wait_for(lambda: key() == desk.name_of(row) and "; roll, 14 min · 8.0 kPa; " in key(), "all that the row says")
    desk.key("Delete")
    laid("B 1 strong pan, first leaf")
    desk.wait_for(lambda: desk.has(desk.children(desk.place("list", "Batches laid over"))[0], "focused"), "the next row's")
    desk.click(tick("1 strong pan, first leaf"))
    desk.wait_for(lambda: not rows() and not told(), "nothing over")


@tap.case
def many():
    """Twelve lie over by keys alone; their rows scroll, and those in sight are whole; a drag leaves all their values."""
    desk.key("ctrl+l")
    desk.click(desk.get("label", "1 strong pan, first leaf"))
    desk.key(*["space", "Down"] * 12)
    desk.key("space", "Home")
    desk.wait_for(lambda: len(rows()) == 13 and len(told()) == 13, "thirteen but the one in hand")
    top = desk.place("list", "Batches laid over")
    pane, boxes = desk.resting(top.get_parent().get_parent()), [desk.bounds(row) for row in desk.children(top)]
    inside = [b for b in boxes if pane.y <= b.y and b.y + b.height <= pane.y + pane.height]
    outside = [b for b in boxes if b.y >= pane.y + pane.height]
    assert len(inside) >= 3 and len(outside) >= 1 and len(inside) + len(outside) == 13, (pane, boxes)
    before = told()
    x, y = desk.end_edge(2)
    desk.drag(x, y, x + 30, y)
    desk.settled()
    tap.equal(told(), before, "what lies over")
    desk.key("ctrl+z")
    act("over-none")
    desk.wait_for(lambda: not rows() and not key(), "nothing over")


tap.main(desk.tree if os.environ.get("TREE") else None)
