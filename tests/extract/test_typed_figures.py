"""Figures of typed shorthand: what wear comes to, cycles a second, a cell by its number; what only counts."""

from __future__ import annotations

import pytest

from worklog_tui.extract.reader import CONFIDENCE_LINE, read_session
from worklog_tui.model import Fact, Finding, FollowUp, Machine, Note, Reading, Work
from worklog_tui.rulebook import Rulebook

SET = Machine("Bakery set", kind="two-cylinder diesel generator set", fuel="diesel", cylinders=2)


def facts(book: Rulebook, *said: str) -> list[Fact]:
    notes = [Note(f"n{k}", "s", words, track="typed", arrival=k) for k, words in enumerate(said)]
    return [f for f in read_session(book, SET, notes) if f.confidence >= CONFIDENCE_LINE]


def figures(book: Rulebook, *said: str) -> list[tuple[str, object, str]]:
    return [(f.quantity, f.value, f.unit) for f in facts(book, *said) if isinstance(f, Reading)]


@pytest.mark.parametrize(
    "line", ["link pin worn .022", "step .022 in the seat", "lip .022 on the drum", "rocker shaft grooved .022"]
)
def test_what_wear_comes_to_is_in_inches_whatever_was_tested_before(book: Rulebook, line: str) -> None:
    assert figures(book, "batt 12.4 V", line)[1:] == [("length", 0.022, "in")]


def test_where_millimetres_are_measured_it_is_left_to_them(book: Rulebook) -> None:
    assert figures(book, "shaft 24.96 mm", "bush 25.08 mm", "bush worn .120")[2:] != [("length", 0.12, "in")]


def test_a_frequency_is_told_in_hertz(book: Rulebook) -> None:
    assert figures(book, "freq 48.5 no load, 46 loaded") == [("speed", 48.5, "Hz"), ("speed", 46, "Hz")]


def test_the_number_of_a_cell_is_no_density(book: Rulebook) -> None:
    first = [f for f in facts(book, "cell 5 SG 1.11") if isinstance(f, Reading)]
    assert [(f.subject, f.value) for f in first] == [("cell 5", 1.11)]


def test_so_many_turns_out_is_how_a_jet_is_set(book: Rulebook) -> None:
    found = facts(book, "slow jet 2.5 turns out")
    assert [f for f in found if isinstance(f, Finding)] == []
    assert [(f.value, f.unit) for f in found if isinstance(f, Reading)] == [(2.5, "turn")]


def test_all_of_them_are_counted(book: Rulebook) -> None:
    assert figures(book, "batt 24.9 V", "electrolyte low all 6") == [("voltage", 24.9, "V")]


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("awaiting: gaskets, injector", "part needed"),
        ("parts reqd: gaskets, injector", "part needed"),
        ("tbd: gaskets, injector", "to do"),
    ],
)
def test_a_heading_opens_a_list(book: Rulebook, line: str, reason: str) -> None:
    assert [(f.about, f.reason) for f in facts(book, line) if isinstance(f, FollowUp)] == [
        ("gaskets", reason), ("injector", reason),
    ]  # fmt: skip


def test_two_figures_with_a_stroke_are_two_and_a_fraction_is_one(book: Rulebook) -> None:
    found = [f.value for f in facts(book, "comps 118/104 psi", "gasket 3/32 in thick") if isinstance(f, Reading)]
    assert found == [118, 104, 0.09375]


def test_turns_of_packing_are_wound_and_nothing_is_screwed(book: Rulebook) -> None:
    assert figures(book, "pump gland, 4 turns of new flax packing") == []


def test_strokes_a_minute_are_no_minimum(book: Rulebook) -> None:
    found = [f for f in facts(book, "steam 75 psi, 30 strokes/min") if isinstance(f, Reading)]
    assert [(f.value, f.role) for f in found] == [(75, "measured")]


def test_a_spec_that_was_told_with_its_figure_is_not_looked_up(book: Rulebook) -> None:
    found = [f for f in facts(book, "ring gap .040, spec .012", "sleeve grooved .5mm") if isinstance(f, Reading)]
    assert found[-1].role == "measured"


def test_what_is_taken_otherwise_behind_the_book_was_read_off(book: Rulebook) -> None:
    found = [f for f in facts(book, "idle 980 shd be 700, wot 3900") if isinstance(f, Reading)]
    assert [f.role for f in found] == ["measured", "specified", "measured"]


@pytest.mark.parametrize("said", ["tied back w/ wire", "wired out", "taped down", "cable tied open"])
def test_how_a_safety_device_was_put_out_of_action_is_found_and_not_done(book: Rulebook, said: str) -> None:
    found = facts(book, f"stop lever {said}")
    assert [(f.part, f.verdict) for f in found if isinstance(f, Finding)] == [("stop lever", "bad")]
    assert [f for f in found if isinstance(f, Work)] == []


def test_a_list_begins_with_what_is_not_known_by_name(book: Rulebook) -> None:
    found = [f.about for f in facts(book, "list: splash thing, gasket, injector") if isinstance(f, FollowUp)]
    assert found == ["gasket", "injector"]


@pytest.mark.parametrize("line", ["warmed the hub to 110c", "baked windings at 95c 4 hrs", "heated housing to 120c"])
def test_to_what_a_part_is_heated_is_set(book: Rulebook, line: str) -> None:
    found = [f for f in facts(book, line) if isinstance(f, Reading) and f.quantity == "temperature"]
    assert [f.role for f in found] == ["set"]


def test_what_warms_up_by_itself_is_measured(book: Rulebook) -> None:
    found = [f for f in facts(book, "block warmed up to 85c") if isinstance(f, Reading)]
    assert [f.role for f in found] == ["measured"]


@pytest.mark.parametrize(
    ("line", "about"),
    [
        ("fan guard missing, must fit", "fan guard"),
        ("injector n/g, order set", "injector"),
        ("tappet clearances tbd", "tappet clearances"),
    ],
)
def test_a_bare_duty_is_of_what_was_just_said(book: Rulebook, line: str, about: str) -> None:
    assert [f.about for f in facts(book, line) if isinstance(f, FollowUp)] == [about]


def test_what_one_of_a_pair_is_for_the_other_is_for(book: Rulebook) -> None:
    found = [f for f in facts(book, "freq 53 no load, want 52/50") if isinstance(f, Reading)]
    assert [f.role for f in found] == ["measured", "specified", "specified"]


def test_three_figures_behind_a_point_are_of_an_inch_for_a_gap_too(book: Rulebook) -> None:
    assert figures(book, "end float .042 -> .014") == [("gap", 0.042, "in"), ("gap", 0.014, "in")]
