"""A part of the wrong kind for the ignition, a gauge that has nothing to measure, a control that does the opposite:
each is asked about, and the sound sentence beside it is not."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.logbook.told import BLOWER, Told
from worklog_tui.logbook.odd import odd
from worklog_tui.model import Machine

MAGNETO = replace(BLOWER, fuel="petrol", ignition="magneto")
BATTERY = replace(BLOWER, fuel="petrol", ignition="battery")
ELECTRONIC = replace(BLOWER, fuel="petrol", ignition="electronic")
SPLASH = Machine("Milk float puller", "single, splash lubricated, air-cooled", "petrol", "magneto", 1)
PUMPED = Machine("Sluice engine", "four-cylinder, water cooled", "petrol", "battery", 4)
PRESS = Machine("Cider press", "hand press", "none", "none")


def kinds(machine: Machine, words: str) -> list[str]:
    return [one.kind for one in odd(Told(machine).say(words).history())]


@pytest.mark.parametrize(
    ("machine", "words", "kind", "sound"),
    [
        (MAGNETO, "somebody hung a twelve volt coil beside it", "part", "the magneto coil is dry"),
        (MAGNETO, "the feed comes off the live side of the battery", "part", "the lighting battery is live side up"),
        (BATTERY, "the impulse coupling sticks", "part", "no magneto on it, it's on a coil"),
        (ELECTRONIC, "filed the points and set them", "part", "there are no points, it's a pulse coil"),
        (SPLASH, "the oil pressure gauge reads nothing", "gauge", "the dipper is straight"),
        (SPLASH, "water temperature gauge stays on cold", "gauge", "the fins are clean"),
        (PUMPED, "the boost gauge just hangs there, there's no turbo", "gauge", "oil pressure gauge reads forty"),
        (PUMPED, "the ammeter is a dummy", "gauge", "the ammeter shows ten amps"),
        (PUMPED, "the rev counter does nothing, its drive is missing", "gauge", "rev counter says nine hundred"),
        (PUMPED, "the fuel tap is on when it points across the pipe", "backwards", "the fuel tap is on"),
        (PUMPED, "the choke opens when I pull the knob to close it", "backwards", "the choke closes when it's cold"),
        (PRESS, "the isolator says off when it's on", "backwards", "the isolator is off and tagged"),
        (PRESS, "left lever works the right ram", "", "left lever works the left ram"),
        (PUMPED, "the temperature gauge climbs as it cools", "backwards", "the gauge climbs as it warms up"),
        (PUMPED, "the hand throttle is back to front", "backwards", "the throttle is free"),
    ],
)
def test_what_does_not_go_together_is_asked_about(machine: Machine, words: str, kind: str, sound: str) -> None:
    assert kinds(machine, words) == ([kind] if kind else [])
    assert kinds(machine, sound) == []


def test_what_should_be_so_or_was_once_is_not_asked_about() -> None:
    assert kinds(BATTERY, "it used to have a magneto") == []
    assert kinds(PUMPED, "the tap should close when I open the drain") == []
    assert kinds(PUMPED, "switch it off at the isolator when it's on the stand") == []


def test_one_line_is_asked_about_once() -> None:
    line = "the reversing switch goes the wrong way, forward when I push it gives reverse"
    assert kinds(PRESS, line) == ["backwards"]
