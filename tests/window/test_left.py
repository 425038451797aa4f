"""A run that was cut short, and a season's file that others changed, replaced, moved or linked meanwhile: it is told and
asked, and nothing that was entered is lost by any answer."""
# SPDX-License-Identifier: GPL-3.0-or-later
import glob
import os
import re
import shutil
import time

import tap
from bench import LEAFWEND, Bench

MADE = "1 strong pan, first leaf"
BATCH = MADE + " (2)"
JOURNALS = os.path.join(os.environ["XDG_DATA_HOME"], "leafwend", "running")
os.environ["LEAFWEND_CLOCK"] = "%d,60" % time.time()

foot = []  # of the window

desk = Bench().open(batch=MADE)


def entries(path=None):
    """Weigh-ins of the batch in its saved file."""
    text = (desk.saved_bytes() if path is None else open(path, "rb").read()).decode()
    batch = re.search(r'<batch name="%s".*?</batch>' % re.escape(BATCH), text, re.S)[0]
    return re.findall(r'<weigh-in [^>]*value="([^"]+)"', batch)


def journals(suffix=""):
    return glob.glob(JOURNALS + "/*.journal" + suffix)


def kill():
    desk.process.kill()
    desk.process.wait()


def start(path=None):
    desk.start(LEAFWEND, [path or desk.path])
    foot.clear()


def told(pattern):
    """Waits until the window's foot says it. Where that is, is looked for once: every walk takes a second."""
    if not foot:
        foot.extend(desk.find_all("status bar", None))
    desk.wait_for(lambda: any(re.search(pattern, desk.name_of(node)) for node in foot), pattern)


def theirs(path=None):
    """Somebody else gives the batch another note."""
    path = path or desk.path
    with open(path, "rb") as file:
        text = file.read().decode()
    head = re.search(r'<batch name="%s"[^>]*>\n' % re.escape(BATCH), text)[0]
    kept = re.sub(r"(?s)(%s) *<note>.*?</note>\n" % re.escape(head), r"\1", text)
    with open(path, "wb") as file:
        file.write(kept.replace(head, head + "    <note>theirs</note>\n").encode())


def note():
    return re.search(r'<batch name="%s"[^>]*>\s*(?:<note>(.*?)</note>)?' % re.escape(BATCH), desk.saved_bytes().decode())[1]


def asked(heading):
    """The window of that heading, or None."""
    return next((w for w in desk.windows() if re.search(heading, desk.name_of(w))), None)


def answer(heading, button):
    """Gives it in the window of that heading."""
    window = desk.wait_for(lambda: asked(heading), heading)
    desk.act(desk.get("push button", button, under=window))
    desk.wait_for(lambda: not asked(heading), "the question to go")


def shown(value):
    desk.wait_for(lambda: any(value in row for row in desk.entered()), value)


def bar():
    return next((node for box in desk.children(desk.windows()[0]) for node in desk.children(box)
                 if desk.name_of(node) == "Running batch"), None)


def running():
    return bar() is not None and desk.find("label", re.compile("^Step 1 of 4:"), under=bar()) is not None


@tap.case
def the_run_begins():
    """The batch is saved, started, and something is entered that the file does not have."""
    desk.key("ctrl+r")
    desk.wait_for(lambda: BATCH in desk.name_of(desk.windows()[0]), "the repeated batch")
    desk.save()
    desk.key("alt+b")
    desk.get("menu item", re.compile("Start this batch"))
    desk.key("s")
    desk.get("label", re.compile("follow local codes and licensed practice"))
    desk.key("Return")
    desk.wait_for(running, "the bar")
    desk.click(desk.get("page tab", "Weigh-ins"))
    desk.enter("l", "61")
    tap.equal(len(journals()), 1, "journals")


@tap.case
def a_running_batch_is_not_removed():
    """To remove it is refused, in words; it goes on."""
    desk.key("alt+b")
    desk.act(desk.get("menu item", re.compile("^Remove")))
    told("^This batch is running")
    assert running() and BATCH in desk.name_of(desk.windows()[0])


@tap.case
def an_edit_elsewhere_in_the_file_stands():
    """Somebody changed another batch while the program was down: both are there, nothing is asked; also by a link to it."""
    kill()
    text = desk.saved_bytes()
    other = text.replace(b'name="%s"' % MADE.encode(), b'name="renamed by them"', 1)
    assert other != text
    with open(desk.path, "wb") as file:
        file.write(other)
    link = os.path.join(desk.folder, "link.leafwend")
    os.symlink(desk.path, link)
    start(link)
    told("^1 entry of batch")
    desk.get("label", "renamed by them")
    desk.click(desk.get("page tab", "Weigh-ins"))
    shown("61 °C")
    assert running()
    tap.equal(len(journals()), 1, "journals")


@tap.case
def closed_unsaved_it_says_what_is_kept():
    """Closing with unsaved changes says that the running batch is kept; it is, whatever is answered."""
    desk.key("ctrl+q")
    window = desk.wait_for(lambda: asked("^Save the changes"), "the question")
    desk.get("label", re.compile("^What was done and entered in the batch that runs.* is kept"), under=window)
    desk.act(desk.get("push button", "Discard changes", under=window))
    tap.equal(desk.process.wait(10), 0, "the program's end")
    os.remove(os.path.join(desk.folder, "link.leafwend"))
    tap.equal(len(journals()), 1, "journals")


@tap.case
def changed_meanwhile_it_is_asked():
    """Somebody changed the running batch in the file: unanswered nothing is put back or lost, and it is asked again."""
    theirs()
    start()
    window = desk.wait_for(lambda: asked("was changed in its file, too$"), "the question")
    desk.get("label", re.compile("The run has 1 entry that the file has not"), under=window)
    assert not running(), "it was put back before anything was said"
    desk.key("Escape")
    desk.wait_for(lambda: not asked("was changed in its file, too$"), "the question to go")
    told("^Nothing was put back. You are asked again")
    assert not desk.is_changed()
    tap.equal(len(journals()), 1, "journals")


@tap.case
def joined_it_has_both():
    """The file's with the run in it: their note and my entry; undo leads to the run's batch, then to the file's."""
    kill()
    start()
    answer("was changed in its file, too$", "The file's with the run in it")
    told("^1 entry of batch")
    desk.wait_for(running, "the bar")
    desk.save()
    tap.equal((note(), entries()), ("theirs", ["61"]), "the file")
    desk.key("ctrl+z")
    desk.save()
    tap.equal((note() != "theirs", entries()), (True, ["61"]), "the run's alone")
    desk.key("ctrl+z")
    desk.save()
    tap.equal((note(), entries()), ("theirs", []), "the file's alone")
    desk.key("ctrl+y", "ctrl+y")
    desk.save()
    tap.equal((note(), entries()), ("theirs", ["61"]), "the file at last")


@tap.case
def read_again_while_it_runs_it_is_asked():
    """Somebody changes the running batch while the program is there; reading it again asks, and the run's can count."""
    desk.enter("l", "62")
    theirs_now = desk.saved_bytes().replace(b"<note>theirs</note>", b"<note>theirs again</note>")
    with open(desk.path, "wb") as file:
        file.write(theirs_now)
    desk.get("alert", re.compile("was changed by somebody else"))
    desk.act(desk.get("push button", "Read it again"))
    answer("^Read the file again", "Discard mine and read it again")
    answer("was changed in its file, too$", "The run's")
    desk.wait_for(running, "the bar")
    shown("62 °C")
    desk.save()
    tap.equal((note(), entries()), ("theirs", ["61", "62"]), "the file")


@tap.case
def renamed_meanwhile_the_run_goes_on():
    """The file was renamed while the program was down: it is asked whether this is it, and the journal goes with it."""
    desk.enter("l", "63")
    kill()
    renamed = os.path.join(desk.folder, "renamed.leafwend")
    os.rename(desk.path, renamed)
    before = journals()
    start(renamed)
    answer("^Is this the season that was running", "Yes, go on here")
    told("^1 entry of batch")
    desk.wait_for(running, "the bar")
    desk.path = renamed
    assert len(journals()) == 1 and journals() != before, journals()
    kill()
    start()
    told("^1 entry of batch")
    assert running()


@tap.case
def another_season_in_its_place():
    """Another season lies in the file's place: the run is not put into it unless it is said; left out, its journal is kept."""
    kill()
    shutil.move(desk.path, desk.path + ".kept")
    shutil.copy(os.path.join(os.environ["LEAFWEND_DATA"], "ondry-ridge-2025.leafwend"), desk.path)
    before = desk.saved_bytes()
    start()
    desk.wait_for(lambda: asked("is not in this file$"), "the question")
    assert not desk.is_changed(), "it was put in"
    answer("is not in this file$", "Leave it out")
    told(r"^Nothing was put back\. The journal is kept as .*\.journal\.1\.$")
    tap.equal((len(journals()), len(journals(".1"))), (0, 1), "journals")
    tap.equal(desk.saved_bytes(), before, "the other season")
    kill()
    os.rename(journals(".1")[0], journals(".1")[0][:-2])
    start()
    answer("is not in this file$", "Add it to this season")
    desk.wait_for(running, "the bar")
    desk.click(desk.get("page tab", "Weigh-ins"))
    shown("63 °C")


def passed():
    """Minutes that the step has lasted, as the bar tells."""
    units = {"h": 60, "min": 1, "s": 1 / 60}
    words = [desk.text_of(n) for n in desk.find_all("label", None, under=bar())]
    return sum(float(n) * units[unit] for n, unit in re.findall(r"(\d+) (h|min|s)\b", words[words.index("passed") - 1]))


@tap.case
def the_clock_is_set_back():
    """The computer's clock is set back, with the program there and while it is down: no minute of the step is lost."""
    desk.save()
    kill()
    fault = os.path.join(desk.folder, "fault")
    os.environ["LD_PRELOAD"], os.environ["FAULT_FILE"] = os.environ["FAULT_MODULE"], fault
    start()
    desk.wait_for(running, "the bar")
    before = passed()
    assert before > 1
    with open(fault, "w", encoding="ascii") as file:
        file.write("clock -3600")
    told("^The computer's clock was set")
    minutes = passed()
    assert before <= minutes < before + 60, (before, minutes)
    kill()
    with open(fault, "w", encoding="ascii") as file:
        file.write("clock -7200")
    start()
    told("The computer's clock was set back")
    assert before <= passed() < before + 60, (before, passed())
    del os.environ["LD_PRELOAD"]


@tap.case
def a_journal_of_nothing_is_kept():
    """A journal that cannot be read is told, kept, and does not stand in the way of the next run."""
    kill()
    with open(journals()[0], "wb") as file:
        file.write(b"\nnothing of the kind\n")
    start()
    told(r"cannot be read; nothing was put back\. The journal is kept as .*\.journal\.1\.$")
    tap.equal((len(journals()), len(journals(".1"))), (0, 1), "journals")


tap.main(desk.tree)
