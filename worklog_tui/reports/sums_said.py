"""Sums of money that were said: for the person's own eyes, and kept out of everything that is published."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model import History, Place
from worklog_tui.reports.left_out import Gate


@dataclass(frozen=True, slots=True)
class SumSaid:
    """One sum, and the line that tells what it was for."""

    text: str
    place: Place
    told: str


def sums_said(history: History, gate: Gate) -> tuple[SumSaid, ...]:
    """Every sum in the notes, in the order of the log, by the very rule that leaves sums out of what is published."""
    return tuple(
        SumSaid(note.words[start:end], history.place(note.uid), note.words)
        for record in history.sessions
        for note in record.notes
        for start, end, kind in gate.gaps(note.words)
        if kind == "sum"
    )
