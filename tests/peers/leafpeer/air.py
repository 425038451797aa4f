"""Moist air and heat transfer, and bounds with rounded corners. SI, temperatures in C."""
# SPDX-License-Identifier: GPL-3.0-or-later
import numpy as np
from scipy.optimize import brentq

ZERO_C = 273.15
GAS = 8.314462618           # J/(mol K)
WATER_KG_MOL = 0.01801528

# IAPWS SR1-86(1992): ln (p / pc) = Tc / T sum a tau^e.
CRITICAL_K, CRITICAL_PA = 647.096, 22.064e6
SATURATION = ((-7.85951783, 1), (1.84408259, 1.5), (-11.7866497, 3), (22.6807411, 3.5), (-15.9618719, 4),
              (1.80122502, 7.5))


def positive(a, width):
    """max (a, 0) by a hyperbola."""
    return (a + np.hypot(a, width)) / 2


def largest(a, b, width):
    return b + positive(a - b, width)


def smallest(a, b, width):
    return -largest(-np.asarray(a), -np.asarray(b), width)


def saturation_pa(temp_c):
    kelvin = np.minimum(np.maximum(temp_c + ZERO_C, 150), CRITICAL_K)
    root = np.sqrt(1 - kelvin / CRITICAL_K)  # all exponents are halves
    total = sum(a * root ** round(2 * e) for a, e in SATURATION)
    return CRITICAL_PA * np.exp(CRITICAL_K / kelvin * total)


def boiling_c(pressure_pa):
    return brentq(lambda t: float(saturation_pa(t)) - pressure_pa, -50, 300, xtol=1e-12)


def below_boiling_pa(vapour_pa, pressure_pa):
    """Vapour in open air: from 99 % of the pressure on it bends off towards 99.95 %, and never gets there."""
    room = 0.0095
    over = np.maximum(vapour_pa / pressure_pa - 0.99, 0)
    bent = pressure_pa * (0.99 + room * -np.expm1(-over / room))
    return np.where(over > 0, bent, vapour_pa)


def latent_j_kg(temp_c):
    return 2500.9e3 - temp_c * (2376.67 - temp_c * (0.61244 - 1.2919e-2 * temp_c))


def pressure_pa(altitude_m):
    """The standard atmosphere (ISO 2533) by geopotential altitude."""
    geopotential_m = altitude_m / (1 + altitude_m / 6356766)
    return 101325 * (1 - 6.5e-3 * geopotential_m / 288.15) ** 5.25588


def heat_j_m3k(temp_c, pressure):
    """Of dry air."""
    return 1006 * pressure / (287.05 * (temp_c + ZERO_C))


def film_w_m2k(speed_m_s, length_m, floor_w_m2k):
    """Laminar flow along a plate, air at 25 C, not under the still air's."""
    nusselt = 0.664 * np.sqrt(np.maximum(speed_m_s, 0) * length_m / 1.562e-5) * 0.71 ** (1 / 3)
    return largest(nusselt * 0.026 / length_m, floor_w_m2k, 0.2)
