"""Quantities in the sayings of many shops: kilns, projectors, organs, shearing plant, lifts."""

from __future__ import annotations

import pytest

from worklog_tui import places
from worklog_tui.extract import read_session
from worklog_tui.model import Machine, Note, Reading
from worklog_tui.rulebook import load

BOOK = load([places.grammars()], places.cache())
BENCH = Machine("Bench", kind="workshop machine")

SAID: dict[str, tuple[str, tuple[float, str]]] = {
    "tenths of a volt behind the volts": ("twelve volts six at the lamp", (12.6, "V")),
    "the unit of alternating current, glued on": ("240VAC at the socket", (240.0, "V")),
    "a couple is two": ("there's a couple of thou of wear", (0.002, "in")),
    "a bit over": ("the motor takes six and a bit amps", (6.0, "A")),
    "the letter in the place of the point": ("exciter lamp coil 3k3", (3.3, "kohm")),
    "the same of a capacitor": ("motor capacitor is 4u7", (4.7, "uF")),
    "a mike is a microfarad": ("start capacitor measured eight mike", (8.0, "uF")),
    "half a hundredweight": ("the lift's counterweight is half a hundredweight", (56.0, "lb")),
    "stones": ("rail carries six stone of dough", (84.0, "lb")),
    "tenths of a thou, though a part was named": ("runout on the chuck is two tenths", (0.0002, "in")),
    "miked, three figures behind the point": ("journal mikes at one point two four nine", (1.249, "in")),
    "across the flats": ("that nut's eleven sixteenths across the flats", (0.6875, "in")),
    "a thirty-second proud is no time": ("sprocket key's a full thirty-second proud", (0.03125, "in")),
    "water that lies, no draught": ("half an inch of water in the sump", (0.5, "in")),
    "a draught, wherever it is": ("the blower holds four inches of water in the trunk", (4.0, "inH2O")),
    "a slow wheel turns at its number": ("the flywheel turns at about two fifty", (250.0, "rpm")),
    "one thirty behind a possessive": ("compression's one thirty dry", (130.0, "psi")),
}  # fmt: skip


@pytest.mark.parametrize(("words", "meant"), SAID.values(), ids=SAID.keys())
def test_a_quantity_is_read_as_it_is_said(words: str, meant: tuple[float, str]) -> None:
    facts = read_session(BOOK, BENCH, [Note("n", "s", words, track="captions", arrival=0)])
    readings = [f for f in facts if isinstance(f, Reading)]
    assert [f.unit for f in readings] == [meant[1]]
    assert readings[0].value == pytest.approx(meant[0], rel=1e-3)


@pytest.mark.parametrize("words", ["stop at the third stone", "the tenth hole's the far one", "the 3k run was nice"])
def test_no_quantity_where_none_is_said(words: str) -> None:
    facts = read_session(BOOK, BENCH, [Note("n", "s", words, track="captions", arrival=0)])
    assert not [f for f in facts if isinstance(f, Reading)]
