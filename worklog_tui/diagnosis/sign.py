"""One sign of the log: what was seen or heard of a complaint, a check or a fault, with its moment and its trust."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.diagnosis.hearing import TRUST_MOST
from worklog_tui.diagnosis.log import Event
from worklog_tui.model import Finding, Reading, Suspect


@dataclass(frozen=True, slots=True)
class Sign:
    """One sign of the log: of a complaint, a check or a fault (`of`), with what it showed (`shows`)."""

    sort: str
    "symptom, check, look or hunch (a suspicion of the person that nothing has settled)."
    of: str
    shows: str
    "present or absent; an outcome; bad or good."
    event: Event
    trust: float
    whose: str = ""
    "Of a reading: whose figure it was held against, where that is not the machine's own."

    @property
    def words(self) -> str:
        """The sign in a few words of the speaker."""
        fact = self.event.fact
        if isinstance(fact, Finding):
            return f"{fact.part}: {fact.condition}" if fact.part else fact.condition
        if isinstance(fact, Suspect):
            return f"{fact.cause}: {fact.standing}"
        if isinstance(fact, Reading):
            value = fact.value if not isinstance(fact.value, tuple) else f"{fact.value[0]:g} to {fact.value[1]:g}"
            shown = f"{value:g}" if isinstance(value, float) else value
            beside = f" (held against a figure of the {self.whose})" if self.whose else ""
            return f"{fact.subject or fact.quantity}: {shown} {fact.unit}".rstrip() + beside
        return fact.about


def repeated(before: Sign | None, shows: str, sure: float) -> float:
    """The trust of what was heard again: more than of either alone, and never more than of one good measurement."""
    if before is None or before.shows != shows:
        return sure
    return min(TRUST_MOST, 1 - (1 - before.trust) * (1 - sure))
