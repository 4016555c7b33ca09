"""What is published of a machine, through the one gate that keeps private things back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from worklog_tui.model import History
from worklog_tui.reports.left_out import Gate, LeftOut
from worklog_tui.reports.material import Material
from worklog_tui.reports.repair_log import RepairLog
from worklog_tui.rulebook.uncollected import uncollected

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.reports.hand_over import HandOver


class NoSuchSession(ValueError):
    """A session that the machine does not have; the message is a plain sentence."""


@dataclass(frozen=True, slots=True)
class Published:
    """What may go out, and how much stayed behind."""

    material: Material
    gate: Gate
    left_out: LeftOut

    def log(self) -> RepairLog:
        """The repair log."""
        from worklog_tui.reports.build_log import repair_log

        with uncollected():
            return repair_log(self.material, self.gate, self.left_out)

    def hand_over(self) -> HandOver:
        """The sheet for the next owner."""
        from worklog_tui.reports.hand_over import hand_over

        return self.gate.words_only(hand_over(self.material, self.log(), self.gate.words))

    def film_text(self, chapters: Sequence[Sequence[str]]) -> str:
        """The text below a film with these blocks of chapter lines."""
        from worklog_tui.reports.film_text import description

        return description(self.log(), chapters, self.closing())

    def tried(self) -> str:
        """What was tried, and what was heard after it."""
        from worklog_tui.reports.film_text import tried_text
        from worklog_tui.reports.tried import tried

        return tried_text(self.gate.words_only(tried(self.material)))

    def closing(self) -> str:
        """What stands below every page."""
        from worklog_tui.reports.log_cautions import closing

        return closing(self.material)


def calendar(desk: Desk, machine: str | None) -> tuple[bytes, int]:
    """The calendar of a machine, or of all, and how many entries it has."""
    from worklog_tui.bench.machines import machines
    from worklog_tui.reports.calendar import calendar_file
    from worklog_tui.reports.dates import Dated, dated

    now, rows = desk.now(), list[Dated]()
    for name in [machine] if machine is not None else [one.name for one in machines(desk)]:
        found = published(desk, name)
        rows += found.gate.words_only(dated(found.material, now))
    return calendar_file(rows, now), len(rows)


def published(desk: Desk, machine: str, sessions: tuple[int, int] | None = None) -> Published:
    """What may be published of a machine, of all its sessions or from one to another (counted from 1)."""
    from worklog_tui.bench.history import history

    return from_history(desk, history(desk, machine), sessions)


def from_history(desk: Desk, whole: History, sessions: tuple[int, int] | None) -> Published:
    """The same for a history that is at hand."""
    with uncollected():
        gate = gate_of(desk)
        known, left_out = gate.history(whole)
        return _published(desk, gate, known, left_out, sessions)


def gate_of(desk: Desk) -> Gate:
    """The gate by the files of publishing words, the shipped one and the person's own."""
    from worklog_tui.bench.private_notes import private_notes
    from worklog_tui.reports.publishing_words import load_publishing_words

    return Gate(load_publishing_words(desk.grammars), private_notes(desk))


def _published(
    desk: Desk, gate: Gate, known: History, left_out: LeftOut, sessions: tuple[int, int] | None
) -> Published:
    from worklog_tui.bench.review import advice_for, fault_book, of_history

    first, last = _span(known, sessions)
    whole = last == len(known.sessions)
    seen = of_history(desk, _until(known, last))
    items = tuple(gate.all(item) for item in seen.items)
    advice = gate.all(advice_for(desk, seen))
    faults = fault_book(desk.grammars)
    material = Material(seen.history, items, advice, faults, first, seen.comments, whole, _today(desk))
    return Published(material, gate, left_out)


def _span(known: History, sessions: tuple[int, int] | None) -> tuple[int, int]:
    count = len(known.sessions)
    if sessions is None:
        return 1, count
    first, last = sessions
    if not 1 <= first <= last <= count:
        have = "one session" if count == 1 else f"{count} sessions"
        raise NoSuchSession(f"There is no such session: the machine has {have}, counted from 1.")
    return first, last


def _until(known: History, last: int) -> History:
    """The history up to a session; viewers' comments and what was decided later stay out of an earlier state."""
    if last == len(known.sessions):
        return known
    records = known.sessions[:last]
    notes = {note.uid for record in records for note in record.notes}
    acts = tuple(act for act in known.acts if act.target.split("/", 1)[0] in notes)
    return History(known.machine, records, acts, ())


def _today(desk: Desk) -> str:
    from worklog_tui.model import Instant
    from worklog_tui.reports.when import day

    return day(Instant.of(desk.now()))
