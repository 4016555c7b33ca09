"""Shop shorthand of typed lines, written out before they are read: `strands brkn, grsd` is `strands broken, greased`.

What the log says of a part is then in whole words, while every place still tells where it was typed.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from worklog_tui.rulebook import Rulebook
from worklog_tui.rulebook.skeletons import is_bare

_WORD = re.compile(r"(?<![\w.])[^\W\d_]\w*+(?:['’/][^\W\d_]\w*+)*+")
LONGEST = 3
"Words of an entry."
Change = tuple[int, int, str]
"What is typed, and the whole words."


def changes(words: str, book: Rulebook) -> list[Change]:
    """Where shorthand stands in a typed line, and what it is in whole words, in order."""
    return list(_changes(words, book))


def _changes(words: str, book: Rulebook) -> Iterator[Change]:
    found = list(_WORD.finditer(words))
    shouted = words.isupper()
    n = 0
    while n < len(found):
        start, size = found[n].start(), 1
        if full := next(_entries(words, found, n, book), None):
            meant, size = full
            yield start, found[n + size - 1].end(), _like(words[start], meant, shouted)
        elif "/" in found[n][0]:
            yield from _halves(found[n], book)
        elif meant := _alone(found[n][0], book, shouted):
            yield start, found[n].end(), _like(words[start], meant, shouted)
        n += size


def _entries(words: str, found: list[re.Match[str]], n: int, book: Rulebook) -> Iterator[tuple[str, int]]:
    """The entries of the shorthand that begin at a word, the longest first, and their words."""
    if not book.shorthand.may_begin(_low(found[n][0])):
        return
    for size in range(min(LONGEST, len(found) - n), 0, -1):
        said = found[n : n + size]
        apart = words[said[0].start() : said[-1].end()].count(" ") == size - 1
        if apart and (
            meant := book.shorthand.whole([_low(word[0]) for word in said], book.answers(_names_part).__getitem__)
        ):
            yield meant, size


def _names_part(book: Rulebook, low: str) -> bool:
    return any(sense[0] == "part" for sense in book.table.get(low, ()))


def _halves(typed: re.Match[str], book: Rulebook) -> Iterator[Change]:
    """`Clnd/greased`: two words with a slash between."""
    at = typed.start()
    for half in typed[0].split("/"):
        low = _low(half)
        meant = book.shorthand.whole([low], bool) if len(low) > 2 else ""
        if meant := meant or _alone(half, book, False):
            yield at, at + len(half), meant
        at += len(half) + 1


def _alone(typed: str, book: Rulebook, shouted: bool) -> str:
    """The word of the vocabulary that a typed one shortens; capitals are the letters of something, not a word."""
    if len(typed) < 3 or not typed.isalpha() or (typed.isupper() and not shouted):
        return ""
    return book.answers(_whole)[typed.lower()]


def _whole(book: Rulebook, low: str) -> str:
    """`brkn`: broken; `replacd`: replaced. Nothing for a word that means something else by itself."""
    if low in book.units.by_head or low in book.numerals.starts:
        return ""
    known = {sense[:2] for sense in book.table.get(low, ())}
    full = book.skeletons.get(low) if is_bare(low) else _ending(book, low)
    told = {sense[:2] for sense in book.table.get(full, ())} if full else set()
    return full if not known or known & told else ""


def _ending(book: Rulebook, low: str) -> str:
    """The verb of which a typed word leaves the last vowel out: `cleand`, `leakng`."""
    if len(low) < 5 or low[-2:] not in ("ng", f"{low[-2]}d") or low[-2] in "aeiouy":
        return ""
    full = f"{low[:-2]}ing" if low.endswith("ng") else f"{low[:-1]}ed"
    return full if any(sense[0] in ENDINGS for sense in book.table.get(full, ())) else ""


ENDINGS = frozenset({"did", "doing", "bad", "good", "noted"})


def _low(typed: str) -> str:
    return typed.lower().replace("’", "'")


def _like(first: str, meant: str, shouted: bool) -> str:
    """The whole words with a capital where the short one had one."""
    return meant.upper() if shouted else meant[:1].upper() + meant[1:] if first.isupper() else meant
