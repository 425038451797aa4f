"""The documentation's pictures: opens the demo season, does what the picture shows, and takes it."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import subprocess
import sys

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "tests", "window"))
from bench import Bench  # noqa: E402

folder = sys.argv[1]


def take(desk, name):
    """The picture of the window alone, without the black screen around it."""
    path = os.path.join(folder, name)
    desk.screenshot(path)
    subprocess.run(["convert", path, "-trim", "+repage", "-strip", path], check=True)


with Bench().open(batch="12 long wither, gentle pan") as desk:
    desk.settled()
    # A drag of the pan's edge, with the ghost of what was before.
    x, y = desk.end_edge(2)
    desk.drag(x, y, x - 26, y, release=False)
    take(desk, "window.png")
    desk.key("Escape")
    desk.let_go()
