"""What a search found: notes with what was read from them, and items."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.model.facts import Fact
from worklog_tui.model.items import OpenItem
from worklog_tui.model.moments import Instant
from worklog_tui.model.note import Note


@dataclass(frozen=True, slots=True)
class Hit:
    """A note that was found, and where it stands."""

    machine: str
    "The name of the machine."
    start: Instant | None
    "When its session began; None when that is not known."
    note: Note
    facts: tuple[Fact, ...] = ()
    "What was read from it."


@dataclass(frozen=True, slots=True)
class ItemHit:
    """An item that was found, and the name of its machine; as it was last worked out."""

    machine: str
    item: OpenItem
