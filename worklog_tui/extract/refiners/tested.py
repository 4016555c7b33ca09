"""Tests that a result implies: compressions that were read were taken, a spark that was seen was looked for."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading

CONFIDENCE = 0.6
INSULATION = frozenset({"Mohm", "Gohm"})


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, with the tests that readings and findings imply and nobody said; one for each thing tested.

    Where a test of the windings was told, its megohms tell of no other.
    """
    said = {d.thing.name for d in drafts if d.kind == "work" and d.thing is not None and d.fields["action"] == "test"}
    found: list[Draft] = []
    for draft in drafts:
        thing = _tested(draft, scene) if draft.confidence >= 0.5 else None
        if thing is not None and thing.name not in said and not (said and thing.name == "insulation"):
            said.add(thing.name)
            found.append(
                replace(draft, kind="work", fields={"action": "test", "used": ""}, thing=thing, confidence=CONFIDENCE,
                        filled=draft.filled | {"action"}, trail=["implied by its result"])
            )  # fmt: skip
    return drafts + found


def _tested(draft: Draft, scene: Scene) -> Thing | None:
    """What was tested; None where nothing was, or where the test has been running for a while."""
    thing = draft.thing
    if draft.kind == "finding":
        seen = thing is not None and thing.name == "spark" and "part" not in draft.filled
        return thing if seen and draft.rule.id != "finding.it-is-state" else None
    if draft.kind != "reading" or draft.fields["role"] != "measured":
        return None
    quantity = draft.fields["quantity"]
    if _running(quantity, scene):
        return None
    if quantity == "compression":
        return Thing("compression", "compression", "quality")
    if quantity == "resistance" and draft.fields["unit"] in INSULATION:
        return Thing("insulation", "insulation", "quality")
    return None


def _running(quantity: str, scene: Scene) -> bool:
    """Whether such a reading was taken a moment ago; what unfinished words gave is read anew, and not meant."""
    tail = scene.context.tail
    return any(
        isinstance(fact, Reading)
        and fact.quantity == quantity
        and fact.role == "measured"
        and not (tail is not None and fact.main.note == tail.note and fact.main.start >= tail.offset)
        for fact in scene.context.recent
    )
