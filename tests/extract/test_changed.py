"""From one figure to another: an arrow, or `was` and `now`: the first was found, the second is what a hand set."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Fact, Finding, Machine, Note, Reading, Suspect, Work
from worklog_tui.rulebook import Rulebook

SAW = Machine("Band saw", kind="single-cylinder petrol engine", fuel="petrol", cylinders=1)


def facts(book: Rulebook, *said: str) -> list[Fact]:
    notes = [Note(f"n{k}", "s", words, track="typed", arrival=k) for k, words in enumerate(said)]
    return [f for f in read_session(book, SAW, notes) if f.confidence >= CONFIDENCE_LINE]


def roles(found: list[Fact]) -> list[tuple[object, str]]:
    return [(f.value, f.role) for f in found if isinstance(f, Reading)]


@pytest.mark.parametrize(
    "line",
    [
        "pts .011 -> .016",
        "pts gap .011, now .016",
        "pts gap was .011, now .016",
        "pts gap .011 was, now .016",
        "pts .011 => .016",
    ],
)
def test_a_gap_was_found_so_and_was_set_so(book: Rulebook, line: str) -> None:
    found = facts(book, line)
    assert roles(found) == [(0.011, "measured"), (0.016, "set")]
    assert [f.action for f in found if isinstance(f, Work)] == ["adjust"]


@pytest.mark.parametrize(
    "line", ['drive chain sag 1.5" -> 1/2"', "belt deflect 30mm -> 12", "tyre 11 psi -> 24", "idle 1300 -> 900"]
)
def test_so_is_what_a_hand_alters_of_a_length_a_speed_or_a_pressure(book: Rulebook, line: str) -> None:
    assert [role for _, role in roles(facts(book, line))] == ["measured", "set"]


@pytest.mark.parametrize(
    "line",
    ["earth cable drops 0.7V -> 0.1 w/ lug cleaned", "drum 4.1mm -> 3.6mm worn", "insul 0.3M -> 2.1M after baking"],
)
def test_what_no_hand_alters_was_measured_twice(book: Rulebook, line: str) -> None:
    assert [role for _, role in roles(facts(book, line))] == ["measured", "measured"]


def test_the_head_of_an_arrow_is_not_over(book: Rulebook) -> None:
    first, second = [f for f in facts(book, "chain slack 40mm -> 15mm") if isinstance(f, Reading)]
    assert (first.condition, second.condition) == ("", "")


def test_how_it_was_taken_is_of_the_figure_it_stands_behind(book: Rulebook) -> None:
    found = [f for f in facts(book, "insul 0.4M -> 2.2M after drying") if isinstance(f, Reading)]
    assert [f.condition for f in found] == ["", "after drying"]
    found = [f for f in facts(book, "comp 52 cold, 81 w/ oil") if isinstance(f, Reading)]
    assert [f.condition for f in found][:1] == ["cold"]


def test_an_arrow_leads_to_what_is_needed_and_names_no_cause(book: Rulebook) -> None:
    found = facts(book, "clutch cable frayed -> new cable needed")
    assert [f for f in found if isinstance(f, Suspect)] == []
    assert [f.condition for f in found if isinstance(f, Finding)] == ["frayed"]
