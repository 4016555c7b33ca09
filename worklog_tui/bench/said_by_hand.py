"""A fact that was not read from a note, added in the person's own words: read as they stand, or told piece by piece."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, fields
from typing import TYPE_CHECKING, Any, NamedTuple

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done
from worklog_tui.bench.fact_acts import AFTER, add_fact, settable
from worklog_tui.bench.note_acts import known_notes
from worklog_tui.bench.typed_value import action_of, value_of

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.model import Fact, Machine, Note

ENDS = ".!?"
NEEDED = {
    "finding": {"part": "Say which part it is of.", "condition": "Say how it is."},
    "work": {"action": "Say what was done."},
    "reading": {"quantity": "Say what was measured, such as gap.", "value": "Say how much, with its unit."},
    "suspect": {"cause": "Say the cause."}, "follow_up": {"topic": "Say what it is."},
}  # fmt: skip
"What must be told of each kind, and what is asked for where it is not."


class Heard(NamedTuple):
    """What words typed beside a note tell, with confidence and without."""

    sure: tuple[Fact, ...] = ()
    asked: tuple[Fact, ...] = ()


def heard(desk: Desk, note: str, words: str) -> Heard:
    """What is read from words that are said to go with a note: `the other one too` is of what the note is of."""
    from dataclasses import replace

    from worklog_tui.bench.reading import Fold, Track
    from worklog_tui.notes.cleaning import sanitise

    said = " ".join(sanitise(words).split())
    if not said:
        return Heard()
    with store.reading(desk.logbook) as connection:
        (before,) = known_notes(connection, [note])
        machine = _machine(connection, before)
    ended = before.words if before.words.rstrip()[-1:] in ENDS else f"{before.words}."
    typed = replace(before, uid=f"{note} by hand", words=said, arrival=before.arrival + 1)
    track, fold = Track(desk.reader(), machine, before.session, before.track, ""), Fold()
    for _, _, changes in track.feed(track.reader.start(), (replace(before, words=ended), typed)):
        fold.take(changes)
    found = [fact for fact in fold.added.values() if fact.main.note == typed.uid]
    line = desk.confidence_line()
    return Heard(tuple(f for f in found if f.confidence >= line), tuple(f for f in found if f.confidence < line))


def add_heard(desk: Desk, note: str, words: str) -> Done:
    """Add what is read from those words; what is doubtful only when there is nothing else. CannotAct for nothing."""
    found = heard(desk, note, words)
    done: list[Done] = []
    for fact in found.sure or found.asked:
        done.append(add_fact(desk, note, fact.kind, told_of(fact), AFTER, fact.quote))
    if not done:
        raise CannotAct("Nothing for the log was read in that")
    says = "; ".join(one.says.removeprefix("Added: ").rstrip(".") for one in done)
    return Done(done[-1].act, f"Added: {says}.")


def add_told(desk: Desk, note: str, kind: str, told: Mapping[str, str]) -> Done:
    """Add a fact of a kind, its fields in a person's words; CannotAct says what is missing or wrong."""
    typed = " ".join(text for text in told.values() if text)
    return add_fact(desk, note, kind, as_told(desk, kind, told), AFTER, typed)


def as_told(desk: Desk, kind: str, told: Mapping[str, str]) -> dict[str, Any]:
    """The fields of a fact of that kind as the log holds them; CannotAct says what is missing or wrong."""
    wanted: dict[str, Any] = {name: text for name, text in told.items() if text}
    missing = [asks for name, asks in NEEDED[kind].items() if name not in wanted]
    if missing:
        raise CannotAct(missing[0])
    if kind == "reading":
        return wanted | {"quantity": quantity_named(desk, told["quantity"]), **value_of(desk, told["value"])}
    if kind == "work":
        return {"part": "", **wanted, "action": action_of(wanted["action"])}
    return wanted


def quantity_named(desk: Desk, words: str) -> str:
    """The quantity that a person means by a few words, such as `hours run`; CannotAct names some when there is none."""
    from worklog_tui.reports.sentence import QUANTITIES

    said = " ".join(words.casefold().split())
    names = {} if desk.reads_with is not None else {name: name for name in desk.book().quantities}
    called = {**{name.replace("_", " "): name for name in names}, **{word: name for name, word in QUANTITIES.items()}}
    if said in called:
        return called[said]
    known = ", ".join(sorted(called))
    raise CannotAct(f"“{words}” is nothing that is measured here; say one of: {known}.")


def told_of(fact: Fact) -> dict[str, Any]:
    """The fields of a fact that a person may set, as far as something stands in them."""
    asked = {f.name for f in fields(fact) if f.default is MISSING and f.default_factory is MISSING}
    found = {name: getattr(fact, name) for name in settable(fact.kind)}
    return {name: value for name, value in found.items() if value or name in asked}


def _machine(connection: store.Connection, note: Note) -> Machine:
    session = store.sessions.find(connection, note.session)
    if session is None:
        raise CannotAct("There is no such note in the logbook.")
    return store.machines.by_uid(connection, session.machine)
