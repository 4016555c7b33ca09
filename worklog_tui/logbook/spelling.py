"""Shorthand written out where the vocabulary knows the thing: gearbx lvl is the gearbox level."""

from __future__ import annotations

from worklog_tui.logbook.words import BUILT_WITH, FILLER

MOST = 9
"""Words of a thing that are shown."""
ENDING = 2
"Letters of an ending."


def written_out(said: str, name: str) -> str:
    """The words as said, but those that shorten a word of the thing's name by that word."""
    said = " ".join(said.split()[:MOST])
    if not name:
        return said
    whole = name.lower().split()
    return " ".join(_whole(word, whole) for word in said.split())


def _whole(word: str, names: list[str]) -> str:
    low = word.lower()
    if low in names or not low.isalpha():
        return word
    return next((name for name in names if _shortens(low, name)), word)


def _shortens(word: str, name: str) -> bool:
    """Whether a word has the letters of a longer one in order, from the first on: batt, gskt, plg; but no word of its
    own that the longer one is built on: cam of camshaft, tension of tensioner.
    """
    if word in FILLER or len(word) >= len(name) or word[0] != name[0]:
        return False
    if name.startswith(word) and (len(name) - len(word) <= ENDING or name[len(word) :] in BUILT_WITH):
        return False
    if len(word) < 3 and (len(word) < 2 or set(word) & set("aeiou")):
        return False
    letters = iter(name)
    return all(letter in letters for letter in word)
