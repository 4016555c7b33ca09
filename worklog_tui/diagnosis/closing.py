"""Where the last session sums up, and which of its notes speak of what comes next."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.diagnosis.log import Log
from worklog_tui.diagnosis.wording import Wording
from worklog_tui.diagnosis.words import spoken
from worklog_tui.model import Note

CLOSING = 8
"How many of the last notes are taken for the summing-up when no words mark it (judgement)."


@dataclass(frozen=True, slots=True)
class Closing:
    """The end of the last session: where the summing-up begins, and which of its notes speak of what comes next."""

    start: float
    plan: frozenset[str]
    notes: frozenset[str]
    listed: frozenset[str]
    "The notes that list what is left in so many words."


def closing_of(log: Log, wording: Wording) -> Closing:
    """Where the last session sums up: from the first of its last notes that lists what is left, else the last few."""
    notes = log.ending_notes
    tail = notes[-max(CLOSING, len(notes) // 6) :]
    listing = [n for n in tail if _has(n, wording.lists.get("listing", ()))]
    from_note = listing[0] if listing else tail[max(0, len(tail) - CLOSING)] if tail else None
    start = log.history.place(from_note.uid).order if from_note else 0.0
    kept = [n for n in notes if log.history.place(n.uid).order >= start]
    late = notes[-max(CLOSING, len(notes) // 4) :]
    plan = [n for n in late if _has(n, wording.lists.get("plan", ()))]
    said = [n.uid for n in tail if _has(n, wording.lists.get("lists", ()))]
    return Closing(start, frozenset(n.uid for n in plan), frozenset(n.uid for n in kept), frozenset(said))


def _has(note: Note, sayings: Sequence[str]) -> bool:
    text = f" {spoken(note.words)} "
    return any(f" {s} " in text or f" {s.rstrip(':')}: " in text for s in sayings)
