"""Families of wordings of talk, from grammars/diagnosis/talk.toml, as patterns over the words of a sentence.

A wording is plain words; `[x]` may be missing, `(a|b c)` is one of these, `<name>` any wording of another family, `*`
up to 24 characters within a clause, `^` the beginning and `$` the end of a sentence, `,` any mark within it. An
apostrophe may be curly or missing, but not one that a word begins with.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

_PIECE = re.compile(r"<\w+>|[\[\]()|^$*,]|[^\s\[\]()|^$*,<>]+")
_FIXED = {"^": "^", "$": "$", "*": r"[^.,;:!?]{0,24}?", ",": r"[,;:.-]\s*"}
_WORD = re.compile(r"[a-z0-9]+")
ANY = frozenset({""})
"It may begin with any word."


@lru_cache(maxsize=2_000)
def _words(text: str) -> frozenset[str]:
    return frozenset(_WORD.findall(text.lower().replace("'", "").replace("’", ""))) | ANY


@dataclass(frozen=True, slots=True)
class Saying:
    """A pattern, and the words of which one must be in a text that it meets: the rest need not be searched."""

    pattern: re.Pattern[str]
    leads: frozenset[str]

    def search(self, text: str, start: int = 0) -> re.Match[str] | None:
        """The first place from `start` on where it is met."""
        return None if self.leads.isdisjoint(_words(text)) else self.pattern.search(text, start)

    def match(self, text: str) -> re.Match[str] | None:
        """The place where it is met at the very beginning."""
        return None if self.leads.isdisjoint(_words(text)) else self.pattern.match(text)

    def sub(self, text: str) -> str:
        """The text without all that it meets."""
        return self.pattern.sub("", text)


class Sayings:
    """The families of wordings, made into patterns when they are asked for."""

    def __init__(self, families: Mapping[str, Sequence[str]]) -> None:
        self._families = {name: tuple(wordings) for name, wordings in families.items()}
        self._made: dict[str, tuple[str, frozenset[str]]] = {}

    def source(self, name: str) -> str:
        """The text of a pattern that meets any wording of a family, with the spaces behind it."""
        return self._family(name)[0]

    def pattern(self, name: str, then: str = "") -> Saying:
        """A pattern that meets a family anywhere in a text, with an expression behind it."""
        source, leads = self._family(name)
        return Saying(_compiled(f"{source}{then}"), leads)

    def _family(self, name: str) -> tuple[str, frozenset[str]]:
        if name not in self._made:
            made = [self._choice(iter(_PIECE.findall(w)), "") for w in self._families.get(name, ())]
            source = "|".join(source for source, _ in made) or "(?!)"
            self._made[name] = f"(?:{source})", frozenset[str]().union(*(leads for _, leads in made))
        return self._made[name]

    def _choice(self, pieces: Iterator[str], closing: str) -> tuple[str, frozenset[str]]:
        """What stands up to the closing mark, with what it may begin with."""
        source, leads, mine = [], frozenset[str](), frozenset[str]()
        for piece in pieces:
            if piece == closing:
                break
            if piece == "|":
                source.append("|")
                leads, mine = leads | (mine or ANY), frozenset()
                continue
            said, begins = self._one(piece, pieces)
            source.append(said)
            mine = mine or begins
        return f"(?:{''.join(source)})", leads | (mine or ANY)

    def _one(self, piece: str, pieces: Iterator[str]) -> tuple[str, frozenset[str]]:
        if piece == "[":
            return f"{self._choice(pieces, ']')[0]}?", frozenset()
        if piece == "(":
            return self._choice(pieces, ")")
        if piece in _FIXED:
            return _FIXED[piece], frozenset()
        if piece.startswith("<"):
            return self._family(piece[1:-1])
        begins = r"(?<!\w)" if piece[0].isalnum() else ""
        lead = "['’]" if piece[0] == "'" else re.escape(piece[0])
        rest = re.escape(piece[1:]).replace("'", "['’]?")
        return rf"{begins}{lead}{rest}(?!['’]?\w)\s*", frozenset(_WORD.findall(piece.lower().replace("'", ""))[:1])


@lru_cache(maxsize=256)
def _compiled(source: str) -> re.Pattern[str]:
    return re.compile(source, re.IGNORECASE)
