"""What the program says of a batch, as arrays like the peer's."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import io
import subprocess

import numpy as np

from .outcome import NAMES


def table(program, *arguments):
    """The rows of CSV that the command line writes, as dictionaries."""
    text = subprocess.run([program, *arguments], stdout=subprocess.PIPE, check=True).stdout.decode("utf-8")
    return list(csv.DictReader(io.StringIO(text, newline="")))


class Told:
    """A season's step ends by the program, computed once."""

    def __init__(self, program, path):
        self.rows = table(program, "run", path, "--ends", "--parts")

    def outcomes(self, batch):
        """Step, row (the mean, then each part), outcome as in NAMES."""
        rows = [row for row in self.rows if row["batch"] == batch.name]
        shape = len(batch.steps), 1 + len(batch.leaf.parts), len(NAMES)
        labels = [(kind, part) for kind, _ in batch.steps for part in ("mean", *batch.leaf.parts)]
        if [(row["kind"], row["part"]) for row in rows] != labels:
            raise ValueError("%s: the program's rows are not those of the batch" % batch.name)
        return np.array([[float(row[name]) for name in NAMES] for row in rows]).reshape(shape)
