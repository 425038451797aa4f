"""The documentation's pictures: opens the demo seasons, does what the pictures show, takes them, and prints
what the window then says, for those who write about it."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import shutil
import subprocess
import sys
import time

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "tests", "window"))
from bench import DATA  # noqa: E402
from maker import BUYERS, Maker  # noqa: E402

folder = sys.argv[1]


def take(desk, name, rest=True):
    """The picture of the window alone, without the black screen around it."""
    path = os.path.join(folder, name)
    if rest:  # the pointer, where it brings up no tip
        desk.settled()
        box = desk.bounds(desk.get("status bar"))
        desk.move(box.x + box.width - 40, box.y + box.height // 2)
    time.sleep(1)  # for tips and slides to be over
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


def tell(desk, name):
    print("== " + name)
    for node in desk.find_all("list item", re.compile(r"^[A-Z][a-z ]+ [\d.]")):
        print("  " + desk.name_of(node))
    print("  at the foot: " + desk.name_of(desk.get("status bar")))


def window():
    """A drag of the pan's edge, with locked outcomes held and the ghost of what was before."""
    with Maker().open(batch=BUYERS) as desk:
        desk.lock("Moisture", "Oxidation", "Cell rupture")
        x, y = desk.end_edge(2)
        desk.drag(x, y, x - 10, y, release=False)
        desk.get("status bar", "All that is locked is held.", seconds=60)
        take(desk, "window.png", rest=False)
        desk.key("Escape")
        desk.let_go()


def cover():
    with Maker().open("ondry-ridge-2025.leafwend", "4 long wither, bare mats") as desk:
        take(desk, "guide/cover-1.png")
        desk.set(1, "cover", "78")
        take(desk, "guide/cover-2.png")
        desk.leave()
        take(desk, "guide/cover-3.png")


def cup():
    with Maker() as desk:
        desk.hold_the_cup()
        take(desk, "guide/cup-1.png")
        desk.set(1, "air humidity", "88", off_weather=True)
        desk.told("All that is locked is held")
        desk.leave()
        take(desk, "guide/cup-2.png")
    with Maker() as desk:
        desk.hold_the_cup()
        desk.import_table(desk.write_damp_days("damp days", BUYERS)[0])
        desk.give_weather("damp days")
        desk.told("All that is locked is held")
        take(desk, "guide/cup-3.png")


def drum():
    with Maker().open(batch="1 strong pan, first leaf") as desk:
        desk.key("ctrl+r")
        desk.get("label", re.compile(r"first leaf \(2\)$"))
        for outcome in ("Moisture", "Oxidation", "Cell rupture"):
            desk.as_now(outcome)
        take(desk, "guide/drum-1.png")
        desk.swap(2, "fix in drum")
        take(desk, "guide/drum-2.png")
        desk.key("ctrl+e")
        desk.told("All aims are met")
        take(desk, "guide/drum-3.png")


def steady():
    with Maker().open(batch="3 drum, firm roll") as desk:
        desk.click(desk.get("page tab", "Steady"))
        page = desk.get("panel", "Steady through the weather")
        desk.act(desk.get("push button", re.compile("^Compute"), under=page))
        desk.get("label", re.compile("^of 2000 samples"), under=page, seconds=60)
        take(desk, "guide/steady-1.png")
        desk.act(desk.get("push button", "Look for steadier settings", under=page))
        desk.get("label", re.compile("^Inside every aim: "), under=page, seconds=120)
        box = desk.bounds(desk.get("label", re.compile("^of 2000 samples"), under=page))
        desk.click(box.x + 5, box.y + 5, button=5, times=9)
        take(desk, "guide/steady-2.png")
        for node in desk.find_all("label", under=page):
            print("  " + desk.text_of(node))


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
        take(desk, "guide/fit-1.png", rest=False)
        desk.key("Return")
        desk.get("status bar", "Done.", seconds=60)
        take(desk, "guide/fit-2.png", rest=False)
        tell_fit(desk)
        torn = desk.get("check box", "torn share")
        desk.key_to(torn, "shift+Tab")
        desk.key("space")
        desk.click(desk.get("check box", "Foretell each batch from the others"))
        desk.click(desk.get("push button", "Fit"))
        desk.get("label", re.compile("It foretells"), seconds=60)
        desk.click(desk.get("push button", "Save as a new leaf"))
        desk.get("push button", re.compile("^Use it for “"))
        take(desk, "guide/fit-3.png", rest=False)
        tell_fit(desk)
        desk.click(desk.get("push button", re.compile("^Use it for “")))
        desk.key("Escape")
        take(desk, "guide/fit-4.png")


def compare():
    with Maker().open(batch="2 long wither, covered") as desk:
        shutil.copy(os.path.join(DATA, "ondry-ridge-2025.leafwend"), desk.folder)
        desk.key("ctrl+l")
        desk.get("list item", re.compile("^A 2025"))
        take(desk, "guide/compare-1.png")


os.makedirs(os.path.join(folder, "guide"), exist_ok=True)
for picture in (window, cover, cup, drum, steady, fit, compare):
    picture()
