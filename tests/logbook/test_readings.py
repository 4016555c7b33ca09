"""Readings over time, laid beside what they should be."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.logbook.told import BLOWER, Told, did, good, read
from worklog_tui.logbook.amounts import bounds_in, converted
from worklog_tui.logbook.limits import Judge
from worklog_tui.logbook.open_items import open_items
from worklog_tui.logbook.readings import readings, side_by_side
from worklog_tui.model import Reading, SpecifiedValue

COMPRESSION = SpecifiedValue("compression", "compression", "90 psi minimum", low=90, unit="psi")


def test_a_series_goes_over_the_sessions() -> None:
    told = Told().say("sixty", read("compression", 60, "psi", "cylinder 1")).session()
    told.say("ninety now", read("compression", 95, "psi", "number one cylinder"))
    (one,) = readings(told.history())
    assert [p.reading.value for p in one.points] == [60, 95]
    assert [p.place.session for p in one.points] == [1, 2]


def test_the_card_says_what_is_too_low() -> None:
    told = Told(replace(BLOWER, specified=(COMPRESSION,)))
    told.say("", read("compression", 60, "psi", "cylinder 1")).say("", read("compression", 6.9, "bar", "cylinder 2"))
    low, good = readings(told.history())
    assert (low.last.verdict, good.last.verdict) == ("low", "good")


def test_what_only_topped_it_up_is_laid_beside_nothing() -> None:
    holds = SpecifiedValue("volume", "oil", "9 litres", nominal=9, unit="L")
    told = Told(replace(BLOWER, specified=(holds,))).say("", read("volume", 0.5, "L", "oil", "set"))
    told.session().say("", read("volume", 9.2, "L", "oil", "set"))
    judge = Judge(told.history())
    topped_up, filled = (f for f in told.history().facts() if isinstance(f, Reading))
    assert (judge.compares(topped_up), judge.compares(filled)) == ("", "good")


def test_what_is_said_of_the_book_counts_where_the_card_is_silent() -> None:
    told = Told().say("", read("gap", 0.035, "in", "plug"), read("gap", (0.020, 0.025), "in", "plug", "specified"))
    (one,) = readings(told.history())
    assert one.last.verdict == "high"
    assert one.limits is not None
    assert (one.limits.low, one.limits.high) == (0.020, 0.025)


def test_a_wear_limit_of_a_compression_is_the_least_that_it_may_be() -> None:
    told = Told().say("", read("compression", 300, "psi", "cylinder 1"))
    told.say("", read("compression", 350, "psi", "all cylinders", "specified", "wear limit"))
    assert readings(told.history())[0].last.verdict == "low"


def test_planned_and_rated_amounts_are_no_readings_of_the_machine() -> None:
    told = Told().say("", read("voltage", 12, "V", "battery", "rated"), read("duration", 1, "h", "glue", "planned"))
    assert readings(told.history()) == ()


def test_cylinders_stand_side_by_side() -> None:
    told = Told().say("", *(read("compression", 90 + n, "psi", f"cylinder {n}") for n in (1, 2, 3)))
    told.say("", read("gap", 0.5, "mm", "points"))
    assert [len(group) for group in side_by_side(readings(told.history()))] == [3, 1]


@pytest.mark.parametrize(
    ("value", "unit", "into", "expected"),
    [
        (1, "in", "mm", 25.4),
        (1, "bar", "psi", 14.503774),
        (100, "ft_lb", "N*m", 135.581795),
        (212, "degF", "degC", 100),
        (-40, "degC", "degF", -40),
        (2, "kohm", "ohm", 2000),
    ],
)
def test_conversions_against_nist_sp_811(value: float, unit: str, into: str, expected: float) -> None:
    """NIST Special Publication 811 (2008), appendix B.8: psi 6.894757 kPa, ft lbf 1.355818 N m."""
    found = converted(value, unit, into)
    assert found == pytest.approx(expected, rel=1e-6)


def test_units_of_two_kinds_do_not_compare() -> None:
    assert converted(1, "psi", "mm") is None
    assert bounds_in("1/4-20", "", "mm") is None


def test_our_factors_are_those_of_pint() -> None:
    pint = pytest.importorskip("pint")
    registry = pint.UnitRegistry()
    torques = {"N*m": "newton*meter", "ft_lb": "foot*force_pound", "in_lb": "inch*force_pound"}
    names = torques | {"in": "inch"}
    pairs = "psi bar, psi kPa, in mm, in um, ft m, ft_lb N*m, in_lb ft_lb, lb kg, h min, day s, ml L"
    for unit, into in (pair.split() for pair in pairs.split(", ")):
        expected = registry.Quantity(1, names.get(unit, unit)).to(names.get(into, into)).magnitude
        assert converted(1, unit, into) == pytest.approx(expected, rel=1e-9)


def test_the_gap_of_the_clutch_and_the_clutch_gap_are_one() -> None:
    told = Told().say("", read("gap", 0.9, "mm", "Clutch gap")).say("", read("gap", 0.4, "mm", "clutch", role="set"))
    (one,) = readings(told.history())
    assert (one.subject, [point.reading.value for point in one.points]) == ("clutch", [0.9, 0.4])


def test_what_is_taken_after_oil_in_the_bore_is_wet_and_not_laid_beside_the_card() -> None:
    told = Told(replace(BLOWER, specified=(COMPRESSION,))).say("", read("compression", 60, "psi", "cylinder 1"))
    told.say("squirt of oil in the bore", did("lubricate", "bore", "oil"))
    told.say("", read("compression", 95, "psi", "cylinder 1"))
    (one,) = readings(told.history())
    assert [(p.reading.value, p.reading.condition, p.verdict) for p in one.points] == [(60, "", "low"), (95, "wet", "")]
    assert one.last.verdict == "low", "oil in the bore mends nothing"


def test_a_figure_with_oil_in_the_bore_closes_nothing() -> None:
    told = Told(replace(BLOWER, specified=(COMPRESSION,))).say("", read("compression", 60, "psi", "cylinder 1"))
    told.say("squirt of oil in the bore", did("lubricate", "bore", "oil"))
    told.say("", read("compression", 95, "psi", "cylinder 1"))
    (item,) = open_items(told.history())
    assert item.closed is None
    ran = told.say("runs", good("engine", "runs", "engine")).say("", read("compression", 96, "psi", "cylinder 1"))
    assert open_items(ran.history())[0].closed is not None, "what is taken after it has run is dry"
