"""What is written down of a batch and of the season besides the steps, by keys: name, date, fresh weight, notes, place. What
is wrong is refused with its reason, undo restores, and the numbers follow."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re
import xml.etree.ElementTree as ElementTree

import tap
from bench import NS, Bench

BATCH = "1 strong pan, first leaf"
desk = Bench().open(batch=BATCH)


def field(name):
    """A field of the window in front, not the label beside it."""
    return desk.wait_for(lambda: len(desk.windows()) > 1 and next(
        (n for n in desk.find_all(None, name, desk.windows()[-1]) if n.get_role_name() != "label"), None), name)


def opened():
    desk.key("F2")
    return field("Name")


def closed():
    desk.wait_for(lambda: len(desk.windows()) == 1, "the window to close")


def go_to(name):
    """By Tab, as often as it takes."""
    node = field(name)
    for _ in range(40):
        if desk.has(node, "focused"):
            return
        desk.key("Tab")
    raise AssertionError("Tab never reached " + name)


def put(name, text):
    go_to(name)
    desk.key("ctrl+a")
    desk.type(text)


def apply():
    desk.act(field("Apply"))
    closed()


def refused(pattern):
    desk.wait_for(lambda: desk.find("label", re.compile(pattern), desk.windows()[-1]), pattern)
    assert not desk.has(field("Apply"), "sensitive"), "it can be applied"


def saved(name=BATCH):
    desk.save()
    root = ElementTree.parse(desk.path).getroot()
    return root, next(b for b in root.iter(NS + "batch") if b.get("name") == name)


def agrees():
    """The window's first step ends as the command line computes the saved file."""
    desk.save()
    told = desk.computed(BATCH, 1)
    desk.wait_for(lambda: abs(told - desk.moisture(1)) < 0.06, "window %g, command line %g" % (desk.moisture(1), told))
    return told


@tap.case
def a_name_is_typed():
    """F2 has the name selected: what is typed replaces it, Return is enough, one undo."""
    opened()
    desk.type("1 first of spring\n")
    closed()
    desk.wait_for(lambda: "1 first of spring" in desk.name_of(desk.windows()[0]), "the name")
    saved("1 first of spring")
    desk.key("ctrl+z")
    desk.wait_for(lambda: BATCH in desk.name_of(desk.windows()[0]), "the undo")


@tap.case
def what_cannot_be_is_refused():
    """Another batch's name, none, no moment and no weight are refused with the reason; Escape leaves all."""
    desk.save()
    before = desk.saved_bytes()
    opened()
    desk.type("3 drum, firm roll")
    refused("^Another batch has that name")
    put("Name", " ")
    refused("^The batch needs a name")
    put("Name", BATCH)
    put("Start", "12 April")
    refused("^The start is a day and a time, such as 2026-04-12 10:30")
    put("Start", "2026-02-30 10:00")
    refused("^The start is a day and a time")
    put("Start", "2026-03-25 11:00")
    for wrong in ("0", "ten", "-3"):
        put("Fresh leaf, kg", wrong)
        refused(r"^Fresh leaf must be a number from 0\.001 to 100000")
    desk.key("Escape")
    closed()
    desk.save()
    tap.equal(desk.saved_bytes(), before, "the file")


@tap.case
def date_and_weight_count():
    """Another day has other weather and another weight of fresh leaf other meanings; the numbers follow, as one edit."""
    before = agrees()
    opened()
    put("Start", "2026-04-02 11:00")  # a humid day
    put("Fresh leaf, kg", "9.25")
    apply()
    batch = saved()[1]
    tap.equal((batch.get("start"), batch.get("fresh-kg")), ("2026-04-02T11:00", "9.25"), "start and weight")
    after = agrees()
    assert abs(after - before) > 0.3, (before, after)
    desk.click(desk.get("page tab", "Weigh-ins"))
    desk.get("list item", re.compile(r"^Weight 7\.02 kg.*measured"))
    desk.key("ctrl+z")
    desk.wait_for(lambda: abs(desk.moisture(1) - before) < 0.06, "the undo")


@tap.case
def the_calendar_chooses_a_day():
    """The button beside the start opens a calendar; a day chosen there keeps the time of day. Escape leaves all as it was."""
    def days():
        return desk.find_all("label", re.compile(r"^(29|30)$"), desk.windows()[-1])
    opened()
    go_to("Start")
    desk.key("Tab", "space")
    desk.wait_for(days, "the calendar")
    desk.key("Right", "space")
    desk.wait_for(lambda: desk.text_of(field("Start")) != "2026-03-25 09:30", "another day")
    assert re.match(r"^2026-0[2-4]-\d\d 09:30$", desk.text_of(field("Start"))), desk.text_of(field("Start"))
    desk.key("Escape")
    desk.wait_for(lambda: not days(), "the calendar to close")
    desk.key("Escape")
    closed()
    desk.save()
    opened()
    desk.key("Return")
    closed()
    assert not desk.is_changed(), "a look is an edit"


@tap.case
def notes_are_kept():
    """A note of two lines and the note of a step go into the file, and an empty one takes them out."""
    opened()
    put("Note", "Smells of pears.\nSecond cup better.")
    put("2. fix in pan", "the fire was slow")
    apply()
    batch = saved()[1]
    tap.equal(batch.find(NS + "note").text, "Smells of pears.\nSecond cup better.", "the note")
    step = batch.findall(NS + "step")[1]
    tap.equal(step.find(NS + "note").text, "the fire was slow", "the step's note")
    opened()
    go_to("2. fix in pan")
    desk.key("ctrl+a", "BackSpace", "Return")
    closed()
    assert saved()[1].findall(NS + "step")[1].find(NS + "note") is None, "the note is still there"


@tap.case
def a_plan_becomes_made():
    """A repeat is a plan; its tick makes it a made batch without a run."""
    desk.key("ctrl+r")
    again = BATCH + " (2)"
    desk.wait_for(lambda: again in desk.name_of(desk.windows()[0]), "the repeat")
    tap.equal(saved(again)[1].get("state"), "planned", "the repeat")
    opened()
    go_to("Made")
    desk.key("space")
    apply()
    tap.equal(saved(again)[1].get("state"), "made", "the batch")
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: BATCH + " (2)" not in desk.name_of(desk.windows()[0]), "both undone")


@tap.case
def a_day_is_made_up():
    """A weather of the maker's own is the batch's in one edit; it can be changed, and one that is the same all day is constant."""
    desk.choose(BATCH)
    before = agrees()
    desk.key("alt+b", "w")
    desk.get("menu item", re.compile("^Make up a day's weather"))
    desk.key("m")
    field("Name")
    desk.type("hot wind")
    put("Lowest, °C", "45")
    refused("^The lowest temperature is above the highest")
    put("Lowest, °C", "24")
    put("Highest, °C", "38")
    put("Humidity, %", "30")
    refused("^Give humidity or dew point, one of the two")
    put("Dew point, °C", "dry")
    refused("^Humidity and dew point are numbers")
    go_to("Dew point, °C")
    desk.key("ctrl+a", "BackSpace")
    put("Wind, m/s", "3")
    apply()
    root, batch = saved()
    weather = next(w for w in root.iter(NS + "weather") if w.get("id") == batch.get("weather"))
    tap.equal((weather.get("name"), weather.find(NS + "day").attrib),
              ("hot wind", {"low-c": "24", "low-hour": "6", "high-c": "38", "high-hour": "14", "humidity-pct": "30",
                            "cloud-pct": "20", "wind-m-s": "3"}), "the weather")
    assert agrees() < before - 1, "hot wind dries no faster"
    desk.key("alt+b", "w")
    desk.get("menu item", re.compile("^Change this weather"))
    desk.key("c")
    tap.equal(desk.text_of(field("Lowest, °C")), "24", "the lowest")
    put("Lowest, °C", "38")
    apply()
    root, batch = saved()
    weather = next(w for w in root.iter(NS + "weather") if w.get("id") == batch.get("weather"))
    tap.equal(weather.find(NS + "constant").get("temp-c"), "38", "all day")
    agrees()
    desk.key("ctrl+z", "ctrl+z")
    desk.wait_for(lambda: abs(desk.moisture(1) - before) < 0.06, "both undone")


@tap.case
def the_season_has_a_place():
    """Name, place, altitude and latitude of the season; higher up leaf dries faster, as the command line computes, too."""
    desk.choose(BATCH)
    before = agrees()
    desk.key("F10")
    desk.get("menu item", re.compile("^Season and place"))
    desk.key("l")
    field("Name of the season")
    desk.type("Ridge, later")
    put("Altitude, m", "9999")
    refused("^Altitude must be a number from -500 to 9000")
    put("Altitude, m", "3200")
    put("Latitude, degrees", "-12.5")
    put("Place", "Over the ridge")
    apply()
    root = saved()[0]
    place = root.find(NS + "place")
    tap.equal((root.get("name"), place.get("name"), place.get("altitude-m"), place.get("latitude-deg")),
              ("Ridge, later", "Over the ridge", "3200", "-12.5"), "the season")
    assert "Ridge, later" in desk.name_of(desk.windows()[0])
    assert agrees() < before, "thinner air dries no faster"
    desk.key("ctrl+z")
    desk.wait_for(lambda: "Ridge, later" not in desk.name_of(desk.windows()[0]), "the undo")
    desk.wait_for(lambda: abs(desk.moisture(1) - before) < 0.06, "the old result")


tap.main(desk.tree)
