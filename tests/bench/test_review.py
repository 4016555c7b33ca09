"""Looking at a machine of the logbook: the same log as is read from the files."""

from __future__ import annotations

import random
from datetime import UTC, datetime
from pathlib import Path

import pytest

from worklog_tui import places
from worklog_tui.bench import review
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import keep_comments
from worklog_tui.bench.machines import UnknownMachine, add_machine
from worklog_tui.bench.record import import_sessions, keep_note
from worklog_tui.model import Machine

NAME = "Print-shop guillotine"
FIRST = "session 2031-04-12 14:05\n14:05 the clamp spring is broken\n14:09 need a new blade\n14:10 motor draws 6 amps\n"


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A desk with the shipped grammars and one machine with one session."""
    chance, now = random.Random(7), datetime(2031, 5, 3, 9, 0, tzinfo=UTC)
    at, cache = tmp_path / "logbook.db", places.cache()
    made = Desk(at, (places.grammars(),), lambda: now, "bench", lambda: chance.getrandbits(74), cache=cache)
    machine = add_machine(made, Machine(NAME, kind="paper guillotine with an electric motor", fuel="none"))
    path = tmp_path / "session-1.txt"
    path.write_text(FIRST, encoding="utf-8")
    import_sessions(made, machine, [path])
    return made


def test_the_timeline_has_every_line(desk: Desk) -> None:
    (session,) = review.timeline(desk, NAME)
    assert [line.note.words for line in session.lines] == [row.split(" ", 1)[1] for row in FIRST.splitlines()[1:]]


def test_readings_and_open_items_come_from_the_facts(desk: Desk) -> None:
    assert [one.quantity for one in review.readings(desk, NAME)] == ["current"]
    assert any("blade" in item.about for item in review.open_items(desk, NAME) if item.state == "open")


def test_a_new_note_counts_at_once(desk: Desk) -> None:
    keep_note(desk, NAME, "fitted the new blade")
    assert review.recap(desk, NAME).session == 2
    assert [w.action for w in review.recap(desk, NAME).done] == ["fit"]


def test_viewers_questions_are_open_until_answered(desk: Desk) -> None:
    keep_comments(desk, NAME, ["How old is the machine?"])
    seen = review.review(desk, NAME)
    assert [c.kind for c in seen.comments] == ["question"]
    assert any(item.comment == 0 for item in seen.items)


def test_there_is_advice(desk: Desk) -> None:
    assert review.next_step(desk, NAME).steps


def test_an_unknown_machine_is_said_to_be_one(desk: Desk) -> None:
    with pytest.raises(UnknownMachine, match=NAME):
        review.timeline(desk, "Print-shop gillotine")
