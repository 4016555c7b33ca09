"""Talk run together, without a stop: where a clause begins, and what `it` is in the third clause of a line."""

from __future__ import annotations

import pytest

from worklog_tui.extract import CONFIDENCE_LINE, read_session
from worklog_tui.model import Finding, Machine, Note, Reading, Work
from worklog_tui.rulebook import Rulebook

CRANE = Machine("Wharf crane", kind="electric crane, three-phase motor", fuel="none")


def facts(book: Rulebook, *lines: str) -> list[tuple[str, str, str]]:
    """(kind, what, of what) of all that was surely told."""
    notes = [Note(f"n{i}", "s", line, track="captions") for i, line in enumerate(lines)]
    said = [f for f in read_session(book, CRANE, notes) if f.confidence >= CONFIDENCE_LINE]
    return [
        ("work", f.action, f.part) if isinstance(f, Work)
        else ("finding", f.verdict, f.part) if isinstance(f, Finding)
        else ("reading", f.quantity, f.subject) if isinstance(f, Reading) else ("", "", "")
        for f in said
    ]  # fmt: skip


def test_a_thing_with_its_verb_begins_a_clause(book: Rulebook) -> None:
    """What is told of the next thing is not of the one before, nor its figure."""
    told = facts(book, "main winding I tried first and it's four ohms start winding is nearly nine")
    assert ("reading", "resistance", "main winding") in told
    told = facts(book, "brake lever's loose the rod has come off the arm so I pinned it")
    assert ("finding", "bad", "rod") in told
    assert ("work", "repair", "brake lever") not in told


@pytest.mark.parametrize(
    ("line", "done"),
    [
        ("drain plug weeps but that's just old putty I scraped it", ("work", "clean", "drain plug")),
        ("the hoist limit switch is filthy but it clicks I cleaned it", ("work", "clean", "hoist limit switch")),
        ("slip rings were black and caked it's no wonder I scrubbed them", ("work", "clean", "slip rings")),
    ],
)  # fmt: skip
def test_it_is_what_the_line_is_about_however_many_clauses_ago(
    book: Rulebook, line: str, done: tuple[str, str, str]
) -> None:
    assert done in facts(book, "now the rope drum that's fine there's no wear on the flange", line)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("the brake solenoid's not only noisy", [("finding", "bad", "brake solenoid")]),
        ("no hum no nothing the brake motor's doing its job", [("finding", "good", "brake motor")]),
        ("that's just the oil off my rag", []),
        ("I'm an hour into this and my arm's dropping off", []),
        ("no roller that size so it's going on the list", []),
        ("the gland has a drip and it'll probably rust itself shut", [("finding", "bad", "gland")]),
        ("that's the winch apart from the paint", []),
    ],
)
def test_what_is_not_meant_so(book: Rulebook, line: str, told: list[tuple[str, str, str]]) -> None:
    """`Not only`, what a `no` ends, parts of a person, where a thing is put down, what will be."""
    assert [f for f in facts(book, line) if f[0] in ("finding", "work")] == told


def test_a_deed_told_behind_another_is_no_state_of_what_it_was_done_to(book: Rulebook) -> None:
    told = facts(book, "the limit switch cable's come off so I hooked it back on and bent the clip over")
    assert [f for f in told if f[0] == "finding"] == [("finding", "bad", "limit switch cable")]


def test_where_it_was_taken_is_no_adjusting(book: Rulebook) -> None:
    told = facts(book, "the slewing motor is back in", "took it down the quay")
    assert not [f for f in told if f[1] == "adjust"]


def test_a_thing_named_ahead_is_what_is_told_of(book: Rulebook) -> None:
    told = facts(book, "the slewing bearing is noisy", "now the gearbox there's a knock when you push it sideways")
    assert ("finding", "bad", "gearbox") in told


def test_what_a_clause_tells_of_is_remembered_though_its_word_is_often_no_part(book: Rulebook) -> None:
    told = facts(
        book,
        "hoist brake squeals and the drum is off and the lever's stiff from the pin",
        "the linings are thick enough mind there's three mil on them",
        "I scrubbed them",
    )
    assert ("work", "clean", "linings") in told


def test_an_object_that_nobody_knows_is_not_what_was_named_before(book: Rulebook) -> None:
    told = facts(book, "the brake drum's fine I filed the whatsit it was sharp")
    assert not [f for f in told if f[0] == "work" and f[2] == "brake drum"]


def test_a_plan_ends_where_the_next_thing_is_told_of(book: Rulebook) -> None:
    told = facts(book, "hook bearing rumbles I'll do that in the winter", "and the jib pulley's cracked in the groove")
    assert ("finding", "bad", "jib pulley") in told


@pytest.mark.parametrize(
    "line",
    [
        "the hoist brake's noisy and somebody dropped this crane off",
        "the fuel pipe is clear and I blew down it",
        "the washer's brass and I plugged it in",
        "oil was low and I dropped the spanner down the drain",
    ],
)
def test_words_of_work_that_tell_of_none(book: Rulebook, line: str) -> None:
    assert not [f for f in facts(book, line) if f[0] == "work"]


def test_how_far_it_was_turned_round_is_no_heat(book: Rulebook) -> None:
    assert not [f for f in facts(book, "the bush I turned round ninety degrees") if f[1] == "temperature"]


def test_slack_is_found_and_not_set(book: Rulebook) -> None:
    told = facts(book, "the slewing worm has backlash half a turn of it")
    assert ("reading", "turns", "worm") in told
    assert not [f for f in told if f[1] == "adjust"]


@pytest.mark.parametrize(
    ("line", "never"),
    [
        ("the pins look odd they're not broken they've been filed", ("finding", "good", "pins")),
        ("new limit switch is in that's a lot quicker", ("finding", "bad", "limit switch")),
    ],
)
def test_no_finding_of_what_is_said_better_at_once(book: Rulebook, line: str, never: tuple[str, str, str]) -> None:
    assert never not in facts(book, line)


def test_what_is_supposed_ends_behind_what_would_come_of_it(book: Rulebook) -> None:
    told = facts(book, "now the hook block if I grab hold of it there's no it doesn't lift that's nice that's tight")
    assert ("finding", "good", "hook block") in told


@pytest.mark.parametrize(
    "line",
    [
        "turned the brake disc over because the other side's good",
        "nipped the gib up and tried it again and it's come down to two thou",
    ],
)
def test_what_was_turned_over_or_measured_again_was_not_started(book: Rulebook, line: str) -> None:
    assert not [f for f in facts(book, line) if f[1] == "start"]


def test_what_waits_for_another_day_takes_no_day(book: Rulebook) -> None:
    told = facts(book, "I haven't touched the brake pawl yet that can wait for another day")
    assert not [f for f in told if f[0] == "reading"]


def test_the_air_that_is_gone_is_to_blame_for_nothing(book: Rulebook) -> None:
    assert facts(book, "so that's the air gone") == []


@pytest.mark.parametrize(
    ("line", "after", "told"),
    [
        ("I soldered the new nipple on", "the brake cam was worn", ("finding", "bad", "brake cam")),
        ("it rattled twice and then clear", "the governor's surging a bit", ("finding", "bad", "governor")),
    ],
)
def test_a_line_that_begins_with_a_part_and_its_verb_begins_anew(
    book: Rulebook, line: str, after: str, told: tuple[str, str, str]
) -> None:
    found = facts(book, line, after)
    assert told in found
    assert not [f for f in found if f[2] == "nipple on the brake cam" or f[:2] == ("work", "clean")]


def test_degrees_of_slop_are_no_heat(book: Rulebook) -> None:
    assert not [f for f in facts(book, "the top shaft has about ten degrees of slop in it") if f[1] == "temperature"]
