"""A reading as a bar, with the range that it should lie in drawn on the same scale."""

from __future__ import annotations

FULL, EMPTY, WITHIN = "█", "·", "─"


def gauge(value: float, low: float | None, high: float | None, most: float, width: int) -> str:
    """Such as `██████·[──]··`: the bar up to the value, brackets where it should be; `most` is the end of the scale.

    All in one unit. Nothing can be drawn for a scale without length, or for a value below nought.
    """
    if most <= 0 or value < 0 or width < 4:
        return ""
    cells = [FULL if place < _at(value, most, width) else EMPTY for place in range(width)]
    first = _at(low, most, width) if low is not None else None
    last = _at(high, most, width) if high is not None else None
    for place in range(0 if first is None else first, width if last is None else last):
        if cells[place] == EMPTY and (first is not None or last is not None):
            cells[place] = WITHIN
    if first is not None:
        cells[min(first, width - 1)] = "["
    if last is not None:
        cells[min(last, width - 1)] = "]"
    return "".join(cells)


def _at(value: float, most: float, width: int) -> int:
    return max(min(round(value / most * (width - 1)), width - 1), 0)
