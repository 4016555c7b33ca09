"""Whose plate it is: `motor plate, 230 volts, 3.6 amps` tells of the motor, whatever was talked of before."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing, Token

OF_MOTORS = frozenset({"voltage", "current", "speed"})
"What a motor's plate tells (IEC 60034-1, from memory)."
PLATES = ("plate", "nameplate", "name plate", "data plate", "rating plate")


def of_plate(made: Draft, scene: Scene, quantity: str) -> str:
    """The owner of the plate that the number was read off, in words; empty where no plate was named, or it is not
    told whose it is.
    """
    plates = scene.once(("plates",), lambda: [k for k, token in enumerate(scene.tokens) if _is_plate(token)])
    first = next((k for k in range(made.main - 1, -1, -1) if scene.tokens[k].kind == "stop"), -1) + 1 if plates else 0
    named = next((scene.tokens[k] for k in reversed(plates) if first <= k < made.main), None)
    if named is not None:
        if any(t.sense("reads") and t.low not in SAYS for t in scene.tokens[first : made.main]):
            return ""
        return _owner(_said(named), made, scene, quantity)
    last = next((s for s in scene.context.things[:3] if s.words.lower().endswith(PLATES) and s.age <= 1), None)
    if last is None or any(t.sense("reads", "copula", "did", "setto") for t in scene.tokens):
        return ""
    return _owner(last.words.lower(), made, scene, quantity)


SAYS = frozenset("says reads gives shows said is was are at".split())


def _is_plate(token: Token) -> bool:
    words = token.thing.words.lower() if token.thing is not None else token.low
    own = token.thing.own.lower() if token.thing is not None and token.thing.of is not None else words
    return words.endswith(PLATES) or own.endswith(PLATES)


def _said(token: Token) -> str:
    """The plate in words: `plate on the motor` is the motor's."""
    thing = token.thing
    if thing is not None and thing.of is not None:
        return f"{thing.of.own.lower() or thing.of.words.lower()} plate"
    return token.low


def _owner(plate: str, made: Draft, scene: Scene, quantity: str) -> str:
    """`pump plate` is the pump's; a bare `plate` that tells volts or amperes is the motor's."""
    name = plate.removesuffix("plate").removesuffix("name ").removesuffix("data ").removesuffix("rating ").strip()
    name = name.removeprefix("on the").removeprefix("the ").removesuffix("'s").strip()
    if not name and (quantity not in OF_MOTORS or not _has_motor(scene)):
        return ""
    words = name or "motor"
    if words in ("name", "data", "rating", "maker's", "its"):
        return ""
    made.thing, made.thing_at = Thing(words, "electric motor" if words == "motor" else words, "part"), None
    return words


def _has_motor(scene: Scene) -> bool:
    """Whether the machine is driven by an electric motor."""
    return scene.machine.fuel in ("none", "") or "motor" in scene.machine.kind.lower()
