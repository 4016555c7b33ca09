"""Bare numbers that the custom of the shop tells: diameters by their decimals, how hot a part is that they are `on`."""

from __future__ import annotations

from worklog_tui.extract.measured.number_form import spoken_decimal
from worklog_tui.extract.scene import Draft, Scene, suggested_by
from worklog_tui.extract.tokens import Token


def by_custom(token: Token, made: Draft, scene: Scene) -> str:
    """The unit of a bare length by its form alone; empty where the form tells nothing."""
    if (unit := _across(token, made, scene)) or _micrometer(token, made, scene):
        return unit or "in"
    return "mm" if _diameter(token, made, scene) else ""


def _across(token: Token, made: Draft, scene: Scene) -> str:
    """`Wire 18 dia`, `sleeve .985 od`: what is told across a thing, in millimetres where it is no size of inches."""
    after = scene.tokens[made.main + 1 : made.main + 2]
    value = token.value or 0.0
    if made.thing is None or not after or after[0].low not in ACROSS or token.high is not None:
        return ""
    return "mm" if TURNED[0] / 2 <= value <= TURNED[1] else "in" if 0 < value < 1 else ""


ACROSS = frozenset({"dia", "diam", "od", "o/d", "id", "i/d", "thk"})


def _micrometer(token: Token, made: Draft, scene: Scene) -> bool:
    """`1.2492`: four figures behind the point are inches off a micrometer; three of a small size are when it was
    miked: `journal mikes at 1.249`.
    """
    said = scene.said(made.main, made.main).lower()
    places = len(said.partition(".")[2]) if said[-1].isdigit() else len(said.partition("point ")[2].split())
    value = token.value or 0.0
    miked = (
        places == 3
        and value < SMALL
        and any(t.low.split()[0] in scene.book.lists["micrometers"] for t in scene.tokens[: made.main])
    )
    return (places == 4 or miked) and token.high is None and 0.2 < value < 40


def worn_by(token: Token, made: Draft, scene: Scene) -> bool:
    """Typed `ball joint worn .030`, `step .015 in the face`, `key .312`: three figures behind a point, beside what
    wears or right by a part of which lengths are told, are inches, whatever was tested before.
    """
    said, value = scene.said(made.main, made.main), token.value or 0.0
    if not scene.typed or not said.startswith(".") or not 3 <= len(said) - 1 <= 4 or not said[1:].isdigit():
        return False
    told = {*scene.context.units, *(f.unit for f in scene.context.figures)}
    if "mm" in told and "in" not in told:
        return False
    before = scene.tokens[max(scene.clause(made.main).start, made.main - WORN) : made.main]
    if value <= DEEPEST and any(t.sense("flaw") or set(t.low.split()) & scene.book.lists["worn_by"] for t in before):
        return True
    thing, near = made.thing, made.thing_at is not None and made.main - made.thing_at == 1
    return near and thing is not None and thing.kind == "part" and thing.quantities[:1] in ((), ("length",))


WORN, DEEPEST = 4, 0.25
"Tokens before the number in which wear is told, and the inches that it comes to at most (judgement)."
SMALL = 6.0
"Inches up to which what is told with three figures behind the point was measured in inches (judgement)."


def _diameter(token: Token, made: Draft, scene: Scene) -> bool:
    """`Pin 37.2, bush 40.4`, `bore 54.03`: a decimal of tens beside what is turned or bored is in millimetres."""
    value, thing = token.value or 0.0, made.thing
    if thing is None or made.thing_at is None or not TURNED[0] <= value <= TURNED[1]:
        return False
    topic = scene.context.topic
    tested = topic is not None and topic.age <= 1 and topic.quantity in thing.quantities[:1]
    decimal = spoken_decimal(scene.said(made.main, made.main)) or "." in scene.said(made.main, made.main)
    return decimal and not tested and bool(ROUND & set(thing.name.split()))


TURNED = (8.0, 400.0)
"Millimetres between which the diameters of parts lie (common practice)."
ROUND = frozenset(
    (
        "pin bush bushing bore piston journal shaft spindle housing liner barrel crankpin kingpin gudgeon stem guide "
        "axle"
    ).split()
)
"Parts whose diameter is told with their name alone."


def on_what_gets_hot(i: int, scene: Scene) -> bool:
    """`Two eighty on the head`: a great number on what gets hot, where nothing is tightened."""
    value = scene.tokens[i].value or 0.0
    behind = scene.tokens[i + 1 : i + 5]
    if not HOT[0] <= value <= HOT[1] or value != int(value) or len(behind) < 3 or behind[0].low != "on":
        return False
    thing = next((t.thing for t in behind if t.thing is not None), None)
    before = scene.tokens[max(0, i - 6) : i]
    tightened = any(t.low in TIGHTENS or "torque" in suggested_by(scene.book, t) for t in before)
    if value < SURELY and not any(figure.quantity == "temperature" for figure in scene.context.figures):
        return False
    return thing is not None and thing.name in GETS_HOT and not tightened


HOT, SURELY = (35.0, 700.0), 100.0
"Degrees that parts have on a machine that runs, and those from which it hardly can be anything else."
GETS_HOT = frozenset(
    (
        "cylinder head|head|cylinder|barrel|block|cylinder block|exhaust manifold|exhaust pipe|thermostat housing|"
        "brake drum|hub|bearing housing|gearbox|radiator|motor|pump head|muffler|silencer|manifold"
    ).split("|")
)
TIGHTENS = frozenset("tighten tightened torque torqued wrench nip nipped pull pulled pounds newton nuts bolts".split())
