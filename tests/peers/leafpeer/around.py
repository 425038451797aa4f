"""From a step as it is written to what the parts of the leaf meet: the air as time goes on, how much
of each part the air and the sun reach, wall, steam and pressure."""
# SPDX-License-Identifier: GPL-3.0-or-later
import numpy as np

from . import air
from .sky import clear_w_m2

ROOM_C, ROOM_HUMIDITY = 22.0, 0.68  # without weather
WELL_MIXED = 0.95                   # rolled, tumbled or tossed leaf
KEEPS_OUTSIDE_VAPOUR = ("dry-air", "roast")


class Around:
    """One step. Arrays are over the parts, with one axis more for trial states. `follows` has what a log gives:
    the °C of "wall-c" and "air-c" at a number of seconds into the step."""

    def __init__(self, batch, law, values, kind, given, clock_s, follows):
        leaf = batch.leaf
        known = dict(values.starts[kind], **given)
        self.kind, self.law, self.sky, self.clock_s = kind, law, batch.sky, clock_s
        self.place = batch.latitude_deg, batch.altitude_m
        self.duration_s = 60 * known["minutes"]
        self.pressure_pa = air.pressure_pa(batch.altitude_m)
        self.boiling_c = air.boiling_c(self.pressure_pa)
        self.fresh_water = leaf.water
        self.part = {name: numbers[:, None] for name, numbers in leaf.numbers.items()}

        self.cover = known.get("cover-pct", 0) / 100
        self.press_kpa = known.get("press-kpa", 0)
        self.steam_w_m2k = known.get("steam-w-m2k", 0)
        self.wall_c = known.get("wall-c")
        self.follows = follows
        self.touch_s = known.get("touch-s")
        self.touching = known.get("touch-pct", 0) / 100
        self._reach(known)
        self._air(known, {setting for k, setting in values.weather if k == kind} - set(given))

    def _reach(self, known):
        """Area of each part in the air and in the sun, and its heat from the wall, per kg of dry leaf."""
        law, part = self.law, self.part
        fresh = 1 + self.fresh_water
        spread = known.get("spread-kg-m2")
        tossed = known.get("toss-pct", 0) / 100
        if tossed > 0:
            mixed, mean = WELL_MIXED, tossed
        else:
            mixed = self._mixed(known.get("turning-per-h", 0))
            third = spread / fresh * law["sla"] / 3
            mean = (1 - np.exp(-third)) / third
        own = mixed + part["exposure"] * (1 - mixed)
        faces = 2 * law["sla"]
        self.area_m2_kg = faces * part["area"] * mean * own
        self.meets = air.smallest(part["area"] * own, 1, 0.01)
        self.sun_m2_kg = 0.0
        if spread is not None:
            caught = (law["sun-absorbed"] * (1 - 0.8 * self.cover) * air.smallest(fresh / spread, faces, 0.5)
                      * air.smallest(own, 2, 0.01))
            self.sun_m2_kg = air.smallest(caught, law["sun-absorbed"] * self.area_m2_kg, 1e-3 * self.area_m2_kg)
        self.wall_w_kgk = 0.0
        if "wall-w-m2k" in known:
            dry_kg = known["load-kg"] / fresh
            self.wall_w_kgk = known["wall-w-m2k"] * known["wall-m2"] / dry_kg * np.sqrt(part["area"])

    def _mixed(self, turning_per_h):
        least = WELL_MIXED if self.kind in ("tumble", "roll") else 0
        by_hand = air.largest(0.85 * self.cover, turning_per_h / (turning_per_h + 0.5), 0.01)
        return air.smallest(air.largest(by_hand, least, 0.01), 1, 0.01)

    def _air(self, known, left_open):
        """`left_open`: settings that follow the weather, if there is one."""
        if self.sky is None:
            left_open = set()
        left_open = left_open - set(self.follows)
        self.room_c = None if "air-c" in left_open else known.get("air-c", self.boiling_c)
        self.speed_m_s = None if "air-m-s" in left_open else known["air-m-s"]
        self.heated = known.get("hot-air-pct", 0) / 100
        self.sunny = known.get("sun-pct", 0) / 100
        self.humidity, self.vapour_pa = None, None  # both None: the weather's vapour
        if self.kind in KEEPS_OUTSIDE_VAPOUR:
            if self.sky is None:
                self.vapour_pa = ROOM_HUMIDITY * air.saturation_pa(ROOM_C)
        elif self.kind == "fix-steam":
            self.humidity = 1.0
        elif "humidity-pct" not in left_open:
            self.humidity = known["humidity-pct"] / 100
        varies = (self.follows or self.sunny > 0 or None in (self.room_c, self.speed_m_s)
                  or self.humidity is self.vapour_pa)
        self._constant = None if varies else self._air_at(0.0)

    def air_at(self, t_s):
        """(air in contact with the leaf C, its vapour Pa, sun on the leaf W/m2, film W/m2K, wall C), `t_s` into the
        step."""
        return self._constant or self._air_at(t_s)

    def _air_at(self, t_s):
        room_c, speed, vapour = self.room_c, self.speed_m_s, self.vapour_pa
        clock_s, sun, clear = self.clock_s + t_s, 0.0, 1.0
        if self.sky is not None:
            outside_c, outside_pa, sun, wind, clear = self.sky.at(clock_s)
            room_c = outside_c if room_c is None else room_c
            speed = wind if speed is None else speed
            vapour = outside_pa if vapour is None else vapour
        room_c = self.follows["air-c"](t_s) if "air-c" in self.follows else room_c
        wall_c = self.follows["wall-c"](t_s) if "wall-c" in self.follows else self.wall_c
        if self.sunny > 0 and clear > 0:
            sun = sun + clear * clear_w_m2(clock_s, *self.place)
        if self.humidity is not None:
            vapour = self.humidity * air.saturation_pa(room_c)
        inside_c = room_c if self.heated == 0 else room_c + self.heated * (wall_c - room_c)
        film = air.film_w_m2k(speed, self.law["leaf-length"], self.law["film-floor"])
        return inside_c, float(air.below_boiling_pa(vapour, self.pressure_pa)), self.sunny * sun, film, wall_c
