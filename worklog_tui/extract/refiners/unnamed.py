"""What a reading is of where nothing was named for it: what the machine itself has of that quantity."""

from __future__ import annotations

from worklog_tui.extract.measured.never import never
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.subjects import as_thing
from worklog_tui.extract.things.whole import machine_word

MAINS = 90.0
"Volts from which no battery of a vehicle is meant (common practice)."
OF_THE_MOTOR = frozenset({"current", "speed"})
OF_THE_WHOLE = frozenset({"mass", "length", "duration", "voltage"})
"What is told of a machine as a whole: what it lifts, how big it is, how long it ran, what it runs on."
CHARGES = frozenset("charging charge chg chrg chging".split())


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with a subject, as far as the machine tells one."""
    for draft in drafts:
        unnamed = draft.kind == "reading" and (not draft.fields["subject"] or _mere_draw(draft, scene))
        if unnamed and (words := _of_machine(draft, scene)):
            draft.fields["subject"] = words
            draft.filled.add("subject")
            draft.trail.append(f"of {words}: nothing else was named")
    return drafts


def _mere_draw(draft: Draft, scene: Scene) -> bool:
    """`Amps 3.7` on a machine that a motor drives: the motor's."""
    electric, thing = scene.machine.fuel in ("none", ""), draft.thing
    bare = thing is not None and thing.kind == "quality" and thing.name == "current" and not thing.of
    return bool(electric and bare and draft.fields["quantity"] == "current")


def _of_machine(draft: Draft, scene: Scene) -> str:
    quantity, role = draft.fields["quantity"], draft.fields["role"]
    electric = scene.machine.fuel in ("none", "")
    value = draft.fields["value"][0] if isinstance(draft.fields["value"], tuple) else draft.fields["value"]
    if quantity == "voltage":
        if any(CHARGES & set(t.low.split()) for t in scene.tokens[: draft.main]):
            return "charging voltage"
        if value < MAINS:
            return "" if electric and not scene.machine.cylinders else "battery"
        return "supply" if role == "measured" else "motor"
    if quantity in OF_THE_MOTOR and electric:
        return "motor"
    if quantity == "torque":
        return _tightened(scene)
    if quantity == "temperature" and not electric:
        return "engine"
    if quantity == "angle" and scene.machine.fuel == "diesel":
        return "injection timing"
    return machine_word(scene.machine.kind) if quantity in OF_THE_WHOLE and role != "measured" else ""


def _tightened(scene: Scene) -> str:
    """`Gasket on, then head on. Three goes, thirty foot pounds`: the last thing named that is tightened at all."""
    told = [as_thing(s) for s in scene.context.things if s.age <= FRESH]
    held = [t for t in told if t.kind not in ("tool", "machine") and not never(t, ("torque",), scene.book)]
    held.sort(key=lambda t: "torque" not in t.quantities)  # what is usually tightened first
    return held[0].words if held else ""


FRESH = 1
"Notes after which a thing that was put on is no more what is tightened."
