"""A figure that is borrowed says so wherever it is used: an ice-cream van's generator, its points by another's book."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Callable

import pytest

from tests.logbook.told import Told, bad, read
from tests.reports.published import faults, published
from worklog_tui.diagnosis import advise
from worklog_tui.logbook.compressions import compression_tests
from worklog_tui.logbook.open_items import open_items
from worklog_tui.logbook.outcomes import own_source
from worklog_tui.logbook.readings import readings
from worklog_tui.logbook.timeline import timeline
from worklog_tui.model import History, Machine, Reading, Span, SpecifiedValue
from worklog_tui.reports.csv_tables import csv_table
from worklog_tui.reports.json_log import readings as readings_json
from worklog_tui.reports.json_out import facts
from worklog_tui.reports.json_repair_log import json_repair_log
from worklog_tui.reports.markdown_log import markdown_log
from worklog_tui.reports.page import repair_log_page
from worklog_tui.reports.plain_compression import compression_text
from worklog_tui.reports.plain_items import items_text
from worklog_tui.reports.plain_readings import readings_text
from worklog_tui.reports.plain_timeline import timeline_text
from worklog_tui.screens.as_text import rows_text
from worklog_tui.widgets.readings import Readings

WHOSE = "handbook of a similar machine"
CARD = Machine(
    "Generator", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto", cylinders=1,
    specified=(
        SpecifiedValue("gap", "points_gap", "0.015 in", nominal=0.015, unit="in", source=WHOSE),
        SpecifiedValue("compression", "compression", "110 psi", nominal=110.0, unit="psi", source=WHOSE),
    ),
)  # fmt: skip


def by_card(card: Machine = CARD) -> History:
    """The points and the compression are measured, the card says what they should be."""
    told = Told(card).say("it will not start", bad("engine", "won't start", "engine"))
    points = Reading(main=Span("", 0, 0), quantity="gap", value=0.022, unit="in", subject="points", name="points")
    told.say("points are twenty-two", points)
    return told.say("and it makes sixty", read("compression", 60.0, "psi", "cylinder 1")).history()


def by_talk() -> History:
    """The talk says what the points should be."""
    wanted = Reading(main=Span("", 0, 0), quantity="gap", value=0.015, unit="in", subject="points", name="points",
                     role="specified", source=WHOSE)  # fmt: skip
    told = Told(Machine("Generator", kind="single-cylinder petrol engine", fuel="petrol", ignition="magneto"))
    told.say("the later model's book has fifteen", wanted)
    found = Reading(main=Span("", 0, 0), quantity="gap", value=0.022, unit="in", subject="points", name="points")
    return told.say("points are twenty-two", found).history()


def _recorder(known: History) -> str:
    rows = Readings()
    rows.show_series(readings(known))
    return rows_text(rows.rows, "", 200)


def _evidence(known: History) -> str:
    found = advise(known, open_items(known), faults(), None)
    return " ".join(one.words for cause in found.causes for one in cause.evidence) + " ".join(
        one.words for system in found.systems for one in system.evidence
    )


PLACES: dict[str, Callable[[History], str]] = {
    "readings": lambda known: readings_text(readings(known), 60),
    "readings as data": lambda known: json.dumps(readings_json(readings(known))),
    "readings of the recorder": _recorder,
    "open items": lambda known: items_text(open_items(known), 200, known),
    "page": lambda known: repair_log_page(published(known).log(), ""),
    "markdown": lambda known: markdown_log(published(known).log(), ""),
    "data of the report": lambda known: json.dumps(json_repair_log(published(known).log())),
    "table of the report": lambda known: csv_table(published(known).log(), "readings"),
}
ONLY_CARD: dict[str, Callable[[History], str]] = {
    "compression": lambda known: compression_text(compression_tests(known), (), None, 200),
    "what speaks for a cause": _evidence,
}
ONLY_TALK: dict[str, Callable[[History], str]] = {
    "timeline": lambda known: timeline_text(timeline(known), 200),
    "facts as data": lambda known: json.dumps(facts(known)),
}


def plain(text: str) -> str:
    return " ".join(html.unescape(re.sub("<[^>]+>", " ", text)).split())


@pytest.mark.parametrize("place", [*PLACES, *ONLY_CARD])
def test_a_figure_of_the_card_that_is_borrowed_says_so(place: str) -> None:
    assert WHOSE in plain({**PLACES, **ONLY_CARD}[place](by_card()))


@pytest.mark.parametrize("place", [*PLACES, *ONLY_TALK])
def test_a_figure_of_the_talk_that_is_borrowed_says_so(place: str) -> None:
    assert WHOSE in plain({**PLACES, **ONLY_TALK}[place](by_talk()))


def test_the_machines_own_figure_says_nothing_of_it() -> None:
    own = [SpecifiedValue(v.quantity, v.subject, v.text, nominal=v.nominal, unit=v.unit, source="own handbook")
           for v in CARD.specified]  # fmt: skip
    known = by_card(Machine("Generator", kind=CARD.kind, fuel="petrol", ignition="magneto", specified=tuple(own)))
    assert "own handbook" not in readings_text(readings(known), 60)


@pytest.mark.parametrize(
    ("source", "own"),
    [
        ("", True), ("plate", True), ("own handbook", True), ("its own book", True), ("the manual", True),
        ("handbook of a similar machine", False), ("a guess", False), ("memory", False), ("old Dennis", False),
    ],
)  # fmt: skip
def test_whose_figure_is_the_machines_own(source: str, own: bool) -> None:
    assert own_source(source) is own
