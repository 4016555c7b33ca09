"""Every kind of fact is said in one plain phrase, without a word of the data format."""

from __future__ import annotations

import pytest

from worklog_tui.model import Fact, Finding, FollowUp, Number, Reading, Span, Suspect, Trait, Value, Work
from worklog_tui.reports.sentence import amount, sentence

HERE = Span("n1", 0, 4)


def reading(
    quantity: str,
    value: Value,
    unit: str,
    subject: str = "",
    role: str = "measured",
    condition: str = "",
    doubtful: bool = False,
) -> Reading:
    return Reading(
        main=HERE,
        quantity=quantity,
        value=value,
        unit=unit,
        subject=subject,
        role=role,
        condition=condition,
        doubtful=doubtful,
    )


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        (40.0, "psi", "40 psi"),
        (0.018, "in", "0.018 in"),
        ((18, 20), "ft_lb", "18 to 20 ft lb"),
        (1.5, "turn", "1.5 turns"),
        (1, "turn", "1 turn"),
        ((6, 8), "day", "6 to 8 days"),
        (12, "percent", "12%"),
        (-7.0, "degC", "-7°C"),
        (1.265, "sg", "1.265"),
        (1500000, "ohm", "1500000 ohm"),
        ("1/4-20", "", "1/4-20"),
        (0.5, "h", "30 min"),
        (1.5, "h", "1.5 h"),
        (0.0, "psi", "0 psi"),
        (-0.0, "V", "0 V"),
    ],
)
def test_a_value_is_written_as_people_write_it(value: Value, unit: str, said: str) -> None:
    assert amount(value, unit) == said


@pytest.mark.parametrize(
    ("fact", "said"),
    [
        (reading("compression", 40, "psi", "cylinder 3", condition="dry"), "compression of cylinder 3: 40 psi, dry"),
        (reading("gap", 0.018, "in", "points", "set"), "gap of the points set to 0.018 in"),
        (
            reading("pressure", (3, 5), "psi", "lift pump", "specified"),
            "pressure of the lift pump should be 3 to 5 psi",
        ),
        (reading("gap", 0.018, "in", "points gap"), "points gap: 0.018 in"),
        (reading("torque", 12, "ft_lb", "drain plug", "set"), "drain plug tightened to 12 ft lb"),
        (reading("volume", 2, "pint", "gearbox", "set"), "gearbox: 2 pints put in"),
        (reading("turns", 1.5, "turn", "idle screw", "set"), "idle screw set to 1.5 turns"),
        (reading("duration", 1, "h", "parts washer", "planned"), "time of the parts washer, planned: 1 h"),
        (reading("voltage", 6, "V", "battery", "rated"), "voltage of the battery, nominal: 6 V"),
        (reading("thread", "M10x1.25", "", "number two plug"), "thread of number two plug: M10x1.25"),
        (reading("ratio", 8.5, "", "engine"), "ratio of the engine: 8.5 to 1"),
        (reading("compression", 1, "psi", "cylinder 2", condition="under"), "compression of cylinder 2: under 1 psi"),
        (reading("run_time", 812, "h"), "hours run: 812 h"),
        (
            reading("temperature", 60, "degC", "each bearing", doubtful=True),
            "temperature of each bearing: 60°C, doubtful",
        ),
        (Finding(main=HERE, part="fuel hose", condition="cracked", verdict="bad"), "fuel hose: cracked (a fault)"),
        (Finding(main=HERE, part="spark", condition="fat and blue", verdict="good"), "spark: fat and blue (good)"),
        (Finding(main=HERE, part="head", condition="been off before", verdict="noted"), "head: been off before"),
        (Work(main=HERE, action="clean", part="float bowl", used="a wire"), "float bowl cleaned, with a wire"),
        (Work(main=HERE, action="start", part="engine"), "engine: start tried"),
        (Work(main=HERE, action="bleed", part=""), "bled"),
        (Suspect(main=HERE, cause="weak coil"), "suspected cause: weak coil"),
        (Suspect(main=HERE, cause="weak coil", standing="ruled out"), "cause ruled out: weak coil"),
        (Suspect(main=HERE, cause="weak coil", standing="confirmed"), "cause confirmed: weak coil"),
        (FollowUp(main=HERE, topic="sump gasket", reason="part needed"), "to come back to: sump gasket, part needed"),
        (
            FollowUp(main=HERE, topic="pull the head", reason="fallback"),
            "to come back to: pull the head, if the rest does not help",
        ),
        (Trait(main=HERE, trait="earth", value="positive", source="seller"), "earth: positive (seller)"),
        (Number(main=HERE, number="A-1077", of="serial plate"), "serial plate: number A-1077"),
    ],
)
def test_each_kind_of_fact(fact: Fact, said: str) -> None:
    assert sentence(fact) == said


def test_what_was_not_said_is_marked() -> None:
    filled = ("subject", "unit")
    fact = Reading(main=HERE, quantity="compression", value=30, unit="psi", subject="cylinder 2", filled=filled)
    assert sentence(fact) == "compression of cylinder 2: 30 psi (cylinder 2, psi not said)"
    assert sentence(fact, brief=True) == "compression of cylinder 2: 30 psi (psi not said)"


def test_a_filled_in_field_without_words_leaves_no_empty_bracket() -> None:
    fact = Reading(main=HERE, quantity="density", value=1.2, unit="sg", subject="", filled=("unit", "subject"))
    assert sentence(fact) == "specific gravity: 1.2"


@pytest.mark.parametrize(
    ("fact", "said"),
    [
        (reading("length", 30, "mm", "belt tension"), "belt tension: 30 mm"),
        (reading("gap", 0.015, "in", "tappet clearance"), "tappet clearance: 0.015 in"),
        (reading("length", 30, "mm", "drive belt"), "length of the drive belt: 30 mm"),
    ],
)
def test_a_thing_that_says_what_was_measured_is_not_told_it_twice(fact: Reading, said: str) -> None:
    assert sentence(fact) == said
