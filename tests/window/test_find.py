"""Finding batches, in the open season and in a folder of season files."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import re
import subprocess
import time

import tap
from bench import DATA, Bench

FILES = 6
FIELDS, LIST, FOOT = 0, 1, 2
desk = Bench().open(batch="1 strong pan, first leaf")
folder = os.path.join(desk.folder, "years")
found = None  # the window


def make_folder():
    """Seasons whose batches are called by file and number; one file that is broken, one in a folder below."""
    os.makedirs(os.path.join(folder, "old"))
    with open(os.path.join(DATA, "ondry-ridge-2026.leafwend"), encoding="utf-8") as file:
        text = file.read()
    for number in range(FILES):
        name = "old/y0.leafwend" if number == 0 else "y%d.leafwend" % number
        with open(os.path.join(folder, name), "w", encoding="utf-8") as file:
            file.write(text.replace('<batch name="', '<batch name="y%d/' % number))
    with open(os.path.join(folder, "broken.leafwend"), "w", encoding="utf-8") as file:
        file.write(text.replace('kind="fix-pan"', 'kind="fix-pot"', 1))


def window(name="Find batches"):
    return next((w for w in desk.windows() if desk.name_of(w) == name and desk.has(w, "visible")), None)


def part(number):
    """The fields, the list or the foot: a search of the whole window would ask every row in view."""
    return desk.children(desk.children(found)[0])[number]


def rows():
    """Each row's cells as text."""
    return [[desk.name_of(cell) for cell in desk.walk(row) if cell.get_role_name() == "label"]
            for row in desk.children(desk.find("list", under=part(LIST)))]


def first():
    """The name in the first row."""
    return desk.name_of(desk.find("label", under=desk.find("table cell", under=desk.find("list", under=part(LIST)))))


def cells_of_first():
    row = desk.find("table row", under=desk.find("list", under=part(LIST)))
    return [desk.name_of(cell) for cell in desk.walk(row) if cell.get_role_name() == "label"]


def field(name, role="text"):
    return desk.get(role, name, under=part(FIELDS))


def heading(name):
    return desk.find("label", name, under=desk.children(desk.find("tree table", under=part(LIST)))[0])


def says(pattern):
    foot = desk.children(part(FOOT))[0]
    desk.wait_for(lambda: re.search(pattern, desk.name_of(foot)), pattern)


def find():
    global found
    desk.key("ctrl+f")
    found = desk.wait_for(window, "the window")
    desk.wait_for(lambda: subprocess.run(["xdotool", "getactivewindow", "getwindowname"], stdout=subprocess.PIPE, check=False,
                                         text=True).stdout.strip() == "Find batches", "the window in front, for keys")


def put(name, text):
    desk.set_text(field(name), text)


def title(batch):
    desk.wait_for(lambda: desk.windows() and batch in desk.name_of(desk.windows()[0]), batch)


@tap.case
def the_open_season_by_keys():
    """Words typed find batches of the open season; Down, Return takes the one in hand."""
    find()
    says("^16 of 16 batches$")
    desk.type("drum firm")
    says("^1 of 16 batches$")
    tap.equal([row[0] for row in rows()], ["3 drum, firm roll"], "the rows")
    assert desk.find("table row", re.compile("^3 drum, firm roll, 28 Mar 2026, Brook Side, made$"), under=part(LIST))
    desk.key("Down", "Return")
    title("3 drum, firm roll")
    assert window() is None


COLUMNS = ("Name", "Date", "Leaf", "Kind of tea", "State", "Moisture", "Oxidation", "Cell rupture", "Finished weight")


def key_of(column, text):
    """What a cell is sorted by. Names begin with numbers, which go by their size; a planned batch comes before a made one."""
    if column == 1:
        return time.strptime(text, "%d %b %Y")
    if column == 0 or column > 4:
        return float(text.split()[0])
    return -len(text) if column == 4 else text.casefold()


def tab_to(node):
    for _ in range(20):
        if any(desk.has(part_of, "focused") for part_of in desk.walk(node)):
            return
        desk.key("Tab")
    raise AssertionError("not to be reached by Tab")


@tap.case
def every_column_sorts_by_keys():
    """By Tab to the field and the box beside it: each column puts its least first, or its largest or latest."""
    find()
    says("^16 of 16 batches$")
    all_rows = desk.wait_for(lambda: [r for r in [rows()] if len(r) == 16 and all("…" not in row for row in r)], "outcomes")[0]
    latest = field("largest or latest first", "check box")
    tab_to(field("Sort by", "combo box"))
    for column, name in enumerate(COLUMNS):
        tab_to(field("Sort by", "combo box"))
        desk.key("space", "Home", *["Down"] * column, "Return")
        for _ in range(2):
            tab_to(latest)
            desk.key("space")
            best = (max if desk.has(latest, "checked") else min)(key_of(column, row[column]) for row in all_rows)
            desk.wait_for(lambda c=column, b=best: key_of(c, cells_of_first()[c]) == b, "%s, %s first" % (name, best))
        desk.key("shift+Tab")
    desk.key("Escape")
    desk.wait_for(lambda: window() is None, "the window gone")


@tap.case
def a_folder():
    """A folder is searched with those in it; what cannot be read is told by file, line and reason."""
    make_folder()
    find()
    says("^16 of 16")
    desk.key("Tab", "space", "Down", "Return")  # from the words to the place
    put("Folder to search", folder)
    desk.key("F5")
    says("^%d of %d batches$" % (FILES * 16, FILES * 16))
    desk.click(desk.get("push button", "What could not be read…", under=part(FOOT)))
    told = desk.wait_for(lambda: window("What could not be read"), "the list of problems")
    desk.get("label", re.compile(r"broken\.leafwend:\d+: .*fix-pot"), under=told)
    desk.act(desk.get("push button", "Close", under=told))
    desk.wait_for(lambda: window("What could not be read") is None, "the list gone")


@tap.case
def filters_and_order():
    """Filters narrow, outcomes too once they are known; a heading sorts, and so does the field."""
    put("Kind of tea", "drum")
    put("From this date", "2026-04-05")
    put("To this date", "2026-04")
    says("^18 of 96")
    desk.click(field("Outcome", "push button"))
    desk.key("Down", "Return")  # moisture
    put("Outcome at most", "5.3")
    says("^12 of 96 batches$")  # one of three is at 5.6
    assert {row[5] for row in rows()} <= {"4.8 %", "5.2 %"}, rows()
    desk.click(heading("Name"))
    desk.wait_for(lambda: first().startswith("y0/9"), "the first name first")
    desk.click(heading("Name"))
    desk.wait_for(lambda: first().startswith("y5/16"), "the last name first")
    put("Outcome at most", "much")
    says("^18 of 96 batches · The outcome is no number.$")
    put("Outcome at least", "9")
    put("Outcome at most", "8")
    says("^0 of 96 batches · The highest outcome is under the lowest.$")
    put("Outcome at least", "")
    put("Outcome at most", "")
    put("From this date", "2026-04-15")
    put("To this date", "2026-03")
    says("batches · The last date is before the first.$")
    put("To this date", "2026-04-15")
    says("batches$")


@tap.case
def opening_asks_about_changes():
    """Return opens the season with that batch in hand, and asks before unsaved changes go."""
    put("Kind of tea", "")
    put("From this date", "")
    put("To this date", "")
    desk.set_text(field("Words to find", "entry"), "y4/7")
    says("^1 of 96")
    desk.key("Escape")
    desk.wait_for(lambda: window() is None, "the window gone")
    # A window that goes may still take the click or the key.
    desk.wait_for(lambda: desk.click(desk.blocks()[1]) or desk.has(desk.blocks()[1], "focused"), "the block in hand")
    desk.key("ctrl+Right")
    desk.wait_for(desk.is_changed, "a change")
    find()  # in the folder, still
    desk.set_text(field("Words to find", "entry"), "y4/7")
    says("^1 of 96")
    desk.key("Down", "Return")
    question = "Save the changes to this season?"
    desk.act(desk.get("push button", "Cancel", under=desk.wait_for(lambda: window(question), "the question")))
    desk.wait_for(lambda: window(question) is None, "the question gone")
    assert desk.is_changed()
    find()
    desk.set_text(field("Words to find", "entry"), "y4/7")
    says("^1 of 96")
    desk.key("Down", "Return")
    desk.act(desk.get("push button", "Discard changes"))
    title("y4/7 small black")


@tap.case
def a_folder_that_changed():
    """A file that went is gone from the list when the window is taken up again."""
    os.remove(os.path.join(folder, "y4.leafwend"))
    os.remove(os.path.join(folder, "broken.leafwend"))
    find()
    says("^80 of 80 batches$")
    assert desk.find("push button", "What could not be read…", under=part(FOOT)) is None
    desk.key("ctrl+q")  # from here: all windows go, after the question about the file in hand, which went
    question = desk.wait_for(lambda: window("Save this season again?"), "the question")
    desk.act(desk.get("push button", "Discard changes", under=question))
    tap.equal(desk.process.wait(10), 0, "the exit status")


tap.main()
