"""What a sentence tells of how the machine stands now: in words, by a start, by a speed, by the volts of a tester."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.taken.left_as import left_as
from worklog_tui.extract.taken.marks import Mark, marks
from worklog_tui.extract.taken.stretches import AWAY, along
from worklog_tui.extract.taken.times import WAITED
from worklog_tui.extract.tokens import Token

MOTION, TESTER, WET, ALONG = "motion", "tester", "wet", "along"
ENDS_RUNNING = frozenset({"remove", "strip", "fit", "replace", "drain", "disconnect"})
"Work that nobody does on an engine that runs."
LEAST_REVS = 300.0


def told(scene: Scene, drafts: list[Draft]) -> list[Mark]:
    """Everything that the sentence tells of how the machine stands: in words, by a start, by a speed, in its order."""
    slots = scene.book.taken.slots
    found = [mark for mark in marks(scene) if mark.slot in slots]
    for draft in drafts:
        if (of_it := _of_draft(draft, scene)) is not None:
            found.append(Mark(draft.main, draft.last, *of_it))
    found += _oiled(scene, drafts) + _lamps(scene)
    known = {k for mark in found if mark.slot not in BY_CONTACT for k in range(mark.first, mark.last + 1)}
    found += [mark for mark in left_as(scene) if known.isdisjoint(range(mark.first, mark.last + 1))]
    found += [Mark(k, k, WAITED, f"after {scene.said(k, k).lower()}") for k in _waits(drafts)]
    if not AWAY.isdisjoint(scene.lows()) and (where := along(scene)):
        found.append(Mark(where[0], where[0], ALONG, where[1]))
    firsts = scene.firsts()
    if "at" in firsts or "up" in firsts:
        found += [Mark(k - 1, k, MOTION, speed) for k in range(1, len(firsts)) if (speed := speed_at(k, scene))]
    return sorted(found)


def _of_draft(draft: Draft, scene: Scene) -> tuple[str, str] | None:
    """What a start, a run, a strip-down or the volts of a tester tell of how the machine stands."""
    fields = draft.fields
    if draft.kind == "work" and "plan" not in scene.tokens[draft.main].stances:
        if fields["action"] == "start":
            return MOTION, "running" if scene.machine.fuel == "none" else STARTED
        return (MOTION, "") if fields["action"] in ENDS_RUNNING else None
    if draft.kind == "finding" and draft.thing is not None and draft.thing.kind == "machine":
        lists = scene.book.taken.lists
        if fields["state"] in lists["stops"]:
            return MOTION, ""
        return (MOTION, "running") if fields["verdict"] == "good" and fields["state"] in lists["runs"] else None
    if draft.kind == "reading" and fields["quantity"] == "voltage" and "insulation" in str(fields["subject"]):
        return TESTER, f"at {_amount(draft, scene)}"
    return None


STARTED = "cranking"
BY_CONTACT = frozenset({"contacts", "throttle"})
"Slots whose words may tell how another part is put."


def _amount(draft: Draft, scene: Scene) -> str:
    value = fields[0] if isinstance(fields := draft.fields["value"], tuple) else fields
    return f"{value:g} {draft.fields['unit']}"


def _lamps(scene: Scene) -> list[Mark]:
    """`Headlights and blower on`: what loads the battery."""
    lamps = scene.book.taken.lists["lamps"]
    if lamps.isdisjoint(scene.lows()):
        return []
    found = []
    for k, token in enumerate(scene.tokens):
        switched = token.low if token.low in ("on", "off") else ""
        before = scene.tokens[max(0, k - LAMPS) : k]
        if switched and any(t.low in lamps for t in before) and not any(t.kind in ("stop", "comma") for t in before):
            found.append(Mark(k, k, "lights", f"lights {switched}"))
    return found


LAMPS = 3


def _oiled(scene: Scene, drafts: list[Draft]) -> list[Mark]:
    """`A squirt of oil down each hole`: what follows is a wet test."""
    topic = scene.context.topic
    if topic is None or topic.quantity != "compression" or "oil" not in scene.firsts():
        return []
    dosed = any(not scene.book.lists["oil_doses"].isdisjoint(t.low.split()) for t in scene.tokens)
    dosed = dosed or any(d.kind == "reading" and d.fields["quantity"] == "compression" for d in drafts)
    first = scene.firsts().index("oil")
    return [Mark(first, first, WET, "with oil")] if dosed else []


def _waits(drafts: list[Draft]) -> list[int]:
    """The times of the sentence that were waited: minutes and hours, no time of the book."""
    return [
        d.main
        for d in drafts
        if d.kind == "reading" and d.fields["quantity"] == "duration" and d.fields["unit"] in ("min", "h")
        and d.fields["role"] in ("measured", "planned", "set")
    ]  # fmt: skip


def speed_at(k: int, scene: Scene) -> str:
    """`Bring it up to three thousand`, `at 1500 rpm`: the speed at which the rest is read."""
    token = scene.tokens[k]
    if token.kind not in ("number", "amount"):
        return ""
    before = [t.low for t in scene.tokens[max(0, k - 2) : k]]
    if not (before[-1] in ("at", "up to") or before == ["up", "to"]):
        return ""
    if token.amount is not None:
        return f"at {token.amount.low:g} rpm" if token.amount.unit == "rpm" else ""
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    alone = after is None or after.kind in ("stop", "comma") or after.low in AFTER
    return f"at {token.value:g} rpm" if alone and _is_revs(token) else ""


AFTER = frozenset({"and", "i", "its", "or", "so", "revs"})


def _is_revs(token: Token) -> bool:
    return token.value is not None and token.value >= LEAST_REVS and token.value % 10 == 0
