"""Which one of several: number three, #3, no. 3, left-hand, and the mis-heard `number to`."""

from __future__ import annotations

from worklog_tui.extract.heard.glued import UNITS
from worklog_tui.extract.heard.words import Word

NAMES = {
    w: str(n)
    for n, w in enumerate(
        ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"], 1
    )
}
MISHEARD = {"to": "2", "too": "2", "for": "4", "won": "1", "ate": "8", "tree": "3", "sex": "6"}
COUNTED = frozenset("number no num nr #".split())


def which_at(words: list[Word], i: int, cylinders: int) -> tuple[str, int] | None:
    """(name, index of the word after) of a marker that begins at word i."""
    low = words[i].low
    if low[:1] == "#" and low[1:].isdigit() and len(low) < 4:
        return low[1:], i + 1
    if low in COUNTED and i + 1 < len(words) and words[i + 1].gap in ("", "-", "."):
        after = words[i + 1].low
        if low == "no" and i + 2 < len(words) and words[i + 2].low in UNITS and words[i + 2].gap == "":
            return None  # `7 m? No. 5 m`
        if (
            after.isdigit()
            and len(after) < 3
            and after != "0"
            and (low != "no" or words[i + 1].gap == "." or _alone(words, i))
        ):
            return after, i + 2
        if low == "no" or words[i + 1].gap == ".":
            return None
        if (name := NAMES.get(after) or NAMES.get(after.removesuffix("s"))) is not None:
            return name, i + 2  # `number four's cracked` too
        if after in MISHEARD and (not cylinders or int(MISHEARD[after]) <= cylinders):
            return MISHEARD[after], i + 2
    return None


def _alone(words: list[Word], i: int) -> bool:
    """Whether `no 6` names the sixth one: nothing countable follows, or it stands at the head of its clause."""
    return i == 0 or i + 2 >= len(words) or words[i].gap != "" or not words[i + 2].low.endswith("s")
