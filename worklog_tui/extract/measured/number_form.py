"""How a number was said: as a decimal, as a fraction, in thousandths."""

from __future__ import annotations

PARTS_OF_ONE = ("eighth", "sixteenth", "second", "fourth")
"Halves and quarters are said of millimetres too."


def fraction(said: str) -> bool:
    """`3/16`, `three sixteenths`, as only inches are divided."""
    low = said.lower()
    return "/" in low or low.rstrip("s").endswith(PARTS_OF_ONE) or low.endswith(" eights")


def in_thousandths(said: str) -> bool:
    """`.022`: three figures behind a point that nothing stands before are thousandths of an inch."""
    return said.startswith(".") and len(said) == 4


def spoken_decimal(said: str) -> bool:
    """`1.15`, `point two`, `nought nought four`; a fraction of a turn or an inch is none."""
    low = said.lower()
    return ("." in low.strip(".") or low.startswith(".") or "point" in low or "nought" in low) and "/" not in low
