"""Whether the words from a token on are one of a list of small words: no classes, asked for where they stand."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.rulebook.word_lists import OPENS

LONGEST = 5
"Tokens that words of a list may take at most."


def firsts(scene: Scene) -> list[str]:
    """The first word of each token."""
    return scene.once(("first words",), lambda: [t.low.partition(" ")[0] for t in scene.tokens])


def opening(scene: Scene, *names: str) -> list[int]:
    """The tokens, in order, at which one of the words of the lists may begin."""
    opens = scene.book.owed[OPENS + names[0]].union(*(scene.book.owed[OPENS + name] for name in names[1:]))
    return [k for k, first in enumerate(firsts(scene)) if first in opens]


def says(scene: Scene, name: str, k: int, longest: int = 3) -> int:
    """How many tokens from token k on are one of the words of a list; 0 for none. The longest counts."""
    words, tokens = scene.book.owed[name], scene.tokens
    if k >= len(tokens) or firsts(scene)[k] not in scene.book.owed[OPENS + name]:
        return 0
    for n in range(min(longest, len(tokens) - k), 0, -1):
        if " ".join(t.low for t in tokens[k : k + n]) in words:
            return n
    return 0
