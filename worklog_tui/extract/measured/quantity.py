"""What a number measures: by its unit, by what it is of, by the words near it, by the running test, by the machine
card.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.card import near_card
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.carry import NEAR_BY, carried, said_just_before
from worklog_tui.extract.talk.told_before import told_of
from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook.quantities import Quantity


def quantity_of(candidates: tuple[str, ...], made: Draft, scene: Scene) -> str:
    """The likeliest of the quantities that a unit can mean; the unit's own order decides ties."""
    amount = scene.tokens[made.main].amount
    best, most = "", -1.0
    for n, name in enumerate(candidates):
        score = support(name, made, scene) - 0.01 * n
        if amount is not None and near_card(scene.card(), name, amount.low, amount.unit):
            score += 0.6
        known = scene.book.quantities.get(name)
        if name == "run_time" and made.main and scene.tokens[made.main - 1].low in FOR:
            score -= 3  # `run the engine for an hour`
        if amount is not None and known and not believable(amount.low, amount.unit, known):
            score -= 3
        if score > most:
            best, most = name, score
    if best != "gap" or made.thing is None or not _has_travel(made.thing):
        return best
    felt = scene.topic_before(made.main) == "gap" or any("feeler" in s.name for s in scene.context.things[:3])
    return best if felt or "feeler" in scene.context.said.lower() else "length"


def _has_travel(thing: Thing) -> bool:
    """Play of a cable, a lever or a pedal is travel, not a clearance."""
    return any(word in thing.name for word in ("cable", "lever", "pedal", "belt", "chain", "steering"))


def support(name: str, made: Draft, scene: Scene) -> float:
    """How much speaks for a quantity: the subject, words of the clause, the running test."""
    quantity = scene.book.quantities.get(name)
    score = 1.0 * _just_said(name, made, scene)
    if made.thing is not None:
        guessed = "subject" in made.filled or _only_which(made, scene)
        score += suits(made.thing, name, quantity) * (0.5 if guessed else 1.0)
        score -= FOREIGN * _foreign(name, made, scene)
    if name == "gap" and made.thing is not None and _of_two_parts(made.main, made.thing.own.lower(), scene):
        score += 1.6
    if quantity:
        hinted = name in scene.suggested(made.main) and not _only_which(made, scene)
        score += 1.5 * hinted + 2.0 * named_after(quantity, made.main, scene)
    score += told_of(name, made, scene)[0]
    score += BY_THE_BOOK * _set_beside(name, made, scene)
    if (said := scene.topic_before(made.main)) is not None:
        score += 1.4 * (said == name)
    elif (topic := scene.context.topic) is not None and topic.quantity == name:
        aside = _beside_an_amount(name, made.main, scene)
        score += 0.3 if aside else 1.25 if topic.age < 3 else 1.0
        score += 0.7 * (name == "compression" and not topic.value and topic.age <= 2)  # nothing was read of it yet
    elif (last := said_just_before(scene)) is not None and last.quantity == name:
        score += 1.2
    return score


def _only_which(made: Draft, scene: Scene) -> bool:
    """`One, ninety`: the number alone stands for the thing that was talked of."""
    said = scene.tokens[made.thing_at].low if made.thing_at is not None else ""
    return said.isdigit() or said in ONE_OF


ONE_OF = frozenset("one two three four five six".split())


def _beside_an_amount(name: str, i: int, scene: Scene) -> bool:
    """`231 volts standing and 206 starting`: the amount right before a bare number tells more than a running test."""
    value = scene.tokens[i].value
    for k in range(i - 1, max(-1, i - 1 - NEAR_BY), -1):
        token = scene.tokens[k]
        if token.thing is not None or token.kind in ("stop", "number") or value is None:
            return False
        if token.amount is not None:
            alike = 0.4 <= value / token.amount.low <= 2.5 if token.amount.low else False
            return alike and name not in token.amount.quantities and not BESIDE & set(token.amount.quantities)
    return False


BY_THE_BOOK = 1.2
"What speaks for the quantity that this note told last, where the book has the word right before the number."


def _set_beside(name: str, made: Draft, scene: Scene) -> bool:
    """`Drained, 38 L. Book 45.`: a bare number of the book is set beside what was told just now."""
    i = made.main
    if not scene.holds("book") or scene.tokens[i].amount is not None:
        return False
    if not any("book" in t.classes for t in scene.tokens[max(0, i - 2) : i]):
        return False
    last = said_just_before(scene)
    return last is not None and last.quantity == name and carried(scene, i, name) is not None


def _of_two_parts(i: int, own: str, scene: Scene) -> bool:
    """`Point three off the roller`, `exhaust was down to point one five`: a small distance that a feeler takes."""
    amount = scene.tokens[i].amount
    if amount is None or not amount.low * {"in": 25.4, "mm": 1.0}.get(amount.unit, 99.0) <= FEELER:
        return False
    behind = scene.tokens[i + 1 : i + 4]
    off = bool(behind) and behind[0].low == "off" and any(t.thing is not None for t in behind)
    rocks = own.removesuffix("s").endswith("bearing") and "length" not in scene.suggested(i)
    return off or rocks or own.removesuffix("s") in ("inlet", "exhaust", "intake")


FOR = frozenset("for another after within every give gave".split())
FEELER = 2.0
"Millimetres up to which a feeler takes a distance (common practice)."
FOREIGN = 1.0
"What speaks against a bare number being what its thing is never measured in."
OF_FEW = frozenset(
    {"voltage", "current", "resistance", "compression", "torque", "turns", "angle", "density", "run_time", "pressure"}
)
"Quantities that only few kinds of things have."


def _foreign(name: str, made: Draft, scene: Scene) -> bool:
    """Whether a bare number stands beside a part that has other quantities, or none of the electrical ones."""
    thing = made.thing
    if scene.tokens[made.main].amount is not None or name not in OF_FEW or thing is None or made.thing_at is None:
        return False
    if _only_which(made, scene):
        return False
    if thing.kind != "part" or not thing.known or name in thing.quantities or thing.per == "cylinder":
        return False
    return bool(thing.quantities) or (name in ELECTRICAL and thing.system in MECHANICAL)


ELECTRICAL = frozenset({"voltage", "current", "resistance"})
MECHANICAL = frozenset(
    (
        "air and exhaust|bearings and seals|bottom end|brakes|carburettor|chains, belts and couplings|"
        "clutch and gearbox|compressed air|cutting, mowing and tilling gear|cylinder head and valve gear|fasteners|"
        "frame and body|harvest machines|hydraulics|lifting and handling|lubrication|pumps|saws and wood machines|"
        "steam|steering and suspension|textile and paper machines|wheels and tyres"
    ).split("|")
)
"Systems whose parts have no volts."


def _just_said(name: str, made: Draft, scene: Scene) -> float:
    """How much the amount said last in this sentence, not far before a bare number, speaks for the quantity: most where
    the number is what it should be.
    """
    i = made.main
    if scene.tokens[i].amount is not None:
        return 0.0
    for k in range(i - 1, max(0, i - NEAR_BY) - 1, -1):
        token = scene.tokens[k]
        if token.kind == "stop":
            return 0.0
        if token.amount is not None:
            book = any("book" in t.classes for t in scene.tokens[max(k, i - 3) : i])
            if book and carried(scene, i, name) is not None:
                return 2.2 * (quantity_of(token.amount.quantities, replace(made, main=k), scene) == name)
            return token.amount.quantities[0] == name and carried(scene, i, name) is not None and name not in BESIDE
        if k in scene.bare:
            return scene.bare[k][0] == name and carried(scene, i, name) is not None
    return 0.0


BESIDE = frozenset({"duration", "angle"})
"Quantities that are told beside others, whose unit does not go over to the next number."


def suits(thing: Thing, name: str, quantity: Quantity | None) -> float:
    """How well a quantity suits a thing: 2 when it is what is usually measured on it."""
    if (thing.quantities and thing.quantities[0] == name) or (quantity and thing.name in quantity.near):
        return 2.0
    if name == "volume" and thing.kind == "fluid":
        return 2.0
    return 1.0 if name in thing.quantities or (name == "speed" and turns(thing) and "pump" not in thing.name) else 0.0


def turns(thing: Thing) -> bool:
    """Whether a part has a speed of its own that is told."""
    return thing.kind == "part" and any(word in thing.name for word in TURNS)


TURNS = (
    "drum",
    "spindle",
    "shaft",
    "pump",
    "fan",
    "wheel",
    "pulley",
    "blade",
    "rotor",
    "disc",
    "chuck",
    "roller",
    "prop",
    "reel",
    "turntable",
)
"Parts whose own speed is told."


def turns_at(value: float, made: Draft) -> bool:
    """Whether it is the speed that an engine holds, among the pressures that its pump makes: `eng holds 1450`."""
    return value >= TURNS_FROM and made.thing_at is not None and made.thing is not None and made.thing.name == "engine"


TURNS_FROM = 300.0
"Turns a minute below which no engine runs (common practice)."


def of_clearance(i: int, scene: Scene) -> bool:
    """Whether the words before a number announce a gap, and those around it no other length."""
    return scene.topic_before(i) == "gap" and "length" not in scene.suggested(i)


def named_after(quantity: Quantity, i: int, scene: Scene) -> bool:
    """`four thou of slop`, `two mil end float`: what is measured stands right behind the number."""
    for token in scene.tokens[i + 1 : i + 4]:
        name = token.thing.name if token.thing is not None else token.low
        if token.low in quantity.near or name in quantity.near or name in quantity.topic:
            return True
        if token.low != "of" and not token.sense("article", "side"):
            return False
    return False


def believable(value: float, unit: str, quantity: Quantity) -> bool:
    """A number that says no unit is not taken for what it hardly can be."""
    low, high = quantity.plausible.get(unit, (value, value))
    return low <= value <= high
