"""The machine card's specified values, read from their text; they also tell which quantity a bare number is likely to
be.
"""

from __future__ import annotations

from worklog_tui.extract.tokens import chunk
from worklog_tui.model import Machine, SpecifiedValue
from worklog_tui.rulebook import Rulebook

LIMITS = {"max": "max", "maximum": "max", "min": "min", "minimum": "min", "new": "new", "limit": "max"}
Known = tuple[tuple[str, str, float, float], ...]
"(quantity, unit, low, high) of every value of a card that could be read."
_known: dict[tuple[str, Machine], Known] = {}


def read_specified(book: Rulebook, key: str, text: str, source: str = "") -> SpecifiedValue:
    """A value of the card from its key and text; without quantity when no number with a unit is in it."""
    words = " ".join(key.replace("_", " ").split())
    tokens = chunk(text, book)
    amount = next((t.amount for t in tokens if t.amount is not None), None)
    if amount is None:
        return SpecifiedValue("", key, text, source=source)
    named = [q.name for q in book.quantities.values() if any(c in key for c in q.card) and amount.unit in q.units]
    quantity = named[0] if named else amount.quantities[0]
    limit = next((LIMITS[t.low] for t in tokens if t.low in LIMITS), "")
    ranged = amount.low != amount.high
    return SpecifiedValue(
        quantity, words, text,
        low=amount.low if ranged or limit == "min" else None, high=amount.high if ranged or limit == "max" else None,
        nominal=None if ranged else amount.low, limit=limit, unit=amount.unit, source=source,
    )  # fmt: skip


def known_values(machine: Machine, book: Rulebook) -> Known:
    """What the card says in numbers; worked out once for each card and rulebook."""
    key = (book.stamp, machine)
    if (known := _known.get(key)) is None:
        if len(_known) > 64:
            _known.clear()
        read = [v if v.quantity else read_specified(book, v.subject, v.text) for v in machine.specified]
        known = _known[key] = tuple(
            (v.quantity, v.unit, low, high)
            for v in read
            if v.quantity
            and (low := _first(v.low, v.nominal, v.high)) is not None
            and (high := _first(v.high, v.nominal, v.low)) is not None
        )
    return known


def _first(*values: float | None) -> float | None:
    return next((v for v in values if v is not None), None)


def near_card(known: Known, quantity: str, value: float, unit: str) -> bool:
    """Whether the card gives this quantity a value of about this size."""
    return any(q == quantity and u == unit and 0.3 * low <= value <= 2.2 * high for q, u, low, high in known)


def on_card(known: Known, quantity: str, value: float) -> str:
    """The unit in which the card gives this quantity this very value, or an end of a range; empty when it does not."""
    return next((u for q, u, low, high in known if q == quantity and value in (low, high)), "")
