"""Words without their vowels: people who type on a bench leave them out, `brkn`, `strnds`, and what is left tells which
word of the vocabulary it is, where one word that is said often has these letters.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterable

from worklog_tui.rulebook import texts
from worklog_tui.rulebook.texts import Texts

Kept = tuple[texts.Packed, tuple[str, ...]]
"Lines of a skeleton and its word, in order, and the first of those kept together."
_VOWELS = re.compile(r"[aeiou]")
_DOUBLED = re.compile(r"(.)\1")
SHORTEST = 3
"Letters that must be left: of two, too many words have them."
OFTEN, PART = 4, 4
"Terms that a word must stand in, and how many times as many as the next word with the same letters (judgement)."


def skeleton(word: str) -> str:
    """What is left of a word in lower case without its vowels but the first letter, a doubled letter told once."""
    plain = _DOUBLED.sub(r"\1", word.replace("ck", "k"))
    return plain[:1] + _VOWELS.sub("", plain[1:])


def is_bare(word: str) -> bool:
    """Whether a word has no vowel, as hardly any whole word has."""
    return len(word) >= SHORTEST and word.isascii() and word.isalpha() and not set(word) & set("aeiouy")


def packed(terms: Iterable[str]) -> Kept:
    """The words of a vocabulary by their skeletons, where one of them stands out."""
    many = Counter(w for term in terms for w in term.split() if len(w) > SHORTEST and w.isascii() and w.isalpha())
    found: dict[str, list[tuple[int, str]]] = defaultdict(list)
    for word, times in many.items():
        if _VOWELS.search(word, 1) and len(left := skeleton(word)) >= SHORTEST:
            found[left].append((times, word))
    lines = texts.packed(sorted(f"{left} {word}" for left, ways in found.items() if (word := _standing_out(ways))))
    return lines, Texts(lines).heads()


def _standing_out(ways: list[tuple[int, str]]) -> str:
    """The word that is said far more often than the others; empty where none is."""
    (times, word), *others = sorted(ways, key=lambda way: (-way[0], way[1]))
    rest = others[0][0] if others else 0
    return word if times >= max(OFTEN, PART * rest) else ""


class Skeletons:
    """Which word the letters are of."""

    def __init__(self, kept: Kept) -> None:
        lines, self._heads = kept
        self._lines = Texts(lines)

    def get(self, bare: str) -> str:
        """The word of the vocabulary that a bare word shortens; empty where there is none."""
        left = f"{skeleton(bare)} "
        at = self._lines.place(left, self._heads)
        found = self._lines[at] if at < len(self._lines) else ""
        return found[len(left) :] if found.startswith(left) else ""
