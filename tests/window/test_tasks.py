"""The three tasks of docs/guide, by pointer and keys, judged by the saved file and the command line."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tap
from maker import BUYERS, CUP, Maker, near

desk = Maker()


@tap.case
def covered_leaf_does_not_roast():
    """A cover on the bare wither takes the roast of the pan into its aim, without another change."""
    batch = "4 long wither, bare mats"
    desk.open("ondry-ridge-2025.leafwend", batch)
    steps = desk.saved(batch)
    before = desk.ends(batch)[-1]
    assert before["roast_min"] > 5 and re.search(r"Aim: at most 5\.0\. above", desk.said("Roast")), desk.said("Roast")
    desk.set(1, "cover", "78")
    desk.leave()
    desk.wait_for(lambda: re.search(r"Aim: at most 5\.0\. within", desk.said("Roast")), "the roast within")
    desk.key("ctrl+e")
    desk.told("All aims are met")
    desk.save()
    after = desk.ends(batch)[-1]
    assert after["roast_min"] < 5, after
    near(desk.value("Roast"), after["roast_min"], 0.06, "the roast")
    tap.equal(desk.saved(batch)[0].pop("cover-pct"), "78", "the cover")
    steps[0]["cover-pct"] = "78"
    tap.equal(desk.saved(batch), steps, "all else")


@tap.case
def the_cup_is_kept_in_humid_air():
    """With its outcomes locked, a humid wither moves the pan by itself, and one undo takes both back."""
    before, steps = desk.hold_the_cup()
    desk.set(1, "air humidity", "88", off_weather=True)
    desk.told("All that is locked is held")
    desk.leave()
    desk.assert_cup_kept(before)
    now = desk.saved(BUYERS)
    tap.equal(now[0]["humidity-pct"], "88", "the humidity")
    assert float(now[1]["minutes"]) > float(steps[1]["minutes"]) or float(now[1]["wall-c"]) > float(steps[1]["wall-c"]), now
    desk.key("ctrl+z")
    desk.wait_for(lambda: "20 h, " in desk.words(1) and "32 min, 200 °C" in desk.words(2), "the undo")


@tap.case
def the_pan_style_becomes_the_drum_style():
    """Aimed at what the pan gave, a repeat with a drum in its place reaches it by Reach the aims."""
    desk.open(batch="1 strong pan, first leaf")
    desk.key("ctrl+r")
    drum = "1 strong pan, first leaf (2)"
    desk.wait_for(lambda: drum in desk.name_of(desk.windows()[0]), "the repeat")
    desk.settled()
    for outcome in ("Moisture", "Oxidation", "Cell rupture"):
        desk.as_now(outcome)
    desk.swap(2, "fix in drum")
    assert ": fix in drum" in desk.words(2), desk.words(2)
    assert any(not re.search("within", desk.said(o)) for o in ("Moisture", "Oxidation", "Cell rupture"))
    desk.key("ctrl+e")
    desk.told("All aims are met")
    desk.save()
    pan, made = desk.ends("1 strong pan, first leaf")[-1], desk.ends(drum)[-1]
    tap.equal([s["kind"] for s in desk.saved(drum)], ["wither", "fix-drum", "roll", "dry-sun"], "the steps")
    for outcome, column, _ in CUP:
        low, high = map(float, re.search(r"Aim: ([\d.]+) to ([\d.]+)\. within", desk.said(outcome)).groups())
        assert low - 0.05 <= made[column] <= high + 0.05, (outcome, made[column], low, high)
        assert low - 0.05 <= pan[column] <= high + 0.05, (outcome, pan[column], low, high)


@tap.case
def an_aim_says_where_it_comes_from():
    """Why an aim is there is told by its row, and does not stay with an aim at what it gives now."""
    desk.click(desk.row("Broken leaf"))
    desk.wait_for(lambda: desk.find("text", "From"), "the aim's fields")
    desk.type("0\t5\t")
    desk.type("whole leaf sells\n")
    desk.wait_for(lambda: "Why: whole leaf sells" in desk.said("Broken leaf"), "the reason")
    desk.as_now("Broken leaf")
    assert "Why" not in desk.said("Broken leaf"), desk.said("Broken leaf")


tap.main(desk.tree)
