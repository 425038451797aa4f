"""The correction beside its peer: the best linear estimate, found here as a least-squares problem and with the variances
by the inverse of the information, which is another way to it than the program's gain, one weigh-in after another. Looks at
every state of every part of the leaf."""
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import os
import subprocess
import sys
import tempfile

import numpy as np

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "window"))
import tap  # noqa: E402

ROWS = os.environ["CORRECT_ROWS"]
# Shares are kept within 0 to 1, what is summed up not under 0; leaf/state.c.
BOUNDED = {"twist": 1, "enzyme": 1, "oxidation": 1, "broken": 1, "water": np.inf, "wilt": np.inf, "heat": np.inf,
           "roll": np.inf, "roast-min": np.inf, "green": np.inf}
SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="Small">
  <place altitude-m="900" latitude-deg="22"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.3">
    <part name="bud" share="0.2" exposure="0.8" area="1.3" cuticle="0.9" ruptured="0.01"/>
    <part name="blade" share="0.55" exposure="1" area="1" cuticle="1" ruptured="0.02"/>
    <part name="stem" share="0.25" exposure="1.2" area="0.5" cuticle="1.2" ruptured="0.01"/>
  </leaf>
  <batch name="1" start="2026-04-12T08:30" state="planned" leaf="leaf" fresh-kg="6">
    <step kind="wither" minutes="500">
      <weigh-in minute="200" of="weight-kg" value="%g" sd="0.02" tare-kg="0.4"/>
      <weigh-in minute="480" of="meter-pct" value="%g" sd="1"/>
    </step>
    <step kind="roll" minutes="12" press-kpa="5">
      <weigh-in minute="12" of="oxidation-pct" value="%g" sd="5"/>
    </step>
    <step kind="fix-pan" minutes="20">
      <weigh-in minute="6" of="leaf-c" value="%g" sd="2"/>
      <weigh-in minute="10" of="broken-pct" value="%g" sd="2"/>
      <weigh-in minute="10" of="weight-kg" value="%g" sd="0.03"/>
    </step>
  </batch>
</season>
"""
SLIGHT = 1e-5  # a shift that is less is none
NEAR, FAR = (6.07, 74.8, 14, 78, 2, 4.3), (6.2, 78, 35, 90, 9, 4.9)
folder = tempfile.TemporaryDirectory(prefix="correct.")


def told(readings, step=3, minute=10):
    """What the program goes by, and what it says."""
    path = os.path.join(folder.name, "small.leafwend")
    with open(path, "w", encoding="utf-8") as file:
        file.write(SEASON % readings)
    return json.loads(subprocess.run([ROWS, path, str(step), str(minute)], check=True, stdout=subprocess.PIPE).stdout)


def estimate(rows, doubt=1.0):
    """Mean and standard deviations by all readings at once; `doubt` times theirs."""
    x0, samples = np.array(rows["nominal"]), np.array(rows["samples"])
    read = np.array(rows["readings"])
    first = rows["parts"] * len(rows["states"]) + 1
    seen = slice(first, first + len(read))
    value, sd = read[:, 0], doubt * read[:, 1]
    spread = (samples - samples.mean(axis=0)) / np.sqrt(len(samples) - 1)
    # x = x0 + spread' w, w standard normal: the least sum of squares of w and of what is missed, each by its own error.
    weighed = spread[:, seen].T / sd[:, None]
    system = np.vstack([np.eye(len(samples)), weighed])
    right = np.concatenate([np.zeros(len(samples)), (value - x0[seen]) / sd])
    w = np.linalg.lstsq(system, right, rcond=None)[0]
    covariance = spread.T @ np.linalg.inv(np.eye(len(samples)) + weighed.T @ weighed) @ spread
    return x0 + spread.T @ w, np.sqrt(np.diag(covariance).clip(0)), seen


def bounded(rows, states):
    """As no leaf can be beyond."""
    for k, name in enumerate(rows["states"]):
        if name in BOUNDED:
            states[:, k] = states[:, k].clip(0, BOUNDED[name])
    return states


def apart(rows, doubt=1.0):
    """How far the two are apart in every state of every part, in standard deviations of what was known before; in readings
    and all standard deviations, as shares of them."""
    mean, sds, seen = estimate(rows, doubt)
    shape = (rows["parts"], len(rows["states"]))
    n = shape[0] * shape[1]
    before = np.array(rows["samples"]).std(axis=0, ddof=1)
    ours = bounded(rows, mean[:n].reshape(shape))
    theirs = np.array(rows["corrected"][:n]).reshape(shape)
    varies = before[:n].reshape(shape) > 1e-3 * np.maximum(np.abs(theirs), 1e-3)
    read = np.array(rows["readings"])
    states = np.where(varies, (np.abs(ours - theirs) - SLIGHT).clip(0) / np.where(varies, before[:n].reshape(shape), 1), 0)
    outcomes = sds[seen.stop:]
    unsure = outcomes > 1e-9
    numbers = np.concatenate([(read[:, 2] - mean[seen]) / read[:, 1], (read[:, 3] - sds[seen]) / read[:, 1],
                              np.array(rows["outcome-sds"])[unsure] / outcomes[unsure] - 1,
                              [rows["points"] - (mean[n] - rows["nominal"][n])]])
    return states, varies, np.abs(numbers).max()


def compare(rows):
    states, varies, numbers = apart(rows)
    print("# %d of %d states vary; worst %.1e of a standard deviation, readings and deviations %.1e"
          % (varies.sum(), varies.size, states.max(), numbers), flush=True)
    assert varies.all(axis=0).sum() >= 6, "too few states vary in every part: %s" % varies
    assert states.max() < 0.01, states
    assert numbers < 1e-3, numbers
    return varies


@tap.case
def every_state_of_every_part():
    """Five kinds of weigh-in in three steps: all states of all parts, readings and deviations are the best estimate's."""
    rows = told(NEAR)
    varies = compare(rows)
    shifts = np.array(rows["shifts"]).reshape(varies.shape)
    assert ((shifts != 0).sum(axis=1) >= 8).all(), shifts
    tap.equal(len(rows["readings"]), 6, "readings")


@tap.case
def in_the_wither_alone():
    """A weight with its tare and a meter, before anything was heated."""
    rows = told(NEAR, 1, 490)
    tap.equal(len(rows["readings"]), 2, "readings")
    mean, sds, seen = estimate(rows)
    assert abs(np.array(rows["readings"])[:, 2] - mean[seen]).max() < 1e-3
    assert (np.array(rows["readings"])[:, 3] < np.array(rows["readings"])[:, 1]).all(), "surer than each reading alone"


@tap.case
def the_bounds_hold():
    """Readings far off: where the estimate is beyond what a leaf can be, the state stands at the bound."""
    states, varies, numbers = apart(told(FAR))
    assert numbers < 1e-3, numbers
    assert states.max() < 0.02, states


@tap.case
def a_small_change_is_seen():
    """Readings a tenth less sure than they are come out elsewhere; so the comparison can fail."""
    states, _, numbers = apart(told(NEAR), 1.1)
    print("# worst %.1e, %.1e" % (states.max(), numbers))
    assert states.max() > 0.03 and numbers > 0.01, (states.max(), numbers)


tap.main()
