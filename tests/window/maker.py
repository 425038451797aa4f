"""What a maker does in the window for the tasks of docs/guide, by pointer and keys: the bench's methods for
the test of the tasks and for the guide's pictures."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import datetime
import os
import re
import subprocess
import time
import xml.etree.ElementTree as ElementTree

from bench import CLI, NS, Bench

KINDS = ["wither", "tumble", "fix in pan", "fix in drum"]  # as the menu of steps has them
BUYERS = "12 long wither, gentle pan"
RAINED = "9 drum, after rain"
CUP = (("Moisture", "moisture_wb_pct", 0.5), ("Oxidation", "oxidation_pct", 0.7), ("Cell rupture", "rupture_pct", 1))


def near(got, expected, tolerance, what):
    assert abs(got - expected) <= tolerance, "%s is %g, was %g" % (what, got, expected)


class Maker(Bench):
    """The bench, and a maker's hands."""

    def take(self, step):
        """Takes a step, from 1, in hand by a click on its name."""
        box = self.bounds(self.blocks()[step - 1])
        self.click(box.x + 40, box.y + 12)
        self.wait_for(lambda: self.has(self.blocks()[step - 1], "focused"), "step %d in hand" % step)

    def key_to(self, node, key):
        """Presses a key, Tab or an arrow, until the focus is there; it may go round more than once."""
        def is_there():
            if not self.has(node, "focused"):
                self.key(key)
                time.sleep(0.1)
            return self.has(node, "focused")
        self.wait_for(is_there, "%s to reach %s" % (key, self.name_of(node)), 20)

    def set(self, step, setting, text, off_weather=False):
        """Types a setting into the step's settings; one that follows the weather is taken off it first."""
        self.take(step)
        self.key("Return")
        field = self.get("spin button", setting)
        if off_weather:
            boxes = self.find_all("check box", "weather")
            mine = min(boxes, key=lambda b: abs(self.bounds(b).middle[1] - self.bounds(field).middle[1]))
            self.key_to(mine, "Tab")
            self.key("space")
            self.wait_for(lambda: self.has(field, "sensitive"), setting + " to be free of the weather")
            self.key("shift+Tab")
        self.key_to(field, "Tab")
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

    def ends(self, batch):
        """The state at the end of each step of a batch in the saved file, by the command line."""
        told = subprocess.run([CLI, "run", self.path, "--batch", batch, "--ends"], check=True,
                              stdout=subprocess.PIPE, text=True).stdout.splitlines()
        return [{k: float(v) for k, v in row.items() if re.fullmatch(r"-?[\d.]+(e[-+]?\d+)?", v or "")}
                for row in csv.DictReader(told)]

    def hold_the_cup(self):
        """Opens the buyer's batch and locks its cup; what its steps gave and were."""
        self.open(batch=BUYERS)
        self.lock("Moisture", "Oxidation", "Cell rupture")
        self.take(2)
        self.look_at("After the step in hand")
        self.lock("Moisture")
        self.look_at("Finished tea")
        self.get("push button", "Let go 4 locks")
        return self.ends(BUYERS), self.saved(BUYERS)

    def assert_cup_kept(self, before):
        """Saves once the search is through; the cup is as it was, in the window and by the command line."""
        self.wait_for(lambda: abs(self.moisture(2) - before[1]["moisture_wb_pct"]) < 0.5, "the moisture after the pan", 30)
        self.save()
        after = self.ends(BUYERS)
        for outcome, column, tolerance in CUP:
            assert "held" in self.said(outcome), self.said(outcome)
            near(after[-1][column], before[-1][column], tolerance, outcome)
        near(after[1]["moisture_wb_pct"], before[1]["moisture_wb_pct"], 0.5, "the moisture after the pan")

    def as_now(self, outcome):
        """Aims at what the batch gives now."""
        self.click(self.row(outcome))
        self.wait_for(lambda: self.find("text", "From"), "the aim's fields")
        self.key_to(self.get("push button", "Aim at what it gives now"), "Tab")
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
        self.key("alt+b")
        self.get("menu item", re.compile("Weather of this batch"))
        self.key("w")
        self.key_to(self.get("menu item", name), "Up")
        self.key("Return")


class Rained(Maker):
    """Batch 9 as it was planned before the rain: usual leaf, drum and dryer as the day before; and batch 8 not weighed."""

    def change(self):
        with open(self.path, encoding="utf-8") as file:
            text = file.read()
        at = text.index('<batch name="%s"' % RAINED)
        end = text.index("</batch>", at)
        batch = text[at:end].replace(' fresh-moisture-pct="81.5"', "")
        batch = batch.replace('minutes="8.5" load-kg="10"', 'minutes="5.5" load-kg="12"')
        batch = re.sub(r' *<weigh-in minute="8.5"[^>]*>\n', "", batch)
        batch = batch.replace('kind="dry-air" minutes="55" air-c="95"', 'kind="dry-air" minutes="40" air-c="95"')
        batch = re.sub(r' *<weigh-in minute="(30|55)"[^>]*>\n', "", batch)
        eighth = text.index('<batch name="8 ')
        text = text[:eighth] + re.sub(r" *<weigh-in [^>]*/>\n", "", text[eighth:at]) + batch + text[end:]
        with open(self.path, "w", encoding="utf-8") as file:
            file.write(text)

    def start(self, program, args=(), **others):
        self.change()
        super().start(program, args, **others)
