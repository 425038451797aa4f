"""Temperature logs beside their peer: tables as loggers write them, read by Python's csv, and steps whose wall or air
follows such a table, row by row, integrated by SciPy. Prints how far the two are apart."""
# SPDX-License-Identifier: GPL-3.0-or-later
import datetime
import os
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "window"))
import tap  # noqa: E402
from leafpeer import Form, Told, Values, march_outcomes, off, read_season, read_table, root_mean_square  # noqa: E402

CLI = os.environ["LEAFWEND_CLI"]
NS = "{urn:leafwend:season}"
VALUES = Values(CLI)
folder = tempfile.TemporaryDirectory(prefix="logs.")

# As in test_peer.py, for a log that is one straight line; and for one of rows, of which the program takes means over
# 20 s in lines that pass them within 0.25 C.
BOUND, BOUND_OF_ROWS = 1e-4, 1e-3

SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
    <part name="blade" share="0.7" exposure="0.9" area="1" cuticle="1.1" ruptured="0.01"/>
    <part name="stem" share="0.3" exposure="1.25" area="0.5" cuticle="0.9" ruptured="0.02"/>
  </leaf>
  <weather id="day" name="Day">
    <day low-c="11" low-hour="5.5" high-c="26" high-hour="15" dew-point-c="9" cloud-pct="30" wind-m-s="0.9"/>
  </weather>
  <batch name="1" start="2026-04-12T10:00" state="made" leaf="leaf"%s fresh-kg="4">
%s  </batch>
</season>
"""


def put(name, data):
    path = os.path.join(folder.name, name)
    with open(path, "wb") as file:
        file.write(data if isinstance(data, bytes) else data.encode("utf-8"))
    return path


def season(name, steps, weather=None):
    """A file of one batch of (kind, minutes)."""
    text = "".join('    <step kind="%s" minutes="%g"/>\n' % step for step in steps)
    return put(name, SEASON % (' weather="%s"' % weather if weather else "", text))


def take(path, table, *more):
    subprocess.run([CLI, "log", path, "--import", table, "--batch", "1", *more], check=True, stdout=subprocess.DEVNULL,
                   stderr=subprocess.DEVNULL)


def logs(path):
    return list(ElementTree.parse(path).getroot().iter(NS + "log"))


def points(curve):
    return np.array(curve.text.split(), dtype=float).reshape(-1, 2).T


# Rows of what a pan and its leaf might have read, with a second's noise.
dice = np.random.default_rng(20260412)
WAVES = [(7 * i, 200 + 40 * np.sin(i / 9) + dice.normal(0, 0.3), 60 + 20 * np.sin(i / 14)) for i in range(160)]
MIDNIGHT = datetime.datetime(2026, 4, 11, 23, 52)


def at(seconds):
    return MIDNIGHT + datetime.timedelta(seconds=seconds)


def of_iso(text):
    return (datetime.datetime.fromisoformat(text) - MIDNIGHT).total_seconds()


def of_clock():
    """A reader of times of day that goes on past midnight."""
    seen = {"last": 0.0, "days": 0.0}

    def read(text):
        hour, minute, second = text.split(":")
        now = 3600 * int(hour) + 60 * int(minute) + float(second)
        seen["days"] += 86400 * (now < seen["last"] - 43200)
        seen["last"] = now
        return seen["days"] + now
    return read


def of_twelve():
    twentyfour = of_clock()
    return lambda text: twentyfour(datetime.datetime.strptime(text, "%I:%M:%S %p").strftime("%H:%M:%S"))


def comma(value, digits):
    return ("%.*f" % (digits, value)).replace(".", ",")


def lines(head, row, end="\n"):
    return head + end + "".join(row(*values) + end for values in WAVES)


# No value, no time, a time gone back, the same time twice, nothing at all, and a value that cannot be.
BAD = {70: "70,OL,61", 140: "later,230,61", 280: "1,230,61", 350: "343,230,61", 420: "420,,nan", 490: "490,9999,61"}
FORMS = {
    "commas, seconds": (lines("Elapsed s,Pan,Leaf", lambda s, wall, leaf: "%d,%.2f,%.3f" % (s, wall, leaf)), Form()),
    "semicolons, decimal commas, minutes": (
        lines("Zeit (min);Wall;Tea", lambda s, wall, leaf: ";".join((comma(s / 60, 4), comma(wall, 1), comma(leaf, 1)))),
        Form(";", True, lambda text: 60 * float(text.replace(",", ".")))),
    "tabs, hours, ends of lines as DOS has them": (
        lines("Hours\tDrum\tLeaf", lambda s, wall, leaf: "%.8f\t%.1f\t%.1f" % (s / 3600, wall, leaf), "\r\n"),
        Form("\t", time=lambda text: 3600 * float(text))),
    "quoted decimal commas, a mark of UTF-8, dates": (
        "\ufeff" + lines('"Timestamp","Wall °C","Leaf °C"', lambda s, wall, leaf: '"%s","%s","%s"'
                         % (at(s).isoformat(), comma(wall, 1), comma(leaf, 1))), Form(comma=True, time=of_iso)),
    "a date beside the time": (
        lines("Date;Time;Wall;Leaf", lambda s, wall, leaf: at(s).strftime("%d.%m.%Y;%H:%M:%S") + ";%.1f;%.1f" % (wall, leaf)),
        Form(";", time=lambda day, time: of_iso("-".join(reversed(day.split("."))) + "T" + time), times=2)),
    "the time of day past midnight": (
        lines("Clock,Surface,Leaf", lambda s, wall, leaf: at(s).strftime("%H:%M:%S") + ",%.1f,%.1f" % (wall, leaf)),
        Form(time=of_clock())),
    "the time of day by twelve hours": (
        lines("Time,Wall,Leaf", lambda s, wall, leaf: at(s).strftime("%I:%M:%S %p") + ",%.1f,%.1f" % (wall, leaf)),
        Form(time=of_twelve())),
    "a stopwatch past the hour": (
        lines("Elapsed,Wall,Leaf", lambda s, wall, leaf: "%d:%02d,%.1f,%.1f" % (*divmod(7 * s, 60), wall, leaf)),
        Form(time=lambda text: 60 * int(text.split(":")[0]) + int(text.split(":")[1]))),
    "degrees Fahrenheit": (
        lines("Seconds,Wall (°F),Leaf (°F)", lambda s, *c: "%d,%.1f,%.1f" % (s, *(1.8 * t + 32 for t in c))),
        Form(to_c=lambda f: (f - 32) / 1.8)),
    "kelvins": (lines("Seconds,Wall [K],Leaf [K]", lambda s, *c: "%d,%.2f,%.2f" % (s, *(t + 273.15 for t in c))),
                Form(to_c=lambda k: k - 273.15)),
    "no names": (lines("", lambda s, wall, leaf: "%d,%.1f,%.1f" % (s, wall, leaf)).lstrip(), Form(names=0)),
    "rows that are no good": (
        lines("Seconds,Wall,Leaf", lambda s, wall, leaf: BAD.get(s, "%d,%.1f,%.1f" % (s, wall, leaf))), Form()),
}


@tap.case
def tables_are_read():
    """Every row that both take lies as near the program's lines as it says, and they leave out the same."""
    for name, (text, form) in FORMS.items():
        path, table = season("read.leafwend", [("fix-pan", 20)]), put("log.csv", text)
        uses = ("--take", "column 2=wall", "--take", "column 3=leaf") if form.names == 0 else ()
        take(path, table, "--step", "1", *uses)
        log, = logs(path)
        read, rows, unused = read_table(text.encode("utf-8"), form)
        tap.equal((int(log.get("rows")), int(log.get("left-out"))), (rows, unused), name + ": rows and those left out")
        tap.equal(unused, 4 if name == "rows that are no good" else 0, name + ": rows left out by the peer")
        tap.equal([curve.get("of") for curve in log], ["wall", "leaf"], name + ": the curves")
        for curve, (times, values) in zip(log, read):
            kept, within = points(curve), float(curve.get("within-c"))
            far = np.abs(np.interp(times, *kept) - values).max()
            assert far <= within + 1e-4, "%s: %s is %.4f off, not %g" % (name, curve.get("of"), far, within)
            tap.equal((kept[0, 0], kept[0, -1]), (round(times[0], 3), round(times[-1], 3)), name + ": first and last")
            assert len(kept[0]) > 20, "%s: only %d points" % (name, len(kept[0]))
        print("# %s: %d rows, %d left out" % (name, rows, unused))


def compare(name, bound, steps, followed, weather=None, **how):
    """`followed`: by step, {setting: (table's text, its times and °C, minute that it begins at)}."""
    path = season("march.leafwend", steps, weather)
    asked = {}
    for step, settings in followed.items():
        for setting, (text, times, values, minute) in settings.items():
            of = setting.split("-")[0]
            log = "s%d-%s" % (step, of)
            take(path, put(log + ".csv", "seconds,%s\n" % of + text), "--step", str(step), "--minute", "%g" % minute)
            asked.setdefault(step, {})[of + "-log"] = log
    root = ElementTree.parse(path)
    ElementTree.register_namespace("", NS[1:-1])
    for step, attributes in asked.items():
        root.getroot().find(NS + "batch").findall(NS + "step")[step - 1].attrib.update(attributes)
    root.write(path, encoding="utf-8", xml_declaration=True)
    batch, = read_season(path).values()
    batch.follows = {step: {setting: (lambda t_s, x=times, y=values, m=minute: np.interp(t_s - 60 * m, x, y))
                            for setting, (_, times, values, minute) in settings.items()}
                     for step, settings in followed.items()}
    apart = root_mean_square(off(Told(CLI, path).outcomes(batch), march_outcomes(batch, VALUES, **how)), axis=(1, 2))
    print("# %-44s worst step %.1e" % (name, apart.max()), flush=True)
    assert bound is None or apart.max() < bound, "%s: %.2e apart, more than %g" % (name, apart.max(), bound)
    return apart.max()


def line(first_c, last_c, duration_s, minute=0.0):
    """One straight line, rows of it every 10 s, to the last digit."""
    times = np.arange(0, duration_s + 1, 10.0)
    values = np.round(first_c + (last_c - first_c) * times / duration_s, 6)
    return "".join("%g,%.6f\n" % row for row in zip(times, values)), times, values, minute


@tap.case
def straight_lines():
    """Walls and air that follow one straight line come out as by SciPy, from before the step, in it and past its end."""
    compare("pan", BOUND, [("wither", 60), ("fix-pan", 15)], {2: {"wall-c": line(260, 200, 900)}})
    compare("pan, begun before", BOUND, [("fix-pan", 12)], {1: {"wall-c": line(280, 190, 1500, -5)}})
    compare("drum, and its room", BOUND, [("fix-drum", 6)],
            {1: {"wall-c": line(300, 360, 360), "air-c": line(18, 31, 360)}})
    compare("wither by the room's air, in weather", BOUND, [("wither", 300), ("roll", 30)],
            {1: {"air-c": line(17, 27, 18000)}, 2: {"air-c": line(28, 22, 1800)}}, "day")
    compare("hot air", BOUND, [("wither", 300), ("dry-air", 60), ("roast", 40)],
            {2: {"air-c": line(75, 105, 3600)}, 3: {"air-c": line(90, 120, 2400)}}, "day")


def rows(of_c, duration_s, noise_c, every_s=1.0):
    """As a logger writes it."""
    times = np.arange(0, duration_s + 0.5, every_s)
    values = np.round(of_c(times) + dice.uniform(-noise_c, noise_c, len(times)), 1)
    return "".join("%g,%.1f\n" % row for row in zip(times, values)), times, values, 0.0


def pan(t_s):
    return 235 + 25 * np.exp(-t_s / 200) + 12 * np.sin(t_s / 60)


@tap.case
def rows_of_a_logger():
    """A pan's wall that was read each second, and a dryer's air: means over 20 s make so little difference."""
    compare("pan, each second", BOUND_OF_ROWS, [("wither", 60), ("fix-pan", 15)], {2: {"wall-c": rows(pan, 900, 0.3)}},
            relative=1e-6, longest_s=1)
    compare("hot air, every five seconds", BOUND_OF_ROWS, [("wither", 300), ("dry-air", 60)],
            {2: {"air-c": rows(lambda t: 95 + 6 * np.sin(t / 150), 3600, 0.3, 5.0)}}, relative=1e-6, longest_s=5)


def day(t_s):
    return pan(t_s % 1800) + 10 * np.sin(t_s / 9000)


@tap.case
def rows_of_a_day():
    """A day of seconds by a thermocouple that flickers: more than can be kept, and still the same tea."""
    for flicker_c in (0.15, 1.0):
        text, times, values, _ = rows(day, 86399, flicker_c)
        compare("pan, in a day of seconds +- %g C" % flicker_c, BOUND_OF_ROWS, [("wither", 60), ("fix-pan", 15)],
                {2: {"wall-c": (text, times, values, -617.0)}}, relative=1e-6, longest_s=1)


@tap.case
def a_degree_is_seen():
    """A wall one degree warmer than the log says is seen; so the comparison can fail."""
    text, times, values, minute = rows(pan, 900, 0.3)
    apart = compare("pan, one degree off", None, [("wither", 60), ("fix-pan", 15)],
                    {2: {"wall-c": (text, times, values + 1, minute)}}, relative=1e-6, longest_s=1)
    assert apart > 2 * BOUND_OF_ROWS, "only %.2e apart" % apart


tap.main()
