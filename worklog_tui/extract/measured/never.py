"""What is never measured on a kind of thing, so that no place in the sentence makes a number its own."""

from __future__ import annotations

from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook import Rulebook

UNTIGHTENED = frozenset({"fluid", "material", "quality"})
"Kinds of things that nobody tightens to a figure."


OF_SPEED = frozenset({"engine speed", "speed", "revs"})
"Names of how fast something turns."


def never(thing: Thing, wanted: tuple[str, ...], book: Rulebook) -> bool:
    """Whether the number can be of no such thing: a gasket is torqued to nothing, a pressure lasts for no time."""
    match wanted[0] if wanted else "":
        case "torque":
            return thing.kind in UNTIGHTENED or _last(thing) in book.lists["never_tightened"]
        case "duration":
            return thing.kind == "quality" and thing.name in book.topics
        case "thread":
            return _last(thing) in ("thread", "threads")
        case "speed" | "":
            return False
        case _:
            return thing.kind == "quality" and thing.name in OF_SPEED  # `fifty-two at full revs, thirty at idle`


def carries(thing: Thing, book: Rulebook) -> bool:
    """Whether a part only carries the current that another one draws: a battery, a breaker, a commutator."""
    return _last(thing) in book.lists["carries_current"]


def _last(thing: Thing) -> str:
    return thing.name.rpartition(" ")[2]
