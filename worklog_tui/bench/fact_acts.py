"""Acts on what was read: correct, strike or add a fact; they win over every reading, now and later."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import MISSING, fields
from typing import TYPE_CHECKING, Any

from worklog_tui import store
from worklog_tui.bench.acting import CannotAct, Done, acting, sign
from worklog_tui.bench.note_acts import known_notes
from worklog_tui.logbook.matters import anchor_text
from worklog_tui.model import Fact, FactKey, Span
from worklog_tui.model.facts import KINDS, to_plain

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

_OURS = frozenset({"main", "nth", "evidence", "quote", "rule", "confidence", "filled"})
"Fields that are not for a person to set."
AFTER = "\n"
NAMED = {"reading": "subject", "finding": "part", "work": "part", "suspect": "cause", "follow_up": "topic"}
"The field whose words the vocabulary may name."


def correct_fact(desk: Desk, key: FactKey, changes: Mapping[str, Any]) -> Done:
    """Give fields of a fact other values, such as {"value": 0.018, "unit": "in"}; see `settable` for their names."""
    with acting(desk) as connection:
        (note,) = known_notes(connection, [key.note])
        fact = _known(connection, key)
        wanted = _checked(desk, fact.kind, changes)
        if all(getattr(fact, name) == _plain(value) for name, value in wanted.items()):
            raise CannotAct("The log says that already.")
        value = {"words": note.words, "quote": _words(note.words, key), "fact": to_plain(fact), "to": wanted}
        act = sign(desk, connection, "correct fact", anchor_text(key), value)
        now = next((one for one in _facts_of(connection, key.note) if one.by_hand and one.main == fact.main), fact)
    return Done(act, f"Corrected: {_say(now)}.")


def confirm_fact(desk: Desk, key: FactKey) -> Done:
    """Say that a doubtful fact was meant so; it counts from now on."""
    with acting(desk) as connection:
        (note,) = known_notes(connection, [key.note])
        fact = _known(connection, key)
        value = {"words": note.words, "quote": _words(note.words, key), "fact": to_plain(fact), "to": {}}
        act = sign(desk, connection, "correct fact", anchor_text(key), value)
    return Done(act, f"Kept: {_say(fact)}.")


def strike_fact(desk: Desk, key: FactKey) -> Done:
    """Strike a fact out of the log; the words stay."""
    with acting(desk) as connection:
        (note,) = known_notes(connection, [key.note])
        fact = _known(connection, key)
        value = {"words": note.words, "quote": _words(note.words, key), "fact": to_plain(fact)}
        act = sign(desk, connection, "strike fact", anchor_text(key), value)
    return Done(act, f"Struck out: {_say(fact)}.")


def add_fact(
    desk: Desk, note: str, kind: str, said: Mapping[str, Any], quote: str = "", typed: str = ""
) -> Done:  # fmt: skip
    """Add a fact that was not read from a note; `quote` are the words of the note that say it, else all of them.

    AFTER stands for no words of it: the fact comes after all that the note says, and shows the words that were `typed`.
    """
    with acting(desk) as connection:
        (found,) = known_notes(connection, [note])
        start, end = _place(found.words, quote) if quote != AFTER else (len(found.words), len(found.words))
        fact = _new(desk, kind, said, Span(note, start, end), typed or found.words)
        taken = {one.nth for one in _facts_of(connection, note) if (one.kind, one.main) == (kind, fact.main)}
        key = FactKey(note, kind, start, end, next(n for n in range(len(taken) + 1) if n not in taken))
        value = {"words": found.words, "quote": _words(found.words, key), "fact": to_plain(fact)}
        act = sign(desk, connection, "add fact", anchor_text(key), value)
    return Done(act, f"Added: {_say(fact)}.")


def set_subject(desk: Desk, notes: Sequence[str], subject: str, was: str = "") -> Done:
    """Say what a run of lines is about: facts whose subject was not said there get it, or those that had `was`."""
    said = " ".join(subject.split())
    if not said:
        raise CannotAct("Say what the lines are about.")
    with acting(desk) as connection:
        found = known_notes(connection, notes)
        value = {"notes": [note.uid for note in found], "subject": said, "name": _name(desk, said)}
        act = sign(desk, connection, "set subject", found[0].session, value | ({"was": was} if was else {}))
        about = [f for one in found for f in _facts_of(connection, one.uid) if f.by_hand and f.about == said]
        if not about:
            raise CannotAct("In these lines no fact left its subject unsaid; correct the facts one by one.")
    return Done(act, f"{len(about)} fact{'' if len(about) == 1 else 's'} now about {said}.")


def settable(kind: str) -> tuple[str, ...]:
    """The fields of a kind of fact that a person may set; CannotAct for no kind of fact."""
    if kind not in KINDS:
        raise CannotAct(f"There is no kind of fact “{kind}”; there are {', '.join(KINDS)}.")
    return tuple(field.name for field in fields(KINDS[kind]) if field.name not in _OURS)


def _checked(desk: Desk, kind: str, changes: Mapping[str, Any]) -> dict[str, Any]:
    """The changes with the name that the vocabulary has for a new subject."""
    known = settable(kind)
    for name in changes:
        if name not in known:
            raise CannotAct(f"A {kind.replace('_', ' ')} has no “{name}”; it has {', '.join(known)}.")
    if not changes:
        raise CannotAct("Nothing is to be changed.")
    wanted = {name: list(v) if isinstance(v, tuple) else v for name, v in changes.items()}
    part = NAMED.get(kind)
    if part in wanted and "name" not in wanted:
        wanted["name"] = _name(desk, str(wanted[part]))
    return wanted


def _new(desk: Desk, kind: str, said: Mapping[str, Any], main: Span, words: str) -> Fact:
    wanted = _checked(desk, kind, said)
    asked = (f for f in fields(KINDS[kind]) if f.name not in _OURS and f.default is MISSING)
    need = [f.name for f in asked if f.name not in wanted and f.default_factory is MISSING]
    if need:
        raise CannotAct(f"A {kind.replace('_', ' ')} also needs {', '.join(need)}.")
    given = {name: _plain(value) for name, value in wanted.items()}
    return KINDS[kind](main=main, evidence=(main,), quote=words, **given)


def _name(desk: Desk, words: str) -> str:
    """The name that the vocabulary has for a few words; empty when it has none."""
    if desk.reads_with is not None:
        return ""
    from worklog_tui.logbook.named_things import STATES, named_in

    found = [one for one in named_in(words.lower().split(), desk.book().table) if one.kind not in STATES]
    return min(found, key=lambda one: (one.rank, -one.end)).name if found else ""


def _plain(value: Any) -> Any:
    return tuple(value) if isinstance(value, list) else value


def _facts_of(connection: store.Connection, note: str) -> list[Fact]:
    return store.derived.facts_of_note(connection, note)


def _known(connection: store.Connection, key: FactKey) -> Fact:
    found = next((fact for fact in _facts_of(connection, key.note) if fact.key == key), None)
    if found is None:
        raise CannotAct("That fact is no longer in the log; look again.")
    return found


def _place(words: str, quote: str) -> tuple[int, int]:
    if not quote.strip():
        return 0, len(words)
    start = words.casefold().find(" ".join(quote.split()).casefold())
    if start < 0:
        raise CannotAct(f"“{quote}” is not in the note.")
    return start, start + len(" ".join(quote.split()))


def _words(words: str, key: FactKey) -> str:
    return words[key.start : key.end]


def _say(fact: Fact) -> str:
    from worklog_tui.reports.sentence import briefly

    return briefly(fact)
