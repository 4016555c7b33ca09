"""What a quantity is of by the habit of the trade, where the words name nothing that it can be of."""

from __future__ import annotations

import re

from worklog_tui.extract.measured.quantity import suits
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading

SYSTEM_VOLTS = frozenset({6.0, 12.0, 24.0})
MAINS = 90.0
"Volts from which the battery of a machine is not meant (common practice)."
OIL_MOST = 150.0
"The most psi that an engine's oil gauge shows (common practice)."
IN_BAR = 14.5
"Psi in a bar."
FACTORS = {"psi": 1.0, "bar": IN_BAR, "kPa": IN_BAR / 100}
OTHER_ANGLES = (
    "dwell",
    "camber",
    "toe",
    "caster",
    "castor",
    "blade",
    "valve timing",
    "cam timing",
    "injection",
    "angle",
)
FLUID = frozenset(
    "water petrol fuel oil diesel fluid coolant paraffin kerosene acid sludge antifreeze gas gasoline".split()
)
CRANKING = frozenset("crank cranks cranked cranking spinning spins".split())


def habit(made: Draft, scene: Scene, quantity: str) -> str:
    """The subject by habit, in words; empty when the thing that was found is as good as any."""
    thing = made.thing
    known = scene.book.quantities.get(quantity)
    suited = (
        thing is not None
        and suits(thing, quantity, known) > 0
        and not (thing.kind == "quality" and " " not in thing.name)
    )
    match quantity:
        case "angle":
            if any("dwell" in t.low.split() for t in scene.tokens[max(0, made.main - DEVICE_REACH) : made.main + 3]):
                return "points dwell"
            other = thing is not None and any(word in thing.name for word in OTHER_ANGLES)
            return "" if other or scene.machine.ignition in ("", "none") else "ignition timing"
        case "voltage":
            return _of_volts(made, scene)
        case "pressure":
            if "compressor" in scene.machine.kind and _of_the_tank(made, suited, scene):
                return "tank"
            return "" if suited or "subject" not in made.filled else _of_oil(made, scene)
        case "temperature" | "current" | "duration" if device := _device(made, scene):
            return device
        case "temperature":
            return _of_engine(made, scene)
        case "speed":
            turning = thing is not None and thing.name == "cranking"
            return "cranking speed" if turning else _of_cycles(made, scene)
        case "volume":
            return _of_fluid(made, scene)
        case "gap" if thing is not None and thing.name == "electrode" and scene.machine.cylinders is not None:
            return "plug"  # its gap is the plug's
        case _:
            return ""


def _of_the_tank(made: Draft, suited: bool, scene: Scene) -> bool:
    """Whether a pressure of a compressor is its tank's: no part that holds pressure was named for it."""
    if made.thing is None or made.thing.kind != "part" or made.thing.name in ("air", "pump", "compressor"):
        return "subject" in made.filled or not suited
    if "subject" in made.filled:
        told = (f for f in scene.context.recent if isinstance(f, Reading) and f.quantity == "pressure")
        return made.thing.name not in {f.name for f in told}  # `interstage, sixty-four`, of which it goes on
    named = made.thing_at is not None and made.thing.known and not made.thing.loose
    return not suited and (not named or bool(made.thing.quantities))


def _of_engine(made: Draft, scene: Scene) -> str:
    """`Temperature's sat at eighty`, `eighty-three on the gauge`: an engine's own gauge, where no thing is named."""
    if scene.machine.fuel in ("none", "") or ("subject" not in made.filled and made.thing is not None):
        return ""
    near = scene.tokens[scene.clause(made.main).start : made.main + 5]
    if not any(OWN_GAUGE & set(t.low.removesuffix("'s").split()) for t in near):
        return ""
    made.thing, made.thing_at = None, None
    made.filled.discard("subject")
    return "engine temperature"


OWN_GAUGE = frozenset("temperature temp gauge".split())


def _of_volts(made: Draft, scene: Scene) -> str:
    """Mains volts of a generator are its output; cranking volts are the battery's; `it's six volt` is the system's."""
    amount, value = scene.tokens[made.main].amount, _value(made, scene)
    filled = "subject" in made.filled
    if filled and made.thing is None and any("charging" in t.low.split() for t in scene.tokens[: made.main]):
        return "charging voltage"
    if value >= MAINS and _generates(scene) and (filled or not _beside(made, scene)):
        return "generator output"
    words = {w for t in scene.tokens[scene.clause(made.main).start : made.main + 3] for w in t.low.split()}
    turning = made.thing is not None and made.thing.name == "cranking"
    if (filled or turning) and (CRANKING & words or turning) and value < MAINS:
        made.thing = Thing("battery", "battery", "part")
        return "battery"
    said = scene.said(made.main, made.last).lower()
    after = scene.tokens[made.main + 1].thing if made.main + 1 < len(scene.tokens) else None
    if after is not None and after.kind in ("part", "control") and not scene.opens_note(made.main + 1):
        made.thing, made.thing_at = after, made.main + 1
        return after.words  # `a 24 volt coil`
    if amount is not None and value in SYSTEM_VOLTS and said.endswith("volt") and _far(made, scene):
        return "electrical system"
    return ""


def _of_fluid(made: Draft, scene: Scene) -> str:
    """`half a pint of water`, `a litre of fresh petrol`: of the fluid that is named behind the amount."""
    after = scene.tokens[made.main + 1 : made.main + 5]
    if made.thing is not None and made.thing.kind == "fluid" and is_grade(made.thing.words):
        made.thing, made.thing_at = Thing("oil", "oil", "fluid"), None
        return _oil_talked_of(scene)
    if made.thing is None and (fluid := _fluid_told(made.main, scene)):
        made.filled.discard("subject")
        return fluid
    if not after or after[0].low != "of" or any(t.thing is not None for t in after):
        return ""
    if len(after) > 1 and after[1].value in GRADES:
        made.thing, made.thing_at = Thing("oil", "oil", "fluid"), None
        return _oil_talked_of(scene)
    found = next((t for t in after[1:] if FLUID & set(t.low.split())), None)
    if found is None:
        return ""
    made.thing, made.thing_at = Thing(found.low, found.low, "fluid"), None
    return found.low


def _fluid_told(i: int, scene: Scene) -> str:
    """`Fresh water in her, fourteen litres, five of that's antifreeze`: the fluid that the amount is a share of or is
    told of, where nothing else is named for it; empty where the sentence names none.
    """
    share = scene.tokens[i + 1 : i + 6] if i + 1 < len(scene.tokens) and scene.tokens[i + 1].low == "of" else []
    for token in (*share, *reversed(scene.tokens[:i])):
        if token.thing is not None and token.thing.kind == "fluid":
            return token.thing.own or token.thing.words
        if token.thing is None and token.low in FLUID and token not in share:
            return token.low  # `fresh water in her`
    return ""


def is_grade(words: str) -> bool:
    """`10w30`, `straight forty`, `thirty weight`, `ninety`: an oil that is told by its grade."""
    low = words.lower().split()
    return "oil" not in low and (bool(GRADE.search(words.lower())) or "straight" in low or low[-1:] == ["weight"])


def _oil_talked_of(scene: Scene) -> str:
    """The oil that was named in the sentence or the last notes, else the engine's."""
    said = [t.thing.words for t in scene.tokens if t.thing is not None]
    said += [s.words for s in scene.context.things if s.age <= 1]
    words = next((w for w in said if "oil" in w.lower().split()), "")
    if not words and any("gear" in w.lower() for w in said[:3]):
        return "gear oil"
    return words or ("engine oil" if scene.machine.cylinders else "oil")


GRADE = re.compile(r"\b\d{1,2} ?w ?-?\d{0,2}\b|\bsae\b|\bnd ?\d|\bep ?\d")
GRADES = frozenset({5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 80.0, 90.0, 140.0})
"Grades of oil that are told by their number alone (SAE J300 and J306, from memory)."


def _device(made: Draft, scene: Scene) -> str:
    """`On the charger at six amps`, `in the ultrasonic at fifty`: the device that is set so."""
    span = scene.clause(made.main)
    for k in range(made.main - 1, max(span.start, made.main - DEVICE_REACH) - 1, -1):
        if scene.tokens[k].low in ON_CHARGE and made.thing_at is None:
            return "charger"
        thing = scene.tokens[k].thing
        if thing is not None and DEVICES & set(thing.name.split()):
            return thing.words
        if thing is not None and thing.kind not in ("tool", "quality"):
            return ""
    return ""


ON_CHARGE = frozenset({"on charge", "on the charger", "on a charger", "on trickle charge"})
DEVICES = frozenset("charger ultrasonic cleaner oven inverter welder heater gun supply bath".split())
"What a person sets: common practice."
DEVICE_REACH = 12


def _of_oil(made: Draft, scene: Scene) -> str:
    """A bare `pressure` on an engine is its oil's."""
    amount = scene.tokens[made.main].amount
    psi = _value(made, scene) * FACTORS.get(amount.unit, 1.0) if amount else _value(made, scene)
    named = any(t.low in ("pressure", "pressures") or (t.thing is not None and t.thing.name == "pressure")
                for t in scene.tokens[: made.main])  # fmt: skip
    return "oil pressure" if named and scene.machine.cylinders and psi <= OIL_MOST and not _tested(scene) else ""


def _tested(scene: Scene) -> bool:
    topic = scene.context.topic
    return topic is not None and topic.quantity == "pressure" and bool(topic.words) and topic.age <= 2


def _of_cycles(made: Draft, scene: Scene) -> str:
    """Hertz are of what a generator gives, not of its engine."""
    amount = scene.tokens[made.main].amount
    if amount is None or amount.unit != "Hz":
        return ""
    return "output frequency" if _generates(scene) else ""


def _generates(scene: Scene) -> bool:
    return any(word in scene.machine.kind.lower() for word in ("generat", "genset", "alternator", "welder"))


def _beside(made: Draft, scene: Scene) -> bool:
    """Whether the thing is an electrical part that stands in the clause of the number."""
    thing = made.thing
    return thing is not None and "voltage" in thing.quantities


def _far(made: Draft, scene: Scene) -> bool:
    """Whether the thing stands in another sentence, or is measured in something else than volts."""
    thing = made.thing
    return thing is None or "voltage" not in thing.quantities


def _value(made: Draft, scene: Scene) -> float:
    token = scene.tokens[made.main]
    return token.amount.low if token.amount is not None else token.value or 0.0
