"""The measures that a person works in: a bare number is in the unit that was said last for such numbers, else in that
of the machine card, else in one of the same system, metric or inch.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.rulebook.quantities import Quantity

UNITS_BACK = 8
"How many different units are remembered."


def usual_unit(quantity: Quantity, i: int, scene: Scene) -> str:
    """The unit in which a quantity is likely to be told at token i; empty when nothing tells."""
    bare = {b.unit for b in quantity.bare}
    heard = [*_heard(scene.tokens[:i]), *scene.context.units, *(u for _, u, _, _ in _card(scene))]
    if own := next((unit for unit in heard if unit in bare), ""):
        return own
    systems = scene.book.units.systems
    system = next((systems[unit] for unit in heard if unit in systems), "")
    return next((b.unit for b in quantity.bare if system and systems.get(b.unit) == system), "")


def units_after(tokens: Iterable[Token], before: tuple[str, ...]) -> tuple[str, ...]:
    """The units said up to here, the last one first."""
    heard = [*_heard(list(tokens))]
    return tuple(dict.fromkeys((*heard, *before)))[:UNITS_BACK] if heard else before


def _heard(tokens: list[Token]) -> Iterator[str]:
    """The units that were said, the last one first."""
    return (t.amount.unit for t in reversed(tokens) if t.amount is not None and t.amount.unit_said)


def _card(scene: Scene) -> tuple[tuple[str, str, float, float], ...]:
    return scene.card()
