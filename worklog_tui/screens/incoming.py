"""What comes from the keyboard, parted into keys and pastes before anything reads it.

A paste is collected whole: nothing in it, whatever signs it holds, is ever taken for a key. Terminals mark a paste
(`ESC [ 200 ~` before, `ESC [ 201 ~` behind); where they do not, many signs that come at once are a paste too.
"""

from __future__ import annotations

import re
from typing import NamedTuple

BEGINS, ENDS = "\x1b[200~", "\x1b[201~"
QUIET = 0.06
"Seconds of silence behind the end of a paste: what comes sooner was not typed, it belongs to the paste."
SILENCES = 3
"So many looks in a row must find nothing, however late each look came."
CUT_OFF = 1.0
"Seconds of silence after which a paste without an end is taken as it is."
AT_ONCE = 12
"So many signs in one reading were not typed (a fast typist gives fifteen a second)."
_SEQUENCE = re.compile("\x1b(?:\\[[0-?]*[ -/]*[@-~]|O.|[^\\[O])|\x1b")
_REPORTS = re.compile("(?:\x1b\\[(?:<[-0-9;]+[mM]|M...|[IO]|[?0-9;]+(?:\\$y|[Rtuc])))+", re.DOTALL)
"What a terminal says by itself: mouse, focus, answers."


class Piece(NamedTuple):
    """Signs for the key parser, or the words of one paste."""

    text: str
    pasted: bool = False


class Incoming:
    """Takes what was read, gives keys and whole pastes. It has no clock of its own."""

    def __init__(self) -> None:
        self._parts: list[str] | None = None
        "The paste that is being collected; None between pastes."
        self._marked = False
        self._tail = ""
        self._last = 0.0
        self._silences = 0

    @property
    def collecting(self) -> bool:
        """Whether a paste is on its way; call `tick` until it is there."""
        return self._parts is not None

    def feed(self, text: str, now: float) -> list[Piece]:
        """What came at a moment (seconds of any steady clock)."""
        if self._parts is not None:  # only `tick` knows of silence: what is read late may have waited to be read
            self._collect(text, now)
            return []
        before, begin, rest = text.partition(BEGINS)
        if begin:
            found = [Piece(before)] if before else []
            self._begin(rest, True, now)
            return found
        if not came_at_once(text):
            return [Piece(text)]
        head = _SEQUENCE.match(text)
        if head is not None and not _printable(text[: head.end()]):  # a report of the mouse, then the words
            return [Piece(head[0]), *self.feed(text[head.end() :], now)]
        self._begin(text, False, now)
        return []

    def tick(self, now: float) -> list[Piece]:
        """Nothing came just now: gives the paste when it has been quiet for long enough behind it."""
        self._silences += 1
        return self._finish() if self._parts is not None and self._ended(now) else []

    def finish(self) -> list[Piece]:
        """The input has ended: what was collected so far."""
        return self._finish() if self._parts is not None else []

    def _begin(self, text: str, marked: bool, now: float) -> None:
        self._parts, self._marked, self._tail = [], marked, ""
        self._collect(text, now)

    def _collect(self, text: str, now: float) -> None:
        assert self._parts is not None
        self._parts.append(text)
        self._tail = (self._tail + text)[-400:]
        self._last, self._silences = now, 0

    def _ended(self, now: float) -> bool:
        complete = not self._marked or ENDS in self._tail
        return self._silences >= SILENCES and now - self._last >= (QUIET if complete else CUT_OFF)

    def _finish(self) -> list[Piece]:
        text, self._parts = "".join(self._parts or ()), None
        after = ""
        if self._marked:
            body, end, rest = text.rpartition(ENDS)
            if end and (not rest or _REPORTS.fullmatch(rest)):
                text, after = body, rest
            text = text.replace(BEGINS, "").replace(ENDS, "")
        elif "\n" not in (line := text.rstrip("\r\n").replace("\r", "\n")) and line != text:
            text, after = line, "\r"  # one line and Enter, as a script types it
        found = [Piece(text.replace("\x00", ""), pasted=True)] if text else []
        return [*found, Piece(after)] if after else found


def came_at_once(text: str) -> bool:
    """Whether so many plain signs came in one reading that nobody can have typed them."""
    return len(text) >= AT_ONCE and _printable(_SEQUENCE.sub("", text)) >= AT_ONCE


def _printable(text: str) -> int:
    return sum(sign.isprintable() for sign in text[:4096])
