#!/usr/bin/python3
"""lint.py SOURCE-ROOT [BUILD-ROOT]: the rules of the house that a compiler does not see, each a TAP
subtest. lint.py --potfiles SOURCE-ROOT rewrites po/POTFILES.in instead."""
# SPDX-License-Identifier: GPL-3.0-or-later
import pathlib
import re
import shutil
import subprocess
import sys
import xml.etree.ElementTree as ElementTree

MAX_LINES = 400
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "LICENSE", "meson.build",
             "src", "ui", "data", "tests", "po", "docs"}

# What each floor may include of the others, and which libraries it must not know.
NOT_DRAWN = ("gtk/", "gdk/", "gsk/", "graphene", "cairo", "pango/")
NO_WINDOW = ("gtk/", "gdk/", "gsk/", "graphene")
FLOORS = {
    "leaf": ({"leaf"}, NOT_DRAWN + ("gio/", "libxml/", "glib/gi18n")),
    "season": ({"leaf", "season"}, NOT_DRAWN),
    "study": ({"leaf", "season", "study"}, NOT_DRAWN + ("libxml/",)),
    "draw": ({"leaf", "season", "study", "draw"}, NO_WINDOW + ("libxml/",)),
    "bench": ({"leaf", "season", "study", "draw", "bench"}, ()),
    "cli": ({"leaf", "season", "study", "draw", "cli"}, NO_WINDOW),
}

# Places on somebody's own machine, spelled so that this file does not name them.
BANNED = re.compile(r"(?<![\w.])/(%s)\b|\.%s\b" % ("|".join(("wor" + "k", "roo" + "t", "home/[a-z]", "Users/[A-Z]")),
                                                  "py" + "env"))

MARKED = re.compile(r'\b(_|N_|C_|NC_|ngettext)\s*\(\s*"|\bg_d[pnc]?gettext2?\s*\(')
SPOKEN = {"label", "title", "tooltip-text", "tooltip-markup", "placeholder-text", "description",
          "help-text", "text", "action-name-label", "secondary-text"}


class Skip(Exception):
    """Raised by a check that cannot be made here; the message says why."""


def run(*command, folder=None):
    """(exit status, all output) of a program."""
    done = subprocess.run([str(c) for c in command], cwd=folder, text=True,
                          stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    return done.returncode, done.stdout


def need(program):
    if shutil.which(program) is None:
        raise Skip(program + " is not installed")


class Tree:
    """The project's files; build directories and other ignored files are not part of it."""

    def __init__(self, root, build):
        self.root, self.build = root, build
        status, listed = run("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard",
                             folder=root) if shutil.which("git") else (1, "")
        if status == 0:
            self.files = [f for f in sorted(set(listed.split("\0"))) if f and (root / f).is_file()]
        else:  # an unpacked archive
            every = (p.relative_to(root) for p in sorted(root.rglob("*")) if p.is_file())
            self.files = [str(p) for p in every
                          if not re.match(r"(\.git|build[^/]*|out)/", str(p)) and "__pycache__" not in p.parts]

    def named(self, pattern):
        return [f for f in self.files if re.search(pattern, f)]

    def text(self, name):
        return (self.root / name).read_text(encoding="utf-8", errors="replace")

    def lines(self, name):
        return enumerate(self.text(name).splitlines(), 1)


def includes_never_climb(tree):
    for name in tree.named(r"^src/[a-z]+/.*\.[ch]$"):
        floor = name.split("/")[1]
        if floor not in FLOORS:
            yield "%s: no floor is called %s" % (name, floor)
            continue
        for number, line in tree.lines(name):
            found = re.match(r'\s*#\s*include\s+"([^"]+)"', line)
            if found and found[1] != "config.h" and found[1].split("/")[0] not in FLOORS[floor][0]:
                yield "%s:%d: %s must not include %s" % (name, number, floor, found[1])


def libraries_stay_on_their_floor(tree):
    for name in tree.named(r"^src/[a-z]+/.*\.[ch]$"):
        for number, line in tree.lines(name):
            found = re.match(r"\s*#\s*include\s+<([^>]+)>", line)
            floor = name.split("/")[1]
            if found and floor in FLOORS and found[1].startswith(FLOORS[floor][1]):
                yield "%s:%d: %s must not include <%s>" % (name, number, floor, found[1])


def command_line_has_no_gtk(tree):
    program = tree.build / "src" / "cli" / "leafwend-cli" if tree.build else None
    if program is None or not program.exists():
        raise Skip("leafwend-cli is not built")
    need("ldd")
    status, output = run("ldd", program)
    if status != 0:
        yield output
    for line in output.splitlines():
        if re.search(r"lib(gtk|gdk)-", line):
            yield "leafwend-cli needs " + line.strip()


def top_level_is_fixed(tree):
    for name in sorted({f.split("/")[0] for f in tree.files}):
        if name not in TOP_LEVEL and not name.startswith("."):
            yield "%s does not belong at the top level" % name


def sources_open_with_a_comment(tree):
    for name in tree.named(r"\.[ch]$"):
        text = tree.text(name)
        head = "\n".join(text.splitlines()[:12])
        if not re.match(r"/\* \w", text):
            yield "%s: does not open with a comment on what it is for" % name
        if "SPDX-License-Identifier: GPL-3.0-or-later" not in head:
            yield "%s: has no SPDX line among its first twelve" % name


def files_are_short(tree):
    for name in tree.named(r"\.([ch]|py|sh|ui|css)$"):
        count = sum(1 for _ in tree.lines(name))
        if count > MAX_LINES:
            yield "%s: %d lines, more than %d" % (name, count, MAX_LINES)


def templates_are_translatable(tree):
    for name in tree.named(r"^ui/.*\.ui$"):
        for element in ElementTree.parse(tree.root / name).getroot().iter():
            mark, text = element.get("translatable"), (element.text or "").strip()
            if mark is not None and mark != "yes":
                yield '%s: translatable="%s" is not seen by xgettext (%s)' % (name, mark, text)
            spoken = (element.tag in ("property", "attribute", "relation") and
                      (element.get("name") or "").replace("_", "-") in SPOKEN) or element.tag == "item"
            if spoken and mark is None and re.search(r"[^\W\d_]", text):
                yield '%s: "%s" is not translatable="yes"' % (name, text)


def has_words(tree, name):
    text = tree.text(name)
    if name.endswith(".ui"):
        return 'translatable="yes"' in text
    # Comments and preprocessor lines speak to nobody.
    text = re.sub(r"/\*.*?\*/|^\s*#.*?$", "", text, flags=re.S | re.M)
    return MARKED.search(text) is not None


def spoken_files(tree):
    return [f for f in tree.named(r"^(src/.*\.[ch]|ui/.*\.ui)$") if has_words(tree, f)] + \
        tree.named(r"^data/.*\.(desktop\.in|metainfo\.xml\.in|gschema\.xml)$")


def potfiles(tree):
    lines = (line.strip() for _, line in tree.lines("po/POTFILES.in"))
    return [line for line in lines if line and not line.startswith("#")]


def every_word_is_translated(tree):
    listed = potfiles(tree)
    for name in sorted(set(spoken_files(tree)) - set(listed)):
        yield "%s has words for people but is not in po/POTFILES.in" % name
    for name in sorted(set(listed) - set(spoken_files(tree))):
        yield "po/POTFILES.in lists %s, which has no words for people" % name
    for name in sorted({n for n in listed if listed.count(n) > 1}):
        yield "po/POTFILES.in lists %s twice" % name


def no_place_of_this_machine(tree):
    for name in tree.files:
        if re.search(r"\.(png|ico|gz|pdf)$", name):
            continue
        for number, line in tree.lines(name):
            if BANNED.search(line):
                yield "%s:%d: %s" % (name, number, line.strip())


def scripts(tree):
    shebang = re.compile(r"#!.*\b(sh|bash)\b")
    names = [f for f in tree.files if f.endswith(".sh") or (f.startswith(".ci/") and shebang.match(tree.text(f)))]
    return [(f, "bash" if "bash" in tree.text(f).splitlines()[0] else "sh") for f in names]


def shell_scripts_parse(tree):
    for name, shell in scripts(tree):
        if shutil.which(shell):
            status, output = run(shell, "-n", tree.root / name)
            if status != 0:
                yield "%s: %s" % (name, output)


def shell_scripts_are_sound(tree):
    need("shellcheck")
    for name, shell in scripts(tree):
        status, output = run("shellcheck", "-s", shell, tree.root / name)
        if status != 0:
            yield output


def build_data(tree, suffix):
    """The merged files of data/, from the build directory."""
    found = sorted((tree.build / "data").glob("*" + suffix)) if tree.build else []
    if not found:
        raise Skip("no %s is built" % suffix)
    return found


def desktop_file_is_valid(tree):
    need("desktop-file-validate")
    for path in build_data(tree, ".desktop"):
        status, output = run("desktop-file-validate", path)
        if status != 0 or output.strip():
            yield output


def metainfo_is_valid(tree):
    need("appstreamcli")
    for path in build_data(tree, ".metainfo.xml"):
        status, output = run("appstreamcli", "validate", "--no-net", path)
        # Leafwend has no page of its own on the net; later validators warn of that, and fail for a warning.
        told = [line for line in output.splitlines() if re.match("[EW]: ", line)]
        if status != 0 and not (told and all("url-homepage-missing" in line for line in told)):
            yield output


def settings_schema_is_valid(tree):
    need("glib-compile-schemas")
    status, output = run("glib-compile-schemas", "--strict", "--dry-run", tree.root / "data")
    if status != 0:
        yield output


def xml_is_well_formed(tree):
    need("xmllint")
    for name in tree.named(r"^(data|ui)/.*\.(xml|xml\.in|svg|rng|ui|leafwend)$"):
        status, output = run("xmllint", "--noout", "--nonet", tree.root / name)
        if status != 0:
            yield output


def mime_type_matches_the_document(tree):
    kind = ElementTree.fromstring(tree.text("data/page.leafwend.Leafwend.xml"))[0]
    space = "{http://www.freedesktop.org/standards/shared-mime-info}"
    root = kind.find(space + "root-XML")
    header = tree.text("src/season/document.h")
    for macro, here in (("LW_SEASON_MIME", kind.get("type")), ("LW_SEASON_NS", root.get("namespaceURI")),
                        ("LW_SEASON_SUFFIX", kind.find(space + "glob").get("pattern").lstrip("*"))):
        if '#define %s "%s"' % (macro, here) not in header:
            yield "src/season/document.h does not define %s as %s" % (macro, here)


CHECKS = [includes_never_climb, libraries_stay_on_their_floor, command_line_has_no_gtk, top_level_is_fixed,
          sources_open_with_a_comment, files_are_short, templates_are_translatable, every_word_is_translated,
          no_place_of_this_machine, shell_scripts_parse, shell_scripts_are_sound, desktop_file_is_valid,
          metainfo_is_valid, settings_schema_is_valid, xml_is_well_formed, mime_type_matches_the_document]


def main():
    if sys.argv[1] == "--potfiles":
        tree = Tree(pathlib.Path(sys.argv[2]).resolve(), None)
        (tree.root / "po/POTFILES.in").write_text("\n".join(sorted(spoken_files(tree))) + "\n", encoding="utf-8")
        return 0
    tree = Tree(pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]) if len(sys.argv) > 2 else None)
    print("1..%d" % len(CHECKS))
    bad = 0
    for number, check in enumerate(CHECKS, 1):
        title = check.__name__.replace("_", " ")
        try:
            wrong = [str(w) for w in check(tree)]
        except Skip as reason:
            print("ok %d - %s # SKIP %s" % (number, title, reason))
            continue
        except Exception as error:  # a check that breaks has not been passed
            wrong = ["%s: %s" % (type(error).__name__, error)]
        print("%sok %d - %s" % ("not " if wrong else "", number, title))
        for line in "\n".join(wrong).splitlines():
            print("# " + line)
        bad += bool(wrong)
    return 1 if bad else 0


sys.exit(main())
