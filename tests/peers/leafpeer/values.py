"""Numbers without equations: the model's parameters and the settings of each kind of step, as
`leafwend-cli model` tells them, so that a new value needs no change here."""
# SPDX-License-Identifier: GPL-3.0-or-later
from .program import table


class Values:
    """`law`: value by symbol. `starts`: by kind, then setting, the value where a step says nothing.
    `weather`: (kind, setting) pairs that follow the batch's weather while not given."""

    def __init__(self, program):
        self.law = {row["symbol"]: float(row["value"]) for row in table(program, "model", "--csv")}
        self.starts, self.weather = {}, set()
        for row in table(program, "model", "--steps", "--csv"):
            self.starts.setdefault(row["step"], {})[row["setting"]] = float(row["start"])
            if row["weather"] == "follows":
                self.weather.add((row["step"], row["setting"]))
