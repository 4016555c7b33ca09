"""Whether the words from a token on are one of a list of small words: no classes, asked for where they stand."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.rulebook.word_lists import BEGINNING, OPENS


def opening(scene: Scene, *names: str) -> list[int]:
    """The tokens, in order, with which words of one of these lists of `BEGINNING` begin."""
    found = scene.once(("opening",), lambda: _openings(scene))
    return found[names[0]] if len(names) == 1 else sorted({k for name in names for k in found[name]})


def _openings(scene: Scene) -> dict[str, list[int]]:
    """Name of a list -> the tokens with which its words begin."""
    of, starts = scene.book.beginnings
    firsts = scene.firsts()
    found: dict[str, list[int]] = {name: [] for name in BEGINNING}
    for k in [k for k, token in enumerate(scene.tokens) if token.low in starts]:
        words, end = scene.tokens[k].low, k + 1
        while True:
            for name in of.get(words, ()):
                found[name].append(k)
            if end == len(firsts) or f"{words} {firsts[end]}" not in starts:
                break
            words, end = f"{words} {scene.tokens[end].low}", end + 1
    return found


def says(scene: Scene, name: str, k: int, longest: int = 3) -> int:
    """How many tokens from token k on are one of the words of a list; 0 for none. The longest counts."""
    owed, firsts = scene.book.owed, scene.firsts()
    if k >= len(firsts) or firsts[k] not in owed[OPENS + name]:
        return 0
    words, lows = owed[name], [t.low for t in scene.tokens[k : k + longest]]
    return next((n for n in range(len(lows), 0, -1) if " ".join(lows[:n]) in words), 0)
