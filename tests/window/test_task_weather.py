"""The guide's second task with weather: a table of damp hours instead of a typed humidity, by pointer and keys."""
# SPDX-License-Identifier: GPL-3.0-or-later
import re

import tap
from maker import BUYERS, Maker

desk = Maker()


@tap.case
def the_cup_is_kept_in_other_weather():
    """The same with a table of damp hours, imported and chosen in the menu."""
    before, steps = desk.hold_the_cup()
    path, hours = desk.write_damp_days("damp days", BUYERS)
    desk.import_table(path)
    desk.told("“damp days” is in the season, %d hours" % hours)
    desk.give_weather("damp days")
    desk.told("All that is locked is held")
    desk.assert_cup_kept(before)
    now = desk.saved(BUYERS)
    assert [s["minutes"] for s in now[1:]] != [s["minutes"] for s in steps[1:]], now


@tap.case
def a_weather_of_other_days_says_so():
    """The menu says which weather has no hours for the days of the batch."""
    desk.open(batch=BUYERS)
    desk.key("alt+b")
    desk.get("menu item", re.compile("Weather of this batch"))
    desk.key("w")
    desk.get("menu item", "Forecast, 17 to 22 April 2026 · not on this batch's days")
    desk.get("menu item", "Spring 2026")
    desk.key("Escape", "Escape")
    desk.wait_for(lambda: desk.find("menu item", "Spring 2026") is None, "the menu to close")
    desk.key("ctrl+r")  # the keyboard is not left in the submenu
    desk.wait_for(lambda: BUYERS + " (2)" in desk.name_of(desk.windows()[0]), "the repeat")


tap.main(desk.tree)
