"""Lines without a time below lines with one: the rest of a thought, or a note of its own."""

from __future__ import annotations

from collections.abc import Sequence

_WIDEST_PAGE = 132  # text wider than any page was never broken by hand or by a mailer
_NARROWEST_PAGE = 40
_LONGEST_WORD, _FEWEST_FULL = 12, 2


def page_width(lines: Sequence[str]) -> int:
    """The width at which the text seems to be broken; 0 where a line is wider than a page or only one fills it."""
    widest = max(map(len, lines), default=0)
    if not _NARROWEST_PAGE <= widest <= _WIDEST_PAGE:
        return 0
    return widest if sum(len(line) > widest - _LONGEST_WORD for line in lines) >= _FEWEST_FULL else 0


def continues(line: str, before: str, width: int, spoken: bool = False) -> bool:
    """Whether a line goes on with the one directly above it.

    It does when it is indented or when its first word would not have fitted above; of spoken words also when it begins
    in lower case after an unfinished line (shop shorthand always begins in lower case).
    """
    if not before.strip() or not line.strip():
        return False
    if line[0] in " \t":
        return True
    finished = before.rstrip().endswith((".", "!", "?", ";"))
    if spoken and line[0].islower() and not finished:
        return True
    return bool(width) and len(before.rstrip()) + 1 + len(line.split(None, 1)[0]) > width
