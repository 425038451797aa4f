"""The leaf model a second time, in Python with NumPy and SciPy, to check the program by: written from
the model's equations, with its own reading of seasons, its own weather between the hours and its own
integrator. It takes only numbers from the program: parameters and the settings' starting values."""
# SPDX-License-Identifier: GPL-3.0-or-later
from .document import read_season
from .outcome import NAMES, off, root_mean_square
from .program import Told
from .solver import march_outcomes
from .table import Form
from .table import read as read_table
from .values import Values

__all__ = ["Form", "NAMES", "Told", "Values", "march_outcomes", "off", "read_season", "read_table", "root_mean_square"]
