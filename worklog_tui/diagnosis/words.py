"""Words compared as a mechanic hears them: plurals, hyphens, small words and both sides of the ocean do not matter."""

from __future__ import annotations

import re
from functools import lru_cache

SMALL = frozenset({
    "a", "an", "the", "of", "on", "in", "for", "to", "at", "it", "its", "that", "this", "these", "those",
    "and", "my", "our", "your", "his", "is", "are", "was", "be", "been", "with", "from", "by", "up", "down",
    "out", "off", "some", "there", "here", "so", "just", "again", "back", "one", "ones",
})  # fmt: skip
SAME = {
    "carb": "carburettor", "carburetor": "carburettor", "carburator": "carburettor", "tire": "tyre", "gas": "petrol",
    "gasoline": "petrol", "ground": "earth", "muffler": "silencer", "antifreeze": "coolant", "intake": "inlet",
    "sparkplug": "plug", "aluminum": "aluminium", "governed": "governor", "points": "points", "batt": "battery",
    "condensor": "condenser",
}  # fmt: skip
SIDES = frozenset({
    "left", "right", "front", "rear", "upper", "lower", "inner", "outer", "top", "bottom", "inlet", "exhaust",
    "primary", "secondary", "number", "cylinder", "1", "2", "3", "4", "5", "6", "7", "8", "one", "two",
    "three", "four", "five", "six", "nearside", "offside", "hand", "side",
})  # fmt: skip
_WORD = re.compile(r"[a-z0-9]+")


@lru_cache(maxsize=20_000)
def tokens(text: str) -> tuple[str, ...]:
    """The telling words of a text, in order: lower case, singular, without small words."""
    plain = text.lower().replace("'", "").replace("’", "")
    return tuple(_one(w) for w in _WORD.findall(plain) if w not in SMALL)


def _one(word: str) -> str:
    word = SAME.get(word, word)
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us", "is")) and word not in SAME:
        word = word[:-1]
    return SAME.get(word, word)


def spoken(text: str) -> str:
    """A text in lower case with single spaces and without apostrophes, for looking up sayings in it."""
    return " ".join(re.findall(r"[\w:]+", text.lower().replace("'", "").replace("’", "")))


def holds(text: tuple[str, ...], phrase: tuple[str, ...]) -> bool:
    """Whether the words of a phrase stand side by side in a text."""
    n = len(phrase)
    return n > 0 and any(text[i : i + n] == phrase for i in range(len(text) - n + 1))


def same_thing(a_name: str, a: str, b_name: str, b: str) -> bool:
    """Whether two names mean one part: the vocabulary's name where both have one, else the same telling words.

    Two different sides or numbers are never one part; a side against none may be.
    """
    left, right = tokens(a), tokens(b)
    sides_a, sides_b = SIDES.intersection(left), SIDES.intersection(right)
    if sides_a and sides_b and sides_a != sides_b:
        return False
    if a_name and b_name:
        return a_name == b_name
    if not left or not right:
        return False
    core_a, core_b = set(left) - SIDES or set(left), set(right) - SIDES or set(right)
    return core_a == core_b or (left[-1] == right[-1] and (core_a <= core_b or core_b <= core_a))
