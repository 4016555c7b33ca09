"""What stands behind a preposition is a place; what was off is what was set anew. A sewing machine and a rope walk."""

from __future__ import annotations

from worklog_tui.extract.reader import read_session
from worklog_tui.model import Fact, Finding, FollowUp, Machine, Note, Reading, Work
from worklog_tui.rulebook import Rulebook

TREADLE = Machine("treadle head", kind="treadle sewing machine", fuel="none", ignition="none")


def facts(book: Rulebook, *said: str) -> list[Fact]:
    notes = [Note(f"n{k}", "s", words, track="typed", arrival=k) for k, words in enumerate(said)]
    return list(read_session(book, TREADLE, notes))


def test_it_is_what_slips_and_not_what_it_slips_on(book: Rulebook) -> None:
    found = facts(book, "belt is slipping on the treadle wheel, shortened it one link for now")
    assert [f.part for f in found if isinstance(f, Finding)] == ["belt"]
    assert [f.part for f in found if isinstance(f, Work)] == ["belt"]
    assert [(f.topic, f.reason) for f in found if isinstance(f, FollowUp)] == [("belt", "temporary")]


def test_what_was_cleaned_is_not_what_got_a_drop_of_oil(book: Rulebook) -> None:
    found = facts(book, "bobbin case full of lint, cleaned out, drop of oil on the hook race")
    assert [(f.action, f.part) for f in found if isinstance(f, Work)] == [
        ("clean", "bobbin case"),
        ("lubricate", "hook race"),
    ]


def test_what_was_off_is_what_was_brought_to_its_figure(book: Rulebook) -> None:
    found = facts(
        book,
        "hook timing: needle bar should be 2 mm up when the hook meets it, it's at 3.5",
        "slackened the bar clamp, reset to 2 mm",
    )
    assert [f.subject for f in found if isinstance(f, Reading) and f.role == "set"] == ["needle bar"]


def test_a_clause_with_that_only_tells_which_one(book: Rulebook) -> None:
    found = facts(book, "the bracket that carries the lamp is cracked")
    assert [(f.part, f.condition) for f in found if isinstance(f, Finding)] == [("bracket", "cracked")]
    assert [f for f in facts(book, "the spring that holds the roller") if isinstance(f, Finding)] == []


def test_a_gap_between_two_is_no_deed(book: Rulebook) -> None:
    assert [f for f in facts(book, "gap between the hook and the plate wants to be 2 mm") if isinstance(f, Work)] == []
