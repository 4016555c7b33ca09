"""A shop sum as plain text."""

from __future__ import annotations

from worklog_tui.reports.lines import wrapped
from worklog_tui.trade.shop_sums import Amount, Sum


def sum_text(found: Sum, width: int, standing: str) -> str:
    """Results first, then the formula, within what it holds, its source and what to beware of."""
    rows = [line for one in found.amounts for line in wrapped(_amount(one), width, "", "  ")]
    for word, text in (
        ("Formula", found.formula), ("Range", found.range), ("Source", found.source), ("Caution", found.caution),
    ):  # fmt: skip
        rows += wrapped(f"{word}: {text}", width, "", "  ")
    return "\n".join([*rows, *wrapped(standing, width)])


def _amount(one: Amount) -> str:
    shown = one.value if isinstance(one.value, str) else f"{_number(one.value)} {one.unit}".rstrip()
    also = f" = {_number(one.also)} {one.also_unit}" if one.also is not None else ""
    return f"{one.says}: {shown}{also}"


def _number(value: float) -> str:
    """Four figures are more than any of these sums is worth."""
    return f"{value:.4g}" if abs(value) < 1000 else f"{value:.0f}"
