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
