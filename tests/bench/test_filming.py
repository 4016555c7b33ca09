"""A film is not the work: its captions give notes their place, and no hours."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from tests.bench.conftest import Clock
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.filming import places_in_film, shot_on, undated
from worklog_tui.bench.history import history, would_change
from worklog_tui.bench.machines import find_machine
from worklog_tui.bench.record import import_sessions, keep_note
from worklog_tui.bench.undoing import undo
from worklog_tui.logbook.film_match import between, film_places
from worklog_tui.logbook.told_signs import signs
from worklog_tui.model import Finding, Instant, Machine, Reading, Span

WORK = (
    "lower guide cracked",
    "blade tension spring is weak",
    "a cup of tea",
    "table trunnion bolt sheared",
    "belt is fine",
)
FILM = """[0:00] welcome back to the shed everybody
[0:12] so here is the lower guide and you can see it is cracked
[1:05] the spring for the blade tension well it is weak
[2:40] and this trunnion bolt under the table it has sheared clean off
[3:30] that belt though the belt is fine
[3:55] see you next week
"""


@pytest.fixture
def session(desk: Desk, saw: Machine, clock: Clock) -> str:
    """A session of typed notes."""
    for words in WORK:
        clock.go_on(minutes=7)
        note = keep_note(desk, saw.name, words).note
    return note.session


def seconds(desk: Desk) -> list[int | None]:
    return [note.film for record in history(desk, "Band saw").sessions for note in record.notes]


def test_captions_give_notes_their_place_in_the_film(desk: Desk, session: str) -> None:
    before = history(desk, "Band saw").facts()
    done = places_in_film(desk, session, FILM)
    assert done.says == "4 of 5 notes are told in the film."
    assert seconds(desk) == [12, 65, None, 160, 210]
    assert history(desk, "Band saw").facts() == before, "the captions are not doubled as notes"
    changed = would_change(desk, "Band saw")
    assert (changed.added, changed.gone) == ((), ())
    undo(desk)
    assert seconds(desk) == [None] * 5


def test_a_note_between_two_that_are_told_lies_in_proportion(desk: Desk, saw: Machine, clock: Clock) -> None:
    """Work by the clock: 0, 40, 90 and 100 s, then after a cut 700 and 760 s; the film shows 90 s of it as 88."""
    at = 0
    for second, words in (
        (0, WORK[0]), (40, "a cup of tea"), (90, WORK[1]), (100, "swept the floor"), (700, WORK[3]), (760, WORK[4]),
    ):  # fmt: skip
        clock.go_on(seconds=second - at)
        at, session = second, keep_note(desk, saw.name, words).note.session
    film = f"[0:12] {WORK[0]}\n[1:40] {WORK[1]}\n[1:55] {WORK[3]}\n[3:00] {WORK[4]}"
    done = places_in_film(desk, session, film)
    assert done.says == "4 of 6 notes are told in the film; 1 more lies between them."
    assert seconds(desk) == [12, 12 + round(40 * 88 / 90), 100, None, 115, 180], "across the cut nothing"
    undo(desk)
    assert seconds(desk) == [None] * 6


def test_before_the_first_and_behind_the_last_nothing_is_worked_out() -> None:
    notes = [("a", 0), ("b", 10), ("c", 20), ("d", None), ("e", 30), ("f", 40)]
    assert between({"b": 100, "e": 120}, notes) == {"c": 110}
    assert between({"b": 100}, notes) == {}
    assert between({}, []) == {}


def test_what_is_no_film_or_another_one_is_refused(desk: Desk, session: str) -> None:
    with pytest.raises(CannotAct, match="no film times"):
        places_in_film(desk, session, "14:05 lower guide cracked\n14:06 more")
    with pytest.raises(CannotAct, match="None of the captions"):
        places_in_film(desk, session, "[0:00] hello there\n[0:30] today we bake bread\n[1:00] bye")


def test_matches_that_cross_give_way_to_the_longer_row() -> None:
    notes = [(f"n{number}", words) for number, words in enumerate(WORK)]
    crossed = [(300, WORK[0]), (10, WORK[1]), (20, WORK[3]), (30, WORK[4])]
    assert film_places(notes, crossed) == {"n1": 10, "n3": 20, "n4": 30}


def test_a_caption_in_other_words_is_known_by_what_was_read_from_it() -> None:
    notes = [("n1", "coupling key sheared"), ("n2", "backlash 4 thou, worn"), ("n3", "a cup of tea")]
    captions = [(5, "morning all"), (30, "look at this key in the coupling it has gone"), (70, "that is four thou")]
    key = Finding(main=Span("n1", 0, 20), part="coupling key", condition="sheared", verdict="bad", state="broken")
    gone = replace(key, part="key in the coupling", condition="has gone")
    play = Reading(main=Span("n2", 0, 15), quantity="backlash", value=0.004, unit="in", subject="gear")
    other = replace(play, value=0.006)
    assert film_places(notes, captions) == {}
    read = {"n1": signs([key]), "n2": signs([play])}
    assert film_places(notes, captions, read, {1: signs([gone]), 2: signs([play])}) == {"n1": 30, "n2": 70}
    assert film_places(notes, captions, read, {1: signs([gone]), 2: signs([other])}) == {"n1": 30}


def test_a_film_without_a_date_is_asked_about_and_gives_no_hours(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    file = tmp_path / "film.txt"
    file.write_text(FILM)
    import_sessions(desk, find_machine(desk, saw.name), [file])
    (record,) = history(desk, saw.name).sessions
    assert record.session.start is None
    assert all(note.instant is None for note in record.notes)
    assert undated(desk, saw.uid) == [record.session.uid]
    day = Instant.of(desk.now() - timedelta(days=3), known="assumed")
    assert shot_on(desk, undated(desk, saw.uid), day) == 1
    (record,) = history(desk, saw.name).sessions
    assert record.session.start == day
    assert all(note.instant is None for note in record.notes), "film time stays film time"
    assert undated(desk, saw.uid) == []
    undo(desk)
    assert undated(desk, saw.uid) == [record.session.uid]
