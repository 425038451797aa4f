"""The air outside and the sun. Between the hours of a record runs a piecewise cubic in Hermite form that
keeps the record's rises and falls (F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5:300,
1984), flat beyond its ends. A sky tells, at a moment of the place's clock: temperature (C), vapour (Pa),
measured sun (W/m2), wind (m/s), and the share of a clear day's sun that comes besides."""
# SPDX-License-Identifier: GPL-3.0-or-later
import numpy as np

from .air import saturation_pa

HOUR_S, DAY_S = 3600.0, 86400.0
NOON_2000_S = 946728000.0


def through_clouds(cloud_pct):
    """F. Kasten and G. Czeplak, Solar Energy 24:177 (1980)."""
    return 1 - 0.75 * (cloud_pct / 100) ** 3.4


class Record:
    """Made from rows of temperature (C), humidity (%), sun (W/m2), wind (m/s) and clear share, an hour apart;
    a single row is constant weather."""

    def __init__(self, start_s, rows):
        self.start_s = start_s
        # What moves smoothly in the open is the vapour, not the relative humidity.
        self.values = np.array(rows)
        self.values[:, 1] *= saturation_pa(self.values[:, 0]) / 100
        self.slopes = self._slopes(self.values)

    @staticmethod
    def _slopes(values):
        """Per hour: the harmonic mean of the chords beside a point, 0 where they disagree and at the ends."""
        slopes = np.zeros_like(values)
        chords = np.diff(values, axis=0)
        left, right = chords[:-1], chords[1:]
        agree = left * right > 0
        slopes[1:-1][agree] = 2 / (1 / left[agree] + 1 / right[agree])
        return slopes

    def at(self, clock_s):
        last = len(self.values) - 1
        hours = min(max((clock_s - self.start_s) / HOUR_S, 0.0), float(last))
        i = min(int(hours), last - 1)
        if last == 0:
            return self.values[0]
        u = hours - i
        v = 1 - u
        return ((1 + 2 * u) * v * v * self.values[i] + u * v * v * self.slopes[i]
                + u * u * (3 - 2 * u) * self.values[i + 1] - u * u * v * self.slopes[i + 1])


class Day:
    """A day like every other: half a cosine up to the warmest hour and another back. Either the relative
    humidity is the same all day or the dew point, and then air colder than it is saturated."""

    def __init__(self, low, high, humidity_pct, dew_point_c, wind_m_s, clear):
        self.low, self.high = low, high  # (C, hour)
        self.humidity_pct, self.dew_point_c = humidity_pct, dew_point_c
        self.wind_m_s, self.clear = wind_m_s, clear

    def at(self, clock_s):
        (low_c, low_hour), (high_c, high_hour) = self.low, self.high
        rising = (high_hour - low_hour) % 24
        since = (clock_s % DAY_S / HOUR_S - low_hour) % 24
        turn = since / rising if since < rising else (24 - since) / (24 - rising)
        temp_c = low_c + (high_c - low_c) * np.sin(np.pi / 2 * turn) ** 2
        if self.humidity_pct is None:
            vapour = saturation_pa(min(self.dew_point_c, temp_c))
        else:
            vapour = self.humidity_pct / 100 * saturation_pa(temp_c)
        return temp_c, vapour, 0.0, self.wind_m_s, self.clear


def sun_height(clock_s, latitude_deg):
    """Sine of the sun's height; the clock is taken to show solar time. Declination: the Astronomical Almanac's
    short series (J. J. Michalsky, Solar Energy 40:227, 1988)."""
    days = (clock_s - NOON_2000_S) / DAY_S
    anomaly = np.radians(357.528 + 0.9856003 * days)
    longitude = np.radians(280.46 + 0.9856474 * days + 1.915 * np.sin(anomaly) + 0.02 * np.sin(2 * anomaly))
    sine = np.sin(np.radians(23.439 - 4e-7 * days)) * np.sin(longitude)
    cosine = np.sqrt(1 - sine * sine)
    latitude, since_midnight = np.radians(latitude_deg), 2 * np.pi * (clock_s % DAY_S) / DAY_S
    return np.sin(latitude) * sine - np.cos(latitude) * cosine * np.cos(since_midnight)


def clear_w_m2(clock_s, latitude_deg, altitude_m):
    """Sun on the level under a cloudless sky (B. Haurwitz 1945; altitude as in FAO 56, equation 37)."""
    height = sun_height(clock_s, latitude_deg)
    if height <= 0:
        return 0.0
    return 1098 * height * np.exp(-0.059 / height) * (1 + 2e-5 / 0.75 * altitude_m)
