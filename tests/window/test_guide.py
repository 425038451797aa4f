"""F1 and the menu open the guide in the desktop's viewer, which here writes down what it is given; without one the window
says where the guide is."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import urllib.parse

import tap
from bench import Bench

PAGE = os.path.join(os.environ["LEAFWEND_DOCS"], "guide", "index.html")
APPLICATIONS = os.path.join(os.environ["XDG_DATA_HOME"], "applications")
SHOWN = os.path.join(os.environ["HOME"], "shown")
desk = Bench()


def shown():
    """The places that the viewer was given."""
    if not os.path.exists(SHOWN):
        return []
    with open(SHOWN, encoding="utf-8") as file:
        return file.read().split()


def is_page(place):
    return os.path.realpath(urllib.parse.unquote(re.sub("^file://", "", place))) == os.path.realpath(PAGE)


@tap.case
def without_a_viewer_the_path_is_told():
    """F1 without a viewer says at the foot where the guide is."""
    os.environ["XDG_DATA_DIRS"] = os.environ["HOME"]  # so that the test's own machine has none
    desk.open()
    del os.environ["XDG_DATA_DIRS"]
    desk.key("F1")
    desk.get("status bar", re.compile("^No viewer opened the guide, which is at " + re.escape(PAGE)))


@tap.case
def f1_opens_the_viewer():
    """F1 gives the guide's first page to the viewer of HTML."""
    os.makedirs(APPLICATIONS)
    with open(os.path.join(APPLICATIONS, "viewer.desktop"), "w", encoding="utf-8") as file:
        file.write("[Desktop Entry]\nType=Application\nName=Viewer\nMimeType=text/html;\n"
                   "Exec=sh -c \"echo \\\\$0 >> '%s'\" %%u\n" % SHOWN)
    with open(os.path.join(os.environ["XDG_CONFIG_HOME"], "mimeapps.list"), "w", encoding="utf-8") as file:
        file.write("[Default Applications]\ntext/html=viewer.desktop\n")
    desk.open()
    desk.key("F1")
    desk.wait_for(lambda: len(shown()) == 1, "the viewer")
    assert is_page(shown()[0]), shown()
    desk.get("status bar", re.compile("^The guide opens .*" + re.escape(PAGE)))


@tap.case
def the_menu_opens_it_too():
    """Help in the menu does the same, by its letter."""
    desk.key("F10")
    desk.get("menu item", re.compile("^Help: the guide"))
    desk.key("h")
    desk.wait_for(lambda: len(shown()) == 2, "the viewer")
    assert is_page(shown()[1]), shown()


@tap.case
def a_guide_that_is_not_there_is_told():
    """Where the pages were not made or not installed, the window says where they should be."""
    kept = os.environ["LEAFWEND_DOCS"]
    os.environ["LEAFWEND_DOCS"] = os.path.join(os.environ["HOME"], "nothing")
    desk.open()
    os.environ["LEAFWEND_DOCS"] = kept
    desk.key("F1")
    desk.get("status bar", re.compile("^The guide should be at .*nothing/guide/index.html, but is not there"))
    assert len(shown()) == 2, shown()


tap.main(desk.tree)
