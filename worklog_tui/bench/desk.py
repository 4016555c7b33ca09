"""The desk: what every use-case needs from outside, wired in one place."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from worklog_tui.bench.reading import Reader
    from worklog_tui.model import Instant, Machine
    from worklog_tui.rulebook import Rulebook

_LOADING = Lock()
"Two threads that want the rulebook load it once."


@dataclass(frozen=True)
class Desk:
    """The logbook, the grammars, the clock and the chance that the use-cases work with."""

    logbook: Path
    grammars: tuple[Path, ...]
    now: Callable[[], datetime]
    "The wall clock, with its offset from UTC."
    device: str
    "Names this computer's acts."
    chance: Callable[[], int]
    "74 random bits."
    quiet_hours: float = 4.0
    "After so many hours without a note a new session begins."
    patience: float = 2.0
    "Seconds to wait for another writer before a note goes to the spool."
    cache: Path | None = None
    "Where the compiled grammar may be kept."
    settings: Path | None = None
    "Where it stands what the person chose once; None where nothing is to be remembered."
    at_home: Callable[[datetime], datetime] = datetime.astimezone
    "Gives a time without an offset, as a header writes it, the offset of this place on that day."
    reads_with: Reader | None = None
    "Another reader than that of the grammars."
    _kept: dict[str, object] = field(default_factory=dict, compare=False, repr=False)

    def book(self) -> Rulebook:
        """The rulebook of the grammars, loaded when it is first asked for."""
        from worklog_tui.rulebook import Rulebook, load

        with _LOADING:
            if "book" not in self._kept:
                self._kept["book"] = load(self.grammars, self.cache)
        book = self._kept["book"]
        assert isinstance(book, Rulebook)
        return book

    @property
    def can_read(self) -> bool:
        """Whether notes can be read at once; else the grammars must be loaded first, which may take a while."""
        return self.reads_with is not None or "book" in self._kept

    def remember(self, what: str, value: object) -> None:
        """Keep a value for the next use-case at this desk; whoever recalls it must check that it still holds."""
        self._kept[what] = value

    def recall(self, what: str) -> object:
        """What was kept under that name; None when nothing was."""
        return self._kept.get(what)

    def reader(self) -> Reader:
        """What reads the notes."""
        if self.reads_with is not None:
            return self.reads_with
        from worklog_tui.bench.reading import GrammarReader

        return GrammarReader(self.book())

    def confidence_line(self) -> float:
        """Facts below it are questions."""
        if self.reads_with is not None:
            return self.reads_with.confidence_line
        from worklog_tui.extract import CONFIDENCE_LINE

        return CONFIDENCE_LINE

    def stamp(self, machine: Machine) -> str:
        """What facts depend on besides the notes: the grammars and the machine's card."""
        import hashlib

        from worklog_tui.store.rows import card

        return hashlib.sha256(f"{self.reader().stamp}\n{card(machine)}".encode()).hexdigest()

    def uid(self, later: int = 0) -> str:
        """A new uid, `later` milliseconds after now."""
        from worklog_tui.model.ids import uuid7

        return uuid7(int(self.now().timestamp() * 1000) + later, self.chance())

    def instant(self) -> Instant:
        """Now."""
        from worklog_tui.model import Instant

        moment = self.now()
        return Instant.of(moment, getattr(moment.tzinfo, "key", ""))


def open_desk(logbook: Path | None = None) -> Desk:
    """The desk with the real clock, places and chance; the file is made by the first entry."""
    from worklog_tui import places
    from worklog_tui.model.ids import uuid7
    from worklog_tui.store import device_of

    path = (logbook or places.logbook()).absolute()
    device = device_of(path, uuid7(0, _chance()))
    return Desk(
        path, (places.grammars(), places.own_grammars()), _now, device, _chance, cache=places.cache(),
        settings=places.settings(),
    )  # fmt: skip


def _now() -> datetime:
    return datetime.now().astimezone()


def _chance() -> int:
    return int.from_bytes(os.urandom(10)) >> 6
