"""Small wordings that several reports share."""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.reports.left_out import LeftOut


def counted(left: LeftOut) -> str:
    """How much was left out, in words; empty when nothing was."""
    rows = ((left.notes, "private note", "private notes"), (left.sums, "sum of money", "sums of money"),
            (left.words, "word that is never published", "words that are never published"))  # fmt: skip
    return ", ".join(f"{count} {one if count == 1 else many}" for count, one, many in rows if count)


MOST_TOLD, MOST_READINGS, MOST_LISTED = 40, 120, 12
"So many rows of a list, readings of the table and sessions of the contents are shown; JSON and tables hold all."


def earlier(count: int, most: int) -> str:
    """What is said of the rows before the latest ones; empty when all are shown."""
    if count <= most:
        return ""
    return (
        "One earlier one is in the timeline."
        if count == most + 1
        else f"{count - most} earlier ones are in the timeline."
    )


def in_a_row(names: Sequence[str]) -> str:
    """Names in one line, each with a small letter; a name may hold commas."""
    return "; ".join(name[:1].lower() + name[1:] for name in names)


def begun(text: str) -> str:
    """The text with a capital letter."""
    return text[:1].upper() + text[1:]
