#!/usr/bin/env python3
"""model-digest.py OUTPUT DEPFILE SOLVER PLACE...: a header with a digest of all sources that an outcome is computed by,
so that what was kept of another model is known as such."""
# SPDX-License-Identifier: GPL-3.0-or-later
import hashlib
import pathlib
import sys

output, depfile, solver, *places = sys.argv[1:]
sources = []
for place in map(pathlib.Path, places):
    sources += sorted(p for p in place.iterdir() if p.suffix in (".c", ".h")) if place.is_dir() else [place]

digest = hashlib.sha256(solver.encode())
for path in sources:
    digest.update(b"\0%s\0" % path.name.encode())
    digest.update(path.read_bytes())

with open(output, "w", encoding="ascii") as file:
    file.write('/* Made by model-digest.py. */\n#define LW_MODEL_DIGEST "%s"\n' % digest.hexdigest())
with open(depfile, "w", encoding="utf-8") as file:
    file.write("%s: %s\n" % (output, " ".join(str(path).replace(" ", "\\ ") for path in sources)))
