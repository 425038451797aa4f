"""The bench as the window tests use it: the program on a copy of the demo season, its blocks, and what
the saved file says."""
# SPDX-License-Identifier: GPL-3.0-or-later
import csv
import os
import re
import shutil
import subprocess
import tempfile
import xml.etree.ElementTree as ElementTree

from desk import Desk

NS = "{urn:leafwend:season}"
EDGE_IN = 3  # of a block in its column
LEAFWEND = os.environ["LEAFWEND"]
CLI = os.environ["LEAFWEND_CLI"]
DATA = os.environ["LEAFWEND_DATA"]


class Bench(Desk):
    """The window on a copy of the demo season in a folder of its own."""

    def open(self, season="ondry-ridge-2026.leafwend", batch=None):
        self.folder = tempfile.mkdtemp(prefix="bench.")
        self.path = os.path.join(self.folder, season)
        shutil.copy(os.path.join(DATA, season), self.path)
        self.start(LEAFWEND, [self.path])
        self.wait_for(self.blocks, "the blocks")
        if batch:
            self.choose(batch)
        return self

    def choose(self, batch):
        """Takes a batch in hand by a click on its row."""
        self.click(self.get("label", batch))
        self.wait_for(lambda: batch in self.name_of(self.windows()[0]), "batch " + batch)
        self.settled()

    def blocks(self):
        lane = self.place("list", "Steps of the batch")
        return [node for node in (self.children(lane) if lane else ())
                if re.match(r"Step \d+ of \d+", self.name_of(node)) and self.has(node, "visible")]

    def words(self, step):
        """What the block of a step, from 1, says."""
        return self.name_of(self.blocks()[step - 1])

    def settled(self):
        """Waits until every block tells its result."""
        self.wait_for(lambda: self.blocks() and all("Moisture then" in self.name_of(b) for b in self.blocks()),
                      "the results")

    def moisture(self, step):
        return float(re.search(r"Moisture then ([\d.]+)", self.words(step))[1])

    def end_edge(self, step):
        """The point on a block's end edge to take hold of."""
        box = self.bounds(self.blocks()[step - 1])
        return box.x + box.width + EDGE_IN, box.y + 12

    def enter(self, key, text):
        """Enters a weigh-in at the present moment, by two keys and the text; waits until it is taken."""
        self.key("m")
        self.wait_for(lambda: self.find("text", "Moment"), "the entry")
        self.key(key)
        self.type(text + "\n")
        self.wait_for(lambda: not self.find("text", "Moment"), "the entry to close")

    def entered(self):
        """What the rows of the batch's weigh-ins say."""
        return [self.name_of(row) for row in self.children(self.place("list", "Weigh-ins of the batch"))]

    def save(self):
        self.key("ctrl+s")
        self.wait_for(lambda: not self.is_changed(), "the save")

    def is_changed(self):
        name, kept = os.path.basename(self.path), self._places.get("file")
        if kept is None or not self.name_of(kept).startswith(name):
            kept = self.find("label", re.compile("^" + re.escape(name) + "(, changed)?$"))
            self._places["file"] = kept
        if kept is not None:
            return self.name_of(kept).endswith(", changed")
        return any(self.name_of(n).endswith(", changed") for n in self.find_all("label"))

    def saved(self, batch):
        """The steps of a batch in the saved file, as dictionaries."""
        root = ElementTree.parse(self.path).getroot()
        found = next(b for b in root.iter(NS + "batch") if b.get("name") == batch)
        return [dict(s.attrib) for s in found.findall(NS + "step")]

    def saved_bytes(self):
        with open(self.path, "rb") as file:
            return file.read()

    def computed(self, batch, step):
        """Final moisture of a step in the saved file, by the command line."""
        told = subprocess.run([CLI, "run", self.path, "--batch", batch, "--ends"], check=True,
                              stdout=subprocess.PIPE, text=True).stdout.splitlines()
        return float(list(csv.DictReader(told))[step - 1]["moisture_wb_pct"])
