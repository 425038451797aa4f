"""The window that fits the leaf, by pointer and keys: it finds the leaf that the command line finds, can be stopped, says
where there is not enough data, and saves a new leaf that can be taken back and used."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import subprocess
import time
import xml.etree.ElementTree as ElementTree

import tap
from bench import CLI, DATA, NS, Bench
from desk import ask

BATCH = "12 long wither, gentle pan"
PLANNED = "15 as 12, for the buyer"
ROW = re.compile(r"^(.+): before (\S+), after (\S+) ± (\S+)(?: (.+))?, ([^,]+); decided by the weigh-ins: (\d+) %$")
FITTED, FOUND = "What is fitted", "What was found"
SIDES = {}
desk = Bench().open(batch=BATCH)


def window():
    return next((w for w in desk.windows() if desk.name_of(w) == "Fit the leaf"), None)


def side(name):
    """One of the window's two sides: every question to the program takes a while."""
    kept = SIDES.get(name)
    if kept is None or ask(kept.get_name) != name:
        kept = SIDES[name] = desk.wait_for(lambda: window() and next(
            (n for n in desk.walk(window()) if desk.name_of(n) == name), None), name)
    return kept


def get(role, name, where=FITTED):
    return desk.wait_for(lambda: desk.find(role, name, side(where)), "%s %r" % (role, name))


def answer(role, name):
    return get(role, name, FOUND)


def showing(role, name):
    """What the answer shows: not what is in something that is hidden."""
    def go(node):
        if desk.has(node, "visible"):
            yield node
            for child in desk.children(node):
                yield from go(child)
    return [n for n in go(side(FOUND)) if ask(n.get_role_name) == role and re.search(name, desk.name_of(n))]


def gone(role, name):
    desk.wait_for(lambda: not showing(role, name), "%r to go" % name)


def press(name, where=FITTED):
    """A click; the button must be able to take it."""
    button = get("push button", name, where)
    desk.wait_for(lambda: desk.has(button, "sensitive"), "%r to be of use" % name)
    desk.click(button)


def done():
    desk.wait_for(lambda: desk.find("status bar", re.compile("^Done"), side(FITTED)), "the fit", 60)


def command(*arguments):
    told = subprocess.run([CLI, "fit", desk.path, "--csv", *arguments], stdout=subprocess.PIPE, text=True, check=True)
    return list(csv.DictReader(told.stdout.splitlines()))


def number(text):
    """A number that may be written as 6.7×10⁻⁵."""
    return float(re.sub("×10⁻(.)", lambda m: "e-%d" % "⁰¹²³⁴⁵⁶⁷⁸⁹".index(m[1]), text))


def table():
    """What the rows of the table say to a screen reader: name, before, after, error, unit, change, decided."""
    rows = [ROW.match(desk.name_of(n)) for n in desk.find_all("list item", None, side(FOUND))]
    return [r.groups() for r in rows if r]


def leaves():
    return {e.get("id"): e for e in ElementTree.parse(desk.path).getroot().iter(NS + "leaf")}


def leaf_of(batch):
    return next(b.get("leaf") for b in ElementTree.parse(desk.path).getroot().iter(NS + "batch") if b.get("name") == batch)


def hidden(parameter):
    """By how much the leaf that the demo's weigh-ins were drawn from differs, as its generator has it."""
    with open(os.path.join(DATA, "demo", "garden.c"), encoding="utf-8") as file:
        told = file.read()
    laws = dict(re.findall(r'\{ "([a-z-]+)", ([\d.]+) \}', told[:told.index("demo_plot (")].split("} hidden_laws[] = {")[1]))
    if parameter == "fresh-moisture":
        return float(re.search(r"hidden_points\[DEMO_N_PLOTS\] = \{ ([\d.-]+)", told)[1])
    return float(laws.get(parameter, 1))


def tab_to(node):
    """Goes there by Tab, which scrolls it into sight."""
    for _ in range(40):
        if desk.has(node, "focused"):
            return
        desk.key("Tab")
        time.sleep(0.03)
    raise AssertionError("Tab never reached " + desk.name_of(node))


@tap.case
def opens_by_menu_and_tells_the_batches():
    """From the menu by keys; made batches of the leaf in hand are ticked, planned ones greyed with the reason"""
    desk.key("alt+b")
    desk.get("menu item", re.compile("^Fit the leaf"))
    desk.key("f")
    ticked = [desk.name_of(n) for n in desk.find_all("check box", re.compile(r"^\d+ "), side(FITTED))
              if desk.has(n, "checked")]
    tap.equal([t.split()[0] for t in ticked], ["1", "2", "11", "12"], "the ticks")
    told = get("check box", BATCH).get_description()
    for words in ("10 Apr 2026", "Upper Terrace", "weight × 4", "leaf temperature × 1"):
        assert words in told, told
    planned = get("check box", PLANNED)
    assert not desk.has(planned, "sensitive") and "only planned" in planned.get_description()
    skin = get("check box", "openness of the skin")
    assert desk.has(skin, "checked") and "0.00017 m/s ± 30 %" in skin.get_description(), skin.get_description()
    assert not desk.has(get("check box", "pan contact"), "checked")


@tap.case
def stops_midway():
    """All batches, each foretold, take a while: Stop ends it, and nothing is there"""
    press("All")
    desk.click(get("check box", "Foretell each batch from the others"))
    stop = get("push button", "Stop")  # looked for now: the fit does not wait
    assert not desk.has(stop, "sensitive")
    press("Fit")
    desk.wait_for(lambda: desk.has(stop, "sensitive"), "Stop to be of use")
    desk.click(stop)
    get("status bar", "Stopped; nothing was found.")
    assert not any(desk.name_of(node) == FOUND for node in desk.walk(window()))


@tap.case
def finds_what_the_command_finds():
    """The table says what leafwend-cli fit prints of the same batches, and finds the hidden leaf within two errors"""
    press("None")
    get("status bar", "Tick a batch that was weighed.")
    assert not desk.has(get("push button", "Fit"), "sensitive")
    desk.click(get("check box", "1 strong pan, first leaf"))
    for name in ("2 long wither, covered", "11 tumbled, light roast", BATCH):
        tab_to(get("check box", name))
        desk.key("space")
    press("Fit")
    done()
    expected = command("--leaf", "upper-terrace")
    found = table()
    tap.equal(len(found), len(expected), "the rows")
    for (_, before, after, error, unit, _, decided), row in zip(found, expected):
        tap.equal((number(before), number(after), number(error)),
                  tuple(float("%.*g" % (n, float(row[k]))) for n, k in ((4, "start"), (4, "value"), (2, "value_error"))),
                  row["parameter"])
        tap.equal((unit or "", int(decided)), (row["unit"], round(100 * float(row["decided"]))), row["parameter"])
    for (_, _, _, _, _, change, _), row in zip(found, expected):
        value, error = (float(n) for n in re.match(r"(?:× )?([+-]?[\d.]+) ± ([\d.]+)", change).groups())
        assert abs(value - hidden(row["parameter"])) < 2 * error, (row["parameter"], change)
    answer("label", re.compile(r"It foretells an unseen batch to within [\d.]+ times the instruments' errors"))
    answer("label", re.compile("cannot tell “openness of the skin” and “torn share” apart"))


@tap.case
def curves_step_by_keys():
    """The picture begins with the batch in hand; arrows go to other batches and quantities, as the buttons say"""
    panel = answer("image", "Before and after: %s, Moisture" % BATCH)
    assert re.search(r"Step 1, 6 h: weight 7.2 ± 0.02 kg, before [\d.]+, after [\d.]+\.", panel.get_description())
    desk.click(panel)
    desk.key("Left", "Down")
    answer("image", "Before and after: 11 tumbled, light roast, Oxidation")
    answer("label", re.compile("^3 of 4: 11 tumbled, light roast. 7 weigh-ins"))
    desk.click(answer("push button", "Weight"))
    answer("image", "Before and after: 11 tumbled, light roast, Weight")
    press("The next batch (Right)", FOUND)
    answer("image", "Before and after: %s, Weight" % BATCH)
    assert not desk.has(answer("push button", "The next batch (Right)"), "sensitive")


@tap.case
def saves_and_takes_back():
    """Save is one edit under the name that was typed; undo and redo take it and give it back"""
    name = answer("text", "name of the new leaf, from “Upper Terrace”")
    assert not showing("push button", "^Use it for")
    desk.click(name)
    desk.key("ctrl+a")
    desk.type("Upper Terrace")
    answer("label", "Another leaf has that name.")
    assert not desk.has(answer("push button", "Save as a new leaf"), "sensitive")
    desk.key("End")
    desk.type(" as weighed")
    press("Save as a new leaf", FOUND)
    desk.wait_for(lambda: showing("push button", "^Use it for"), "the offer to use it")
    answer("label", re.compile("^Saved as a new leaf"))
    desk.key("ctrl+z")
    gone("label", "^Saved as a new leaf")
    assert not showing("push button", "^Use it for")
    desk.key("ctrl+shift+z")
    answer("label", re.compile("^Saved as a new leaf"))
    desk.key("ctrl+s")
    desk.wait_for(lambda: not desk.is_changed(), "the save")
    new = leaves()["upper-terrace-fitted"]
    tap.equal(new.get("name"), "Upper Terrace as weighed", "the name")
    note = new.find(NS + "note").text
    for words in ("12 long wither, gentle pan (10 Apr 2026)", "openness of the skin (g-cut): 0.00017 → ", "Fitted on "):
        assert words in note, note
    skin = next(r for r in command("--leaf", "upper-terrace") if r["parameter"] == "g-cut")
    assert abs(float(new.find(NS + "law").get("g-cut")) / float(skin["value"]) - 1) < 1e-3
    subprocess.run([CLI, "check", "--quiet", desk.path], check=True)
    tap.equal((leaf_of(BATCH), leaf_of(PLANNED)), ("upper-terrace", "upper-terrace"), "the batches' leaves")


@tap.case
def uses_it_where_asked():
    """Planned batches get the new leaf by one edit; then the one in hand, and what was fitted counts as changed"""
    press(re.compile("^Use it for the 1 planned batch"), FOUND)
    desk.key("ctrl+s")
    desk.wait_for(lambda: leaf_of(PLANNED) == "upper-terrace-fitted", "the planned batch's leaf")
    tap.equal(leaf_of(BATCH), "upper-terrace", "the leaf of the one in hand")
    assert not showing("push button", "Fit again")
    press("Use it for “%s”" % BATCH, FOUND)
    desk.wait_for(lambda: showing("label", "^The season has changed since"), "the notice")
    desk.key("ctrl+z")
    gone("label", "^The season has changed since")


@tap.case
def one_weight_is_not_enough():
    """One batch with one weight: said, nothing can be saved, and that is said"""
    desk.key("Escape")
    desk.wait_for(lambda: window() is None, "the window to close")
    tree = ElementTree.parse(desk.path)
    ElementTree.register_namespace("", NS[1:-1])
    for batch in tree.getroot().iter(NS + "batch"):
        kept = 1 if batch.get("name") == BATCH else 0
        for step in batch.iter(NS + "step"):
            for seen in step.findall(NS + "weigh-in"):
                if not kept or seen.get("of") != "weight-kg":
                    step.remove(seen)
                else:
                    kept -= 1
    tree.write(os.path.join(desk.folder, "one.leafwend"), encoding="utf-8", xml_declaration=True)
    desk.path = os.path.join(desk.folder, "one.leafwend")
    desk.start(os.environ["LEAFWEND"], [desk.path])
    desk.wait_for(desk.blocks, "the blocks")
    desk.choose(BATCH)
    desk.key("ctrl+shift+f")
    assert "nothing was weighed" in get("check box", "2 long wither, covered").get_description()
    desk.wait_for(lambda: desk.has(get("push button", "Fit"), "focused"), "focus on the button that runs it")
    desk.key("Return")
    done()
    answer("label", re.compile("Not enough data: 1 weigh-in cannot decide all that may differ"))
    answer("label", "Nothing can be saved: not enough data.")
    assert not desk.has(answer("push button", "Save as a new leaf"), "sensitive")


tap.main(desk.tree)
