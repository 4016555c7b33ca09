"""What is asked of single words, kept: a talk says the same few hundred words again and again."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from worklog_tui.rulebook.book import Rulebook

T = TypeVar("T")
MOST = 4000
"So many words are kept of each question; more are not said again and again."


class Answers(dict[str, T]):
    """The answers to one question, each worked out when the word is first asked for."""

    def __init__(self, book: Rulebook, work: Callable[[Rulebook, str], T]) -> None:
        super().__init__()
        self._book, self._work = book, work

    def __missing__(self, low: str) -> T:
        if len(self) >= MOST:
            self.clear()
        answer = self[low] = self._work(self._book, low)
        return answer
