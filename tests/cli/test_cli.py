"""The command line: what it writes, where, and how it refuses. Seasons are small and made here."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import io
import os
import subprocess
import sys
import tempfile

import program  # first: it knows where tap is
import tap
from program import CLI, run

HERE = os.path.dirname(os.path.abspath(__file__))
DATA = os.environ["LEAFWEND_DATA"]
BROKEN = os.path.join(HERE, "..", "season", "broken")
DOCS = os.path.join(HERE, "..", "..", "docs")
FOLDER = tempfile.TemporaryDirectory(prefix="cli.")

HEADER = ("batch,part,step,kind,minute,moisture_wb_pct,leaf_temp_c,enzyme_left_pct,oxidation_pct,rupture_pct,"
          "rupture_wilt_pct,rupture_heat_pct,rupture_roll_pct,roast_min,green_note,broken_pct,twist_pct,"
          "kg_per_kg_fresh")
PARTS = {"blade, whole": 0.8, "stem": 0.2}  # names and shares
RUPTURED = {"blade, whole": 0.005, "stem": 0.02}
FRESH = 77.0  # % wet basis
NAMES = ["1 pan, first", "2 steam", "2 steam again", "3 the \"best\"", "4 bare"]
STEPS = [("wither", 5.1), ("fix-pan", 25), ("roll", 3.75), ("dry-sun", 60)]

SEASON = """<?xml version="1.0" encoding="UTF-8"?>
<season xmlns="urn:leafwend:season" version="1" name="S">
  <place altitude-m="1250" latitude-deg="24"/>
  <leaf id="leaf" name="Leaf" fresh-moisture-pct="77" green="0.25">
%s  </leaf>
%s</season>
"""


def season(names, steps):
    parts = "".join('    <part name="%s" share="%g" exposure="1" area="1" cuticle="1" ruptured="%g"/>\n'
                    % (name, share, RUPTURED[name]) for name, share in PARTS.items())
    rows = "".join('    <step kind="%s" minutes="%s"/>\n' % step for step in steps)
    batches = "".join('  <batch name="%s" start="2026-04-12T10:30" state="planned" leaf="leaf" fresh-kg="4">\n'
                      '%s  </batch>\n' % (n.replace('"', "&quot;"), "" if "bare" in n else rows) for n in names)
    return SEASON % (parts, batches)


def put(name, text):
    """Writes a file in the test's folder; its path."""
    with open(path(name), "w", encoding="utf-8") as file:
        file.write(text)
    return path(name)


def path(name):
    return os.path.join(FOLDER.name, name)


GOOD = put("good.leafwend", season(NAMES, STEPS))


def rows(*arguments, **env):
    """The rows that `run` writes of the good season, as dictionaries."""
    text, complained = run("run", GOOD, *arguments, **env)
    tap.equal(complained, "", "stderr")
    return read(text)


def read(text):
    return list(csv.DictReader(io.StringIO(text, newline="")))


def refused(*arguments, status=2, words=()):
    """As program.refused, where stderr begins with the program's name."""
    complained = program.refused(*arguments, status=status, words=words)
    assert complained.startswith("leafwend-cli: "), complained
    return complained


def near(got, expected, bound, what):
    assert abs(got - expected) <= bound, "%s is %r, not %r" % (what, got, expected)


def ends_of(steps):
    total, ends = 0, []
    for _, minutes in steps:
        total += minutes
        ends.append(total)
    return ends


@tap.case
def header_is_exact():
    """The first line names the columns, exactly."""
    tap.equal(run("run", GOOD)[0].split("\n")[0], HEADER, "the header")
    tap.equal(run("run", GOOD, "--batch", "4")[0], HEADER + "\n", "a batch without steps")


@tap.case
def every_batch_in_order():
    """Without --batch all batches are there, in the season's order, names quoted where they must be."""
    found = list(dict.fromkeys(r["batch"] for r in rows("--ends")))
    tap.equal(found, [n for n in NAMES if "bare" not in n], "the batches")
    text = run("run", GOOD, "--ends")[0]
    assert '"1 pan, first",mean' in text and '"3 the ""best""",mean' in text and "\n2 steam,mean" in text
    assert "\r" not in text and text.endswith("\n")


@tap.case
def part_column():
    """The part is `mean`; with --parts each part has a row of its own after it."""
    tap.equal({r["part"] for r in rows("--ends")}, {"mean"}, "the parts")
    told = rows("--batch", "1", "--ends", "--parts")
    tap.equal([r["part"] for r in told], ["mean", *PARTS] * len(STEPS), "the parts")
    for i in range(0, len(told), 3):
        for column in ("rupture_pct", "oxidation_pct"):
            mean = sum(float(told[i + 1 + k][column]) * share for k, share in enumerate(PARTS.values()))
            near(float(told[i][column]), mean, 1e-6, "the mean " + column)


@tap.case
def step_ends_whatever_every():
    """Each step's end has a row whatever --every says; the others are at its multiples."""
    ends = ends_of(STEPS)
    for every in (7, 60, 90, 451.5, 100000):
        told = rows("--batch", "1", "--every", str(every))
        minutes = [float(r["minute"]) for r in told]
        tap.equal(minutes[0], 0.0, "the first minute")
        assert all(a < b for a, b in zip(minutes, minutes[1:])), "minutes grow, --every %g" % every
        expected = sorted({*ends, *(k * every / 60 for k in range(int(ends[-1] * 60 / every) + 1))})
        tap.equal(len(minutes), len(expected), "the number of rows, --every %g" % every)
        for got, wanted in zip(minutes, expected):
            near(got, wanted, 1e-6, "a minute")
        last = [max(float(r["minute"]) for r in told if r["step"] == str(i + 1)) for i in range(len(STEPS))]
        tap.equal(last, ends, "the step ends")


@tap.case
def usual_spacing_is_a_minute():
    """Without --every there is a row each minute."""
    tap.equal(rows("--batch", "1"), rows("--batch", "1", "--every", "60"), "the rows")


@tap.case
def ends_only():
    """--ends leaves the step ends, with the numbers they have among all rows."""
    told = rows("--batch", "1", "--ends")
    tap.equal([(r["step"], r["kind"], float(r["minute"])) for r in told],
              [(str(i + 1), kind, end) for i, ((kind, _), end) in enumerate(zip(STEPS, ends_of(STEPS)))], "the ends")
    among = {r["minute"]: r for r in rows("--batch", "1", "--every", "13")}
    for row in told:
        tap.equal(among[row["minute"]], row, "a step end")


@tap.case
def batch_by_name():
    """--batch takes a whole name or its first word, and may be given again."""
    for asked in ("1 pan, first", "1"):
        tap.equal({r["batch"] for r in rows("--ends", "-b", asked)}, {"1 pan, first"}, "the batch")
    # A whole name goes before others that begin with it.
    tap.equal({r["batch"] for r in rows("--ends", "--batch", "2 steam")}, {"2 steam"}, "the batch")
    told = rows("--ends", "--batch", "3", "--batch", "1")
    tap.equal([r["batch"] for r in told], ["3 the \"best\""] * 4 + ["1 pan, first"] * 4, "the batches")


@tap.case
def unknown_batch():
    """An unknown or ambiguous name, or half a word, is refused with the list of batches."""
    for asked in ("9", "2", "1 pa", "", "1 "):
        told = refused("run", GOOD, "--batch", asked, status=1, words=["“%s”" % asked])
        tap.equal([line.strip() for line in told.splitlines()[1:]], NAMES, "the list")
    refused("picture", GOOD, "--batch", "9", "-o", path("no.png"), status=1, words=["“9”"])


@tap.case
def output_file():
    """-o writes the same bytes into a file; one that cannot be written is told, and none is left."""
    text = run("run", GOOD, "--batch", "1")[0]
    tap.equal(run("run", GOOD, "--batch", "1", "-o", path("out.csv")), ("", ""), "what is said")
    with open(path("out.csv"), encoding="utf-8", newline="") as file:
        tap.equal(file.read(), text, "the file")
    tap.equal(run("run", GOOD, "--batch", "1", "-o", "-")[0], text, "standard output")

    before = sorted(os.listdir(FOLDER.name))
    for place in (path("no-such-folder/out.csv"), os.path.join(GOOD, "out.csv"), FOLDER.name):
        refused("run", GOOD, "--batch", "1", "-o", place, status=1, words=[place, "could not be saved"])
    tap.equal(sorted(os.listdir(FOLDER.name)), before, "the folder")


@tap.case
def output_is_replaced_whole():
    """A new table takes the place of an old one; a refused command leaves the old one alone."""
    old = put("old.csv", "kept\n" * 100000)
    refused("run", GOOD, "--batch", "9", "-o", old, status=1)
    run("run", path("missing.leafwend"), "-o", old, expect=1)
    tap.equal(os.path.getsize(old), 500000, "the old file's size")
    run("run", GOOD, "--batch", "1", "--ends", "-o", old)
    with open(old, encoding="utf-8") as file:
        tap.equal(len(file.readlines()), 1 + len(STEPS), "the new file's lines")


@tap.case
def full_disk_is_told():
    """Standard output that cannot take it all is an error."""
    if not os.path.exists("/dev/full"):
        raise tap.Skip("there is no full device")
    with open("/dev/full", "wb") as full:
        done = subprocess.run([CLI, "run", GOOD], stdout=full, stderr=subprocess.PIPE, check=False)
    tap.equal(done.returncode, 1, "the status")
    assert b"standard output" in done.stderr, done.stderr


@tap.case
def numbers_in_every_locale():
    """Numbers have a point and options take one, even where people write a comma."""
    env = {"LC_ALL": "de_DE.UTF-8"}
    lived = subprocess.run([sys.executable, "-c", "import locale; locale.setlocale(locale.LC_ALL, '')"],
                           env={**os.environ, **env}, stderr=subprocess.DEVNULL, check=False)
    if lived.returncode != 0:
        raise tap.Skip("there is no locale de_DE.UTF-8")
    for arguments in (["--ends"], ["--every", "22.5"]):
        tap.equal(rows(*arguments, **env), rows(*arguments), "the rows")
    tap.equal(run("check", GOOD, **env), run("check", GOOD), "the check")


@tap.case
def rupture_adds_up():
    """Rupture by wilting, heat and rolling and what was ruptured when plucked add up."""
    ruptured = {**RUPTURED, "mean": sum(share * RUPTURED[name] for name, share in PARTS.items())}
    for row in rows("--batch", "1", "--parts", "--every", "300"):
        whole = sum(float(row["rupture_%s_pct" % by]) for by in ("wilt", "heat", "roll"))
        near(float(row["rupture_pct"]), whole + 100 * ruptured[row["part"]], 1e-6, "rupture of " + row["part"])


@tap.case
def weight_agrees_with_moisture():
    """A kilogram of fresh leaf weighs (1 + X) / (1 + X0)."""
    def water(wet_basis):
        return wet_basis / (100 - wet_basis)
    for row in rows("--batch", "1", "--parts", "--every", "300"):
        weight = (1 + water(float(row["moisture_wb_pct"]))) / (1 + water(FRESH))
        near(float(row["kg_per_kg_fresh"]), weight, 1e-6, "weight of " + row["part"])


@tap.case
def same_command_same_bytes():
    """The same command writes the same bytes."""
    tap.equal(run("run", GOOD, "--parts"), run("run", GOOD, "--parts"), "the output")


@tap.case
def demo_season_runs():
    """The demo seasons are sound and compute to their ends."""
    for name in sorted(n for n in os.listdir(DATA) if n.endswith(".leafwend")):
        demo = os.path.join(DATA, name)
        run("check", demo)
        said, complained = run("run", demo, "--ends")
        tap.equal(complained, "", "stderr")
        assert all(0 < float(r["moisture_wb_pct"]) < 95 for r in read(said))


@tap.case
def check_tells_sound():
    """check says that a file is sound, or nothing with --quiet."""
    said, complained = run("check", GOOD)
    tap.equal((said, complained), ("%s: sound, 5 batches\n" % GOOD, ""), "what is said")
    tap.equal(run("check", "--quiet", GOOD), ("", ""), "what is said")


@tap.case
def check_tells_problems():
    """check tells every broken file's problems on stderr, as file:line: where there is a line."""
    names = sorted(os.listdir(BROKEN))
    assert len(names) > 50
    for name in names:
        broken = os.path.join(BROKEN, name)
        said, complained = run("check", broken, expect=1)
        tap.equal(said, "", "stdout")
        for line in complained.splitlines():
            assert line.startswith(broken + ":"), line
        if not name.startswith("01-"):  # an empty file has no line
            rest = complained[len(broken) + 1:].split(":")[0]
            assert rest.isdigit() and int(rest) > 0, complained
    for command in (["run"], ["picture", "-o", path("no.png")]):
        said, complained = run(*command, os.path.join(BROKEN, "44-unknown-kind.leafwend"), expect=1)
        assert said == "" and ":9: " in complained and "fix-wok" in complained, complained


@tap.case
def example_of_the_page_is_sound():
    """The example in docs/document.md is sound and can be computed."""
    with open(os.path.join(DOCS, "document.md"), encoding="utf-8") as file:
        example = put("example.leafwend", file.read().split("```xml\n")[1].split("```")[0])
    run("check", example)
    said, _ = run("run", example, "--ends")
    assert len(read(said)) >= 3, said


MAGIC = {".png": b"\x89PNG\r\n\x1a\n", ".svg": b"<?xml", ".pdf": b"%PDF-"}


def starts(file_name, suffix):
    with open(file_name, "rb") as file:
        begin = file.read(16)
    assert begin.startswith(MAGIC[suffix]), "%s begins %r" % (file_name, begin)
    return begin


@tap.case
def pictures():
    """picture draws a batch as PNG, SVG or PDF, of the shape asked for."""
    for suffix in MAGIC:
        drawn = path("drawn" + suffix)
        tap.equal(run("picture", GOOD, "--batch", "1", "-o", drawn), ("", ""), "what is said")
        starts(drawn, suffix)
        assert os.path.getsize(drawn) > 2000
    run("picture", GOOD, "-b", "4", "-o", path("small.png"), "--width", "400", "--height", "300")
    with open(path("small.png"), "rb") as file:
        size = file.read(24)[16:]
    # Sharper than asked for, perhaps, but of that shape.
    across, down = (int.from_bytes(part, "big") for part in (size[:4], size[4:]))
    assert across >= 400 and across * 300 == down * 400, "%d by %d" % (across, down)


@tap.case
def pictures_into_a_folder():
    """A folder, made if need be, gets a PNG of each batch, named by it."""
    run("picture", GOOD, "-o", path("pictures/"))
    tap.equal(sorted(os.listdir(path("pictures"))),
              ["1-pan-first.png", "2-steam-again.png", "2-steam.png", "3-the-best.png", "4-bare.png"], "the files")
    for name in os.listdir(path("pictures")):
        starts(os.path.join(path("pictures"), name), ".png")


@tap.case
def pictures_refused():
    """picture refuses what it cannot do and leaves no file."""
    for wrong in ("drawn.gif", "drawn"):
        refused("picture", GOOD, "--batch", "1", "-o", path(wrong), status=1, words=[".png", ".svg", ".pdf"])
        assert not os.path.exists(path(wrong))
    refused("picture", GOOD, "--batch", "1", "-o", path("no-such-folder/a.png"), status=1)
    refused("picture", GOOD, "--batch", "1", words=["-o FILE"])
    refused("picture", GOOD, "-o", path("all.png"), words=["--batch"])
    for size in ("299", "10001", "-5"):
        refused("picture", GOOD, "--batch", "1", "-o", path("b.png"), "--width", size, words=["300 to 10000"])
    assert not os.path.exists(path("all.png")) and not os.path.exists(path("b.png"))


@tap.case
def help_and_version():
    """Help and version go to standard output, and each command has its own help."""
    said, complained = run("--help")
    tap.equal((complained, run("-h")[0]), ("", said), "help")
    for word in ("run", "check", "picture", "weather", "Exit status"):
        assert word in said, said
    version, complained = run("--version")
    assert version.startswith("leafwend-cli ") and "NO WARRANTY" in version and complained == "", version
    for command, option in (("run", "--every"), ("check", "--quiet"), ("picture", "--output")):
        said, complained = run(command, "--help")
        assert option in said and "SEASON" in said and complained == "", said


@tap.case
def wrong_usage():
    """Wrong usage is status 2, a message and nothing on standard output."""
    refused(words=["--help"])
    refused("dance", words=["“dance”", "--help"])
    for command in ("run", "check", "picture"):
        refused(command, words=[command, "--help"])
        refused(command, GOOD, GOOD, words=["one season"])
        refused(command, GOOD, "--no-such-option", words=["--no-such-option"])
    for every in ("0", "-60", "nan", "0.05", "often"):
        refused("run", GOOD, "--every", every)
    refused("run", GOOD, "--batch")


@tap.case
def missing_file():
    """A file that is not there, or a folder, is status 1, told by its name."""
    for command in (["run"], ["check"], ["picture", "-o", path("no.png")]):
        for gone in (path("missing.leafwend"), FOLDER.name):
            said, complained = run(*command, gone, expect=1)
            assert said == "" and complained.startswith(gone + ": "), complained


tap.main()
