"""Keeping what is said: sessions begin by themselves, notes come with their facts, importing again doubles nothing."""

from __future__ import annotations

import tempfile
from dataclasses import replace
from datetime import timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.bench.conftest import Clock
from tests.bench.plain_reader import PlainReader
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, is_stale, reread
from worklog_tui.bench.machines import UnknownMachine, add_machine
from worklog_tui.bench.record import NoWords, import_sessions, keep_lines, keep_note, preview
from worklog_tui.model import Finding, History, Machine, Work


def words(of: History) -> list[list[str]]:
    return [[note.words for note in record.notes] for record in of.sessions]


def test_the_first_note_begins_a_session_and_carries_its_facts(desk: Desk, saw: Machine) -> None:
    kept = keep_note(desk, "Band saw", "the guide is cracked")
    assert kept.session.machine == saw.uid
    assert kept.session.start == desk.instant()
    assert (kept.note.at, kept.note.said_at, kept.note.track, kept.note.arrival) == (0, "14:05", "live", 0)
    assert not kept.spooled
    (finding,) = kept.facts
    assert isinstance(finding, Finding)
    assert (finding.part, finding.verdict) == ("guide", "bad")
    assert history(desk, "Band saw").facts() == [finding]


@pytest.mark.usefixtures("saw")
def test_notes_join_the_open_session(desk: Desk, clock: Clock) -> None:
    first = keep_note(desk, "Band saw", "the guide is cracked")
    clock.go_on(hours=3, minutes=59)
    second = keep_note(desk, "Band saw", "cleaned it")
    assert second.session.uid == first.session.uid
    assert (second.note.at, second.note.said_at) == (14340, "18:04")
    (work,) = second.facts
    assert isinstance(work, Work)
    assert work.part == "guide", "what was talked of is carried over from the stored context"


@pytest.mark.usefixtures("saw")
def test_four_quiet_hours_begin_a_new_session(desk: Desk, clock: Clock) -> None:
    first = keep_note(desk, "Band saw", "the guide is cracked")
    clock.go_on(hours=4)
    second = keep_note(desk, "Band saw", "cleaned it")
    assert second.session.uid != first.session.uid
    assert second.note.at == 0
    assert [len(record.notes) for record in history(desk, "Band saw").sessions] == [1, 1]


@pytest.mark.usefixtures("saw")
def test_the_quiet_hours_are_a_setting(desk: Desk, clock: Clock) -> None:
    short = replace(desk, quiet_hours=0.5)
    first = keep_note(short, "Band saw", "one")
    clock.go_on(minutes=31)
    assert keep_note(short, "Band saw", "two").session.uid != first.session.uid


@pytest.mark.usefixtures("saw")
def test_a_clock_put_back_goes_on_in_the_written_order(desk: Desk, clock: Clock) -> None:
    keep_note(desk, "Band saw", "one")
    clock.go_on(minutes=30)
    keep_note(desk, "Band saw", "two")
    clock.go_on(hours=-1)
    third = keep_note(desk, "Band saw", "three")
    assert third.note.at == 1800
    assert words(history(desk, "Band saw")) == [["one", "two", "three"]]


@pytest.mark.usefixtures("saw")
def test_a_note_may_take_back_a_fact_of_an_earlier_one(desk: Desk) -> None:
    (finding,) = keep_note(desk, "Band saw", "the guide is cracked").facts
    assert keep_note(desk, "Band saw", "no, scratch that").withdrawn == (finding.key,)
    assert history(desk, "Band saw").facts() == []


@pytest.mark.usefixtures("saw")
def test_doubtful_facts_are_questions(desk: Desk) -> None:
    keep_note(desk, "Band saw", "the guide is cracked")
    kept = keep_note(desk, "Band saw", "look again")
    assert (len(kept.facts), len(kept.questions)) == (0, 1)
    (record,) = history(desk, "Band saw").sessions
    assert record.questions == kept.questions
    assert record.facts == (), "the doubtful one stands in the place of the former"


@pytest.mark.usefixtures("saw")
def test_a_reader_that_fails_costs_no_words(desk: Desk) -> None:
    keep_note(desk, "Band saw", "the guide is cracked")
    kept = keep_note(desk, "Band saw", "stumble over this")
    assert kept.unread == "the reader stumbled"
    after = keep_note(desk, "Band saw", "cleaned it")
    assert after.facts, "the notes after it are read"
    assert words(history(desk, "Band saw")) == [["the guide is cracked", "stumble over this", "cleaned it"]]
    assert is_stale(desk, "Band saw")


@pytest.mark.usefixtures("saw")
def test_what_is_kept_is_clean(desk: Desk) -> None:
    kept = keep_note(desk, "Band saw", "  torque \x1b[31m[/] 40\x07 \n and on ")
    assert "\x1b" not in kept.note.words
    assert "\n" not in kept.note.words
    assert kept.note.words.startswith("torque")


@pytest.mark.usefixtures("saw")
@pytest.mark.parametrize("nothing", ["", "   ", "\n\n", "\x1b[2J"])
def test_no_words_are_no_note(desk: Desk, nothing: str) -> None:
    with pytest.raises(NoWords, match="There are no words to keep"):
        keep_note(desk, "Band saw", nothing)
    assert history(desk, "Band saw").sessions == ()


def test_a_note_needs_a_machine(desk: Desk) -> None:
    with pytest.raises(UnknownMachine, match="There is no machine “Lathe” yet"):
        keep_note(desk, "Lathe", "the guide is cracked")
    assert not desk.logbook.exists()


@pytest.mark.usefixtures("saw")
def test_a_preview_writes_nothing(desk: Desk) -> None:
    keep_note(desk, "Band saw", "the guide is cracked")
    before = desk.logbook.read_bytes()
    (work,) = preview(desk, "Band saw", "cleaned")
    assert isinstance(work, Work)
    assert work.part == "guide"
    assert preview(desk, "Band saw", " ") == ()
    assert desk.logbook.read_bytes() == before


@pytest.mark.usefixtures("saw")
def test_a_paste_without_times_is_notes_of_now(desk: Desk) -> None:
    first = keep_note(desk, "Band saw", "the guide is cracked")
    kept = keep_lines(desk, "Band saw", "the wheel is cracked\n\ncleaned it\n")
    assert [one.note.words for one in kept] == ["the wheel is cracked", "cleaned it"]
    assert {one.session.uid for one in kept} == {first.session.uid}
    assert [len(one.facts) for one in kept] == [1, 1]


@pytest.mark.usefixtures("saw")
def test_a_paste_of_captions_is_a_session_of_its_own_without_a_date(desk: Desk) -> None:
    live = keep_note(desk, "Band saw", "the guide is cracked")
    captions = "[0:02] the wheel is cracked\n[0:06] cleaned it\n"
    kept = keep_lines(desk, "Band saw", captions)
    assert {one.session.uid for one in kept} != {live.session.uid}
    assert kept[0].session.start is None
    assert [one.note.film for one in kept] == [2, 6]
    assert [one.note.instant for one in kept] == [None, None]
    assert keep_lines(desk, "Band saw", captions) == []
    assert words(history(desk, "Band saw")) == [["the guide is cracked"], ["the wheel is cracked", "cleaned it"]]


@pytest.mark.usefixtures("saw")
def test_an_empty_paste_is_no_note(desk: Desk) -> None:
    with pytest.raises(NoWords):
        keep_lines(desk, "Band saw", "\n \n")


def session_file(folder: Path, name: str, *lines: str) -> Path:
    path = folder / name
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def test_importing_again_doubles_nothing(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    header = "session 2031-04-02 09:00"
    one = session_file(tmp_path, "session-1.txt", header, "9:00 the guide is cracked", "9:10 cleaned")
    two = session_file(tmp_path, "session-2.txt", "[0:01] the wheel is cracked", "[0:01] the wheel is cracked")
    first = import_sessions(desk, saw, [one, two])
    assert (first.sessions, first.notes, first.facts, first.doubled) == (2, 4, 4, 0)
    before = history(desk, "Band saw")
    again = import_sessions(desk, saw, [two, one])
    assert (again.sessions, again.notes, again.facts, again.doubled) == (0, 0, 0, 4)
    assert history(desk, "Band saw") == before


@pytest.mark.parametrize(
    ("header", "utc"),
    [("2031-04-02 09:00", "2031-04-02T07:00:00Z"), ("2031-04-02 09:00+01:00", "2031-04-02T08:00:00Z")],
)
def test_a_header_without_an_offset_is_of_this_place(
    desk: Desk, saw: Machine, tmp_path: Path, header: str, utc: str
) -> None:
    here = replace(desk, at_home=lambda moment: moment.replace(tzinfo=timezone(timedelta(hours=2))))
    import_sessions(here, saw, [session_file(tmp_path, "s.txt", f"session {header}", "9:00 the guide is cracked")])
    [session] = history(here, "Band saw").sessions
    assert session.session.start is not None
    assert session.session.start.utc == utc


def test_a_file_that_grew_brings_only_what_is_new(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    lines = ["session 2031-04-02 09:00", "9:00 the guide is cracked", "9:30 cleaned"]
    import_sessions(desk, saw, [session_file(tmp_path, "s.txt", *lines)])
    lines.insert(2, "9:15 the wheel is cracked")
    grown = import_sessions(desk, saw, [session_file(tmp_path, "s.txt", *lines)])
    assert (grown.sessions, grown.notes, grown.facts, grown.doubled) == (0, 1, 1, 2)
    found = history(desk, "Band saw")
    assert words(found) == [["the guide is cracked", "the wheel is cracked", "cleaned"]]
    work = found.facts()[-1]
    assert isinstance(work, Work)
    assert work.part == "wheel", "the notes after the new one are read again"


def test_a_file_that_cannot_be_read_does_not_stop_the_others(desk: Desk, saw: Machine, tmp_path: Path) -> None:
    good = session_file(tmp_path, "good.txt", "[0:01] the guide is cracked")
    told: list[tuple[int, int]] = []
    done = import_sessions(desk, saw, [tmp_path / "absent.txt", good], lambda n, of: told.append((n, of)))
    assert done.notes == 1
    assert len(done.complaints) == 1
    assert "absent.txt" in done.complaints[0]
    assert told == [(1, 2), (2, 2)]


def test_sessions_stand_in_the_order_of_their_dates(desk: Desk, saw: Machine, tmp_path: Path, clock: Clock) -> None:
    keep_note(desk, "Band saw", "today")
    later = session_file(tmp_path, "b.txt", "session 2031-04-03 09:00", "9:00 third of April")
    earlier = session_file(tmp_path, "a.txt", "session 2031-04-02 09:00", "9:00 second of April")
    undated = session_file(tmp_path, "c.txt", "[0:01] who knows when")
    import_sessions(desk, saw, [later, undated, earlier])
    assert words(history(desk, "Band saw")) == [
        ["second of April"], ["third of April"], ["who knows when"], ["today"],
    ]  # fmt: skip


@pytest.mark.usefixtures("saw")
def test_facts_of_another_grammar_are_shown_until_they_are_read_again(desk: Desk) -> None:
    keep_note(desk, "Band saw", "the guide is cracked")
    newer = replace(desk, reads_with=Loud(stamp="newer"))
    assert not is_stale(desk, "Band saw")
    assert is_stale(newer, "Band saw")
    before = history(newer, "Band saw").facts()
    assert [fact.about for fact in before] == ["guide"]
    changed = reread(newer, "Band saw")
    assert [fact.about for fact in changed.added] == ["GUIDE"]
    assert list(changed.gone) == before
    assert history(newer, "Band saw").facts() == list(changed.added)
    assert not is_stale(newer, "Band saw")
    assert reread(newer, "Band saw").added == ()


@pytest.mark.usefixtures("saw")
def test_a_new_card_makes_the_facts_stale(desk: Desk) -> None:
    keep_note(desk, "Band saw", "the guide is cracked")
    add_machine(desk, Machine("Band saw", kind="meat saw"))
    assert is_stale(desk, "Band saw")


class Loud(PlainReader):
    """A newer grammar: it names parts in capitals."""

    def feed(self, machine, context, note):  # type: ignore[no-untyped-def]
        context, changes = super().feed(machine, context, note)
        added = tuple(replace(fact, part=fact.about.upper()) for fact in changes.added)  # type: ignore[call-arg]
        return context, replace(changes, added=added)


SAID = st.sampled_from(["the guide is cracked", "cleaned it", "scratch that", "look again", "a cup of tea", "the arm"])


@settings(max_examples=15, deadline=None)
@given(
    sessions=st.lists(st.lists(st.tuples(st.integers(0, 90), SAID), min_size=1, max_size=12), min_size=1, max_size=3),
    headed=st.booleans(),
    order=st.randoms(use_true_random=False),
)
def test_importing_in_any_order_and_as_often_as_one_likes_gives_the_same(
    sessions: list[list[tuple[int, str]]], headed: bool, order: object
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        base = Path(folder)
        files = []
        for number, lines in enumerate(sessions):
            timed = [f"[{at // 60}:{at % 60:02}] {said}" for at, said in sorted(lines)]
            head = [f"session 2031-05-{number + 1:02} 10:00"] if headed else []
            files.append(session_file(base, f"session-{number}.txt", *head, *timed))
        once = _imported(base / "once.db", files, files)
        shuffled = files * 2
        order.shuffle(shuffled)  # type: ignore[attr-defined]
        assert _imported(base / "often.db", shuffled, files) == once


def _imported(logbook: Path, paths: list[Path], first: list[Path]) -> dict[str, object]:
    """What a logbook holds by uid: notes with their words, and facts by key."""
    desk = Desk(logbook, (), Clock(), "bench-one", lambda: 1, reads_with=PlainReader())
    machine = add_machine(desk, Machine("Band saw", uid="00000000-0000-7000-8000-000000000001"))
    import_sessions(desk, machine, paths)
    found = history(desk, "Band saw")
    assert len(found.sessions) <= len(first)
    return {
        record.session.uid: ([(note.uid, note.words) for note in record.notes], record.facts, record.questions)
        for record in found.sessions
    }
