#!/usr/bin/python3
"""count.py [--failed] BUILD-DIR...: add up meson's logs of all test runs in these directories and
print 'N passed, N failed[, N skipped]'. A program that speaks TAP counts by its subtests, any other
as one. --failed says that something beside the tests failed: that counts one too. Exits 1 if
anything failed or nothing ran; what failed says why just above the count."""
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import pathlib
import re
import sys

SUBTEST = re.compile(r"^(not )?ok\b[^#\n]*(?:#\s*(SKIP|TODO))?", re.IGNORECASE)


def count(test):
    """[passed, failed, skipped] of one test program, by its line in meson's JSON log."""
    good, skipped = test["result"] in ("OK", "EXPECTEDFAIL"), test["result"] == "SKIP"
    lines = (test.get("stdout") or "").splitlines()
    counts = [0, 0, 0]
    if any(re.match(r"1\.\.\d+", line) for line in lines):
        for told in filter(None, map(SUBTEST.match, lines)):
            directive = (told[2] or "").upper()
            counts[2 if directive == "SKIP" else 1 if told[1] and directive != "TODO" else 0] += 1
    if not any(counts):
        return [int(good), int(not good and not skipped), int(skipped)]
    if not good and not skipped and counts[1] == 0:
        counts[1] = 1  # all subtests that came went well, but it crashed or ran too long
    return counts


def why(test):
    """The failed subtests of a program and the first lines of what each says, or else its last words."""
    lines, kept = (test.get("stdout") or "").splitlines(), []
    for number, line in enumerate(lines):
        if line.startswith("not ok"):
            kept += lines[number:number + 12]
    return ["  " + line[:160] for line in kept or lines[-6:] + (test.get("stderr") or "").splitlines()[-6:]]


def main():
    outside = "--failed" in sys.argv
    total = [0, 0, 0]
    for directory in (a for a in sys.argv[1:] if a != "--failed"):
        for log in sorted(pathlib.Path(directory, "meson-logs").glob("testlog*.json")):
            for test in map(json.loads, log.read_text(encoding="utf-8").splitlines()):
                counts = count(test)
                total = [a + b for a, b in zip(total, counts)]
                if counts[1]:
                    print("%s: %s: %s, %d failed" % (log, test["name"], test["result"], counts[1]))
                    print("\n".join(why(test)))
    # A failed test makes its run fail, so only a failure without one has yet to show in the count.
    if outside and total[1] == 0:
        total[1] = 1
    print("%d passed, %d failed" % (total[0], total[1]) + (", %d skipped" % total[2] if total[2] else ""))
    return 1 if total[1] or total[0] == 0 else 0


sys.exit(main())
