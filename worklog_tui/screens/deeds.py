"""What a person can do to the log, as calls on the bench that load what they need only when they are made."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from worklog_tui.bench.acting import Done
    from worklog_tui.bench.desk import Desk
    from worklog_tui.logbook.outcomes import Question
    from worklog_tui.model import Fact, FactKey, Instant, Machine, OpenItem

Deed = Callable[["Desk"], "Done"]


def undo(desk: Desk) -> Done:
    """Take back what was done last."""
    from worklog_tui.bench import undoing

    return undoing.undo(desk)


def redo(desk: Desk) -> Done:
    """Do again what was taken back."""
    from worklog_tui.bench import undoing

    return undoing.redo(desk)


def edit(note: str, words: str) -> Deed:
    """Give a note other words."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.note_acts import edit_note

        return edit_note(desk, note, words)

    return deed


def strike(note: str) -> Deed:
    """Strike a note out."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.note_acts import strike_notes

        return strike_notes(desk, [note])

    return deed


def places_in_film(session: str, text: str) -> Deed:
    """Give the notes of a session their places in the film whose captions the text is."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import filming

        return filming.places_in_film(desk, session, text)

    return deed


def filmed_on(session: str, when: str | Instant) -> Deed:
    """Say when the film was shot whose captions a session is: a day in words, or a moment that is known."""

    def deed(desk: Desk) -> Done:
        from dataclasses import replace

        from worklog_tui.bench import lines, session_acts

        start = lines.moment(desk, when) if isinstance(when, str) else replace(when, known="assumed")
        return session_acts.date_session(desk, session, start)

    return deed


def over_lines(what: str, notes: Sequence[str], *given: str) -> Deed:
    """One act over a run of lines: `subject`, `machine`, `seconds`, `word` or `strike`."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import fact_acts, lines, note_acts, session_acts

        calls: dict[str, Callable[..., Done]] = {
            "subject": fact_acts.set_subject, "machine": session_acts.move_lines, "word": note_acts.mend_word,
            "seconds": lambda *a: session_acts.shift_lines(a[0], a[1], lines.seconds(a[2])),
            "strike": note_acts.strike_notes,
            "day": lambda *a: session_acts.date_lines(a[0], a[1], lines.moment(a[0], a[2])),
        }  # fmt: skip
        return calls[what](desk, notes, *given)

    return deed


def divide(note: str) -> Deed:
    """Have a session of its own begin with a note."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import session_acts

        return session_acts.split_session(desk, note)

    return deed


def join(session: str, before: str) -> Deed:
    """Make a session and the one before it one."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import session_acts

        return session_acts.join_sessions(desk, before, session)

    return deed


def correct(fact: Fact, changes: Mapping[str, Any]) -> Deed:
    """Give a fact other values; a value of a reading comes as it was typed, with its unit or without."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.fact_acts import correct_fact
        from worklog_tui.bench.typed_value import with_value

        return correct_fact(desk, fact.key, with_value(desk, fact, changes))

    return deed


def strike_fact(key: FactKey) -> Deed:
    """Strike out what was read."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import fact_acts

        return fact_acts.strike_fact(desk, key)

    return deed


def add_heard(note: str, words: str) -> Deed:
    """Add to a note what is read from other words of the person's own."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import said_by_hand

        return said_by_hand.add_heard(desk, note, words)

    return deed


def add_told(note: str, kind: str, told: Mapping[str, str]) -> Deed:
    """Add a fact of a kind to a note, told field by field."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import said_by_hand

        return said_by_hand.add_told(desk, note, kind, told)

    return deed


def confirm(key: FactKey) -> Deed:
    """Say that a doubtful reading of the words is right."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import fact_acts

        return fact_acts.confirm_fact(desk, key)

    return deed


def item(what: str, machine: str, one: OpenItem) -> Deed:
    """Something with an open item: `mark_done`, `leave_so`, `reopen` or `set_awaited`."""
    return partial(_item, what, machine, one)


def _item(what: str, machine: str, one: OpenItem, desk: Desk) -> Done:
    from worklog_tui.bench import item_acts

    calls = {
        "mark_done": item_acts.mark_done, "leave_so": item_acts.leave_so, "reopen": item_acts.reopen,
        "set_awaited": item_acts.set_awaited,
    }  # fmt: skip
    return calls[what](desk, machine, one)


def same_item(machine: str, one: OpenItem, other: OpenItem) -> Deed:
    """Say that two open items are one."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.item_acts import merge_items

        return merge_items(desk, machine, one, other)

    return deed


def new_item(machine: str, about: str) -> Deed:
    """Something to come back to that nobody said."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.item_acts import add_item

        return add_item(desk, machine, about)

    return deed


def answer(machine: str, question: Question, said: str) -> Deed:
    """Answer a question of closing up."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench import answering

        return answering.answer(desk, machine, question, said)

    return deed


def figure(machine: Machine, told: Mapping[str, str], was: str = "") -> Deed:
    """Put on the card what a figure should be, in place of the one called `was`; without a text it comes off."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.figures import Figure, set_figure

        return set_figure(desk, machine.uid, Figure(**told), was)

    return deed


def card(machine: Machine) -> Deed:
    """Give a machine that is there another card."""

    def deed(desk: Desk) -> Done:
        from worklog_tui.bench.machines import change_card

        return change_card(desk, machine)

    return deed
