"""A history as a test tells it: sessions, lines, and the facts of each. The machine is a village hall organ blower."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.model import (
    Act,
    Comment,
    Fact,
    Finding,
    FollowUp,
    History,
    Instant,
    Machine,
    Note,
    OpenItem,
    Reading,
    Session,
    SessionRecord,
    Span,
    Suspect,
    Value,
    Work,
)

BLOWER = Machine("Organ blower", kind="belt-driven organ blower with a single-cylinder petrol engine", fuel="petrol")
_NOWHERE = Span("", 0, 0)


def bad(part: str, condition: str, name: str = "") -> Finding:
    return Finding(main=_NOWHERE, part=part, condition=condition, verdict="bad", name=name)


def good(part: str, condition: str, name: str = "") -> Finding:
    return Finding(main=_NOWHERE, part=part, condition=condition, verdict="good", name=name)


def did(action: str, part: str, used: str = "", name: str = "") -> Work:
    return Work(main=_NOWHERE, action=action, part=part, used=used, name=name)


def later(topic: str, reason: str, name: str = "") -> FollowUp:
    return FollowUp(main=_NOWHERE, topic=topic, reason=reason, name=name)


def suspects(cause: str, standing: str = "suspected") -> Suspect:
    return Suspect(main=_NOWHERE, cause=cause, standing=standing)


def read(quantity: str, value: Value, unit: str, subject: str, role: str = "measured", condition: str = "") -> Reading:
    return Reading(
        main=_NOWHERE, quantity=quantity, value=value, unit=unit, subject=subject, role=role, condition=condition
    )


class Told:
    """A history in the making."""

    def __init__(self, machine: Machine = BLOWER) -> None:
        self.machine = machine
        self._sessions: list[list[tuple[Note, tuple[Fact, ...]]]] = [[]]

    def session(self) -> Told:
        """The next session begins."""
        self._sessions.append([])
        return self

    def say(self, words: str, *facts: Fact) -> Told:
        """One line, with what was understood of it in the order said."""
        number, line = len(self._sessions), len(self._sessions[-1])
        uid = f"s{number}n{line}"
        note = Note(uid, f"s{number}", words, line * 60, f"{line}:00", "live", line)
        placed = tuple(
            replace(fact, main=Span(uid, n * 10, n * 10 + 9), quote=words) for n, fact in enumerate(facts)
        )  # fmt: skip
        self._sessions[-1].append((note, placed))
        return self

    def quiet(self, lines: int = 4) -> Told:
        """Lines without facts."""
        for n in range(lines):
            self.say(f"nothing to report {n}")
        return self

    def history(self, acts: Sequence[Act] = (), comments: Sequence[Comment] = ()) -> History:
        """What was told so far."""
        records = []
        for number, rows in enumerate(self._sessions, 1):
            start = Instant(f"2031-04-{number:02}T09:00:00Z", known="header")
            session = Session(f"s{number}", self.machine.uid, start, "import", number)
            facts = tuple(fact for _, placed in rows for fact in placed)
            records.append(SessionRecord(session, tuple(note for note, _ in rows), facts))
        return History(self.machine, tuple(records), tuple(acts), tuple(comments))


def states(items: Sequence[OpenItem]) -> dict[str, str]:
    """What became of each item, by what it is about."""
    return {item.about: item.state for item in items}
