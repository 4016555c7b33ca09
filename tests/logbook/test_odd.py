"""Each rule of what does not add up fires on a small log, and is silent on the sound one beside it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.logbook.told import BLOWER, Told, bad, did, good, read
from worklog_tui import places
from worklog_tui.logbook.odd import odd
from worklog_tui.model import Machine, SpecifiedValue, Trait
from worklog_tui.model.facts import BY_HAND, Span
from worklog_tui.rulebook.faults import load_faults

DIESEL = replace(BLOWER, fuel="diesel", cylinders=3)
PRESS = Machine("Press", kind="hand press", fuel="none")
RECEIVER = Machine("Receiver", kind="two-stage air compressor", fuel="none")
FOREIGN = {
    "diesel": ["spark plug", "carburettor"], "no_engine": ["spark plug", "contact breaker points", "head gasket"],
}  # fmt: skip
GAPS = {"gap": {"mm": (0.0, 8.0)}}
CARD = (
    SpecifiedValue("gap", "points_gap", "0.4 mm", nominal=0.4, unit="mm"),
    SpecifiedValue("pressure", "cut_in", "135 psi", nominal=135, unit="psi"),
    SpecifiedValue("compression", "compression", "400 psi, wear limit 350 psi", nominal=400, unit="psi"),
    SpecifiedValue("resistance", "coil_secondary", "3 kohm", nominal=3, unit="kohm"),
    SpecifiedValue("resistance", "charge_coil", "500 ohm", nominal=500, unit="ohm"),
)


def trait(value: str) -> Trait:
    return Trait(main=Span("", 0, 0), trait="throttle", value=value)


def carded() -> Told:
    return Told(replace(BLOWER, specified=CARD))


def book(quantity: str, value: float, unit: str, subject: str) -> Told:
    return carded().say("the book says", read(quantity, value, unit, subject, role="specified"))


CASES: dict[str, tuple[Told, Told]] = {
    "figures": (
        Told().say("", read("gap", 0.3, "mm", "points")).say("", read("gap", 0.6, "mm", "points")),
        Told().say("", read("gap", 0.3, "mm", "points")).say("", did("adjust", "points"))
        .say("", read("gap", 0.6, "mm", "points")),
    ),
    "findings": (
        Told().say("", good("seal", "no leak", "seal")).say("", bad("seal", "leaks", "seal")),
        Told().say("", good("seal", "no leak", "seal")).session().say("", bad("seal", "leaks", "seal")),
    ),
    "book": (book("gap", 0.9, "mm", "points"), book("gap", 0.4, "mm", "points")),
    "traits": (
        Told().say("", trait("push to open")).say("", trait("pull to open")),
        Told().say("", trait("push to open")).say("", trait("Push to open")),
    ),
    "cylinder": (Told(DIESEL).say("", bad("cylinder 4", "low")), Told(DIESEL).say("", bad("cylinder 3", "low"))),
    "part": (
        Told(DIESEL).say("spark plug is black", bad("spark plug", "black", "spark plug")),
        Told(DIESEL).say("drain plug weeps", bad("drain plug", "weeps", "drain plug")),
    ),
    "beyond": (
        Told().say("", read("gap", 18.0, "mm", "points")),
        Told().say("", read("gap", 11.0, "mm", "points")),
    ),
    "backwards": (
        Told().say("the throttle lever works the wrong way round, down is fast"),
        Told().say("the throttle lever works the wrong way round").say("turned it round, down is slow now"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("kind", CASES)
def test_a_rule_fires_on_what_is_odd_and_is_silent_on_what_is_sound(kind: str) -> None:
    wrong, sound = CASES[kind]
    (one,) = odd(wrong.history(), FOREIGN, GAPS)
    assert one.kind == kind
    assert one.says
    assert len(one.told) == len(one.places) > 0
    assert odd(sound.history(), FOREIGN, GAPS) == ()


@pytest.mark.parametrize(
    "told",
    [
        pytest.param(book("pressure", 45, "psi", "intercooler"), id="a value of the card is for its own thing only"),
        pytest.param(book("compression", 350, "psi", "all cylinders"), id="the card's wear limit is the card's too"),
        pytest.param(book("resistance", 500, "ohm", "charge coil"), id="of two coils the one that was said"),
        pytest.param(Told(PRESS).say("points of the switch", did("clean", "points", name="contact breaker points")),
                     id="a pressure switch has points"),
        pytest.param(Told(PRESS).say("plug out", did("remove", "plug", name="spark plug")), id="any plug is a plug"),
        pytest.param(Told(RECEIVER).say("head gasket blown", bad("head gasket", "blown", "head gasket")),
                     id="a compressor has a head"),
        pytest.param(Told().say("", read("gap", 18.0, "mm", "points", role="planned")), id="nothing was measured"),
    ],
)  # fmt: skip
def test_what_is_sound_is_not_asked_about(told: Told) -> None:
    assert odd(told.history(), FOREIGN, GAPS) == ()


def test_what_a_person_corrected_is_believed() -> None:
    reading = replace(read("gap", 18.0, "mm", "points"), rule=BY_HAND)
    assert odd(Told().say("", reading).history(), FOREIGN, GAPS) == ()


@pytest.mark.parametrize(
    ("machine", "part", "says"),
    [
        (replace(BLOWER, ignition="magneto"), "ballast resistor", "on magneto ignition"),
        (replace(BLOWER, ignition="battery"), "impulse coupling", "on battery ignition"),
        (replace(BLOWER, ignition="electronic"), "contact breaker points", "on electronic ignition"),
        (replace(BLOWER, kind="two-stroke strimmer"), "oil pressure gauge", "on a two-stroke"),
        (replace(BLOWER, kind="air-cooled single"), "thermostat", "on an air-cooled engine"),
    ],
)
def test_a_part_of_the_wrong_kind_for_this_ignition_or_engine_is_asked_about(
    machine: Machine, part: str, says: str
) -> None:
    shipped = load_faults([places.grammars()]).words["foreign"]
    (one,) = odd(Told(machine).say(f"the {part} is bad", bad(part, "bad", part)).history(), shipped)
    assert says in one.says
    assert "the wrong kind" in one.says
