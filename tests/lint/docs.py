#!/usr/bin/python3
"""docs.py SOURCE-ROOT BUILD-ROOT: the documentation holds together: links, pictures, chapters, the words of the program that
the guide quotes, the keys, and the pages as HTML. TAP."""
# SPDX-License-Identifier: GPL-3.0-or-later
import html.parser
import importlib.util
import pathlib
import re
import sys
import xml.etree.ElementTree as ElementTree

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "window"))
import tap  # noqa: E402

ROOT, BUILD = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
GUIDE = ROOT / "docs/guide"
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md"] + sorted((ROOT / "docs").glob("**/*.md"))
CHAPTERS = sorted(GUIDE.glob("[0-9]*.md"))
LINK = re.compile(r"!?\[[^\]]*\]\(([^)\s]+)\)")

_spec = importlib.util.spec_from_file_location("to_html", ROOT / "docs/to-html.py")
to_html = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(to_html)


def text(path):
    return path.read_text(encoding="utf-8")


def none(wrong):
    assert not wrong, "\n" + "\n".join(wrong)


def anchors(page):
    return {to_html.anchor(line.lstrip("#").strip()) for line in text(page).splitlines() if line.startswith("#")}


@tap.case
def every_link_and_picture_exists():
    wrong = []
    for page in PAGES:
        for link in LINK.findall(text(page)):
            place, _, heading = link.partition("#")
            target = (page.parent / place).resolve() if place else page
            if re.match(r"[a-z]+:", link):
                continue
            if not target.exists() or (heading and heading not in anchors(target)):
                wrong.append("%s: nothing at %s" % (page.relative_to(ROOT), link))
    none(wrong)


@tap.case
def every_picture_is_shown():
    shown = {(page.parent / link).resolve() for page in PAGES for link in LINK.findall(text(page))}
    none(["%s is on no page" % p for p in (ROOT / "docs").glob("**/*.png") if p not in shown])


@tap.case
def twelve_chapters_follow_one_another():
    """Twelve numbered chapters lead on, back and to their list, which leads to each."""
    tap.equal(len(CHAPTERS), 12, "the number of chapters")
    wrong, listed = [], LINK.findall(text(GUIDE / "README.md"))
    for number, page in enumerate(CHAPTERS, 1):
        around = {p.name for p in CHAPTERS[max(0, number - 2):number + 1] if p != page} | {"README.md"}
        links = set(LINK.findall(text(page).rstrip().splitlines()[-1]))
        if not text(page).startswith("# %d. " % number) or not page.name.startswith("%02d-" % number):
            wrong.append("%s is not chapter %d" % (page.name, number))
        if links != around:
            wrong.append("%s leads to %s at its end, not to %s" % (page.name, sorted(links), sorted(around)))
        if page.name not in listed:
            wrong.append("%s is not listed" % page.name)
    none(wrong)


@tap.case
def every_chapter_defers():
    """Each chapter, the guide's first page, README and the page on safety defer to local codes and licensed practice."""
    none(["%s does not" % page.name for page in CHAPTERS + [GUIDE / "README.md", ROOT / "README.md", ROOT / "docs/safety.md"]
          if "Follow local codes and licensed practice" not in " ".join(text(page).split())])


@tap.case
def every_caution_is_on_the_page_of_safety():
    """The page on safety has every caution of the program, word by word, and each place that cautions defers."""
    page = " ".join(text(ROOT / "docs/safety.md").split())

    def words_of(name, begin, end):
        body = text(ROOT / "src" / name).split(begin)[1].split(end)[0]
        return ["".join(re.findall(r'"([^"]*)"', run)) for run in re.findall(r'_ \(((?:\s*"[^"]*")+)\)', body)]
    card = words_of("draw/caution.c", "cautions[] =", "\n};")
    plan = [words for name in ("lw_replan_caution (", "lw_replan_caution_short (")
            for words in words_of("study/replan-words.c", name, "\n}")]
    tap.equal((len(card), len(plan)), (8, 2), "cautions of the card, of a new plan")
    none(["not on the page: %s" % words for words in card + plan if words not in page])
    none(["%s does not defer to local codes" % name
          for name in ("draw/caution.c", "study/replan-words.c", "bench/window-run.c", "bench/window.c", "cli/main.c")
          if "ollow local codes and licensed practice." not in re.sub(r'"\s*"', "", text(ROOT / "src" / name))])


def messages():
    """All that the program says, and the names in the demo seasons."""
    said = set()
    for path in (ROOT / "src").glob("**/*.[ch]"):
        for run in re.findall(r'(?:\b_\s*\(|\bN_\s*\(|ngettext\s*\((?:GETTEXT_PACKAGE,)?)\s*((?:"(?:[^"\\]|\\.)*"[\s,]*)+)', text(path)):
            said.add("".join(re.findall(r'"((?:[^"\\]|\\.)*)"', run)))
            said.update(re.findall(r'"((?:[^"\\]|\\.)*)"', run))
        for run in re.findall(r'\b_\s*\(([^"()]*\?[^;]*?)\)', text(path)):
            said.update(re.findall(r'"((?:[^"\\]|\\.)*)"', run))
    for path in (ROOT / "ui").glob("*.ui"):
        said.update(e.text for e in ElementTree.parse(path).getroot().iter() if e.get("translatable") == "yes")
    for path in (ROOT / "data").glob("*.leafwend"):
        said.update(e.get("name") for e in ElementTree.parse(path).getroot().iter() if e.get("name"))
    return {plain(re.sub(r"_(?=\w)", "", words)) for words in said}


def plain(words):
    return re.sub(r"\s+", " ", words).strip().rstrip(".…:")


def is_said(words, said, formats):
    """Whether the program says so: the whole of a message, with numbers or other messages put in; or three words or more
    out of a longer one."""
    if words in said:
        return True
    if any(all(put in said or re.fullmatch(r"[\d.]+", put) for put in found.groups())
           for found in (f.fullmatch(words) for f in formats) if found):
        return True
    return len(words.split()) > 2 and any(words in message for message in said)


@tap.case
def words_in_italics_are_the_programs():
    """Whatever stands in italics in the guide is said by the program or a name in the demo seasons."""
    said = messages()
    assert len(said) > 500, len(said)
    formats = [re.compile(r"(.+?)".join(re.escape(part) for part in re.split(r"%[-.*\d]*[a-z]+", m)))
               for m in said if re.search(r"%[-.*\d]*[a-z]", m) and re.search(r"\w{3}", re.sub(r"%\S+", "", m))]
    assert not is_said("Hold the moon", said, formats)
    wrong = []
    for page in sorted(GUIDE.glob("*.md")):
        body = re.sub(r"\*\*.+?\*\*|`[^`]*`", "", text(page), flags=re.S)
        for words in re.findall(r"(?<!\*)\*(?=\S)([^*]+?)(?<=\S)\*(?!\*)", body):
            if not is_said(plain(words), said, formats):
                wrong.append("%s: the program does not say “%s”" % (page.name, plain(words)))
    none(wrong)


@tap.case
def every_key_is_told():
    """The page of keys has every accelerator of the program."""
    found = re.findall(r'\{ "((?:win|app|window)\.[\w-]+)", \{ ("[^}]+) \} \}', text(ROOT / "src/bench/app.c"))
    assert len(found) > 20, found
    page, wrong = text(GUIDE / "keys.md"), []
    for action, keys in found:
        for key in re.findall('"([^"]+)"', keys):
            *modifiers, letter = re.split("[<>]+", key.replace("Control", "Ctrl").lstrip("<"))
            chord = "+".join(modifiers + [letter.upper() if len(letter) == 1 else letter])
            if not re.search(r"^\|[^|]*(?<![\w+])%s(?!\w)" % re.escape(chord), page, re.M):
                wrong.append("%s: %s is not told" % (action, chord))
    none(wrong)


class Seen(html.parser.HTMLParser):
    """Checks that elements close, and collects where links and pictures lead, and what can be led to."""

    def __init__(self, source):
        super().__init__()
        self.open, self.places, self.ids = [], [], []
        self.feed(source)
        self.close()
        assert not self.open, self.open

    def handle_starttag(self, tag, attrs):
        if tag not in ("meta", "img", "hr"):
            self.open.append(tag)
        self.places += [value for name, value in attrs if name in ("href", "src")]
        self.ids += [value for name, value in attrs if name == "id"]

    def handle_endtag(self, tag):
        assert self.open and self.open.pop() == tag, tag


@tap.case
def every_page_is_built_as_html():
    """Each page of docs is HTML in the build directory; its links, headings linked to and pictures are there too."""
    wrong = []
    for page in (ROOT / "docs").glob("**/*.md"):
        built = BUILD / page.relative_to(ROOT).parent / ("index.html" if page.name == "README.md" else page.stem + ".html")
        if not built.exists():
            wrong.append("%s is not built" % built.relative_to(BUILD))
            continue
        seen = Seen(text(built))
        wrong += ["%s: two places are called %s" % (built.relative_to(BUILD), i) for i in set(seen.ids) if seen.ids.count(i) > 1]
        for place in seen.places:
            file, _, heading = place.partition("#")
            target = built.parent / file if file else built
            if re.match("[a-z]+:", place):
                continue
            if not target.exists() or (heading and heading not in Seen(text(target)).ids):
                wrong.append("%s: nothing at %s" % (built.relative_to(BUILD), place))
    none(wrong)


@tap.case
def markdown_becomes_html():
    source = ("# A < B\n\nOne *two* **three** 4 % `a*b 5 h*<c>`\nand [four](README.md#x).\n\n- five\n  six\n- seven\n\n"
              "2. eight\n\n![a \"b\"](c-1.png)\n\n| h | i |\n|---|---|\n| j | k\\|l |\n\n```sh\nx < y\n\nz\n```\n\n    code & more\n\n---\n")
    body = to_html.page(source).split("<body>\n")[1].split("\n</body>")[0]
    tap.equal(body, '<h1 id="a--b">A &lt; B</h1>\n'
              '<p>One <em>two</em> <strong>three</strong> 4\u00a0% <code>a*b 5 h*&lt;c&gt;</code> and <a href="index.html#x">four</a>.</p>\n'
              '<ul>\n<li>five six</li>\n<li>seven</li>\n</ul>\n<ol start="2">\n<li>eight</li>\n</ol>\n'
              '<figure><a href="c-1.png"><img src="c-1.png" alt="a &quot;b&quot;"></a><figcaption>a "b"</figcaption></figure>\n'
              '<table>\n<tr><th scope="col">h</th><th scope="col">i</th></tr>\n<tr><td>j</td><td>k|l</td></tr>\n</table>\n'
              '<pre>x &lt; y\n\nz</pre>\n<pre>code &amp; more</pre>\n<hr>')


tap.main()
