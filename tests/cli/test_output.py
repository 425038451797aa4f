"""Where the command line's output goes: nothing that a maker has is replaced by a table."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import shutil
import tempfile

from program import get, put, refused, run  # first: it knows where tap is
import tap

FOLDER = tempfile.TemporaryDirectory(prefix="cli-output.")
SEASON = os.path.join(FOLDER.name, "mine.leafwend")
TABLE = ["run", SEASON, "--batch", "1", "--ends", "-o"]

shutil.copy(os.path.join(os.environ["LEAFWEND_DATA"], "ondry-ridge-2026.leafwend"), SEASON)
WRITTEN = run(*TABLE, "-")[0]


def path(name):
    return os.path.join(FOLDER.name, name)


@tap.case
def a_season_is_never_replaced():
    """-o that names a season, by its name, another name or a link, is refused in words, and the season is whole."""
    before = get(SEASON)
    other, link = put(FOLDER.name, "other.csv", before), path("link.csv")
    os.symlink(SEASON, link)
    for place in (SEASON, other, link):
        refused(*TABLE, place, status=1, words=[place, "is a season's file", "name another file"])
        tap.equal(get(place), before, "the season")
    assert os.path.islink(link), "the link was replaced"


@tap.case
def a_link_stays_a_link():
    """A table at the end of a link is replaced there."""
    old, link = put(FOLDER.name, "old.csv", "old"), path("to-old.csv")
    os.symlink("old.csv", link)
    run(*TABLE, link)
    assert os.path.islink(link), "the link was replaced"
    tap.equal(get(old), WRITTEN, "the table")


@tap.case
def a_pipe_stays_a_pipe():
    """Into a pipe it is written as into any program."""
    pipe = path("pipe")
    os.mkfifo(pipe)
    reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)
    run(*TABLE, pipe)
    tap.equal(os.read(reader, 1 << 16).decode(), WRITTEN, "what came through")
    os.close(reader)
    assert not os.path.isfile(pipe), "the pipe was replaced"


@tap.case
def a_device_that_takes_nothing_is_told():
    """A full device is told as that."""
    device = path("full")
    os.symlink("/dev/full", device)
    if not os.path.exists(device):
        raise tap.Skip("there is no full device")
    refused(*TABLE, device, status=1, words=["No space left"])
    assert os.path.islink(device)


tap.main()
