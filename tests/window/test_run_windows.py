"""One running batch and two windows on its season: the second says so, and takes it up once the first is closed."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re
import subprocess

import tap
from bench import LEAFWEND, Bench

MADE = "1 strong pan, first leaf"
BATCH = MADE + " (2)"
desk = Bench().open(batch=MADE)


def bar_in(window):
    return desk.find("label", re.compile("^Step 1 of 4:"), under=window)


@tap.case
def the_second_window_says_so():
    """With a batch running in the first, a second window on the file has no bar and tells where to go on."""
    desk.key("ctrl+r")
    desk.wait_for(lambda: BATCH in desk.name_of(desk.windows()[0]), "the repeated batch")
    desk.save()
    desk.key("alt+b")
    desk.get("menu item", re.compile("Start this batch"))
    desk.key("s")
    desk.get("label", re.compile("follow local codes and licensed practice"))
    desk.key("Return")
    desk.wait_for(lambda: bar_in(desk.windows()[0]), "the bar")
    desk.key("m")
    desk.wait_for(lambda: desk.find("text", "Moment"), "the entry")
    desk.type("7.6\n")
    desk.wait_for(lambda: not desk.find("text", "Moment"), "the entry to close")
    subprocess.run([LEAFWEND, desk.path], check=True, timeout=30)
    desk.wait_for(lambda: len(desk.windows()) == 2, "two windows")
    desk.get("status bar", re.compile("^Another window has the running batch"), desk.windows()[1])
    assert not bar_in(desk.windows()[1]), "it runs in both"


@tap.case
def the_second_takes_it_up():
    """The first is closed without a save, which is told to cost nothing of the run; the second then has run and entry."""
    desk.act(desk.windows()[0], "window.close")
    desk.get("label", re.compile("^What was done and entered in the batch that runs"))
    desk.act(desk.get("push button", "Discard changes"))
    desk.wait_for(lambda: len(desk.windows()) == 1, "the first to close")
    desk.wait_for(lambda: bar_in(desk.windows()[0]), "the bar")
    desk.get("status bar", re.compile(r"^1 entry of batch “%s” was put back\." % re.escape(BATCH)))
    assert BATCH in desk.name_of(desk.windows()[0]), desk.name_of(desk.windows()[0])
    assert desk.find("push button", re.compile(r"^Weight 7\.6 kg")), "the entry is not there"


tap.main(desk.tree)
