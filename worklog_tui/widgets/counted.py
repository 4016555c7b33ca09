"""So many of a thing, in words."""

from __future__ import annotations


def counted(number: int, thing: str) -> str:
    """Such as `1 note`, `2 notes`."""
    return f"{number} {thing}" + ("" if number == 1 else "s")
