"""What the readers of threads share: a thread as designated, and the words beside it."""

from __future__ import annotations

from dataclasses import dataclass

from worklog_tui.extract.heard.words import Word

NEAR = 3
"Words within which a word of threads makes a bare pair of numbers a thread."


@dataclass(frozen=True, slots=True)
class Thread:
    """A thread as designated ("1/4-20", "5/16 BSW", "M8x1.25", "2 BA") and the index of the word after it."""

    designation: str
    end: int


def word_at(words: list[Word], i: int) -> str:
    """A word that stands directly at the one before it; empty where there is none."""
    return words[i].low if i < len(words) and words[i].gap in ("", "-") else ""


def near(words: list[Word], i: int, end: int, wanted: frozenset[str]) -> bool:
    """One of these words stands within three words of the thread."""
    around = (*words[max(i - NEAR, 0) : i], *words[end : end + NEAR])
    return any(w.low in wanted for w in around)
