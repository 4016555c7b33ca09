"""The camera: clips within a session, its counter, marks that can be taken back."""

from __future__ import annotations

import pytest

from tests.bench.conftest import Clock
from worklog_tui import store
from worklog_tui.bench.acting import CannotAct
from worklog_tui.bench.camera import begin_or_end, mark, running, set_counter
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.film_marks import film_marks, film_marks_text
from worklog_tui.bench.record import keep_note
from worklog_tui.bench.review import timeline
from worklog_tui.bench.undoing import undo
from worklog_tui.model import Machine


def test_a_clip_begins_and_ends_within_the_open_session(desk: Desk, saw: Machine, clock: Clock) -> None:
    session = keep_note(desk, saw.name, "the guide is cracked").session.uid
    begun = begin_or_end(desk, saw.name)
    assert begun.clip is not None
    assert begun.clip.session == session
    clock.go_on(seconds=751)
    seen = running(desk, saw.name).clip
    assert seen is not None
    assert seen.second(clock()) == 751
    assert begin_or_end(desk, saw.name).says == "The clip ends at 12:31."
    assert running(desk, saw.name).clip is None
    assert begin_or_end(desk, saw.name).says == "Clip 2 begins."


def test_without_a_session_one_begins_and_says_so(desk: Desk, saw: Machine) -> None:
    begin_or_end(desk, saw.name)
    assert [line.note.words for session in timeline(desk, saw.name) for line in session.lines] == ["Filming begins."]


@pytest.mark.parametrize(("typed", "shown"), [("12:31", 751), ("1:02:05", 3725), ("90", 90), ("12.31", 751)])
def test_the_cameras_counter_is_typed_off_it(desk: Desk, saw: Machine, clock: Clock, typed: str, shown: int) -> None:
    begin_or_end(desk, saw.name)
    clock.go_on(seconds=40)
    set_counter(desk, saw.name, typed)
    clock.go_on(seconds=5)
    clip = running(desk, saw.name).clip
    assert clip is not None
    assert clip.second(clock()) == shown + 5


def test_a_moment_is_marked_and_the_mark_taken_back(desk: Desk, saw: Machine, clock: Clock) -> None:
    begin_or_end(desk, saw.name)
    clock.go_on(seconds=65)
    assert mark(desk, saw.name, "shoot again").says == "Film 1:05: shoot again."
    assert undo(desk).says == "Taken back: marking the film."
    with store.reading(desk.logbook) as connection:
        acts = store.acts.load(connection)
    assert [(act.verb, act.value and act.value.get("second")) for act in acts] == [("mark film", 65), ("undo", None)]


def test_the_marks_of_a_film_are_told_clip_by_clip_without_those_taken_back(
    desk: Desk, saw: Machine, clock: Clock
) -> None:
    assert "No moment of a film was marked" in film_marks_text(film_marks(desk, saw.name))
    begin_or_end(desk, saw.name)
    for seconds, what in ((65, "keep"), (10, "still"), (10, "cut")):
        clock.go_on(seconds=seconds)
        mark(desk, saw.name, what)
    undo(desk)
    told = film_marks_text(film_marks(desk, saw.name)).split("\n", 1)
    assert told[0].startswith("Clip of 20")
    assert told[1] == "      1:05  keep\n      1:15  still\n"


def test_what_makes_no_sense_is_refused_in_a_plain_sentence(desk: Desk, saw: Machine) -> None:
    with pytest.raises(CannotAct, match="The camera does not run"):
        mark(desk, saw.name, "keep")
    begin_or_end(desk, saw.name)
    with pytest.raises(CannotAct, match="is no time of a counter"):
        set_counter(desk, saw.name, "soon")


def test_a_clip_that_was_forgotten_does_not_run_for_ever(desk: Desk, saw: Machine, clock: Clock) -> None:
    begin_or_end(desk, saw.name)
    clock.go_on(hours=20)
    assert running(desk, saw.name).clip is None
    assert begin_or_end(desk, saw.name).says == "Clip 1 begins."
