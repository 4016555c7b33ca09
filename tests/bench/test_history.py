"""With the grammars of the program: what is kept note by note is what reading it all at once gives."""

from __future__ import annotations

import random
from dataclasses import replace
from pathlib import Path

import pytest

from tests.bench.conftest import Clock
from worklog_tui import places, store
from worklog_tui.bench.desk import Desk
from worklog_tui.bench.history import history, is_stale, reread
from worklog_tui.bench.machines import add_machine, find_machine
from worklog_tui.bench.record import import_sessions, keep_note, keep_words, preview
from worklog_tui.model import Act, Instant, Machine, Reading, SpecifiedValue

SAID = """right then, compression test on the forge blower
number one is ninety five
number two is forty, no, forty five
the intake gasket is weeping, we need a new one
pulled the carburettor and cleaned the jets
that is a cup of tea
points are about fifteen thou, set them to eighteen
if that does not help we will look at the condenser
""".splitlines()


@pytest.fixture
def real(tmp_path: Path, clock: Clock) -> Desk:
    """A desk with the grammars of the program."""
    chance, at = random.Random(2), tmp_path / "l.db"
    desk = Desk(at, (places.grammars(),), clock, "one", lambda: chance.getrandbits(74), cache=places.cache())
    specified = (SpecifiedValue("", "plug_gap", "0.025 in"),)
    add_machine(desk, Machine("Forge blower", "two-cylinder petrol engine", "petrol", cylinders=2, specified=specified))
    return desk


def test_note_by_note_is_all_at_once(real: Desk, clock: Clock) -> None:
    for words in SAID:
        clock.go_on(seconds=20)
        seen = preview(real, "Forge blower", words)
        kept = keep_note(real, "Forge blower", words)
        assert kept.unread == ""
        assert len(seen) == len(kept.facts) + len(kept.questions), "what lit up while typing is what is kept"
    before = history(real, "Forge blower")
    assert len(before.facts()) >= 5
    assert not is_stale(real, "Forge blower")
    changed = reread(real, "Forge blower")
    assert (changed.added, changed.gone) == ((), ())
    assert history(real, "Forge blower") == before


def test_several_notes_at_once_are_read_as_the_same_notes_one_by_one(real: Desk) -> None:
    keep_words(real, "Forge blower", SAID)
    at_once = [(fact.kind, fact.quote, fact.about) for fact in history(real, "Forge blower").facts()]
    other = replace(real, logbook=real.logbook.with_name("other.db"))
    add_machine(other, find_machine(real, "Forge blower"))
    for words in SAID:
        keep_note(other, "Forge blower", words)
    assert [(fact.kind, fact.quote, fact.about) for fact in history(other, "Forge blower").facts()] == at_once


def test_an_imported_session_is_read_like_a_live_one(real: Desk, tmp_path: Path) -> None:
    file = tmp_path / "session-1.txt"
    file.write_text("session 2031-04-02 09:00\n" + "".join(f"9:{n:02} {words}\n" for n, words in enumerate(SAID)))
    done = import_sessions(real, find_machine(real, "Forge blower"), [file])
    found = history(real, "Forge blower")
    assert done.complaints == ()
    assert done.facts == len(found.facts()) + sum(len(record.questions) for record in found.sessions)
    readings = [fact for fact in found.facts() if isinstance(fact, Reading)]
    assert {reading.value for reading in readings} >= {95.0}


def test_the_specified_texts_of_the_card_are_read(real: Desk) -> None:
    (value,) = find_machine(real, "Forge blower").specified
    assert (value.quantity, value.nominal, value.unit, value.text) == ("gap", 0.025, "in", "0.025 in")


def test_a_history_has_the_acts_on_it_and_on_what_was_read(real: Desk) -> None:
    note = keep_note(real, "Forge blower", SAID[1]).note
    now = Instant("2031-04-12T14:06:00Z")
    on_note = Act("00000000-0000-7000-8000-00000000000a", "one", 1, now, "edit note", note.uid, value="x")
    on_fact = Act("00000000-0000-7000-8000-00000000000b", "one", 2, now, "strike fact", f"{note.uid} reading 0 5 0")
    undone = Act("00000000-0000-7000-8000-00000000000c", "one", 3, now, "undo", on_note.uid)
    other = Act("00000000-0000-7000-8000-00000000000d", "one", 4, now, "edit note", real.uid())
    with store.writing(real.logbook) as connection:
        for act in (on_note, on_fact, undone, other):
            store.acts.add(connection, act)
    assert history(real, "Forge blower").acts == (on_note, on_fact, undone)
