"""Every screen in a language of long words, made by long_words.py for the time of the test: each window keeps within 1280 by
720, nothing that takes the keyboard stands outside of it, and units that are none stay empty. With $LONG_WORDS_PICTURES a
folder, it leaves pictures there."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import shutil
import subprocess
import tempfile

import tap
from bench import DATA, Bench
from long_words import LANGUAGE, longer, make

WIDTH, HEIGHT = 1280, 720
PICTURES = os.environ.get("LONG_WORDS_PICTURES")
ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
BATCH = "2 long wither, covered"
OUTCOMES = ("Moisture", "Oxidation", "Cell rupture")  # whose columns are in sight before anybody scrolls

words = tempfile.mkdtemp(prefix="words.")
make(ROOT, words)
os.environ.update(LEAFWEND_LOCALE=words, LANGUAGE=LANGUAGE)
desk = Bench()


def act(action, *targets):
    """An action of the main window."""
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1", "--method", "org.gtk.Actions.Activate", action,
                    "[%s]" % ", ".join("<%s>" % t for t in targets), "{}"], check=True, stdout=subprocess.DEVNULL)


def fits(name, window=None, all_in_it=True):
    """Looks at a window, or at the first, and by default at all that is in it, which takes a while."""
    window = window or desk.windows()[0]
    box = desk.bounds(window)
    if PICTURES:
        desk.screenshot(os.path.join(PICTURES, name + ".png"))
    assert box.width <= WIDTH and box.height <= HEIGHT, "%s is %d by %d" % (name, box.width, box.height)
    for node in desk.walk(window) if all_in_it else ():
        assert "Content-Type" not in desk.name_of(node), "%s tells the catalogue's head: %s" % (name, desk.name_of(node))
        if desk.has(node, "focusable") and desk.has(node, "showing") and desk.has(node, "visible"):
            at = desk.bounds(node)
            assert at.x >= 0 and at.x + at.width <= box.width, "%s: %s at %s" % (name, desk.name_of(node), at)


def opened(name, role, text):
    """Waits for a widget in a window of its own, looks at that window and closes it."""
    desk.wait_for(lambda: len(desk.windows()) > 1 and desk.find(role, re.compile(longer(text)), under=desk.windows()[1]),
                  name, 30)
    fits(name, desk.windows()[1])
    desk.key("Escape")
    desk.wait_for(lambda: len(desk.windows()) == 1, name + " to close")


@tap.case
def the_board_and_its_pages():
    """The board, and every page beside it."""
    desk.start(os.environ["LEAFWEND"], [path])
    desk.wait_for(lambda: desk.find_all("list item"), "the batches", 30)
    desk.click(desk.get("label", BATCH))
    front = subprocess.run(["xdotool", "getactivewindow"], check=True, stdout=subprocess.PIPE, text=True).stdout.strip()
    subprocess.run(["xdotool", "windowsize", "--sync", front, str(WIDTH), str(HEIGHT)], check=False, timeout=10)
    for name in ("Result", "Knock-on", "Why here", "Weigh-ins", "Steady"):
        desk.click(desk.get("page tab", longer(name)))
        fits("board " + name, all_in_it=name == "Steady")
        if name == "Knock-on":
            desk.get("table cell", re.compile(": " + longer("Moisture")), seconds=30)
            fits("board Knock-on", all_in_it=False)
            table = desk.bounds(desk.get("table", longer("Knock-on")))
            heads = [desk.bounds(desk.get("push button", re.compile("^%s: " % longer(of)))) for of in OUTCOMES]
            assert all(table.x <= at.x and at.x + at.width <= table.x + table.width for at in heads), (heads, table)
    desk.click(desk.get("page tab", longer("Result")))


@tap.case
def windows_of_their_own():
    """Fit, find, wall card, re-plan, a log, differences, the leaf, what is written down."""
    act("over-last-year")
    desk.wait_for(lambda: desk.find("list item", re.compile("^A ")), "last year's batch", 20)
    fits("board laid over")
    for name, action, targets, role, text in (
            ("fit", "fit-leaf", (), "push button", "^Fit$"),
            ("find", "find-batches", (), "combo box", "^Look in$"),
            ("card", "wall-card", (), "image", "^Preview of the wall card"),
            ("replan", "replan", (), "push button", "^Take the new plan$"),
            ("log", "import-log-table", ("b'%s'" % table,), "push button", "^Import$"),
            ("differences", "over-table", (), "push button", "^Copy as text$"),
            ("leaf", "edit-leaf", (), "push button", "^Cancel$"),
            ("batch", "batch-facts", (), "push button", "^Choose the day$"),
            ("weather", "make-weather", (), "text", "^Name$"),
            ("season", "season-facts", (), "text", "^Name of the season$")):
        act(action, *targets)
        opened(name, role, text)


folder = tempfile.mkdtemp(prefix="long.")
for season in ("ondry-ridge-2026.leafwend", "ondry-ridge-2025.leafwend"):
    shutil.copy(os.path.join(DATA, season), folder)
path, table = os.path.join(folder, "ondry-ridge-2026.leafwend"), os.path.join(folder, "pan.csv")
with open(table, "w", encoding="utf-8") as file:
    file.write("Elapsed (s),Leaf,Pan\n" + "".join("%d,%d,%d\n" % (s, 20 + s / 10, 250) for s in range(0, 600, 10)))

tap.main(desk.tree)
