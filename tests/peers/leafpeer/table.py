"""A logger's table, read by Python's own csv: the test says of what form it is, nothing is guessed."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import io
from dataclasses import dataclass

import numpy as np

LOW_C, HIGH_C = -50, 600


@dataclass
class Form:
    separator: str = ","
    comma: bool = False              # decimal
    time: object = float             # of a row's cells before the temperatures: seconds
    times: int = 1                   # how many cells these are
    to_c: object = staticmethod(lambda value: value)
    names: int = 1                   # lines of names


def number(text, comma):
    value = float(text.replace(",", ".") if comma else text)
    if not np.isfinite(value):
        raise ValueError(text)
    return value


def read(data, form):
    """Of each column of temperatures its times (s, from the first row's) and °C; how many rows there are, and how many
    of them are of no use."""
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline=""), delimiter=form.separator))[form.names:]
    columns = [([], []) for _ in rows[0][form.times:]]
    first = last = None
    unused = 0
    for row in rows:
        try:
            now = form.time(*row[:form.times])
        except ValueError:
            unused += 1
            continue
        if last is not None and now <= last:
            unused += 1
            continue
        first, last = now if first is None else first, now
        used = 0
        for (times, values), cell in zip(columns, row[form.times:]):
            try:
                value = form.to_c(number(cell, form.comma))
            except ValueError:
                continue
            if LOW_C <= value <= HIGH_C:
                times.append(now - first)
                values.append(value)
                used += 1
        unused += used == 0
    return [(np.array(times), np.array(values)) for times, values in columns], len(rows), unused
