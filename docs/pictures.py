"""The documentation's pictures: opens the demo seasons, does what the pictures show, takes them, and prints
what the window then says, for those who write about it."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import unittest.mock

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "tests", "window"))
from bench import DATA, LEAFWEND  # noqa: E402
from maker import BUYERS, RAINED, Maker, Rained  # noqa: E402

folder = sys.argv[1]
PAN = "1 strong pan, first leaf"
REST_S = 3.5  # until tips and slides are over, and the ring around what has the keys is gone


CORNER = 1330, 840  # of the screen, where no window is


def rest(desk):
    """Puts the pointer where it brings up no tip and reads nothing."""
    desk.move(*CORNER)


def take(desk, name, still=True):
    """The picture of the window alone, without the black screen around it."""
    path = os.path.join(folder, name)
    if still:
        desk.settled()
        rest(desk)
    time.sleep(REST_S)
    desk.screenshot(path)
    # Without a compositor the shadow around what pops up is a black frame, broader than any letter's stroke.
    subprocess.run(["convert", path, "-trim", "+repage",
                    "(", "-clone", "0", "-fill", "#f0f0ee", "-colorize", "100", ")",
                    "(", "-clone", "0", "-fill", "white", "+opaque", "black", "-negate", "-write", "mpr:black",
                    "-morphology", "Open", "Rectangle:3x15",
                    "(", "mpr:black", "-morphology", "Open", "Rectangle:15x3", ")",
                    "-compose", "Lighten", "-composite", ")", "-compose", "Over", "-composite",
                    "+dither", "-colors", "255", "-strip", "-define", "png:compression-level=9", "PNG8:" + path],
                   check=True)
    tell(desk, name)


def in_front():
    return subprocess.run(["xdotool", "getactivewindow"], stdout=subprocess.PIPE, text=True, check=True).stdout.strip()


def take_window(desk, name):
    """The picture of the window in front alone."""
    path = os.path.join(folder, name)
    time.sleep(REST_S)
    front = in_front()
    subprocess.run(["import", "-silent", "-window", front, "+dither", "-colors", "255", "-strip",
                    "-define", "png:compression-level=9", "PNG8:" + path], check=True)
    print("== " + name)


def tell(desk, name):
    print("== " + name)
    for node in desk.find_all("list item", re.compile(r"^[A-Z][a-z ]+ [\d.]")):
        print("  " + desk.name_of(node))
    print("  at the foot: " + desk.name_of(desk.get("status bar")))


def act(action, path):
    """The window's action on a file, as if the file had been chosen in the dialog."""
    subprocess.run(["gdbus", "call", "--session", "--dest", "page.leafwend.Leafwend",
                    "--object-path", "/page/leafwend/Leafwend/window/1",
                    "--method", "org.gtk.Actions.Activate", action, "[<b'%s'>]" % path, "{}"],
                   check=True, stdout=subprocess.DEVNULL)


def tell_labels(desk, pattern=".", under=None):
    for node in desk.find_all("label", re.compile(pattern), under=under):
        print("  " + desk.text_of(node))


def window():
    """A drag of the pan's edge, with locked outcomes held and the ghost of what was before."""
    with Maker().open(batch=BUYERS) as desk:
        desk.lock("Moisture", "Oxidation", "Cell rupture")
        x, y = desk.end_edge(2)
        desk.drag(x, y, x - 10, y, release=False)
        desk.get("status bar", "All that is locked is held.", seconds=60)
        take(desk, "window.png", still=False)
        desk.key("Escape")
        desk.let_go()


def first():
    """The demo as it opens."""
    with Maker() as desk:
        desk.start(LEAFWEND)
        desk.wait_for(desk.blocks, "the blocks")
        take(desk, "guide/open-1.png")


def board():
    """The reading line in the wither, and why the leaf oxidises there as it does."""
    with Maker().open(batch=PAN) as desk:
        desk.click(desk.get("page tab", "Why here"))
        desk.take(1)
        desk.key(*["period"] * 3)
        take(desk, "guide/board-1.png")
        tell_labels(desk, under=desk.get("panel", "Why here"))


def drag():
    """The wither's edge pulled in, the button still down."""
    with Maker().open(batch=PAN) as desk:
        tell(desk, "before the drag")
        x, y = desk.end_edge(1)
        desk.drag(x, y, x - 14, y, release=False)
        take(desk, "guide/drag-1.png", still=False)
        desk.let_go()
        desk.wait_for(lambda: "4 h, " not in desk.words(1), "the drag to be taken")
        tell(desk, "let go")


def aim():
    with Maker().open(batch=PAN) as desk:
        desk.key("ctrl+r")
        desk.get("label", re.compile(r"first leaf \(2\)$"))
        for outcome in ("Moisture", "Oxidation", "Cell rupture"):
            desk.as_now(outcome)
        take(desk, "guide/aim-1.png")
        desk.swap(2, "fix in drum")
        take(desk, "guide/aim-2.png")
        desk.key("ctrl+e")
        desk.told("All aims are met")
        take(desk, "guide/aim-3.png")


def knock():
    with Maker().open("ondry-ridge-2025.leafwend", "4 long wither, bare mats") as desk:
        take(desk, "guide/knock-1.png")
        desk.click(desk.get("page tab", "Knock-on"))
        desk.wait_for(lambda: desk.find_all("table cell", re.compile(": Roast ")), "the table")
        desk.click(desk.get("push button", re.compile("^Settings: ")))
        desk.key(*["Right"] * 5, "ctrl+Up", "Up", "Return")
        take(desk, "guide/knock-2.png")
        for node in desk.find_all("table cell", re.compile(": Roast ")):
            print("  " + desk.name_of(node))
        desk.click(desk.get("page tab", "Result"))
        desk.set(1, "cover", "78")
        take(desk, "guide/knock-3.png")
        desk.leave()
        take(desk, "guide/knock-4.png")


def hold():
    with Maker() as desk:
        desk.hold_the_cup()
        take(desk, "guide/hold-1.png")
        desk.set(1, "air humidity", "88", off_weather=True)
        desk.told("All that is locked is held")
        desk.leave()
        take(desk, "guide/hold-2.png")


def weather():
    with Maker() as desk:
        desk.hold_the_cup()
        desk.import_table(desk.write_damp_days("damp days", BUYERS)[0])
        desk.give_weather("damp days")
        desk.told("All that is locked is held")
        desk.click(desk.get(None, "By clock"))
        take(desk, "guide/weather-1.png")


def card():
    with Maker().open(batch=BUYERS) as desk:
        desk.key("ctrl+p")
        desk.get("image", re.compile("^Preview of the wall card"), seconds=30)
        subprocess.run(["xdotool", "windowsize", in_front(), "980", "870"], check=True)  # a whole page
        time.sleep(2)
        take_window(desk, "guide/card-1.png")
        sheet = desk.get("check box", "With the batch sheet, to write on")
        desk.key_to(sheet, "Tab")
        desk.key("space")
        time.sleep(1)
        box = desk.bounds(desk.get("image", re.compile("^Preview of the wall card")))
        desk.click(box.x + 100, box.y + 100, button=5, times=30, window=desk.window_of(sheet))
        take_window(desk, "guide/card-2.png")


def lesson():
    """What a lesson says after the pan; and the answer to a question that was asked first."""
    with Maker().open("ondry-ridge-lessons.leafwend") as desk:
        def begin(downwards):
            desk.click(desk.get("combo box", "Lesson"))
            desk.key("Home", *["Down"] * downwards, "Return")

        def told(words):
            view = desk.get("image", re.compile("^Lesson"))
            desk.wait_for(lambda: words in (view.get_description() or ""), words, 30)
            print("  " + view.get_description())
        desk.key("ctrl+t")
        desk.get("image", re.compile("^Lesson"))
        begin(1)
        for _ in range(20):
            desk.key("Right")
            if "same fire" in desk.get("image", re.compile("^Lesson: Wither and pan")).get_description():
                break
        told("same fire")
        take_window(desk, "guide/lesson-1.png")
        begin(5)
        desk.key("space")
        told("Where does the oxidation")
        for name, key, times in (("drum hand", "Down", 17), ("apprentice", "Down", 8), ("roller", "Up", 4)):
            desk.key(*[key] * times, "Return")
            desk.type(name + "\n")
            told(name + " marked")
        desk.key("Page_Down")
        told("Oxidation ends at")
        take_window(desk, "guide/lesson-2.png")


def run():
    """A batch in its first minutes, on a morning of the demo's spring; and what batch 9 would have been told before its drum."""
    morning, pace = 1775808000, 60  # 10 April 2026, 8 h
    os.environ["LEAFWEND_CLOCK"] = "%d,%d" % ((time.time() * pace - morning) / (pace - 1), pace)
    with Maker().open(batch=PAN) as desk:
        desk.key("ctrl+r")
        desk.get("label", re.compile(r"first leaf \(2\)$"))
        desk.save()
        desk.key("alt+b")
        desk.get("menu item", re.compile("Start this batch"))
        desk.key("s")
        desk.get("label", re.compile("follow local codes and licensed practice"))
        desk.key("Return")
        desk.get("status bar", re.compile("^The batch is running"))
        time.sleep(20)
        desk.key("m")
        desk.wait_for(lambda: desk.find("text", "Moment"), "the entry")
        desk.key("w")
        desk.type("7.90")
        print("  " + desk.name_of(desk.get("status bar", re.compile("kg fresh at"))))
        desk.key("Return")
        desk.wait_for(lambda: not desk.find("text", "Moment"), "the entry to close")
        take(desk, "guide/run-1.png")
    del os.environ["LEAFWEND_CLOCK"]
    with Rained().open(batch=RAINED) as desk:
        desk.key("ctrl+j")
        desk.get("label", "Weighed and judged", seconds=60)
        desk.click(desk.get("combo box", "How far it has come"))
        desk.get(None, "Before step 2 begins")
        desk.key("End", "Return")
        desk.get("label", re.compile("^Moisture of the tea"), seconds=60)
        take_window(desk, "guide/run-2.png")
        tell_labels(desk, under=desk.window_of(desk.get("push button", "Take the new plan")))


def log():
    """A pan's thermocouples; every number is invented. Three rows are what a broken wire gives."""
    with Maker().open(batch=PAN) as desk:
        path = os.path.join(desk.folder, "pan 1.csv")
        with open(path, "w", encoding="utf-8") as file:
            file.write("Elapsed (s),Leaf,Pan\n")
            for s in range(0, 1380, 10):
                leaf = 22 + 62 * min(s / 500, 1)
                file.write("%d,%.1f,%s\n" % (s, leaf, "OL" if 600 <= s < 630 else "%.1f" % (262 - 30 * min(s / 90, 1)
                                                                                           + 25 * min(s / 900, 1))))
        act("import-log-table", path)
        desk.get("label", re.compile("^138 rows"), seconds=20)
        desk.click(desk.get("combo box", "It begins"))
        desk.key("Home", "Down", "Return")
        take_window(desk, "guide/log-1.png")
        tell_labels(desk, "left out|Line|°C")
        desk.click(desk.get("push button", "Import"))
        desk.get("status bar", re.compile("is a log of this batch"))
        take(desk, "guide/log-2.png")


def seasons(prefix):
    """A folder of files by a name that may be seen in a picture."""
    path = os.path.join(tempfile.gettempdir(), "tea seasons")
    shutil.rmtree(path, ignore_errors=True)
    os.mkdir(path)
    return path


def year():
    with unittest.mock.patch.object(tempfile, "mkdtemp", seasons):
        desk = Maker().open(batch="2 long wither, covered")
    with desk:
        shutil.copy(os.path.join(DATA, "ondry-ridge-2025.leafwend"), desk.folder)
        desk.key("ctrl+l")
        desk.get("list item", re.compile("^A 2025"))
        take(desk, "guide/year-1.png")
        desk.key("ctrl+f")
        desk.wait_for(lambda: len(desk.windows()) > 1, "the window")
        time.sleep(1)
        desk.type("drum")
        time.sleep(3)
        take_window(desk, "guide/year-2.png")


def steady():
    with Maker().open(batch="3 drum, firm roll") as desk:
        desk.click(desk.get("page tab", "Steady"))
        page = desk.get("panel", "Steady through the weather")
        desk.act(desk.get("push button", re.compile("^Compute"), under=page))
        desk.get("label", re.compile("^of 2000 samples"), under=page, seconds=200)
        take(desk, "guide/steady-1.png")
        desk.act(desk.get("push button", "Look for steadier settings", under=page))
        desk.get("label", re.compile("^Inside every aim: "), under=page, seconds=600)
        box = desk.bounds(desk.get("label", re.compile("^of 2000 samples"), under=page))
        desk.click(box.x + 5, box.y + 5, button=5, times=9)
        take(desk, "guide/steady-2.png")
        tell_labels(desk, under=page)


def tell_fit(desk):
    for node in desk.find_all("list item", re.compile("decided by the weigh-ins")):
        print("  " + desk.name_of(node))
    for node in desk.find_all("label", re.compile("the model missed|It foretells|^⚠|Saved as")):
        print("  " + desk.name_of(node))


def fit():
    with Maker().open() as desk:
        desk.click(desk.get(None, "Find batches"))
        desk.type("buyer")
        desk.wait_for(lambda: desk.find("label", "1 strong pan, first leaf") is None, "the batches found")
        desk.choose("15 as 12, for the buyer")
        tell(desk, "batch 15 with the leaf as it was")
        desk.key("ctrl+shift+f")
        desk.get("push button", "Fit")
        take_window(desk, "guide/fit-1.png")
        desk.key("Return")
        desk.get("status bar", "Done.", seconds=60)
        take_window(desk, "guide/fit-2.png")
        tell_fit(desk)
        torn = desk.get("check box", "torn share")
        desk.key_to(torn, "shift+Tab")
        desk.key("space")
        desk.click(desk.get("check box", "Foretell each batch from the others"))
        desk.click(desk.get("push button", "Fit"))
        desk.get("label", re.compile("It foretells"), seconds=60)
        desk.click(desk.get("push button", "Save as a new leaf"))
        desk.get("push button", re.compile("^Use it for “"))
        take_window(desk, "guide/fit-3.png")
        tell_fit(desk)
        desk.click(desk.get("push button", re.compile("^Use it for “")))
        rest(desk)
        desk.key("Escape")
        take(desk, "guide/fit-4.png")


pictures = (window, first, board, drag, aim, knock, hold, weather, card, lesson, run, log, year, steady, fit)
os.makedirs(os.path.join(folder, "guide"), exist_ok=True)
for picture in pictures:
    if len(sys.argv) < 3 or picture.__name__ in sys.argv[2:]:
        picture()
