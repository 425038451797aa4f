"""to-html.py PAGE.md PAGE.html: one page of the documentation as HTML, for the desktop's viewer. Knows the Markdown that the
documentation is written in and no more: headings, paragraphs, rules, lists of one level, tables, code, pictures,
links, **strong**, *emphasis*. Links to pages lead to their HTML; what it does not know it shows as it stands."""
# SPDX-License-Identifier: GPL-3.0-or-later
import html
import re
import sys

STYLE = """
:root { color-scheme: light dark; --ink: #1f2328; --desk: #faf8f3; --rule: #d5d1c5; --link: #0069a6; --card: #ffffff; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e8e6e1; --desk: #191b1f; --rule: #3a3e45; --link: #5cb8f0; --card: #22252a; }
}
body { background: var(--desk); color: var(--ink); font: 1.06rem/1.5 sans-serif; max-width: 46em; margin: 2em auto;
  padding: 0 1.2em; }
a { color: var(--link); }
h1, h2 { line-height: 1.2; }
img { max-width: 100%; height: auto; border: 1px solid var(--rule); }
figure { margin: 1em 0; width: max-content; max-width: min(100vw - 2.4em, 1400px); position: relative; left: 50%;
  transform: translateX(-50%); }
figcaption { font-size: 0.9em; }
table { border-collapse: collapse; display: block; overflow-x: auto; }
th, td { border: 1px solid var(--rule); padding: 0.25em 0.6em; text-align: start; vertical-align: top; }
pre { background: var(--card); border: 1px solid var(--rule); padding: 0.6em; overflow-x: auto;
  font-size: 0.85em; }
code { white-space: nowrap; }
@media print { pre { white-space: pre-wrap; } figure, tr { break-inside: avoid; } h1, h2, h3 { break-after: avoid; } }
"""

UNIT = re.compile(r"(?<=\d) (?=(?:%|°C|kg|kPa|h|min|s|mm)(?!\w))")
ITEM = re.compile(r"(- |(\d+)\. )")
PICTURE = re.compile(r"!\[([^\]]*)\]\(([^)]+)\)$")


def place(link):
    """Where a link leads among the HTML pages."""
    if re.match(r"[a-z]+:", link):
        return link
    return re.sub(r"([^/#]*)\.md(?=#|$)", lambda m: ("index" if m[1] == "README" else m[1]) + ".html", link)


def words(text):
    """A line's text: code is kept from all else, then links, strong words and emphasis; a number stays with its unit."""
    kept = []

    def keep(found):
        kept.append("<code>%s</code>" % html.escape(found[1], quote=False))
        return "\0%d\0" % (len(kept) - 1)
    text = html.escape(re.sub(r"`([^`]+)`", keep, text), quote=False)
    text = re.sub(r"\[([^\]]+)\]\(([^)\s]+)\)", lambda m: '<a href="%s">%s</a>' % (place(m[2]), m[1]), text)
    text = UNIT.sub("\u00a0", text)
    text = re.sub(r"\*\*(?=\S)(.+?)(?<=\S)\*\*", r"<strong>\1</strong>", text)
    text = re.sub(r"\*(?=\S)([^*]+?)(?<=\S)\*", r"<em>\1</em>", text)
    return re.sub(r"\0(\d+)\0", lambda m: kept[int(m[1])], text)


def anchor(title):
    """As the places that show Markdown name a heading."""
    return re.sub(r"[^\w\- ]", "", title.lower()).strip().replace(" ", "-")


def table(rows):
    cells = [[c.strip().replace("\\|", "|") for c in re.split(r"(?<!\\)\|", row.strip().strip("|"))] for row in rows]
    yield "<table>\n<tr>%s</tr>" % "".join('<th scope="col">%s</th>' % words(c) for c in cells[0])
    for row in cells[2:]:
        yield "<tr>%s</tr>" % "".join("<td>%s</td>" % words(c) for c in row)
    yield "</table>"


def items(lines):
    """A list: an item goes on in lines that are indented."""
    number = ITEM.match(lines[0])[2]
    yield "<ol start=\"%s\">" % number if number else "<ul>"
    said = []
    for line in lines:
        head = ITEM.match(line)
        if head:
            said.append(line[head.end():])
        else:
            said[-1] += " " + line.strip()
    yield from ("<li>%s</li>" % words(text) for text in said)
    yield "</ol>" if number else "</ul>"


def block(lines):
    """One block: lines between empty ones."""
    heading = re.match(r"(#+) (.*)", lines[0])
    picture = PICTURE.match(lines[0])
    if heading:
        level = len(heading[1])
        yield '<h%d id="%s">%s</h%d>' % (level, anchor(heading[2]), words(heading[2]), level)
        if lines[1:]:
            yield from block(lines[1:])
    elif picture:
        yield '<figure><a href="%s"><img src="%s" alt="%s"></a><figcaption>%s</figcaption></figure>' % (
            picture[2], picture[2], html.escape(picture[1]), words(picture[1]))
    elif lines == ["---"]:
        yield "<hr>"
    elif lines[0].startswith("|"):
        yield from table(lines)
    elif all(line.startswith("    ") for line in lines):
        yield "<pre>%s</pre>" % html.escape("\n".join(line[4:] for line in lines), quote=False)
    else:
        begin = next((i for i, line in enumerate(lines) if ITEM.match(line)), len(lines))
        if begin:
            yield "<p>%s</p>" % words(" ".join(lines[:begin]))
        if lines[begin:]:
            yield from items(lines[begin:])


def page(text):
    """A whole page's HTML."""
    text = re.sub(r"<!--.*?-->\n?", "", text, flags=re.S)
    body, fence = [], None
    lines = []
    for line in text.splitlines() + [""]:
        if line.startswith("```"):
            if fence is not None:
                body.append("<pre>%s</pre>" % html.escape("\n".join(fence), quote=False))
            fence = [] if fence is None else None
        elif fence is not None:
            fence.append(line)
        elif line.strip():
            lines.append(line)
        elif lines:
            body.extend(block(lines))
            lines = []
    title = html.escape(re.search(r"^# (.*)", text, re.M)[1], quote=False)
    return ('<!DOCTYPE html>\n<html lang="en">\n<head><meta charset="utf-8"><title>%s · Leafwend</title>\n'
            '<meta name="viewport" content="width=device-width"><style>%s</style></head>\n<body>\n%s\n</body>\n</html>\n'
            % (title, STYLE, "\n".join(body)))


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as source:
        done = page(source.read())
    with open(sys.argv[2], "w", encoding="utf-8") as target:
        target.write(done)
