"""Shop shorthand in the name of a part, spelt out: `frnt brg` is the front bearing, `x slide` the cross slide."""

from __future__ import annotations

SIDES = {
    "frnt": "front", "frt": "front", "lft": "left", "rt": "right", "rr": "rear", "btm": "bottom", "lh": "left",
    "lf": "left front", "rf": "right front", "lr": "left rear", "l/f": "left front", "r/f": "right front",
    "l/r": "left rear", "nsf": "nearside front", "osf": "offside front", "nsr": "nearside rear",
    "osr": "offside rear", "n/s": "nearside", "o/s": "offside", "rh": "right", "l/h": "left", "r/h": "right",
    "pri": "primary", "sec": "secondary", "tp": "top",
}  # fmt: skip
CROSS = {"x": "cross"}


def spelt_out(words: str, name: str, begun: bool = True) -> str:
    """The words with each shortened word of the name as the vocabulary has it; other words stay as they were said.
    Words that are only `begun`, `batt`, count where asked for: `carb` is as good a name as any.
    """
    full = name.split()
    if words.lower().replace(" ", "") == name.replace(" ", ""):
        return words  # `lock nut` is how some write locknut
    return " ".join(_full(word, full, begun) for word in words.split())


def _full(word: str, full: list[str], begun: bool) -> str:
    low = word.lower()
    if low in SIDES:
        return SIDES[low]
    if CROSS.get(low) in full:
        return CROSS[low]
    if low in full or len(low) < 2 or {f"{low}s", f"{low}es"} & set(full):
        return word
    plural = low[:-1] if low.endswith("s") and len(low) > 3 else ""
    if plural and (name := next((name for name in full if _shortens(plural, name, begun)), "")):
        return f"{name}s"  # `vlvs`
    return next((name for name in full if _shortens(low, name, begun)), word)


def _shortens(low: str, name: str, begun: bool) -> bool:
    """Whether the letters of a word stand in the name in their order, from its first on, with most vowels left out."""
    if len(low) >= len(name) or low[0] != name[0] or not low.isalpha():
        return False
    if begun and len(low) > 3 and name.startswith(low) and len(name) > len(low) + 2:
        return True  # `batt`, `cyli`; `tension` is no tensioner cut short
    letters = iter(name)
    return all(letter in letters for letter in low) and not set(low[1:]) & set("aeiou")
