"""The end of the last session as running talk: sentences with their notes, where a thought may break across notes."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from worklog_tui.diagnosis.log import Log
from worklog_tui.model import Note

TAIL = 4
"The share of a session's notes that may hold its summing-up: the last quarter (judgement)."
SHORTEST = 6
"So many last notes belong to the end at least (judgement)."

OPENERS = frozenset({"next", "tomorrow", "tonight", "right", "okay", "ok"})
"A note that begins so begins a thought, capital letter or not."

_ENDS = re.compile(r"[.!?;](?=\s|$)|\s-\s|…")


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence near the end of the log."""

    words: str
    note: Note
    order: float
    "The number of its note in the log, with the place of the words in the note behind the point."
    from_end: int
    "How many notes come after its own."
    asks: bool = False


def tail_of(log: Log, share: int = TAIL) -> Sequence[Note]:
    """The last notes of the last session."""
    notes = log.ending_notes
    return notes[-max(SHORTEST, len(notes) // share) :]


def end_of(log: Log, share: int = TAIL) -> Sequence[Sentence]:
    """The sentences of the last notes, in order; one that a note leaves open goes on in the next."""
    if share not in log.tails:
        log.tails[share] = _sentences(log, share)
    return log.tails[share]


def _sentences(log: Log, share: int) -> list[Sentence]:
    notes = tail_of(log, share)
    found: list[Sentence] = []
    kept, first = "", None
    for n, note in enumerate(notes):
        order, start = float(log.history.place(note.uid).order), 0
        for end in [*(m.end() for m in _ENDS.finditer(note.words)), len(note.words)]:
            piece = note.words[start:end].strip()
            if piece:
                begun = first or Sentence("", note, order + start / 100_000, len(notes) - 1 - n)
                kept, first = f"{kept} {piece}".strip(), begun
                if _ENDS.search(piece[-2:]) or len(kept) > 300:
                    found.append(_made(kept, begun))
                    kept, first = "", None
            start = end
        after = notes[n + 1] if n + 1 < len(notes) and notes[n + 1].session == note.session else None
        if kept and first and not _goes_on(kept, after.words if after else ""):
            found.append(_made(kept, first))
            kept, first = "", None
    return found


def _made(words: str, begun: Sentence) -> Sentence:
    plain = words.strip(" -…").rstrip(".;!")
    return Sentence(plain.rstrip("?"), begun.note, begun.order, begun.from_end, plain.endswith("?"))


def _goes_on(words: str, after: str) -> bool:
    """Whether a note that ends without a stop goes on in the next, which then begins small."""
    begins = after.replace(",", " ").split(maxsplit=1)[:1]
    return bool(begins) and after[:1].islower() and begins[0] not in OPENERS and len(words.split()) < 40
