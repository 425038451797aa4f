"""leafwend-cli card: the demo's batches on paper, in every format, with the numbers that `run` tells."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import shutil
import subprocess
import tempfile
import xml.etree.ElementTree as ElementTree

import program
import tap
from program import run

SEASON = os.path.join(os.environ["LEAFWEND_DATA"], "ondry-ridge-2026.leafwend")
NS = "{urn:leafwend:season}"
FOLDER = tempfile.TemporaryDirectory(prefix="card.")
PAPERS = {"A4": (595.28, 841.89), "A3": (841.89, 1190.55), "Letter": (612, 792)}


def kg(weight):
    return ("%.1f kg" if weight >= 10 else "%.2f kg") % weight


def path(name):
    return os.path.join(FOLDER.name, name)


def tool(*words):
    """What a program of poppler-utils says."""
    if shutil.which(words[0]) is None:
        raise tap.Skip(words[0] + " is not installed")
    return subprocess.run(words, check=True, stdout=subprocess.PIPE).stdout.decode("utf-8")


def card(name, *options, batch="12"):
    run("card", SEASON, "--batch", batch, "-o", path(name), *options)
    return path(name)


def text_of(file):
    """The words of a PDF, on one line."""
    return " ".join(tool("pdftotext", file, "-").split())


def pages_of(file):
    told = tool("pdfinfo", file)
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", told)
    return int(re.search(r"Pages:\s+(\d+)", told)[1]), float(size[1]), float(size[2])


@tap.case
def pdf_can_be_read_and_searched():
    """A PDF says what the maker needs, as text, and holds its fonts."""
    file = card("a.pdf")
    told = text_of(file)
    for words in ("12 long wither, gentle pan", "reddened sun-dried", "Ondry Ridge, spring 2026", "10 Apr 2026",
                  "Upper Terrace", "8.04 kg fresh leaf", "weather: Spring 2026", "20 h", "200 °C", "1 h 20 min",
                  "10 kg fresh leaf should now weigh", "If it weighs 200 g more", "carbon monoxide",
                  "Follow local codes and licensed practice.", "Leafwend ", "Moisture"):
        assert words in told, (words, told)
    fonts = [line.split() for line in tool("pdffonts", file).splitlines()[2:]]
    assert fonts, "no fonts"
    for font in fonts:
        at = [i for i, word in enumerate(font) if word in ("yes", "no")]
        tap.equal([font[i] for i in at], ["yes"] * 3, "embedded, subset and known as text: " + font[0])


@tap.case
def weights_are_those_of_run():
    """The checkpoints are the weights that `run` tells at the ends of steps, for the load and for 10 kg."""
    for batch, load in (("12", 8.04), ("16", 24), ("5", 2.5)):
        rows = list(csv.DictReader(run("run", SEASON, "--batch", batch, "--ends")[0].splitlines()))
        told = text_of(card("w.pdf", "--load", str(load), batch=batch))
        for row in rows:
            share = float(row["kg_per_kg_fresh"])
            tens = [float(number) / (1000 if unit == "g" else 1)
                    for number, unit in re.findall(r"should now weigh ([\d.]+) (kg|g)", told)]
            own = [float(number) / (1000 if unit == "g" else 1) for number, unit in re.findall(r"([\d.]+) (kg|g)\b", told)]
            assert min(abs(10 * share - ten) for ten in tens) <= (0.0051 if share < 0.999 else 0.051), (batch, row["step"], share, tens)
            assert min(abs(load * share - one) for one in own) <= (0.0051 if load * share < 9.99 else 0.051), (batch, row["step"], share, own)
        tap.equal(len(tens), len(rows), "checkpoints")


@tap.case
def papers():
    """Every paper in both directions has its size, and a batch of the demo on one page."""
    for name, (width, height) in PAPERS.items():
        for options in ((), ("--landscape",)):
            n, wide, high = pages_of(card("p.pdf", "--paper", name, *options))
            tap.equal(n, 1, "pages")
            expected = (height, width) if options else (width, height)
            assert abs(wide - expected[0]) < 0.5 and abs(high - expected[1]) < 0.5, (name, options, wide, high)
    tap.equal(pages_of(card("p.pdf", "-p", "letter"))[1:], (612, 792), "a paper's name in small letters")


@tap.case
def svg_and_png():
    """SVG and PNG are a file for each page, of the paper's shape; an SVG has no line thinner than a quarter point."""
    card("c.svg", "--sheet")
    card("c.png", "--sheet", "--landscape")
    for name in ("c.svg", "c-2.svg"):
        root = ElementTree.parse(path(name)).getroot()
        assert abs(float(root.get("width").rstrip("pxt")) - 595.28) < 1, root.get("width")
        for node in root.iter():
            width = node.get("stroke-width")
            if width is None:
                width = (re.search(r"stroke-width:([\d.]+)", node.get("style") or "") or (None, None))[1]
            if width is not None:
                scale = re.search(r"matrix\(([-\d.e]+),", node.get("transform") or "")
                drawn = float(width) * (abs(float(scale[1])) or 1 if scale else 1)
                assert drawn >= 0.25, (name, width, node.get("transform"))
            for paint in re.findall(r"rgb\(([\d.]+)%, ?([\d.]+)%, ?([\d.]+)%\)", str(node.attrib)):
                tap.equal(len(set(paint)), 1, "one grey: %s" % (paint,))
    for name in ("c.png", "c-2.png"):
        with open(path(name), "rb") as file:
            head = file.read(24)
        tap.equal(head[:8], b"\x89PNG\r\n\x1a\n", "the first bytes")
        tap.equal((int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")), (1684, 1191), "pixels")


@tap.case
def sheet():
    """The batch sheet has the weigh-ins beside the model, notes, and lines to write on."""
    file = card("s.pdf", "--sheet")
    tap.equal(pages_of(file)[0], 2, "pages")
    told = text_of(file)
    for words in ("soft, smells of apples", "under the eaves until the sun is over the ridge", "next: time", "6.70 kg",
                  "The best of the year: red, even, sweet, no smoke."):
        assert words in told, (words, told)
    assert re.search(r"1 ?/ ?2.*2 ?/ ?2", told), told
    # Weighed 4.27 kg after the pan; the model's weight is that of `run`.
    pan = list(csv.DictReader(run("run", SEASON, "--batch", "12", "--ends")[0].splitlines()))[1]
    model = 8.04 * float(pan["kg_per_kg_fresh"])
    assert "4.27 kg %.2f kg −%.2f kg" % (model, model - 4.27) in told, told


def as_planned(batch):
    """The demo with the plan of a batch in the place of what was made."""
    tree = ElementTree.parse(SEASON)
    made = next(b for b in tree.getroot().iter(NS + "batch") if b.get("name").startswith(batch))
    plan = made.find(NS + "plan")
    for node in list(made):
        made.remove(node)
    made.extend(list(plan))
    for name in ("fresh-moisture-pct", "start", "fresh-kg"):
        made.attrib.pop(name, None)
    made.attrib.update(plan.attrib)
    tree.write(path("planned.leafwend"), "utf-8", True)
    return path("planned.leafwend")


@tap.case
def planned_beside_made():
    """Beside what was made stands what was planned, as `run` computes it, and how they differ."""
    told = text_of(card("p.pdf", "--sheet", batch="9"))
    planned, made = ([dict(row) for row in csv.DictReader(run("run", file, "--batch", "9", "--ends")[0].splitlines())]
                     for file in (as_planned("9 "), SEASON))
    for was, is_now in zip(planned, made):
        cells = ["then %s, %.1f %%" % (kg(24 * float(row["kg_per_kg_fresh"])), float(row["moisture_wb_pct"]))
                 for row in (was, is_now)]
        points = float(is_now["moisture_wb_pct"]) - float(was["moisture_wb_pct"])
        for words in cells + ["%s%.1f %% points" % ("−" if points < 0 else "+", abs(points))]:
            assert words in told, (words, told)
    finished = "Finished tea Moisture %s %% Moisture %s %%"
    tea = finished % tuple("%.1f" % float(rows[-1]["moisture_wb_pct"]) for rows in (planned, made))
    for words in (tea, "Aimed at: Moisture 3.0 % to 7.0 %", "Made less planned", "time +3 min", "load −2.0 kg", "time −40 min"):
        assert words in told, (words, told)
    assert "Made less planned" not in text_of(card("q.pdf", "--sheet"))


@tap.case
def weather_is_no_difference():
    """Where what was planned follows the weather and what was made does not, no number stands for their difference."""
    with open(SEASON, encoding="utf-8") as file:
        head, nine = file.read().split('<batch name="9 drum', 1)
    warm = path("warm.leafwend")
    with open(warm, "w", encoding="utf-8") as file:
        file.write(head + '<batch name="9 drum' + nine.replace('<step kind="wither"', '<step kind="wither" air-c="28"', 1))
    run("card", warm, "--batch", "9", "-o", path("w.pdf"), "--sheet")
    told = text_of(path("w.pdf"))
    assert "time +30 min" in told and "5 h 30 min · 28 °C" in told, told
    assert not re.search(r"air [+−]\d", told), told


@tap.case
def many_steps_go_on():
    """More steps than a page holds go on to the next, and that is said."""
    with open(SEASON, encoding="utf-8") as file:
        text = file.read()
    rolls = "<step kind=\"roll\" minutes=\"8\"/>" * 30
    long = path("long.leafwend")
    with open(long, "w", encoding="utf-8") as file:
        file.write(re.sub(r"(?s)(<batch name=\"16.*?)(<step )", r"\1" + rolls + r"\2", text))
    said, complained = run("card", long, "--batch", "16", "-o", path("l.pdf"))
    tap.equal(said, "", "stdout")
    assert "do not fit on one page" in complained, complained
    assert pages_of(path("l.pdf"))[0] > 2


PO = """msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\\n"
msgid "default:LTR"
msgstr "default:%s"
msgid "roll"
msgstr "%s"
msgid "Caution"
msgstr "%s"
"""


def spoken(direction, roll, caution):
    """The text of the card in a language made here, its numbers those of German; and its first word's place."""
    locale = os.path.join(os.environ.get("LOCPATH", "/nowhere"), "de_DE.UTF-8")
    if shutil.which("msgfmt") is None or not os.path.isdir(locale):
        raise tap.Skip("msgfmt or the German locale is not installed")
    folder = path(direction + "/de/LC_MESSAGES")
    os.makedirs(folder)
    with open(path("words.po"), "w", encoding="utf-8") as file:
        file.write(PO % (direction, roll, caution))
    subprocess.run(["msgfmt", "-o", os.path.join(folder, "leafwend.mo"), path("words.po")], check=True)
    env = {"LC_ALL": "de_DE.UTF-8", "LANGUAGE": "de", "LEAFWEND_LOCALE": path(direction)}
    run("card", SEASON, "--batch", "12", "-o", path("t.pdf"), **env)
    left = re.search(r'<word xMin="([\d.]+)"', tool("pdftotext", "-bbox", path("t.pdf"), "-"))
    return text_of(path("t.pdf")), float(left[1])


@tap.case
def translated():
    """Words come from the catalogue, however long they are, and numbers are written as the language does."""
    told, left = spoken("LTR", "Rolltischwiederholungsrundenrollen", "Vorsicht")
    for words in ("4,68 kg", "3,0 kPa", "Rolltischwiederholungsrundenrollen", "Vorsicht"):
        assert words.replace(" ", "") in told.replace(" ", ""), (words, told)
    assert left < 60, left


@tap.case
def from_the_right():
    """Where reading begins at the right, the card does."""
    told, left = spoken("RTL", "\u05d2\u05dc\u05d9\u05dc\u05d4", "\u05d6\u05d4\u05d9\u05e8\u05d5\u05ea")
    assert "\u05d6\u05d4\u05d9\u05e8\u05d5\u05ea" in told, told
    assert left > 250, left


@tap.case
def refused():
    """What cannot be done is refused with the reason, and leaves no file."""
    refuse = program.refused
    refuse("card", SEASON, "--batch", "12", words=["-o FILE"])
    refuse("card", SEASON, "-o", path("x.pdf"), words=["--batch"])
    refuse("card", SEASON, "--batch", "12", "-o", path("x.pdf"), "--paper", "B5", words=["“B5”", "A4, A3 and Letter"])
    for load in ("-1", "nan", "1e6"):
        refuse("card", SEASON, "--batch", "12", "-o", path("x.pdf"), "--load", load, words=["--load"])
    refuse("card", SEASON, "--batch", "99", "-o", path("x.pdf"), status=1, words=["“99”"])
    refuse("card", SEASON, "--batch", "12", "-o", path("x.bmp"), status=1, words=[".pdf, .svg or .png"])
    refuse("card", SEASON, "--batch", "12", "-o", path("no-such-folder/x.pdf"), status=1)
    refuse("card", path("nothing.leafwend"), "--batch", "12", "-o", path("x.pdf"), status=1)
    assert not os.path.exists(path("x.pdf")) and not os.path.exists(path("x.bmp"))
    assert "--landscape" in run("card", "--help")[0]


tap.main()
