"""The season's file on the disk: changed, replaced, touched or removed by somebody else; saves that fail."""
# SPDX-License-Identifier: GPL-3.0-or-later
import errno
import os
import re
import signal
import subprocess
import time

import tap
from bench import LEAFWEND, Bench

BATCH = "1 strong pan, first leaf"
CHANGED, GONE = re.compile("was changed by somebody else"), re.compile("is no longer in its folder")
READ, MINE = "Read it again", "Keep mine and save over it"
desk = Bench().open(batch=BATCH)


def change():
    """Some change by keys."""
    box = desk.bounds(desk.blocks()[1])
    desk.click(box.x + 40, box.y + 12)
    desk.key("ctrl+Right")
    desk.wait_for(desk.is_changed, "a change")


def theirs(word, replace=False):
    """Somebody else writes the file: a season that says `word`. Returns what it then holds."""
    path = desk.path + ".theirs" if replace else desk.path
    text = re.sub(rb'(<season [^>]*name=")[^"]*', rb"\g<1>" + word, desk.saved_bytes(), count=1)
    with open(path, "wb") as file:
        file.write(text)
    if replace:
        os.rename(path, desk.path)
    return text


def gone(pattern):
    desk.wait_for(lambda: desk.find(None, pattern) is None, "no " + pattern.pattern)


def press(name):
    button = desk.get("push button", name)
    desk.wait_for(lambda: desk.bounds(button).width > 10, "its place")
    desk.click(button)


@tap.case
def a_touch_is_no_change():
    """A file that is touched, or replaced by one with the same bytes, raises no alarm."""
    os.utime(desk.path)
    with open(desk.path + ".same", "wb") as file:
        file.write(desk.saved_bytes())
    os.rename(desk.path + ".same", desk.path)
    end = time.monotonic() + 1
    while time.monotonic() < end:
        assert desk.find(None, CHANGED) is None
    change()
    desk.save()  # nor does a save of our own
    assert desk.find(None, CHANGED) is None


@tap.case
def a_change_in_place_is_read_again():
    """A change by somebody else is told and, by a click, read; the batch in hand stays in hand."""
    theirs(b"Theirs, in place")
    desk.get("alert", CHANGED)
    press(READ)
    desk.get("label", re.compile("^Theirs, in place — " + BATCH))
    gone(CHANGED)


@tap.case
def nothing_is_overwritten_silently():
    """Over a replaced file a save asks; cancelled, theirs is whole and mine still in hand; then mine goes over it."""
    change()
    text = theirs(b"Theirs, replaced", replace=True)
    desk.key("ctrl+s")
    question = desk.get(None, re.compile("^Save over the file"))
    desk.act(desk.get("push button", "Cancel", under=desk.window_of(question)))
    gone(re.compile("^Save over the file"))
    tap.equal(desk.saved_bytes(), text, "the file")
    assert desk.is_changed()
    press(MINE)
    desk.wait_for(lambda: not desk.is_changed(), "the save")
    gone(CHANGED)
    assert b"Theirs, in place" in desk.saved_bytes()


@tap.case
def reading_again_asks_about_my_changes():
    """With changes of one's own, reading again asks first."""
    change()
    theirs(b"Theirs, third", replace=True)
    desk.get("alert", CHANGED)
    press(READ)
    question = desk.get(None, "Read the file again?")
    desk.act(desk.get("push button", "Cancel", under=desk.window_of(question)))
    gone(re.compile("^Read the file again"))
    assert desk.is_changed()
    press(READ)
    desk.act(desk.get("push button", "Discard mine and read it again"))
    desk.get("label", re.compile("^Theirs, third — "))
    assert not desk.is_changed()


@tap.case
def a_removed_file_is_told():
    """A removed file is told, closing and saving then ask, and a save brings it back."""
    before = desk.saved_bytes()
    os.remove(desk.path)
    desk.get("alert", GONE)
    desk.key("ctrl+w")
    question = desk.get(None, "Save this season again?")
    desk.act(desk.get("push button", "Cancel", under=desk.window_of(question)))
    gone(re.compile("^Save this season again"))
    desk.key("ctrl+s")
    question = desk.get(None, "Save the file again?")
    desk.act(desk.get("push button", "Cancel", under=desk.window_of(question)))
    gone(re.compile("^Save the file again"))
    assert not os.path.exists(desk.path), "it was saved unasked"
    press("Save it again")
    gone(GONE)
    tap.equal(desk.saved_bytes(), before, "the file")


@tap.case
def two_windows_on_one_file():
    """What one window saves, the other tells of."""
    subprocess.run([LEAFWEND, desk.path], check=True, timeout=20)
    desk.wait_for(lambda: len(desk.windows()) == 2, "two windows")
    desk.key("ctrl+r")  # so that what it saves is not what the other has read
    mine = desk.wait_for(lambda: next((w for w in desk.windows() if "(2)" in desk.name_of(w)), None), "a repeat in one")
    other = next(w for w in desk.windows() if w != mine)
    theirs(b"Theirs, fourth")
    desk.wait_for(lambda: len(desk.find_all("alert", CHANGED)) == 2, "both to tell")
    desk.act(desk.get("push button", MINE, under=mine))
    desk.wait_for(lambda: not desk.find("alert", CHANGED, under=mine), "the one that saved to be content")
    assert desk.find("alert", CHANGED, under=other), "the other says nothing"


@tap.case
def a_full_disk_loses_nothing():
    """On a full disk the save says why, loses nothing, and saving elsewhere works."""
    fault = os.path.join(desk.folder, "fault")
    desk.start(LEAFWEND, [desk.path], env={"LD_PRELOAD": os.environ["FAULT_MODULE"], "FAULT_FILE": fault})
    desk.wait_for(desk.blocks, "the blocks")
    desk.choose(BATCH)
    change()
    before = desk.saved_bytes()
    for call in ("write", "fsync", "rename"):
        with open(fault, "w", encoding="ascii") as file:
            file.write("%s %d" % (call, errno.ENOSPC))
        desk.key("ctrl+s")
        told = desk.get(None, re.compile("No space left on device. Free some space, or save it elsewhere"))
        assert desk.is_changed()
        tap.equal(desk.saved_bytes(), before, "the file after " + call)
        if call != "rename":
            desk.act(desk.get("push button", "Close", under=desk.window_of(told)))
            gone(re.compile("^The season was not saved"))
    os.remove(fault)
    desk.act(desk.get("push button", "Save elsewhere…", under=desk.window_of(told)))
    elsewhere = os.path.join(desk.folder, "elsewhere.leafwend")
    name = desk.get("text", "Name:")
    desk.wait_for(lambda: desk.has(name, "focused"), "the file dialog")
    desk.key("ctrl+a")
    desk.type(elsewhere + "\n")
    desk.get("label", "elsewhere.leafwend")
    tap.equal(desk.saved_bytes(), before, "the old file")
    desk.path = elsewhere
    assert not desk.is_changed() and desk.saved_bytes() != before


@tap.case
def killed_it_leaves_a_whole_file():
    """Killed with changes in hand, in the midst of saves, the program leaves a file that opens."""
    change()
    desk.key("ctrl+s", "ctrl+Right", "ctrl+s", "ctrl+Right", "ctrl+s")
    desk.process.send_signal(signal.SIGKILL)
    desk.process.wait(10)
    desk.start(LEAFWEND, [desk.path])
    desk.get("label", "elsewhere.leafwend")
    desk.choose(BATCH)


tap.main(desk.tree)
