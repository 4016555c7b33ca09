"""The words of a note and what was read from them, each a row that can be put right."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Protocol

from worklog_tui.model import Fact, Finding, Note, Reading, Suspect, Work
from worklog_tui.reports.sentence import DONE, amount, sentence
from worklog_tui.widgets.log_rows import marks_in, time_of
from worklog_tui.widgets.row import Row
from worklog_tui.widgets.rows import Rows

ASKED = "What it should be"
_FIELDS = {
    "reading": ("value", "subject", "condition"), "finding": ("part", "condition"), "work": ("part", "action", "used"),
    "suspect": ("cause",), "follow_up": ("topic",), "trait": ("trait", "value"), "number": ("number", "of"),
}  # fmt: skip
"What a person may change of each kind, most often wrong first."
LABELS = {
    "value": "how much", "subject": "of what", "condition": "how, in what state", "part": "which part", "used": "with",
    "action": "what was done",
    "cause": "cause", "topic": "what", "trait": "what", "number": "number", "of": "of what",
}  # fmt: skip
_STANDING = {"bad": "confirmed", "good": "ruled out", "noted": "suspected"}


class NoteTold(Protocol):
    """A note with what was read from it."""

    @property
    def note(self) -> Note:
        """The note."""

    @property
    def sure(self) -> Sequence[Fact]:
        """What was read with confidence."""

    @property
    def asked(self) -> Sequence[Fact]:
        """What is doubtful."""

    @property
    def earlier(self) -> Sequence[str]:
        """Wordings that it had before."""


class NoteRows(Rows):
    """The words first, then each fact."""

    def __init__(self) -> None:
        super().__init__("Looking at the note …")
        self.words = ""
        self._facts: dict[str, Fact] = {}

    @property
    def fact(self) -> Fact | None:
        """The fact pointed at."""
        return self._facts.get(self.row.key) if self.row is not None else None

    @property
    def on_words(self) -> bool:
        """Whether the words of the note are pointed at."""
        return self.row is not None and self.row.key == "words"

    def show_note(self, told: NoteTold) -> None:
        """Show a note; the row pointed at stays, at first the first fact."""
        fresh = not self.rows
        self.words = told.note.words
        marks = marks_in(told.sure, told.note.uid)
        before = "; ".join(f"before: “{words}”" for words in told.earlier)
        rows = [Row.of(told.note.words, margin=time_of(told.note), marks=marks, below=before, key="words")]
        self._facts = {}
        for fact, doubt in [*((one, False) for one in told.sure), *((one, True) for one in told.asked)]:
            key = f"fact {len(self._facts)}"
            self._facts[key] = fact
            said = f"Not sure: {sentence(fact)}? y: it is right, x: it is not" if doubt else sentence(fact)
            rows.append(Row.of(said, below=_whence(fact), key=key))
        if not self._facts:
            rows.append(Row.of("Nothing was read from these words. a: add what they tell."))
        self.show(rows)
        if fresh and self._facts:
            self.point(1)


def _whence(fact: Fact) -> str:
    """The words that it was read from, or that were typed when it was added."""
    if fact.by_hand and fact.main.start == fact.main.end:
        return f"added by hand: “{fact.quote}”" if fact.quote else "added by hand"
    return f"from the words “{fact.quote}”" if fact.quote else ""


def fields_of(fact: Fact) -> dict[str, str]:
    """What of a fact can be changed, as it stands now."""
    found = {name: getattr(fact, name, "") for name in _FIELDS.get(fact.kind, ())}
    if isinstance(fact, Reading):
        found["value"] = amount(fact.value, fact.unit)
    if isinstance(fact, Work):
        found["action"] = DONE.get(fact.action, fact.action)
    return {name: str(value) for name, value in found.items()}


def judged(fact: Fact, verdict: str) -> dict[str, Any] | None:
    """What makes a finding bad, good or only noted, a cause found, ruled out or suspected; None for other facts."""
    if isinstance(fact, Finding):
        return {"verdict": verdict}
    return {"standing": _STANDING[verdict]} if isinstance(fact, Suspect) else None
