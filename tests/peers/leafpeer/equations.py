"""The equations: how fast the state of every part changes, all parts and any number of trial states at
once. A state is an array of eleven rows, in the order of the names below."""
# SPDX-License-Identifier: GPL-3.0-or-later
import numpy as np
from scipy.special import erfcx, expit

from . import air

WATER, TEMP, ENZYME, OXIDATION, WILT, HEAT, ROLL, ROAST, GREEN, BROKEN, TWIST = range(11)
N_ROWS = 11

LEWIS_2_3 = 0.90           # Le^(2/3), vapour in air
TOUCH_FILM_W_M2K = 300.0   # between wall and skin
MILD_J_MOL = 40e3          # wilting and yellowing
SHARED_J_KG = 2.43e6       # latent heat of what parts pass to each other under a cover
HELD = 0.85                # share of the leaf's own vapour that a whole cover holds


def arrhenius(energy_j_mol, temp_c, at_c):
    """1 at `at_c`."""
    a, b = temp_c + air.ZERO_C, at_c + air.ZERO_C
    return np.exp(energy_j_mol * (a - b) / (air.GAS * a * b))


def tenfold(temp_c, at_c, per_k):
    """Ten times faster by every `per_k`."""
    return 10 ** ((temp_c - at_c) / per_k)


def ruptured(wilt, heat, roll, at_first):
    return 1 - (1 - at_first) * np.exp(-(wilt + heat + roll))


def activity(law, water, temp_c):
    """Modified Halsey isotherm."""
    return np.exp(-np.exp(law["halsey-a"] + law["halsey-b"] * temp_c) / (100 * water) ** law["halsey-c"])


def water_and_heat(around, now, state, water, rupture):
    """d water / dt and d temperature / dt."""
    law = around.law
    temp = state[TEMP]
    air_c, vapour, sun, film, wall_c = now
    pressure = around.pressure_pa
    area = around.area_m2_kg * (1 - law["shrink"] * state[TWIST])

    # Vapour passes skin and film in series, then streams off (Stefan).
    wet = activity(law, water, temp)
    at_skin = air.below_boiling_pa(wet * air.saturation_pa(temp), pressure)
    if around.cover > 0:
        vapour = vapour + HELD * around.cover * air.positive(at_skin - vapour, 1.0)
    through_film = film / (LEWIS_2_3 * air.heat_j_m3k(air_c, pressure))
    through_skin = (law["g-cut"] * around.part["cuticle"] * (1 + law["g-rupture"] * rupture ** 1.2)
                    * water / (water + law["x-fall"]) * (around.fresh_water + law["x-fall"]) / around.fresh_water)
    moles = pressure / (air.GAS * (0.5 * (temp + air_c) + air.ZERO_C))
    lost = (area * air.WATER_KG_MOL * moles * np.log((pressure - vapour) / (pressure - at_skin))
            / (1 / through_film + 1 / through_skin))

    gained = 0.0
    heat = film * area * (air_c - temp) + around.sun_m2_kg * sun - air.latent_j_kg(temp) * lost
    if wall_c is not None:
        heat = heat + around.wall_w_kgk * (water + 0.6) / (water + 0.9) * (wall_c - temp)
    if around.steam_w_m2k > 0:
        condensing = around.steam_w_m2k * area * air.positive(around.boiling_c - temp, 0.01)
        heat = heat + condensing
        gained = gained + condensing / air.latent_j_kg(around.boiling_c)
    if around.cover > 0 and len(water) > 1:
        met = around.part["share"] * around.meets
        mean = (met * wet).sum(axis=0) / met.sum(axis=0)
        shared = law["k-even"] * around.cover * around.meets * (mean - wet)
        heat = heat + SHARED_J_KG * shared
        gained = gained + shared

    return gained - lost, heat / (law["c-dry"] + water * law["c-water"])


def roasting(around, wall_c, temp, water):
    """Minutes at 120 C, per second, the time on the wall counted by the skin's temperature."""
    per_k = around.law["z-roast"]
    minutes = tenfold(temp, 120, per_k)
    if around.touching > 0:
        moist = air.smallest(water / 2, 1, 0.02)
        conduct, store = 0.12 + 0.38 * moist, 1.2e6 + 2.3e6 * moist
        left = erfcx(TOUCH_FILM_W_M2K * np.sqrt(around.touch_s / (conduct * store)))
        skin = air.smallest(wall_c + (temp - wall_c) * left, 260, 1.0)
        minutes = around.touching * tenfold(skin, 120, per_k) + (1 - around.touching) * minutes
    return minutes * (0.05 + 0.95 * np.exp(-water / 0.25)) / 60


def rates(around, t_s, state):
    """d state / dt, per second; `state` has the axes row, part, trial."""
    law, press = around.law, around.press_kpa
    water, temp, enzyme = np.maximum(state[WATER], 1e-6), state[TEMP], state[ENZYME]
    rupture = ruptured(state[WILT], state[HEAT], state[ROLL], around.part["ruptured"])
    stress = air.positive(law["x-wilt"] - water, 0.02) / law["x-wilt"]
    change = np.zeros_like(state)

    now = around.air_at(t_s)
    change[WATER], change[TEMP] = water_and_heat(around, now, state, water, rupture)

    killed = law["k-inact"] * arrhenius(law["ea-inact"], temp, 80) * (1 - 0.5 * np.exp(-water / 0.4))
    change[ENZYME] = -enzyme * (killed + law["k-age"] * stress)
    by_enzyme = law["k-ox"] * arrhenius(law["ea-ox"], temp, 27) * enzyme
    yellowing = law["k-yellow"] * arrhenius(MILD_J_MOL, temp, 45)
    change[OXIDATION] = ((by_enzyme + yellowing) * rupture * water / (water + law["x-ox"])
                         * (1 - state[OXIDATION]))

    change[WILT] = (law["k-wilt"] * stress * air.smallest(water / 0.3, 1, 0.02) * arrhenius(MILD_J_MOL, temp, 25)
                    * expit((50 - temp) / 3))
    change[HEAT] = (law["k-heat"] * tenfold(temp, 90, law["z-heat"]) * air.smallest(water / 0.5, 1, 0.02)
                    * expit((temp - 55) / 3))
    if press > 0:
        softened = 1 + law["soft"] * (1 - np.exp(-state[HEAT]))
        pliant = air.largest(air.smallest((water - 0.25) / 0.65, 1, 0.02), 0.05, 0.02)
        dry = air.positive(law["x-break"] - water, 0.01) / law["x-break"]
        change[ROLL] = law["k-roll"] * press * softened * pliant
        change[TWIST] = law["k-twist"] * np.sqrt(press * softened) * pliant * (1 - state[TWIST])
        change[BROKEN] = law["k-break"] * press * dry * (1 - state[BROKEN])

    change[ROAST] = roasting(around, now[-1], temp, water)
    change[GREEN] = (law["green-form"] * (change[WILT] + change[ROLL]) * enzyme * (1 - rupture)
                     - air.smallest(law["k-green"] * tenfold(temp, 80, law["z-green"]), 0.1, 1e-5) * state[GREEN])
    return change
