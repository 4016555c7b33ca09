"""Whether the words from a token on are one of a list of small words: no classes, asked for where they stand."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.rulebook.word_lists import OPENS

MOST = 256
"Rows that are kept of `_openers`."
LONGEST = 5
"Tokens that words of a list may take at most."


_openers: dict[tuple[str, tuple[str, ...]], frozenset[str]] = {}
"The first words of several lists together, by the stamp of the rulebook and the names."


def opening(scene: Scene, *names: str) -> list[int]:
    """The tokens, in order, at which one of the words of the lists may begin."""
    key = scene.book.stamp, names
    if (opens := _openers.get(key)) is None:
        if len(_openers) > MOST:
            _openers.clear()
        opens = _openers[key] = frozenset().union(*(scene.book.owed[OPENS + name] for name in names))
    firsts = scene.firsts()
    return [] if opens.isdisjoint(firsts) else [k for k, first in enumerate(firsts) if first in opens]


def says(scene: Scene, name: str, k: int, longest: int = 3) -> int:
    """How many tokens from token k on are one of the words of a list; 0 for none. The longest counts."""
    words, tokens = scene.book.owed[name], scene.tokens
    if k >= len(tokens) or scene.firsts()[k] not in scene.book.owed[OPENS + name]:
        return 0
    for n in range(min(longest, len(tokens) - k), 0, -1):
        if " ".join(t.low for t in tokens[k : k + n]) in words:
            return n
    return 0
