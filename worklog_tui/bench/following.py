"""Lines that another program writes, dictation for one, become notes as they come."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import IO, TYPE_CHECKING

from worklog_tui.bench.live import Kept, NoWords, keep_note

if TYPE_CHECKING:
    from worklog_tui.bench.desk import Desk

PAUSE = 0.25
"Seconds between two looks at a file."
LONGEST = 100_000
"Bytes of one line; a longer one is cut there."


def follow(desk: Desk, machine: str, lines: Iterator[str], told: Callable[[Kept], None] | None = None) -> int:
    """Keep every line as a note; each is on the disk before the next is read. Gives how many were kept.

    While another program writes to the logbook, a note waits beside it, as safe as in it.
    """
    count = 0
    for line in lines:
        try:
            kept = keep_note(desk, machine, line)
        except NoWords:
            continue
        count += 1
        if told is not None:
            told(kept)
    return count


def lines_of_stream(stream: IO[bytes]) -> Iterator[str]:
    """The lines of a pipe or a terminal, as they come; what stands behind the last line end counts as a line."""
    while line := stream.readline(LONGEST):
        yield line.decode("utf-8", "replace")


def lines_of_file(path: Path, from_start: bool = False, goes_on: Callable[[], bool] = lambda: True) -> Iterator[str]:
    """The lines that are added to a file from now on; `from_start`: those that are in it too.

    A file that is not there yet is waited for; one that was cut or replaced is read from its start.
    """
    at = 0 if from_start or not path.exists() else path.stat().st_size
    left = b""
    while goes_on():
        fresh = _read(path, at)
        if fresh is None:
            at, left = 0, b""
        elif fresh:
            at += len(fresh)
            *whole, left = (left + fresh).split(b"\n")
            yield from (line.decode("utf-8", "replace") for line in whole)
            left = left[:LONGEST]
            continue
        time.sleep(PAUSE)


def _read(path: Path, at: int) -> bytes | None:
    """What stands in a file behind a place; None when the file is gone or shorter than that."""
    try:
        if path.stat().st_size < at:
            return None
        with path.open("rb") as file:
            file.seek(at)
            return file.read(1 << 20)
    except FileNotFoundError:
        return None if at else b""
