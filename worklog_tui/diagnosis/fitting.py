"""How a thing is got and put in: parts are ordered and fitted, oil and water are poured."""

from __future__ import annotations

from worklog_tui.diagnosis.phrases import one_of
from worklog_tui.diagnosis.words import tokens

_POURED = frozenset({"fuel", "petrol", "diesel", "oil", "water", "coolant", "grease", "paraffin"})


def fit_proper(thing: str) -> str:
    """The step that puts the real thing in place of a stop-gap; oil is put in, not fitted."""
    return f"put proper {thing} in" if _is_poured(thing) else f"fit {one_of(thing)}proper new {thing}"


def order_and_fit(thing: str) -> str:
    """The step that gets a part that is needed and puts it in."""
    return f"get new {thing} and put it in" if _is_poured(thing) else f"order and fit {one_of(thing)}new {thing}"


def _is_poured(thing: str) -> bool:
    return bool(tokens(thing)) and tokens(thing)[-1] in _POURED
