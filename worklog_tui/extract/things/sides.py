"""A side right behind a number: `thirty-five left`, `twelve rear`."""

from __future__ import annotations

from worklog_tui.extract.tokens import Token


def side_behind_at(tokens: list[Token], i: int) -> bool:
    """Whether a side, with nothing of its own behind it, stands right behind the number."""
    if i + 1 >= len(tokens) or tokens[i + 1].low not in FIRM:
        return False
    after = tokens[i + 2] if i + 2 < len(tokens) else None
    return after is None or after.kind in ("stop", "comma") or after.low == "and"


FIRM = frozenset(
    (
        "left left-hand right-hand lh rh frnt front rear inlet exhaust intake inlets exhausts intakes upper lower "
        "inner outer inboard outboard nearside offside port starboard"
    ).split()
)
"Sides that are hardly ever anything else."
