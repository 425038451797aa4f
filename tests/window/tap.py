"""A little TAP: functions marked @case are the subtests, in their order; main() runs them."""
# SPDX-License-Identifier: GPL-3.0-or-later
import sys
import traceback

_cases = []


class Skip(Exception):
    """Raise in a case that cannot be made here; say why."""


def case(function):
    """Marks a subtest; its name, or the first line of its docstring, is what it proves."""
    _cases.append(function)
    return function


def equal(got, expected, what="it"):
    assert got == expected, "%s is %r, not %r" % (what, got, expected)


def main(explain=None):
    """Runs all cases and exits. `explain`, if given, is called after a failure and its text printed."""
    bad = 0
    print("1..%d" % len(_cases), flush=True)
    for number, function in enumerate(_cases, 1):
        title = (function.__doc__ or function.__name__.replace("_", " ")).strip().splitlines()[0].rstrip(".")
        try:
            function()
            print("ok %d - %s" % (number, title), flush=True)
        except Skip as reason:
            print("ok %d - %s # SKIP %s" % (number, title, reason), flush=True)
        except Exception:  # any failure of a case is that case's
            bad += 1
            said = traceback.format_exc() + (explain() if explain else "")
            print("not ok %d - %s" % (number, title))
            print("\n".join("# " + line for line in said.splitlines()), flush=True)
    sys.exit(1 if bad else 0)
