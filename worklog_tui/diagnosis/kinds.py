"""The kinds of parts, found by what a part's name ends with: the start relay is a relay."""

from __future__ import annotations

import re
from collections.abc import Iterable

from worklog_tui.diagnosis.words import tokens
from worklog_tui.rulebook.fault_nouns import Kind

LAST = 3
"A kind is told by at most so many last words of a name."
_BEHIND = re.compile(r"\s(?:of|in|on|for|at|from|under|behind|is|are|has|have|was|may|might)\s")


class Kinds:
    """All kinds of parts, by their words."""

    def __init__(self, kinds: Iterable[Kind]) -> None:
        self.all = tuple(kinds)
        self._by_words = {tokens(w): kind for kind in self.all for w in kind.words}

    def of(self, thing: str) -> Kind | None:
        """The kind that a name ends with, the longest ending first; what stands behind `of`, `in` … does not count."""
        said = tokens(_BEHIND.split(f"{thing} ")[0])
        for n in range(min(LAST, len(said)), 0, -1):
            if found := self._by_words.get(said[-n:]):
                return found
        return None
