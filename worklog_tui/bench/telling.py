"""Long reading that says how far it is, and can be stopped before anything of it is written."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk
    from worklog_tui.bench.reading import Changes, Context, Reader
    from worklog_tui.model import Machine, Note

Told = Callable[[int], bool]
"Called with how many notes are read; False stops the reading."


class Stopped(BaseException):
    """The person stopped it. No slip of a grammar: what mends those lets it through."""


class TellingReader:
    """A reader that tells after every note how many it has read."""

    def __init__(self, reader: Reader, told: Told) -> None:
        self._reader, self._told, self._count = reader, told, 0

    @property
    def stamp(self) -> str:
        """That of the reader."""
        return self._reader.stamp

    @property
    def confidence_line(self) -> float:
        """That of the reader."""
        return self._reader.confidence_line

    def start(self) -> Context:
        """That of the reader."""
        return self._reader.start()

    def resume(self, text: str) -> Context:
        """That of the reader."""
        return self._reader.resume(text)

    def feed(self, machine: Machine, context: Any, note: Note) -> tuple[Context, Changes]:
        """As the reader; raises Stopped when the reading is to stop."""
        self._count += 1
        if not self._told(self._count):
            raise Stopped
        return self._reader.feed(machine, context, note)


def telling(desk: Desk, told: Told) -> Desk:
    """A desk whose reading says how far it is."""
    return replace(desk, reads_with=TellingReader(desk.reader(), told))
