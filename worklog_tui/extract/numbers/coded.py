"""Values of resistors and capacitors as they are printed on them, the letter in the place of the point: `3k3`, `4u7`.

The letters are those of IEC 60062.
"""

from __future__ import annotations

import re

_CODE = re.compile(r"(\d{1,3})([rkun])(\d{1,2})")
_LETTERS = {"r": "ohm", "k": "kohm", "u": "uF", "n": "nF"}


def coded(low: str) -> tuple[float, str] | None:
    """The value of such a code and its unit, by its short name; None for any other word."""
    found = _CODE.fullmatch(low)
    return (float(f"{found[1]}.{found[3]}"), _LETTERS[found[2]]) if found else None
