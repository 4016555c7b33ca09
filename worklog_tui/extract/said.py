"""Whether the words from a token on are one of a list of small words: no classes, asked for where they stand."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.word_lists import OPENS


def opening(scene: Scene, *names: str) -> list[int]:
    """The tokens, in order, with which words of one of these lists of `BEGINNING` begin."""
    if (found := scene.openings) is None:
        found = scene.openings = _openings(scene)
    if found.keys().isdisjoint(names):  # most sentences hold none of them
        return []
    lists = [found[name] for name in names if name in found]
    return sorted(set().union(*lists)) if len(lists) > 1 else lists[0]


def _openings(scene: Scene) -> dict[str, list[int]]:
    """Name of a list -> the tokens with which its words begin; without the lists of which none stands here."""
    of, starts = scene.book.beginnings
    tokens, firsts = scene.tokens, scene.firsts()
    found: dict[str, list[int]] = {}
    for k in [k for k, token in enumerate(tokens) if token.low in starts]:
        words, end = tokens[k].low, k + 1
        while True:
            for name in of.get(words, ()):
                found.setdefault(name, []).append(k)
            if end == len(firsts) or (more := f"{words} {firsts[end]}") not in starts:
                break
            words, end = more if firsts[end] == tokens[end].low else f"{words} {tokens[end].low}", end + 1
    return found


def says(scene: Scene, name: str, k: int, longest: int = 3) -> int:
    """How many tokens from token k on are one of the words of a list; 0 for none. The longest counts."""
    opened = scene.opened or opened_by(scene)
    if k >= len(opened) or name not in opened[k]:
        return 0
    words, tokens = scene.book.owed[name], scene.tokens
    said = tokens[k].low
    found = int(said in words)
    for n, token in enumerate(tokens[k + 1 : k + longest], 2):
        said = f"{said} {token.low}"
        if said in words:
            found = n
    return found


def opened_by(scene: Scene) -> list[frozenset[str]]:
    """For each token the names of the lists with whose words its first word begins: most begin none."""
    if (found := scene.opened) is None:
        opens = scene.book.answers(_opens)
        found = scene.opened = [opens[first] for first in scene.firsts()]
    return found


def _opens(book: Rulebook, first: str) -> frozenset[str]:
    """The names of the lists with whose words a word begins."""
    return frozenset(name[1:] for name, firsts in book.owed.items() if name[0] == OPENS and first in firsts)
