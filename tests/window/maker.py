"""What a maker does in the window for the tasks of docs/guide, by pointer and keys: the bench's methods for
the test of the tasks and for the guide's pictures."""
# SPDX-License-Identifier: GPL-3.0-or-later
import datetime
import os
import re
import time
import xml.etree.ElementTree as ElementTree

from bench import NS, Bench

KINDS = ["wither", "tumble", "fix in pan", "fix in drum"]  # as the menu of steps has them


class Maker(Bench):
    """The bench, and a maker's hands."""

    def take(self, step):
        """Takes a step, from 1, in hand by a click on its name."""
        box = self.bounds(self.blocks()[step - 1])
        self.click(box.x + 40, box.y + 12)
        self.wait_for(lambda: self.has(self.blocks()[step - 1], "focused"), "step %d in hand" % step)

    def focused_name(self):
        return next((self.name_of(n) for n in self.walk() if self.has(n, "focused")), "")

    def tab_to(self, name):
        for _ in range(24):
            if self.focused_name() == name:
                return
            self.key("Tab")
            self.wait_for(self.focused_name, "a focus")
        raise AssertionError("Tab does not reach " + name)

    def set(self, step, setting, text, off_weather=False):
        """Types a setting into the step's settings; one that follows the weather is taken off it first."""
        self.take(step)
        self.key("Return")
        field = self.get("spin button", setting)
        if off_weather:
            boxes = self.find_all("check box", "weather")
            mine = min(boxes, key=lambda b: abs(self.bounds(b).middle[1] - self.bounds(field).middle[1]))
            while not self.has(mine, "focused"):
                self.key("Tab")
            self.key("space")
            self.wait_for(lambda: self.has(field, "sensitive"), setting + " to be free of the weather")
            self.key("shift+Tab")
        self.tab_to(setting)
        self.key("ctrl+a")
        self.type(text + "\n")
        self.wait_for(lambda: self.value_of(field) == float(text), "%s %s" % (setting, text))

    def leave(self):
        """Closes what is open beside a block or a row."""
        self.key("Escape")
        self.wait_for(lambda: not self.find_all("spin button"), "the settings to close")

    def row(self, outcome):
        return self.get("list item", re.compile("^" + outcome + r" [\d.]"))

    def said(self, outcome):
        """What the row of an outcome says."""
        return self.name_of(self.row(outcome))

    def value(self, outcome):
        return float(re.match(outcome + r" ([\d.]+)", self.said(outcome))[1])

    def is_still(self, node):
        """Whether it stands where it stood a moment ago."""
        box = self.bounds(node)
        time.sleep(0.1)
        return box.width > 0 and box == self.bounds(node)

    def lock(self, *outcomes):
        for outcome in outcomes:
            button = self.get("push button", "Hold " + outcome)
            self.wait_for(lambda: self.is_still(button), "the rows to be laid out")
            self.click(button)
            self.wait_for(lambda: "held" in self.said(outcome), outcome + " held")

    def look_at(self, place):
        """The result of the "Finished tea", or "After the step in hand"."""
        self.click(self.get("combo box", "Result of"))
        self.key("Down" if place.startswith("After") else "Up", "Return")
        self.wait_for(lambda: bool(self.find("label", re.compile("^At the end of step"))) == place.startswith("After"),
                      "the result of " + place)

    def told(self, pattern, seconds=60):
        """Waits for a message at the window's foot."""
        message = self.get("status bar", re.compile(pattern), seconds=seconds)
        self.settled()
        return self.name_of(message)

    def as_now(self, outcome):
        """Aims at what the batch gives now."""
        self.click(self.row(outcome))
        self.wait_for(lambda: self.find("text", "From"), "the aim's fields")
        self.tab_to("Aim at what it gives now")
        self.key("Return")
        self.wait_for(lambda: not self.find("text", "From") and "within" in self.said(outcome), "the aim")

    def swap(self, step, kind):
        """Puts a step of another kind in the place of a step."""
        count = len(self.blocks())
        self.take(step)
        self.key("Insert")
        self.get("menu item", kind)
        self.key(*["Down"] * KINDS.index(kind), "Return")
        self.wait_for(lambda: len(self.blocks()) == count + 1, "the new step")
        self.take(step)
        self.key("Delete")
        self.wait_for(lambda: len(self.blocks()) == count, "the old step to go")
        self.settled()

    def write_damp_days(self, name, batch):
        """The season's forecast as a table of hours for the days of a batch; (path, hours)."""
        root = ElementTree.parse(self.path).getroot()
        when = next(b.get("start") for b in root.iter(NS + "batch") if b.get("name") == batch)
        hours = list(next(w for w in root.iter(NS + "weather") if w.get("id") == "forecast-2026"))
        hours = [h for h in hours if h.tag == NS + "hour"]
        start = datetime.datetime.fromisoformat(when).replace(hour=0, minute=0) - datetime.timedelta(days=1)
        path = os.path.join(self.folder, name + ".csv")
        with open(path, "w", encoding="utf-8") as file:
            file.write("Time;Temperature (°C);Humidity (%);Sun (W/m2);Wind (m/s)\n")
            for i, hour in enumerate(hours):
                time = (start + datetime.timedelta(hours=i)).isoformat(timespec="minutes")
                file.write(";".join([time] + [hour.get(k) for k in ("temp-c", "humidity-pct", "sun-w-m2",
                                                                    "wind-m-s")]) + "\n")
        return path, len(hours)

    def import_table(self, path):
        """By the menu, and the path typed into the dialog for files."""
        self.key("F10")
        self.get("menu item", re.compile("Import weather"))
        self.key("i")
        self.wait_for(lambda: len(self.windows()) > 1, "the dialog for files")
        self.key("slash")
        self.wait_for(lambda: self.find_all("text", under=self.windows()[1]), "the place for a path")
        self.key("ctrl+a")
        self.type(path + "\n")
        self.get("status bar", re.compile("is in the season"))

    def give_weather(self, name):
        """Gives the batch the season's last weather, by the menu."""
        self.key("F10")
        self.get("menu item", re.compile("Weather of this batch"))
        self.key("w")
        self.get("menu item", name)
        # A key pressed while the menu still slides in is lost.
        self.wait_for(lambda: self.key("Up") or self.focused_name() == name, name)
        self.key("Return")
