"""Running a batch: start, clocks, pause, next step, entries at the present moment; the program is killed and every entry
is there again; a journal that cannot be written is told; after the end the season's save is enough."""
# SPDX-License-Identifier: GPL-3.0-or-later
import glob
import os
import re
import shutil
import subprocess
import time
import xml.etree.ElementTree as ElementTree

import tap
from bench import LEAFWEND, NS, Bench

MADE = "1 strong pan, first leaf"
BATCH = MADE + " (2)"
OTHER = "3 drum, firm roll"
planned = []  # the steps before the run
JOURNALS = os.path.join(os.environ["XDG_DATA_HOME"], "leafwend", "running")
# A minute passes in a second, the same before and after the program is killed.
os.environ["LEAFWEND_CLOCK"] = "%d,60" % time.time()

desk = Bench().open(batch=MADE)


def bar():
    return next((node for box in desk.children(desk.windows()[0]) for node in desk.children(box)
                 if desk.name_of(node) == "Running batch"), None)


def in_bar(pattern):
    """The first label of the bar that says so."""
    return desk.find("label", re.compile(pattern), under=bar()) if bar() else None


def minutes_of(text):
    """The minutes of a time in words."""
    units = {"h": 60, "min": 1, "s": 1 / 60}
    return sum(float(n) * units[unit] for n, unit in re.findall(r"(\d+) (h|min|s)\b", text))


def passed():
    """Minutes that the step has lasted, as the bar tells."""
    told = [desk.text_of(n) for n in desk.find_all("label", None, under=bar())]
    return minutes_of(told[[i for i, words in enumerate(told) if words == "passed"][0] - 1])


def step_is(number):
    desk.wait_for(lambda: in_bar("^Step %d of 4:" % number), "step %d in the bar" % number)


def kill_and_start():
    desk.process.kill()
    desk.process.wait()
    desk.start(LEAFWEND, [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    desk.settled()
    desk.click(desk.get("page tab", "Weigh-ins"))


def saved_batch():
    desk.save()
    root = ElementTree.parse(desk.path).getroot()
    return next(b for b in root.iter(NS + "batch") if b.get("name") == BATCH)


@tap.case
def a_planned_batch_is_started():
    """A made batch is not started; a planned one is, after a word of caution; the bar and the actual start are there."""
    desk.key("alt+b")
    assert not desk.has(desk.get("menu item", re.compile("Start this batch")), "sensitive"), "a made batch can be started"
    desk.key("Escape")
    desk.wait_for(lambda: not desk.find("menu item", re.compile("Start this batch")), "the menu to close")
    desk.key("ctrl+r")
    desk.wait_for(lambda: BATCH in desk.name_of(desk.windows()[0]), "the repeated batch")
    desk.save()
    assert bar() is None, "a bar without a run"
    planned.extend(desk.saved(BATCH))
    desk.key("alt+b")
    assert not desk.has(desk.get("menu item", re.compile("As it was planned")), "sensitive"), "there is a plan already"
    desk.get("menu item", re.compile("Start this batch"))
    desk.key("s")
    desk.get("label", re.compile("follow local codes and licensed practice"))
    desk.key("Return")
    step_is(1)
    desk.get("status bar", re.compile("^The batch is running"))
    assert desk.is_changed(), "the season's file was changed"
    tap.equal(len(glob.glob(JOURNALS + "/*.journal")), 1, "journals")
    desk.click(desk.get("page tab", "Weigh-ins"))


@tap.case
def killed_after_two_entries_it_has_both():
    """Two weigh-ins by two keys, kill -9, start again: both are there, told, and the clock went on meanwhile."""
    before = desk.saved_bytes()
    desk.enter("w", "7.61")
    desk.enter("n", "smells of cut grass")
    desk.wait_for(lambda: len(desk.entered()) == 2, "two rows")
    told = desk.entered()
    minutes = passed()
    tap.equal(desk.saved_bytes(), before, "the season's file")
    kill_and_start()
    desk.get("status bar", re.compile(r"^2 entries of batch “%s” were put back\. It is still running" % re.escape(BATCH)))
    tap.equal(desk.entered(), told, "the entries")
    step_is(1)
    assert passed() > minutes, "the clock stood while the program was not there"
    assert desk.is_changed(), "what was put back counts as saved"


def x_windows(name):
    """Ids of the visible windows of that name."""
    return subprocess.run(["xdotool", "search", "--onlyvisible", "--name", name], stdout=subprocess.PIPE, text=True,
                          check=False).stdout.split()


def foot(x_id):
    """How far down on the screen a window reaches."""
    told = subprocess.run(["xwininfo", "-id", x_id], stdout=subprocess.PIPE, text=True, check=True).stdout
    return sum(int(re.search(word + r":\s*(-?\d+)", told)[1]) for word in ("Absolute upper-left Y", "Height"))


@tap.case
def in_a_low_window_its_button_is_there():
    """Under the bar and blocks of a low window the entry stands higher, with all that it says; Escape leaves it."""
    window = x_windows("^Ondry Ridge")[0]
    subprocess.run(["xdotool", "windowsize", "--sync", window, "1280", "540"], check=True)
    desk.key("m")
    desk.wait_for(lambda: desk.find("text", "Moment"), "the entry")
    desk.key("w")
    desk.type("7.6\t0.35\t0\n")
    desk.get("status bar", re.compile("^Write a number above 0"))
    desk.wait_for(lambda: max(foot(x_id) for x_id in x_windows("^leafwend$")) <= foot(window), "the entry's foot")
    desk.key("Escape")
    desk.wait_for(lambda: not desk.find("text", "Moment"), "the entry to close")
    subprocess.run(["xdotool", "windowsize", "--sync", window, "1280", "800"], check=True)


@tap.case
def what_is_measured_now_is_of_the_running_batch():
    """With another batch in hand M and the bar's button take the running one in hand; a figure at once is a weight."""
    before = len(desk.entered())
    desk.choose(OTHER)
    desk.key("m")
    desk.wait_for(lambda: desk.find("label", "Weigh-in in step 1, wither"), "the entry")
    assert BATCH in desk.name_of(desk.windows()[0]), desk.name_of(desk.windows()[0])
    assert passed() - 3 <= minutes_of(desk.text_of(desk.get("text", "Moment"))) <= passed(), "another moment"
    desk.type("7.6\n")
    desk.wait_for(lambda: len(desk.entered()) == before + 1, "the entry")
    assert any(r.startswith("Weight 7.6 kg") for r in desk.entered()), desk.entered()
    desk.choose(OTHER)
    shown = desk.entered()
    desk.act(desk.get("push button", "Weigh-in", under=bar()))
    desk.wait_for(lambda: desk.find("text", "Moment"), "the entry")
    desk.key("l")
    desk.type("21\n")
    desk.wait_for(lambda: len(desk.entered()) == before + 2, "the entry")
    assert desk.entered() != shown
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: len(desk.entered()) == before, "the undo")


@tap.case
def a_pause_holds_the_clock():
    """Pause lets the batch's clock stand; go on lets it go on from there."""
    desk.key("F7")
    desk.wait_for(lambda: in_bar("paused: the batch's clock stands"), "the pause")
    minutes = passed()
    time.sleep(1.5)
    tap.equal(passed(), minutes, "the clock")
    desk.act(desk.get("push button", "Go on"))
    desk.wait_for(lambda: passed() > minutes, "the clock to go on")
    assert passed() < minutes + 20, "the pause was counted"


@tap.case
def next_takes_the_actual_time_and_undo_goes_back():
    """F8 ends the step: its time is what it lasted; undo goes back into it, redo on again."""
    low = passed()
    desk.key("F8")
    step_is(2)
    high = low + 40
    minutes = float(saved_batch().findall(NS + "step")[0].get("minutes"))
    assert low - 0.1 <= minutes <= high, (low, minutes, high)
    desk.key("ctrl+z")
    step_is(1)
    assert passed() >= minutes, "the clock of the step began anew"
    desk.key("ctrl+y")
    step_is(2)


@tap.case
def over_its_time_a_step_goes_on():
    """When the time is over it is told, the step does not end by itself, and a weigh-in makes it as long as it lasted."""
    desk.key("F8")
    step_is(3)  # rolling, 4 min
    desk.wait_for(lambda: in_bar("^over its time$"), "the time to be over", 30)
    desk.get("status bar", re.compile("its time is over"), under=bar())
    assert in_bar("^Step 3 of 4:"), "it went on by itself"
    desk.enter("b", "3")
    desk.wait_for(lambda: any(r.startswith("Breakage 3 %") for r in desk.entered()), "the entry")
    steps = saved_batch().findall(NS + "step")
    entered = steps[2].find(NS + "weigh-in")
    assert float(entered.get("minute")) > 4, entered.attrib
    tap.equal(steps[2].get("minutes"), entered.get("minute"), "the step's time so far")
    assert in_bar("^over its time$"), "the entry planned the step anew"


@tap.case
def killed_among_many_entries_it_has_all():
    """Many entries one after the other and a kill -9 in the middle of the next: all shown are there again, and the pause."""
    for i in range(6):
        desk.enter("l", "%d" % (60 + i))
    desk.wait_for(lambda: any("65 °C" in r for r in desk.entered()), "the last entry")
    shown = desk.entered()
    desk.key("F7")
    desk.wait_for(lambda: in_bar("paused: the batch's clock stands"), "the pause")
    minutes = passed()
    desk.key("m", "l")
    desk.type("99")  # not entered
    kill_and_start()
    tap.equal(desk.entered(), shown, "the entries")
    desk.get("status bar", re.compile("^6 entries of batch"))
    desk.wait_for(lambda: in_bar("paused: the batch's clock stands"), "the pause after the start")
    tap.equal(passed(), minutes, "the clock that stood")
    desk.key("F7")


@tap.case
def the_rest_is_planned_anew():
    """The bar's button asks for the present moment; taking the plan is one edit, undone as one, and the batch runs on."""
    step = in_bar("^Step ").get_name()
    desk.enter("w", "7.7")
    before = [desk.words(i) for i in range(1, 5)]
    desk.act(desk.get("push button", "Re-plan the rest…", under=bar()))
    desk.get("label", "Weighed and judged", seconds=60)
    take = desk.get("push button", "Take the new plan")
    desk.get("label", re.compile(r"^After [^:]+ of step %s$" % re.search(r"\d+", step)[0]))
    desk.wait_for(lambda: desk.has(take, "sensitive"), "an answer", seconds=60)
    desk.act(take)
    desk.wait_for(lambda: not desk.find("label", "Weighed and judged"), "the window to close")
    desk.wait_for(lambda: [desk.words(i) for i in range(1, 5)] != before, "the new plan")
    assert in_bar("^Step ").get_name() == step, "another step"
    desk.key("ctrl+z")
    desk.wait_for(lambda: [desk.words(i) for i in range(1, 5)] == before, "the old plan")


@tap.case
def a_journal_that_cannot_be_written_is_told():
    """Without its folder the bar says so, the entry stays in the window, and it is written as soon as that can be done."""
    shutil.rmtree(JOURNALS)
    with open(JOURNALS, "wb"):
        pass
    desk.enter("l", "70")
    desk.wait_for(lambda: in_bar("could not be written: .*is kept in this window"), "the trouble in the bar")
    assert any("70 °C" in r for r in desk.entered()), "the entry is gone"
    os.remove(JOURNALS)
    desk.get("status bar", "What was entered is on the disk now.", seconds=15)
    assert in_bar("could not be written") is None, "the trouble is still told"
    with open(glob.glob(JOURNALS + "/*.journal")[0], encoding="utf-8") as journal:
        assert 'of=\\"leaf-c\\" value=\\"70\\"' in journal.read(), "the entry is not in the journal"


def another_name_and_start():
    """Changed at once, before the save: the journal still knows whose it is, and goes with the save."""
    desk.key("F2")
    window = desk.wait_for(lambda: len(desk.windows()) > 1 and desk.windows()[-1], "the window")
    desk.set_text(desk.get("text", "Name", window), "another")
    desk.set_text(desk.get("text", "Start", window), "2026-03-25 10:00")
    desk.act(desk.get("push button", "Apply", window))
    desk.wait_for(lambda: "another" in desk.name_of(desk.windows()[0]), "the name")
    desk.save()
    desk.wait_for(lambda: glob.glob(JOURNALS + "/*") == [], "the journal to go")
    desk.key("ctrl+z")
    desk.wait_for(lambda: BATCH in desk.name_of(desk.windows()[0]), "the old name")


@tap.case
def after_the_end_a_save_is_enough():
    """The last step's end makes the batch; once saved nothing is left to put back."""
    desk.key("F8")
    step_is(4)
    desk.key("F8")
    desk.get("status bar", re.compile("^The batch is made"))
    desk.wait_for(lambda: bar() is None, "the bar to go")
    another_name_and_start()
    shown = desk.entered()
    batch = saved_batch()
    tap.equal(batch.get("state"), "made", "the batch")
    assert batch.get("start")[:4] == time.strftime("%Y", time.gmtime()), batch.get("start")
    tap.equal(len(list(batch.iter(NS + "weigh-in"))), len(shown), "entries in the file")
    tap.equal(glob.glob(JOURNALS + "/*"), [], "journals")
    kill_and_start()
    desk.choose(BATCH)
    tap.equal(desk.entered(), shown, "the entries")
    assert not desk.is_changed(), "something was put back"


@tap.case
def the_plan_can_stand_beside_it():
    """What was planned when the run began becomes a batch of its own, with the times it had then; one undo."""
    name = BATCH + ", as planned"
    desk.key("alt+b")
    desk.get("menu item", re.compile("As it was planned"))
    desk.key("b")
    desk.wait_for(lambda: name in desk.name_of(desk.windows()[0]), "the plan in hand")
    desk.save()
    tap.equal(desk.saved(name), planned, "the steps as planned")
    made = desk.saved(BATCH)
    assert [s["minutes"] for s in made] != [s["minutes"] for s in planned], "nothing was made otherwise"
    desk.key("ctrl+z")
    desk.wait_for(lambda: not desk.find("label", name), "the undo")


tap.main(desk.tree)
