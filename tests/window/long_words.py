"""long_words.py SOURCE-ROOT FOLDER: a translation for trials, in which every word is longer by two fifths and has letters
with accents, as FOLDER/LANGUAGE/LC_MESSAGES/leafwend.mo. It shows which screens have no room for other languages, and
words that nobody can translate. Nothing of it is kept."""
# SPDX-License-Identifier: GPL-3.0-or-later
import ast
import os
import re
import subprocess
import sys

LANGUAGE = "xx"
ACCENTS = str.maketrans("aeiouycnsAEIOUYCNS", "áéíóúýçñšÁÉÍÓÚÝÇÑŠ")
TAIL = "áëïõûéàíöú"
# What is kept as it stands: conversions, names in braces, markup and its entities, a mnemonic's sign.
KEPT = re.compile(r"(%[-+#0']*(?:\*|\d+)?(?:\.(?:\*|\d+))?(?:hh|h|ll|l|z|j)?[a-zA-Z%]|\{\w+\}|<[^>]*>|&\w+;)")
WORD = re.compile(r"[^\W\d]+")


def longer_word(word):
    letters = len(word.replace("_", ""))
    return word.translate(ACCENTS) + TAIL[:round(0.4 * letters)] if letters > 1 else word


def longer(text):
    """The text as it stands in the translation."""
    parts = KEPT.split(text)
    parts[::2] = (WORD.sub(lambda m: longer_word(m[0]), part) for part in parts[::2])
    return "".join(parts)


def quoted(text):
    return '"%s"' % text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")


def messages(template):
    """(singular, plural or None) of every message of a template written without line wraps."""
    for block in template.split("\n\n")[1:]:
        lines = [line for line in block.splitlines() if not line.startswith("#")]
        said = {}
        for line in lines:
            key, text = re.match(r'(?:(\w+(?:\[\d\])?) )?(".*")$', line).groups()
            said[key or last] = said.get(key or last, "") + ast.literal_eval(text)
            last = key or last
        if said:
            yield said.get("msgctxt"), said["msgid"], said.get("msgid_plural")


def make(root, folder):
    """Reads the program's words by the list of po/POTFILES.in."""
    place = os.path.join(folder, LANGUAGE, "LC_MESSAGES")
    os.makedirs(place)
    template = subprocess.run(["xgettext", "--from-code=UTF-8", "--add-comments", "--no-wrap", "--no-location", "--output=-",
                               "--keyword=_", "--keyword=N_", "--keyword=C_:1c,2", "--keyword=NC_:1c,2",
                               "--keyword=g_dcgettext:2", "--keyword=g_dngettext:2,3", "--keyword=g_dpgettext2:2c,3",
                               "--files-from=po/POTFILES.in"], cwd=root, check=True, stdout=subprocess.PIPE,
                              stderr=subprocess.DEVNULL, text=True).stdout
    entries = ['msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\nPlural-Forms: nplurals=2; plural=n != 1;\\n"']
    for context, one, many in messages(template):
        entry = ["msgctxt " + quoted(context)] if context else []
        entry += ["msgid " + quoted(one)]
        if many is None:
            entry += ["msgstr " + quoted(longer(one))]
        else:
            entry += ["msgid_plural " + quoted(many), "msgstr[0] " + quoted(longer(one)), "msgstr[1] " + quoted(longer(many))]
        entries.append("\n".join(entry))
    subprocess.run(["msgfmt", "--check-format", "-o", os.path.join(place, "leafwend.mo"), "-"], check=True, text=True,
                   input="\n\n".join(entries) + "\n")


if __name__ == "__main__":
    make(sys.argv[1], sys.argv[2])
