"""From states to what a maker would say, by the names of the program's CSV."""
# SPDX-License-Identifier: GPL-3.0-or-later
import numpy as np

from .equations import BROKEN, ENZYME, GREEN, HEAT, OXIDATION, ROAST, ROLL, TEMP, TWIST, WATER, WILT, ruptured

# Each outcome and the size at which a difference in it starts to matter, in its own unit.
WEIGHTS = {
    "moisture_wb_pct": 5, "leaf_temp_c": 10, "enzyme_left_pct": 2, "oxidation_pct": 5, "rupture_pct": 5,
    "rupture_wilt_pct": 5, "rupture_heat_pct": 5, "rupture_roll_pct": 5, "roast_min": 0.2, "green_note": 0.05,
    "broken_pct": 5, "twist_pct": 5, "kg_per_kg_fresh": 0.05,
}
NAMES = tuple(WEIGHTS)


def wet_basis_pct(water):
    return 100 * water / (1 + water)


def outcomes(batch, state):
    """A row for the mean of the batch, then one for each part; columns as NAMES."""
    leaf = batch.leaf
    at_first, share = leaf.numbers["ruptured"], leaf.numbers["share"]
    exposure = state[WILT] + state[HEAT] + state[ROLL]
    rupture = ruptured(state[WILT], state[HEAT], state[ROLL], at_first)
    each = 100 * (rupture - at_first) / np.where(exposure > 0, exposure, 1)
    parts = np.column_stack([
        wet_basis_pct(state[WATER]), state[TEMP], 100 * state[ENZYME], 100 * state[OXIDATION], 100 * rupture,
        each * state[WILT], each * state[HEAT], each * state[ROLL], state[ROAST], state[GREEN],
        100 * state[BROKEN], 100 * state[TWIST], (1 + state[WATER]) / (1 + leaf.water)])
    mean = share @ parts
    mean[0] = wet_basis_pct(share @ state[WATER])  # as a balance would find it
    return np.vstack([mean, parts])


def off(told, exact):
    """How far each outcome is from the exact one, relative to its size: difference / (weight + exact)."""
    return (told - exact) / (np.array([WEIGHTS[name] for name in NAMES]) + np.abs(exact))


def root_mean_square(differences, axis=None):
    """Root mean square."""
    return np.sqrt(np.mean(np.square(differences), axis=axis))
