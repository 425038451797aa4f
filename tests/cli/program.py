"""The command line as its tests call it."""
# SPDX-License-Identifier: GPL-3.0-or-later
import os
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "window"))
import tap  # noqa: E402

CLI = os.environ["LEAFWEND_CLI"]


def run(*arguments, expect=0, **env):
    """Runs the program: (stdout, stderr)."""
    done = subprocess.run([CLI, *arguments], env={**os.environ, **env}, stdin=subprocess.DEVNULL,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
    said, complained = done.stdout.decode("utf-8"), done.stderr.decode("utf-8")
    assert done.returncode == expect, "%s: status %d\n%s%s" % (arguments, done.returncode, said, complained)
    return said, complained


def put(folder, name, text):
    """Writes a file of the folder; its path."""
    path = os.path.join(folder, name)
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    return path


def get(path):
    with open(path, encoding="utf-8") as file:
        return file.read()


def refused(*arguments, status=2, words=()):
    """The program ends with a status, these words on stderr and nothing on stdout. What stderr says."""
    said, complained = run(*arguments, expect=status)
    tap.equal(said, "", "stdout")
    for word in words:
        assert word in complained, "no %r in %s" % (word, complained)
    return complained
