"""The program beside its peer: every step's end of every part, and of the batch, for batches that cover
every kind of step. Prints how far the two are apart."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import sys
import tempfile

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "window"))
import tap  # noqa: E402
from leafpeer import NAMES, Told, Values, march_outcomes, off, read_season, root_mean_square  # noqa: E402

CLI = os.environ["LEAFWEND_CLI"]
DATA = os.environ["LEAFWEND_DATA"]
SEASONS = {year: os.path.join(DATA, "ondry-ridge-%s.leafwend" % year) for year in ("2025", "2026")}
BATCHES = [("2025", number) for number in (1, 2, 5, 8, 9, 12, 18)] + \
    [("2026", number) for number in (2, 7, 13)]

# What the worst step's distance must be under: the root mean square, over outcomes, parts and their mean, of
# difference / (size + value). The sizes stand in leafpeer/outcome.py. The peer integrates at a tolerance of
# 1e-9, the program at 3e-6.
BOUND = 1e-4

# Weathers of every form and none. Steps stand at their starts, so that rooms and weather are met; the sun is
# that of a clear day, or of a clouded one, at two places.
SMALL = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="Small">
  <place altitude-m="%g" latitude-deg="%g"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="78" green="0.3">
    <part name="blade" share="0.7" exposure="0.9" area="1" cuticle="1.1" ruptured="0.01"/>
    <part name="stem" share="0.3" exposure="1.25" area="0.5" cuticle="0.9" ruptured="0.02"/>
  </leaf>
  <weather id="same" name="Same">
    <constant temp-c="19" humidity-pct="81" cloud-pct="55" wind-m-s="0.6"/>
  </weather>
  <weather id="day" name="Day">
    <day low-c="11" low-hour="5.5" high-c="26" high-hour="15" dew-point-c="13" cloud-pct="30" wind-m-s="0.9"/>
  </weather>
  <weather id="humid" name="Humid">
    <day low-c="14" low-hour="6" high-c="24" high-hour="14.25" humidity-pct="70" cloud-pct="80" wind-m-s="1.2"/>
  </weather>
  <weather id="hours" name="Hours" start="2026-11-12T09:00">
    <hour temp-c="16.5" humidity-pct="82" cloud-pct="20" wind-m-s="0.4"/>
    <hour temp-c="18.2" humidity-pct="76" cloud-pct="70" wind-m-s="0.7" rain-mm="1"/>
    <hour temp-c="18.9" humidity-pct="70" sun-w-m2="690" wind-m-s="0.9"/>
    <hour temp-c="18.4" humidity-pct="72" sun-w-m2="500" wind-m-s="0.9"/>
  </weather>
%s</season>
"""
ALL = (("wither", 300), ("tumble", 10), ("fix-steam", 0.75), ("fix-pan", 15), ("roll", 5), ("rest", 120),
       ("dry-sun", 400), ("dry-air", 60), ("roast", 60))
DRUM = (("wither", 100), ("fix-drum", 5), ("roll", 5), ("dry-air", 100))
SUN = (("wither", 200), ("fix-pan", 20), ("dry-sun", 1500))


class Season:
    """One season's file as both see it."""

    def __init__(self, path):
        self.batches = read_season(path)
        self.told = Told(CLI, path)

    def named(self, number):
        return next(b for name, b in self.batches.items() if name.split()[0] == number)


def distances(told, exact):
    """Of each step, over its parts and outcomes."""
    return root_mean_square(off(told, exact), axis=(1, 2))


def compare(season, batch):
    """Prints how near the two are; fails where they are not."""
    told, exact = season.told.outcomes(batch), march_outcomes(batch, VALUES)
    worst, single = distances(told, exact), np.abs(off(told, exact))
    step, row, outcome = np.unravel_index(single.argmax(), single.shape)
    print("# %-34s worst step %.1e (%d %s), worst number %.1e (step %d, %s, %s)"
          % (batch.name, worst.max(), worst.argmax() + 1, batch.steps[worst.argmax()][0], single.max(), step + 1,
             ["mean", *batch.leaf.parts][row], NAMES[outcome]), flush=True)
    assert worst.max() < BOUND, "%s: %.2e apart, more than %g" % (batch.name, worst.max(), BOUND)


def case_of(year, number):
    def same():
        season = seasons[year]
        compare(season, season.named(str(number)))
    same.__doc__ = "Batch %d of %s comes out the same" % (number, year)
    return same


VALUES = Values(CLI)
folder = tempfile.TemporaryDirectory(prefix="peers.")
seasons = {}


@tap.case
def seasons_are_read():
    """Both read the demo seasons, and the batches here have every kind of step between them."""
    seasons.update((year, Season(path)) for year, path in SEASONS.items())
    kinds = {kind for year, number in BATCHES for kind, _ in seasons[year].named(str(number)).steps}
    tap.equal(kinds, set(VALUES.starts), "the kinds")


for chosen in BATCHES:
    tap.case(case_of(*chosen))


def small(altitude_m, latitude_deg, batches):
    """A season of batches (name, weather or None, steps), compared."""
    text = ""
    for name, weather, steps in batches:
        text += '  <batch name="%s" start="2026-11-12T08:30" state="planned" leaf="leaf"%s fresh-kg="4">\n' \
            % (name, ' weather="%s"' % weather if weather else "")
        text += "".join('    <step kind="%s" minutes="%g"/>\n' % step for step in steps) + "  </batch>\n"
    path = os.path.join(folder.name, "small.leafwend")
    with open(path, "w", encoding="utf-8") as file:
        file.write(SMALL % (altitude_m, latitude_deg, text))
    season = Season(path)
    tap.equal(len(season.batches), len(batches), "the batches")
    for batch in season.batches.values():
        compare(season, batch)


@tap.case
def without_weather():
    """Without weather, with every setting at its start, all ten kinds come out the same."""
    tap.equal({kind for kind, _ in ALL + DRUM}, set(VALUES.starts), "the kinds")
    small(2100, -17.5, [("all, no weather", None, ALL), ("drum, no weather", None, DRUM)])


@tap.case
def weather_of_every_form():
    """In constant weather, days that repeat, and hours that tell of cloud, the same comes out."""
    small(350, 41, [("constant", "same", SUN), ("hours", "hours", SUN), ("day by dew point", "day", SUN),
                    ("day by humidity", "humid", SUN)])


@tap.case
def a_small_change_is_seen():
    """One per cent on a single parameter, oxidation's, is seen; so the comparison can fail."""
    season = seasons["2025"]
    batch = season.named("9")
    batch.leaf.law["k-ox"] = 1.01 * batch.leaf.law.get("k-ox", VALUES.law["k-ox"])
    distance = distances(season.told.outcomes(batch), march_outcomes(batch, VALUES)).max()
    print("# with 1.01 k-ox: worst step %.1e" % distance)
    assert distance > 3 * BOUND, "only %.2e apart" % distance


tap.main()
