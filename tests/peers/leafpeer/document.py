"""A season's file, read for what the model needs: place, leaf, weather, and steps as they are written."""
# SPDX-License-Identifier: GPL-3.0-or-later
import datetime
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass, field

import numpy as np

from .sky import Day, Record, through_clouds

NS = "{urn:leafwend:season}"
WORDS = ("kind", "wall-log", "air-log")
PART_NUMBERS = ("share", "exposure", "area", "cuticle", "ruptured")


@dataclass
class Leaf:
    law: dict        # what differs from the usual, by symbol
    water: float     # when plucked, kg per kg of dry leaf
    green: float
    parts: list      # names
    numbers: dict    # one array over the parts for each of PART_NUMBERS


@dataclass
class Batch:
    name: str
    start_s: float
    leaf: Leaf
    sky: object      # Record or Day; None without weather
    latitude_deg: float
    altitude_m: float
    steps: list      # (kind, {setting: value as given})
    follows: dict = field(default_factory=dict)  # of logs: by step, from 1: {setting: function of seconds into it}


def seconds(text):
    """The place's own clock as seconds since 1970 began there."""
    return (datetime.datetime.fromisoformat(text) - datetime.datetime(1970, 1, 1)).total_seconds()


def dry_basis(moisture_pct):
    return moisture_pct / (100 - moisture_pct)


def read_leaf(element, moisture_pct):
    law = element.find(NS + "law")
    parts = element.findall(NS + "part")
    return Leaf(
        law={symbol: float(value) for symbol, value in law.items()} if law is not None else {},
        water=dry_basis(float(element.get("fresh-moisture-pct") if moisture_pct is None else moisture_pct)),
        green=float(element.get("green")),
        parts=[part.get("name") for part in parts],
        numbers={name: np.array([float(part.get(name)) for part in parts]) for name in PART_NUMBERS})


def read_air(element):
    """A row of a Record. Sun is measured, or made from the clear day's by cloud."""
    number = {name: float(value) for name, value in element.items()}
    clear = 0.0 if "sun-w-m2" in number else through_clouds(number["cloud-pct"])
    return number["temp-c"], number["humidity-pct"], number.get("sun-w-m2", 0.0), number["wind-m-s"], clear


def read_sky(element):
    day = element.find(NS + "day")
    if day is not None:
        number = {name: float(value) for name, value in day.items()}
        return Day((number["low-c"], number["low-hour"]), (number["high-c"], number["high-hour"]),
                   number.get("humidity-pct"), number.get("dew-point-c"), number["wind-m-s"],
                   through_clouds(number["cloud-pct"]))
    constant = element.find(NS + "constant")
    if constant is not None:
        return Record(0.0, [read_air(constant)])
    return Record(seconds(element.get("start")), [read_air(hour) for hour in element.findall(NS + "hour")])


def read_season(path):
    """The season's batches by name."""
    root = ElementTree.parse(path).getroot()
    place = root.find(NS + "place")
    latitude_deg, altitude_m = float(place.get("latitude-deg")), float(place.get("altitude-m"))
    leaves = {element.get("id"): element for element in root.findall(NS + "leaf")}
    skies = {element.get("id"): read_sky(element) for element in root.findall(NS + "weather")}
    batches = {}
    for element in root.findall(NS + "batch"):
        steps = [(step.get("kind"), {name: float(value) for name, value in step.items() if name not in WORDS})
                 for step in element.findall(NS + "step")]
        batches[element.get("name")] = Batch(
            name=element.get("name"), start_s=seconds(element.get("start")),
            leaf=read_leaf(leaves[element.get("leaf")], element.get("fresh-moisture-pct")),
            sky=skies.get(element.get("weather")), latitude_deg=latitude_deg, altitude_m=altitude_m, steps=steps)
    return batches
