"""A bare number behind an arrow is what the figure before it became, in the same unit: `0.7V -> 0.1 w/ lug cleaned`."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.measured.quantity import quantity_of
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import ARROW

DEEDS = frozenset({"turns", "duration", "angle", "volume"})
"What is done until another figure comes about: `in 1 turn -> 14`, `10 min -> 38`."
REACH = 4
"Tokens at most between the figure and the arrow: `0.7V drop across it -> 0.1`."
MOST = 40.0
"How many times the one figure the other may be (judgement)."


def behind_arrow(made: Draft, scene: Scene) -> tuple[str, float, str] | None:
    """Quantity, value and unit of such a number; None for any other."""
    i, tokens = made.main, scene.tokens
    value = tokens[i].value
    if i < 2 or not scene.typed or tokens[i - 1].low != ARROW or not value or tokens[i].high is not None:
        return None
    for k in range(i - 2, max(-1, i - 3 - REACH), -1):
        token = tokens[k]
        if token.kind in ("stop", "thing", "comma"):
            return None
        if token.amount is not None and token.amount.unit_said:
            quantities = token.amount.quantities
            known = quantities and all(q in scene.book.quantities for q in quantities)
            if not known or DEEDS & set(quantities) or not _like(value, token.amount.low):
                return None
            return quantity_of(quantities, replace(made, main=k), scene), value, token.amount.unit
        if k in scene.bare:
            quantity, unit, factor, before = scene.bare[k]
            return (quantity, round(value * factor, 9), unit) if _like(value * factor, before) else None
        if token.kind == "number":
            return None
    return None


def _like(one: float, other: float) -> bool:
    return bool(other) and 1 / MOST <= one / other <= MOST
