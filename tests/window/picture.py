#!/usr/bin/python3
"""picture.py PROGRAM FILE.png: the window with the demo season as it opens, for the docs:
DESK_SCREEN=1400x900 sh tests/window/desk.sh tests/window/picture.py build/src/bench/leafwend docs/window.png"""
# SPDX-License-Identifier: GPL-3.0-or-later
import subprocess
import sys
import time

from desk import Desk

with Desk() as desk:
    window = desk.start(sys.argv[1])
    desk.get("label", None)
    desk.move(0, 0)
    time.sleep(1)  # for the last frame to be on the screen, which nothing tells
    (left, top), size = desk.window_position(window), desk.bounds(window)
    desk.screenshot(sys.argv[2])
    subprocess.run(["convert", sys.argv[2], "-crop", "%dx%d+%d+%d" % (size.width, size.height, left, top),
                    "+repage", "-strip", sys.argv[2]], check=True)
