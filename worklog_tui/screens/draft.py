"""Half-typed words, kept in a file beside the logbook until they are a note."""

from __future__ import annotations

import os
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from filelock import BaseFileLock

SLOTS = 8
"So many windows on one machine have a draft of their own."


class Draft:
    """The draft of one window on one machine. Two windows never share one: each holds a lock on its own."""

    def __init__(self, logbook: Path, machine: str) -> None:
        from hashlib import blake2s

        mark = blake2s(machine.encode("utf-8", "replace"), digest_size=6).hexdigest()
        self._stem = f"{logbook.name}.draft-{mark}"
        self._folder = logbook.parent
        self._file: Path | None = None
        self._lock: BaseFileLock | None = None
        self._writing = Lock()
        self.words = ""
        "The words that are to be in the file."

    def take(self) -> str:
        """Take a draft that no other window holds; gives the words that a crash left in it, or none."""
        from filelock import FileLock, Timeout

        for slot in range(1, SLOTS + 1):
            path = self._folder / f"{self._stem}-{slot}.txt"
            lock = FileLock(f"{path}.lock", thread_local=False)
            try:
                lock.acquire(timeout=0)
            except (Timeout, OSError):
                continue
            self._lock, self._file = lock, path
            self.words = _read(path)
            return self.words
        return ""

    def write(self) -> None:
        """Bring the file up to date; safe in any thread. Without a file (a read-only folder) nothing happens."""
        with self._writing:
            if self._file is None:
                return
            try:
                _replace(self._file, self.words)
            except OSError:
                return

    def leave(self) -> None:
        """Write for the last time, and let another window have it."""
        self.write()
        if self._lock is not None and self._file is not None:
            self._lock.release()
            self._file = None


def _read(path: Path) -> str:
    try:
        return path.read_text("utf-8", errors="replace")
    except OSError:
        return ""


def _replace(path: Path, words: str) -> None:
    """Put words into a file in one step, on the disk; no words: no file."""
    if not words:
        path.unlink(missing_ok=True)
        return
    fresh = path.with_suffix(".new")
    with fresh.open("w", encoding="utf-8", errors="replace") as file:
        file.write(words)
        file.flush()
        os.fsync(file.fileno())
    fresh.replace(path)
