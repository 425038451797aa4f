"""What a window test does on the desk that desk.sh set up: start a program, look at it as a screen
reader does, and move the pointer and press keys as a person does. All positions are in pixels of the
program's window, as `bounds` tells them; waiting is always for something, never for a while."""
# SPDX-License-Identifier: GPL-3.0-or-later
import collections
import os
import re
import signal
import subprocess
import time

import gi

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi, GLib  # noqa: E402

Box = collections.namedtuple("Box", "x y width height")
Box.middle = property(lambda box: (box.x + box.width // 2, box.y + box.height // 2))


class Missed(AssertionError):
    """What was waited for did not come about."""


def ask(call, *arguments, otherwise=None):
    """A question to an accessible that may be gone by now."""
    try:
        return call(*arguments)
    except GLib.Error:
        return otherwise


class Desk:
    """One program on the desk. Use as `with Desk() as desk:`; leaving ends the program."""

    def __init__(self):
        if not os.environ.get("DISPLAY"):
            raise RuntimeError("no display: run this test by tests/window/desk.sh")
        self.process = None
        self._clicked = 0  # when, by the monotonic clock
        self._held = None  # the keys of a drag whose button is still down
        self._places = {}
        Atspi.set_timeout(3000, 5000)
        self.desktop = Atspi.get_desktop(0)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.stop()

    # The program

    def start(self, program, args=(), env=None, seconds=30):
        """Starts a program, ending the last one, and waits for a window of it. Returns the window."""
        self.stop()
        self._places.clear()
        self.process = subprocess.Popen([program, *args], env={**os.environ, **(env or {})},
                                        stdin=subprocess.DEVNULL)
        self.wait_for(lambda: not self.is_running() or (self.windows() and self._x_windows()),
                      "a window of " + program, seconds)
        if not self.is_running():
            raise Missed("%s ended with status %s" % (program, self.process.returncode))
        self.key()  # its window takes the keys
        return self.windows()[0]

    def is_running(self):
        return self.process is not None and self.process.poll() is None

    def close(self, seconds=10):
        """Closes the first window as its close button would; returns the program's exit status, or
        None if it asks something first and goes on."""
        self.act(self.windows()[0], "window.close")
        try:
            return self.process.wait(seconds)
        except subprocess.TimeoutExpired:
            return None

    def stop(self):
        """Ends the program, whatever it is doing."""
        self.let_go()
        for sign in (signal.SIGTERM, signal.SIGKILL):
            if self.is_running():
                self.process.send_signal(sign)
                try:
                    self.process.wait(3)
                except subprocess.TimeoutExpired:
                    continue

    # What a screen reader sees

    def application(self):
        for app in self.children(self.desktop):
            if self.process and ask(app.get_process_id) == self.process.pid:
                # Always ask the program itself: no main loop runs here that would keep a cache right.
                app.set_cache_mask(Atspi.Cache.NONE)
                return app
        return None

    def windows(self):
        app = self.application()
        return self.children(app) if app else []

    @staticmethod
    def children(node):
        count = ask(node.get_child_count, otherwise=0)
        found = (ask(node.get_child_at_index, i) for i in range(count))
        return [child for child in found if child is not None]

    def walk(self, node=None, with_depth=False):
        """Every accessible under a node, or of the program, from the top, the node itself included; in
        pairs with its depth if asked for. Each comes once: while a window goes away the bus may answer
        in circles."""
        seen = set()

        def go(top, depth):
            if top not in seen:
                seen.add(top)
                yield (top, depth) if with_depth else top
                for child in self.children(top):
                    yield from go(child, depth + 1)
        for top in [node] if node is not None else self.windows():
            yield from go(top, 0)

    def _found(self, role, name, under):
        def fits(node):
            if role is not None and ask(node.get_role_name) != role:
                return False
            said = ask(node.get_name, otherwise="")
            return ((name is None or (name.search(said) if isinstance(name, re.Pattern) else said == name))
                    and self.has(node, "visible"))
        return (node for node in self.walk(under) if fits(node))

    def find_all(self, role=None, name=None, under=None):
        """All visible accessibles of a role, such as 'push button', and a name: the whole of it as
        text, or a compiled pattern to search for. None stands for any."""
        return list(self._found(role, name, under))

    def find(self, role=None, name=None, under=None):
        """The first that find_all finds, or None; looks no further."""
        return next(self._found(role, name, under), None)

    def place(self, role, name):
        """The one accessible of that role and name, kept in mind: every question to the program takes a
        while. For what lives as long as its window."""
        kept = self._places.get((role, name))
        if kept is None or ask(kept.get_role_name) != role or ask(kept.get_name) != name:
            kept = self._places[(role, name)] = self.find(role, name)
        return kept

    def get(self, role=None, name=None, under=None, seconds=10):
        """As find, but waits for it."""
        return self.wait_for(lambda: self.find(role, name, under), "%s %r" % (role, name), seconds)

    @staticmethod
    def has(node, state):
        """Whether a state, such as 'focused' or 'checked', is set."""
        states = ask(node.get_state_set)
        return bool(states and states.contains(getattr(Atspi.StateType, state.upper())))

    @staticmethod
    def name_of(node):
        return ask(node.get_name, otherwise="")

    @staticmethod
    def text_of(node):
        """The text of a label or an entry; the name of anything else."""
        if ask(node.get_text_iface) is None:
            return ask(node.get_name, otherwise="")
        length = ask(Atspi.Text.get_character_count, node, otherwise=0)
        return ask(Atspi.Text.get_text, node, 0, length, otherwise="")

    @staticmethod
    def value_of(node):
        """The number of a spin button or scale."""
        return ask(Atspi.Value.get_current_value, node)

    @staticmethod
    def set_value(node, number):
        """Sets a spin button or scale as a screen reader can."""
        Atspi.Value.set_current_value(node, number)

    @staticmethod
    def set_text(node, text):
        """Puts a text into an entry, in place of what it holds."""
        Atspi.EditableText.set_text_contents(node, text)

    @staticmethod
    def bounds(node):
        """Where an accessible is in its window."""
        at = Atspi.Component.get_extents(node, Atspi.CoordType.WINDOW)
        return Box(at.x, at.y, at.width, at.height)

    def resting(self, node):
        """Its bounds, once they have stayed the same for a moment: what was just done may still move it."""
        seen = []

        def rests():
            seen.append(self.bounds(node))
            time.sleep(0.06)
            return len(seen) > 1 and seen[-1] == seen[-2] and seen[-1]

        return self.wait_for(rests, "%r to rest" % self.name_of(node))

    @staticmethod
    def act(node, action=None):
        """Does a named action of an accessible, or its first. A click reaches those that have none."""
        count = ask(node.get_n_actions, otherwise=0)
        names = [ask(node.get_action_name, i) for i in range(count)]
        if not names or (action is not None and action not in names):
            raise Missed("%s has no action %s, only %s" % (node.get_name(), action or "at all", names))
        node.do_action(names.index(action) if action else 0)

    def tree(self):
        """The whole tree as text, for a person who wonders why a test failed."""
        lines = []
        for node, depth in self.walk(with_depth=True):
            states = [s for s in ("visible", "sensitive", "focused", "checked", "selected") if self.has(node, s)]
            lines.append("%s%s %r %r %s %s" % ("  " * depth, ask(node.get_role_name), ask(node.get_name),
                                               self.text_of(node), tuple(ask(self.bounds, node) or ()),
                                               " ".join(states)))
        return "\n".join(lines)

    # Waiting

    @staticmethod
    def wait_for(call, what=None, seconds=10):
        """Calls until the answer is true, and returns it. Fails when that takes too long."""
        end = time.monotonic() + seconds
        while True:
            answer = call()
            if answer:
                return answer
            if time.monotonic() > end:
                raise Missed("waited %g s in vain for %s" % (seconds, what or getattr(call, "__name__", "it")))
            time.sleep(0.03)

    # Pointer and keys

    def _x_windows(self):
        """Ids of the program's windows on the screen, those with a frame of the window manager."""
        found = subprocess.run(["xdotool", "search", "--onlyvisible", "--pid", str(self.process.pid), "--name", ""],
                               stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, check=False)
        return found.stdout.split()

    def window_of(self, node):
        """The window that an accessible is in."""
        tops = self.windows()
        while node is not None and node not in tops:
            node = ask(node.get_parent)
        return node

    def window_position(self, window=None):
        """Where on the screen the point 0,0 of `bounds` is, for a window of the program (its first)."""
        window = window or self.windows()[0]
        return self.wait_for(lambda: self._position(window), "%r on the screen" % self.name_of(window))

    def _position(self, window):
        title, size = self.name_of(window), self.bounds(window)
        best = None
        for x_id in self._x_windows():
            told = subprocess.run(["xwininfo", "-id", x_id], stdout=subprocess.PIPE, text=True, check=True).stdout
            x, y, width, height = (int(re.search(word + r":\s*(-?\d+)", told)[1]) for word in (
                "Absolute upper-left X", "Absolute upper-left Y", "Width", "Height"))
            # A window that draws its own frame has a border around what accessibility counts from.
            here = (x + (width - size.width) // 2, y + (height - size.height) // 2)
            if best is None or '"%s"' % title in told.splitlines()[1]:
                best = here
        return best

    @staticmethod
    def _xdotool(*words):
        subprocess.run(["xdotool", *map(str, words)], check=True, stdout=subprocess.DEVNULL)

    def key(self, *keys):
        """Presses keys or chords by X name one after the other: key("Tab", "ctrl+z"). They go to the
        window in front; if that is not one of the program's, to its first."""
        front = subprocess.run(["xdotool", "getactivewindow"], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                               text=True, check=False).stdout.strip()
        ours = self._x_windows()
        if ours and front not in ours:
            self._xdotool("windowactivate", "--sync", ours[-1])
        for chord in keys:
            # Not with modifiers cleared: that lets go of the pointer's button too, and presses again what the
            # last call has only just let go.
            self._xdotool("key", chord)

    def type(self, text):
        """Types text where the focus is; a line's end is the Return key."""
        for number, line in enumerate(text.split("\n")):
            if number:
                self._xdotool("key", "Return")
            if line:
                self._xdotool("type", "--delay", 15, "--", line)

    def move(self, x, y, window=None):
        """Moves the pointer there."""
        left, top = self.window_position(window)
        self._xdotool("mousemove", left + round(x), top + round(y), "sleep", 0.05)

    def click(self, x, y=None, button=1, times=1, window=None):
        """Clicks at a point or, given an accessible, at its middle. Not in a popover: GTK 4.8 tells wrong
        places there, so use `act`, `set_value`, `set_text` or keys."""
        if y is None:
            window = self.window_of(x)
            x, y = self.resting(x).middle
        self.let_go()
        self.move(x, y, window)
        # Two clicks soon after each other would count as a double click.
        pause = max(0.05, self._clicked + 0.5 - time.monotonic())
        self._xdotool("sleep", pause, "click", "--repeat", times, "--delay", 60, button, "sleep", 0.05)
        self._clicked = time.monotonic()

    def drag(self, x1, y1, x2, y2, steps=20, hold=(), release=True, window=None):
        """Presses at one point and goes to the other in steps, with the keys in `hold` held down.
        Without `release` the button stays down, for a look or a key before `let_go`."""
        self.let_go()
        (left, top), keys = self.window_position(window), list(hold)
        words = ["mousemove", left + round(x1), top + round(y1), "sleep", 0.1]
        for name in keys:
            words += ["keydown", name]
        words += ["mousedown", 1, "sleep", 0.05]
        for i in range(1, steps + 1):
            words += ["mousemove", left + round(x1 + (x2 - x1) * i / steps),
                      top + round(y1 + (y2 - y1) * i / steps), "sleep", 0.016]
        self._xdotool(*words, "sleep", 0.05)
        self._held = keys
        if release:
            self.let_go()

    def let_go(self):
        """Ends a drag that was begun without release, if there is one."""
        if self._held is None:
            return
        words = ["mouseup", 1]
        for name in reversed(self._held):
            words += ["keyup", name]
        self._held = None
        self._xdotool(*words, "sleep", 0.05)

    @staticmethod
    def screenshot(path):
        """A picture of the whole screen, as PNG."""
        subprocess.run(["import", "-silent", "-window", "root", "-depth", "8", "png:" + str(path)], check=True)
