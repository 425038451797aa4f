"""All parts of a batch together through its steps, each begun anew, by SciPy's Radau method: implicit
Runge-Kutta of order 5, where the program takes backward differences."""
# SPDX-License-Identifier: GPL-3.0-or-later
import numpy as np
from scipy.integrate import solve_ivp

from .around import ROOM_C, Around
from .equations import ENZYME, GREEN, N_ROWS, TEMP, WATER, rates
from .outcome import outcomes

# The size at which each row of a state starts to matter: its absolute tolerance is the relative one times this.
SIZES = np.array([0.05, 10, 0.02, 0.05, 0.05, 0.05, 0.05, 0.2, 0.05, 0.05, 0.05])


class March:
    """The right-hand side of one step as SciPy calls it, and its Jacobian by differences in a single call."""

    def __init__(self, around, n_parts):
        self.around, self.shape = around, (N_ROWS, n_parts)
        self.size = np.repeat(SIZES, n_parts)

    def rates(self, t_s, flat):
        return rates(self.around, t_s, flat.reshape(*self.shape, 1)).ravel()

    def jacobian(self, t_s, flat):
        by = 1e-7 * (np.abs(flat) + self.size)
        trials = np.column_stack([flat, flat[:, None] + np.diag(by)])
        change = rates(self.around, t_s, trials.reshape(*self.shape, -1)).reshape(trials.shape)
        return (change[:, 1:] - change[:, :1]) / by


def fresh(batch):
    """Of every part, when plucked."""
    state = np.zeros((N_ROWS, len(batch.leaf.parts)))
    state[WATER], state[ENZYME], state[GREEN] = batch.leaf.water, 1, batch.leaf.green
    state[TEMP] = ROOM_C if batch.sky is None else batch.sky.at(batch.start_s)[0]
    return state


def march(batch, values, relative=1e-9, method="Radau", longest_s=np.inf):
    """The states at each step's end: a list of arrays, row by part. `longest_s`: of the solver's own steps, where
    something turns more often than these would see."""
    law = dict(values.law, **batch.leaf.law)
    state, clock_s, ends = fresh(batch), batch.start_s, []
    n_parts = len(batch.leaf.parts)
    for number, (kind, given) in enumerate(batch.steps, 1):
        follows = batch.follows.get(number, {})
        step = March(Around(batch, law, values, kind, given, clock_s, follows), n_parts)
        with np.errstate(all="ignore"):  # a trial step into nonsense is taken back by the solver
            done = solve_ivp(step.rates, (0, step.around.duration_s), state.ravel(), method=method, jac=step.jacobian,
                             rtol=relative, atol=relative * step.size, t_eval=[step.around.duration_s],
                             max_step=longest_s if follows else np.inf)
        if not done.success:
            raise ArithmeticError("%s: %s: %s" % (batch.name, kind, done.message))
        state = done.y[:, -1].reshape(step.shape)
        clock_s += step.around.duration_s
        ends.append(state)
    return ends


def march_outcomes(batch, values, **how):
    """The outcomes at each step's end: step, row (the mean, then each part), outcome."""
    return np.array([outcomes(batch, state) for state in march(batch, values, **how)])
