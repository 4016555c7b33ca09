"""The readings: as they were said, in metric units or in inch units, with the key that goes from one to the next."""

from __future__ import annotations

import pytest
from textual.app import App, ComposeResult

from worklog_tui.logbook.outcomes import Limits, Point, Series
from worklog_tui.model import Place, Reading, Span
from worklog_tui.widgets.readings import Readings


def taken(value: float, unit: str, quantity: str = "compression", subject: str = "cylinder 1") -> Series:
    reading = Reading(main=Span("n1", 0, 3), quantity=quantity, value=value, unit=unit, subject=subject)
    return Series(quantity, subject, (Point(reading, Place(1, "n1", "14:05"), "low"),), limits=None)


class Shown(App[None]):
    def compose(self) -> ComposeResult:
        yield Readings()


def words(app: App[None]) -> str:
    return "\n".join(row.words for row in app.query_one(Readings).rows)


async def test_the_key_goes_from_as_said_to_metric_to_inch_and_back() -> None:
    app = Shown()
    async with app.run_test() as pilot:
        app.query_one(Readings).show_series([taken(90.0, "psi"), taken(0.5, "mm", "gap", "points")])
        app.query_one(Readings).focus()
        said = ("90 psi", "0.5 mm")
        for told in (said, ("in metric units", "6.21 bar", "0.5 mm"), ("in inch units", "90 psi", "0.0197 in"), said):
            assert [what for what in told if what not in words(app)] == []
            assert ("Told in" in words(app)) == (told != said)
            await pilot.press("i")


async def test_the_row_pointed_at_stays_the_one_that_it_was() -> None:
    app = Shown()
    async with app.run_test() as pilot:
        readings = app.query_one(Readings)
        readings.show_series([taken(90.0, "psi"), taken(0.5, "mm", "gap", "points")])
        readings.focus()
        await pilot.press("end")
        for _ in range(4):
            assert readings.row is not None
            assert "0.5 mm" in readings.row.words or "0.0197 in" in readings.row.words
            await pilot.press("i")


async def test_what_it_should_be_goes_with_them_and_the_bars_stay() -> None:
    app = Shown()
    async with app.run_test() as pilot:
        one = taken(90.0, "psi")
        limits = Limits(100.0, 130.0, "psi", "100 to 130 psi")
        app.query_one(Readings).show_series([Series(one.quantity, one.subject, one.points, limits)])
        app.query_one(Readings).focus()
        before = words(app)
        await pilot.press("i")
        assert "should be 6.89 to 8.96 bar" in words(app)
        assert before.count("█") == words(app).count("█") > 0


@pytest.mark.parametrize("unit", ["h", ""])
async def test_what_has_no_other_units_stays_as_it_was_said(unit: str) -> None:
    app = Shown()
    async with app.run_test() as pilot:
        app.query_one(Readings).show_series([taken(12.0, unit, "duration", "soak")])
        app.query_one(Readings).focus()
        said = words(app)
        await pilot.press("i")
        assert words(app).split("\n", 1)[1] == said
