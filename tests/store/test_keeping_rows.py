"""What the tables keep: first wordings, acts, comments, items, the order of the notes, and what can be found."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from worklog_tui import store
from worklog_tui.model import (
    Act,
    Again,
    Comment,
    Fact,
    FactKey,
    Finding,
    Instant,
    Machine,
    Note,
    OpenItem,
    Place,
    Reading,
    Session,
    Span,
    SpecifiedValue,
)  # fmt: skip
from worklog_tui.store.derived import Mark, Readout

NOON = Instant("2031-04-12T12:00:00Z", "Europe/London", 60)
SAW = Machine(
    "Band saw", "woodworking machine", "none", "none", cylinders=None, firing_order=(1, 2), measures="british",
    specified=(SpecifiedValue("gap", "guide", "0.02 in", nominal=0.02, unit="in", source="own handbook"),), uid="saw",
)  # fmt: skip


@pytest.fixture
def book(tmp_path: Path) -> Iterator[store.Connection]:
    """An open logbook with a machine and a session."""
    with store.writing(tmp_path / "logbook.db") as connection:
        store.machines.save(connection, SAW)
        store.sessions.begin(connection, Session("s", "saw", NOON))
        yield connection


def add(book: store.Connection, uid: str, words: str, at: int = 0, session: str = "s") -> Note:
    note = Note(uid, session, words, at, "13:00", "live", instant=NOON)
    return store.sessions.add_note(book, note, at)


def test_a_machine_comes_back_as_it_went_in(book: store.Connection) -> None:
    assert store.machines.all_machines(book) == [SAW]
    store.machines.save(book, replace(SAW, kind="saw"))
    assert store.machines.by_uid(book, "saw").kind == "saw"
    with pytest.raises(KeyError):
        store.machines.by_uid(book, "lathe")


def test_notes_come_back_in_the_order_of_the_work(book: store.Connection) -> None:
    late = add(book, "n1", "second", at=20)
    early = add(book, "n2", "first", at=10)
    same = add(book, "n3", "third", at=20)
    assert store.sessions.notes_of(book, "s") == [early, late, same]
    assert [note.arrival for note in (late, early, same)] == [0, 1, 2]


def test_a_session_of_unknown_date_stands_where_it_came() -> None:
    def session(uid: str, arrival: int, day: int | None) -> Session:
        return Session(uid, "saw", replace(NOON, utc=f"2031-04-{day:02}T12:00:00Z") if day else None, arrival=arrival)

    came = [session("a", 0, 9), session("b", 1, None), session("c", 2, 3), session("d", 3, None), session("e", 4, 9)]
    assert [one.uid for one in store.sessions.in_order(came)] == ["c", "d", "a", "b", "e"]


def test_the_first_wording_is_never_altered(book: store.Connection) -> None:
    add(book, "n", "the guide is crackt")
    book.execute("UPDATE note SET words = 'the guide is cracked', revision = 1 WHERE uid = 'n'")
    with pytest.raises(sqlite3.IntegrityError, match="first wording of a note is never altered"):
        book.execute("UPDATE note SET first_words = 'tea' WHERE uid = 'n'")
    with pytest.raises(sqlite3.IntegrityError, match="a note is never deleted"):
        book.execute("DELETE FROM note")
    assert book.execute("SELECT first_words FROM note").fetchone()[0] == "the guide is crackt"


def test_no_wording_is_ever_deleted(book: store.Connection) -> None:
    add(book, "n", "one")
    book.execute("INSERT INTO revision (note_id, number, words) VALUES (1, 1, 'two')")
    with pytest.raises(sqlite3.IntegrityError, match="never deleted"):
        book.execute("DELETE FROM revision")
    with pytest.raises(sqlite3.IntegrityError, match="never altered"):
        book.execute("UPDATE revision SET words = 'three'")


def act(uid: str, counter: int, verb: str = "set item", target: str = "n", device: str = "one") -> Act:
    return Act(uid, device, counter, NOON, verb, target, ("before",), {"state": "done", "why": ["fitted"]})


def test_acts_are_only_ever_added(book: store.Connection) -> None:
    assert store.acts.next_counter(book) == 1
    first, second = act("a2", 7, device="two"), act("a1", 7)
    for one in (first, second, first):
        store.acts.add(book, one)
    assert store.acts.load(book) == [second, first], "in the order of counter and device"
    assert store.acts.next_counter(book) == 8, "greater than any seen"
    assert store.acts.seen_on(book, "n") == ("a1", "a2")
    assert store.acts.load(book, ["elsewhere"]) == []
    for sql in ("DELETE FROM act", "UPDATE act SET counter = 1", "UPDATE act SET value = NULL"):
        with pytest.raises(sqlite3.IntegrityError, match="acts are only ever added"):
            book.execute(sql)


def test_only_an_act_of_erasing_lets_words_go(book: store.Connection) -> None:
    add(book, "n", "my door code is 1234")
    store.acts.add(book, act("a", 1, "edit note"))
    store.acts.add(book, act("e", 2, "erase"))
    book.execute("UPDATE note SET words = '', first_words = '' WHERE uid = 'n'")
    book.execute("UPDATE act SET value = NULL WHERE uid = 'a'")
    assert store.search.find(book, "door") == []


def test_a_note_needs_its_session_and_a_session_its_machine(book: store.Connection) -> None:
    with pytest.raises(sqlite3.IntegrityError):
        store.sessions.begin(book, Session("t", "nobody", NOON))
    with pytest.raises(sqlite3.IntegrityError, match="FOREIGN KEY"):
        book.execute(
            "INSERT INTO note (uid, session_id, machine_id, arrival, stands_at, said_at, track, first_words, words)"
            " VALUES ('n', 99, 1, 0, 0, '', 'live', '', '')"
        )


def test_a_time_that_is_not_utc_is_refused(book: store.Connection) -> None:
    with pytest.raises(sqlite3.IntegrityError, match="CHECK"):
        store.sessions.begin(book, Session("t", "saw", Instant("2031-04-12 12:00")))


def finding(note: str, start: int, condition: str = "cracked") -> Finding:
    return Finding(main=Span(note, start, start + 7), part="guide", condition=condition, verdict="bad", quote="q")


def readout(*added: Fact, cleared: tuple[str, ...] = (), withdrawn: tuple[FactKey, ...] = ()) -> Readout:
    return Readout("s", "typed", "stamp", 0.5, cleared, withdrawn, added, (), Mark("n2", 2, "{}"))


def test_facts_are_added_replaced_withdrawn_and_cleared(book: store.Connection) -> None:
    add(book, "n1", "the guide is cracked and cracked")
    add(book, "n2", "so it is")
    one, two = finding("n1", 13), finding("n1", 25)
    store.derived.save(book, readout(one, two))
    assert store.derived.facts_of_machine(book, "saw") == {("s", False): [one, two]}
    better = replace(one, condition="cracked through")
    store.derived.save(book, readout(better, withdrawn=(two.key,)))
    assert store.derived.facts_of_machine(book, "saw") == {("s", False): [better]}
    assert store.derived.count(book, "s") == 1
    store.derived.save(book, readout(cleared=("n1",)))
    assert store.derived.facts_of_machine(book, "saw") == {}
    assert store.derived.tail(book, "s", "typed") == Mark("n2", 2, "{}")
    assert store.derived.stamp(book, "s") == "stamp"


def test_every_value_of_a_reading_comes_back(book: store.Connection) -> None:
    add(book, "n1", "…")
    add(book, "n2", "…")
    values: list[float | tuple[float, float] | str] = [0.018, (6.0, 8.0), "M8x1.25"]
    given_in = [
        Reading(main=Span("n1", at, at + 1), quantity="gap", value=value, unit="in", subject="guide",
                filled=("subject",), evidence=(Span("n1", 0, 1), Span("n2", 0, 1)), confidence=0.75)
        for at, value in enumerate(values)
    ]  # fmt: skip
    store.derived.save(book, readout(*given_in))
    assert store.derived.facts_of_machine(book, "saw")["s", False] == given_in
    rows = book.execute("SELECT machine, quantity, value, unit, subject FROM readings").fetchall()
    assert [tuple(row) for row in rows] == [
        ("Band saw", "gap", 0.018, "in", "guide"), ("Band saw", "gap", "[6.0,8.0]", "in", "guide"),
        ("Band saw", "gap", "M8x1.25", "in", "guide"),
    ]  # fmt: skip


def test_items_are_counted_until_something_changes(book: store.Connection) -> None:
    assert store.items.open_counts(book) == {"saw": None}
    key = FactKey("n", "finding", 0, 7)
    raised = OpenItem((key,), "new guide", "guide", "part needed", "open", Place(1, "n", "13:00"), quote="q")
    fitted = Place(1, "n", "13:05", 3)
    again = Again("found again", Place(2, "m", "9:00", 7), "cracked", Place(1, "n", "13:05", 3))
    raised = replace(raised, again=again)
    done = replace(raised, about="oil", state="done", closed=fitted, closed_by=key, comment=2, people=3)
    store.items.replace(book, "saw", [raised, done], store.items.basis(book, "saw"))
    assert store.items.open_counts(book) == {"saw": 1}
    assert store.items.load(book, "saw") == [raised, done]
    assert [tuple(row) for row in book.execute("SELECT machine, about, reason, raised_at FROM open_items")] == [
        ("Band saw", "new guide", "part needed", "13:00")
    ]
    add(book, "n", "the new guide came")
    assert store.items.open_counts(book) == {"saw": None}, "they have to be worked out again"


def test_comments_are_not_doubled(book: store.Connection) -> None:
    assert store.comments.add(book, "saw", ["Nice saw", "Which blade?", "Nice saw"]) == 3
    assert store.comments.add(book, "saw", ["Which blade?", "Nice saw", "Nice saw", "First!"]) == 1
    assert store.comments.load(book, "saw") == [
        Comment(0, "Nice saw"), Comment(1, "Which blade?"), Comment(2, "Nice saw"), Comment(3, "First!"),
    ]  # fmt: skip


def test_notes_are_found_by_their_words_newest_first(book: store.Connection) -> None:
    said = ("the guide is cracked", "guide wheel of the saw", "a cup of tea, Zoë", "the wheel guide")
    for number, words in enumerate(said):
        add(book, f"n{number}", words, at=number)

    def found(text: str, best_first: bool = False) -> list[str]:
        return [note.uid for note in store.search.find(book, text, best_first=best_first)]

    assert found("guide") == ["n3", "n1", "n0"]
    assert found("GUIDE wheel") == ["n3", "n1"]
    assert found('"guide wheel"') == ["n1"]
    assert found("crack*") == ["n0"]
    assert found("zoe") == ["n2"]
    assert found("guide", best_first=True)[0] in {"n1", "n3", "n0"}
    assert found("") == found('  * " ') == []
    assert store.search.find(book, "guide", machine="lathe") == []
    assert len(store.search.find(book, "guide", machine="saw", limit=2)) == 2


def test_a_note_is_found_by_its_newest_wording(book: store.Connection) -> None:
    add(book, "n", "the guide is crackt")
    book.execute("UPDATE note SET words = 'the guide is cracked' WHERE uid = 'n'")
    assert store.search.find(book, "crackt") == []
    assert len(store.search.find(book, "cracked")) == 1
    book.execute("INSERT INTO note_words (note_words, rank) VALUES ('integrity-check', 1)")


@given(text=st.text(max_size=60))
def test_no_text_is_a_mistake_in_a_search(text: str) -> None:
    connection = sqlite3.connect(":memory:")
    connection.execute("CREATE VIRTUAL TABLE note_words USING fts5(words)")
    match = store.search.query(text)
    if match:
        connection.execute("SELECT * FROM note_words WHERE note_words MATCH ?", (match,)).fetchall()
    connection.close()


def test_the_device_keeps_its_name(tmp_path: Path) -> None:
    logbook = tmp_path / "logbook.db"
    assert store.device_of(logbook, "one") == "one"
    assert store.device_of(logbook, "two") == "one"
    assert store.device_of(tmp_path / "nowhere" / "logbook.db", "three") == "three"
