"""How the machine stands: hot or cold, at rest or running. What was said of it holds until something else is."""

from __future__ import annotations

from worklog_tui.extract.context import Context, Stand
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.taken.left_as import LEFT, PLACED
from worklog_tui.extract.taken.marks import Mark, nearest
from worklog_tui.extract.taken.times import WAITED
from worklog_tui.extract.taken.told import MOTION, TESTER, told
from worklog_tui.extract.tokens import ARROW
from worklog_tui.rulebook.taken import Slot

HEAT, LOAD, SWITCH = "heat", "load", "switch"
NOT_SO = frozenset({"not", "if", "would", "asked", "maybe", "wondered"})
"Stances of what is not so now."


def standing_after(scene: Scene, drafts: list[Draft], context: Context, upto: int) -> tuple[Stand, ...]:
    """How the machine stands after the tokens before `upto`; what was said too long ago is forgotten."""
    slots = scene.book.taken.slots
    held = {s.slot: s for s in context.standing if s.slot in slots and s.age <= _life(s, slots[s.slot])}
    starts = {d.main for d in drafts if d.kind == "work" and d.fields["action"] == "start"}
    for at, _, slot, value in told(scene, drafts):
        if at >= upto or not slots[slot].holds or NOT_SO & scene.tokens[at].stances:
            continue
        if value:
            held[slot] = Stand(slot, value, BRIEF - 1 if at in starts else 0)
        else:
            held.pop(slot, None)
        if slot == MOTION and value in RUNS and held.get(HEAT, NOWHERE).value in COLD:
            del held[HEAT]
        if slot in ENDS:
            held.pop(ENDS[slot], None)
    for slot in _used(drafts, upto):
        if slot in held:
            held[slot] = held[slot]._replace(age=0)
    return tuple(held.values())


NOWHERE = Stand("", "")
ENDS = {MOTION: LOAD, SWITCH: MOTION}
"What is said of the one slot ends what was so of the other: an engine is cranked, and no longer without load."
BRIEF = 3
"Notes after which what is soon over is over."


def _life(stand: Stand, slot: Slot) -> int:
    return BRIEF if stand.value in slot.brief else slot.notes


COLD = frozenset({"cold", "stone cold"})
RUNS = frozenset({"running", "at idle", "at fast idle", "revving", "flat out"})


def _used(drafts: list[Draft], upto: int) -> set[str]:
    """The slots by which a reading has just told how it was taken: they are still meant."""
    return {slot for d in drafts if d.kind == "reading" and d.main < upto for slot in d.fields.get("stood", ())}


def stood(draft: Draft, numbers: list[int], here: list[Mark], scene: Scene) -> tuple[list[str], list[str]]:
    """How the machine stood when a reading was taken: what is told in its sentence, `here`, and what is still so."""
    said: list[str] = []
    still: list[str] = []
    used: list[str] = []
    slots, quantity = scene.book.taken.slots, draft.fields["quantity"]
    touched = {mark.slot for mark in here} | {stand.slot for stand in scene.context.standing}
    for name, slot in slots.items() if touched else ():
        if name not in touched or quantity not in slot.beside:
            continue
        own = [m for m in here if m.slot == name and not _otherwise(m, draft, scene)]
        mark = nearest(draft.main, own, numbers, scene)
        if mark is not None and _is_of_later(mark, draft.main, here, numbers, scene):
            mark = None
        if mark is not None and name != WAITED and _may_tell(mark, draft, slot, scene):
            said += [mark.value] if _adds(mark.value, draft, slot) else []
            used.append(name)
        elif mark is None and (value := _held(name, slot, draft, scene)):
            still.append(value)
            used.append(name)
    draft.fields["stood"] = tuple(used)
    return said, still


def _otherwise(mark: Mark, draft: Draft, scene: Scene) -> bool:
    """Whether a mark is not meant of this reading: denied, planned, or of the book where the reading is none of it."""
    stances = scene.tokens[mark.first].stances
    if stances & {"not", "asked"}:
        return True
    return "book" in stances and draft.fields["role"] != "specified" and mark.first not in scene.clause(draft.main)


def _is_of_later(mark: Mark, i: int, here: list[Mark], numbers: list[int], scene: Scene) -> bool:
    """`45 cold, 70 w/ oil`, `0.2M -> 1.8M after drying`: the oil, the drying is of the later figure alone, where the
    one before has its own words behind it, or an arrow leads from it to the later one.
    """
    between = [n for n in numbers if i < n < mark.first]
    if not between or mark.first - between[-1] > CLOSE:
        return False
    if any(t.kind in ("comma", "stop") for t in scene.tokens[between[-1] + 1 : mark.first]):
        return False
    if any(t.low == ARROW for t in scene.tokens[i + 1 : between[0]]):
        return True
    return any(i < m.first < between[0] for m in here)


def _may_tell(mark: Mark, draft: Draft, slot: Slot, scene: Scene) -> bool:
    """Whether a word of the sentence is of this reading: in its clause, or of a thing that has such a state."""
    if mark.slot == TESTER and draft.fields["unit"] != MEGOHMS:
        return False
    near = mark.first in scene.clause(draft.main) or 0 < mark.first - draft.main <= CLOSE
    return near or (abs(mark.first - draft.main) <= REACH and _is_on(draft, slot))


MEGOHMS = "Mohm"
CLOSE = 4


def _adds(value: str, draft: Draft, slot: Slot) -> bool:
    """Whether the words tell more than the name of what was measured: the idle speed at idle."""
    quantity = draft.fields["quantity"]
    if quantity not in slot.only.get(value, (quantity,)) or (draft.fields["role"] == "rated" and slot.notes > FEW):
        return False
    if not value or (draft.fields["quantity"] == "speed" and value.endswith(" rpm")):
        return False
    return not set(value.split()) - SMALL <= set(draft.fields["subject"].lower().split())


SMALL = frozenset({"at", "in", "on"})
REACH = 20


def _held(name: str, slot: Slot, draft: Draft, scene: Scene) -> str:
    """What was said before and is still so of such a reading; of one of the book, where it has just been said."""
    role = draft.fields["role"]
    if role not in ("measured", "set", "specified") or draft.fields["quantity"] not in slot.holds:
        return ""
    if role == "specified" and (draft.fields["quantity"] in BY_ITSELF or name in (LEFT, PLACED)):
        return ""
    if not _is_on(draft, slot) or (name == TESTER and draft.fields["unit"] != MEGOHMS):
        return ""
    if name == WAITED and (draft.fields["role"] != "measured" or _is_around(draft, scene)):
        return ""
    life = 0 if role == "specified" else slot.notes
    value = next((s.value for s in scene.context.standing if s.slot == name and s.age <= min(life, _life(s, slot))), "")
    return value if _adds(value, draft, slot) else ""


BY_ITSELF = frozenset({"compression", "temperature", "leakage"})
"What the book gives of these is one figure, however it is taken."
FEW = 4
"""Notes of the slots that are told of a rated figure too: the plate has it at full load."""


def _is_around(draft: Draft, scene: Scene) -> bool:
    """Whether it is the air around that was measured."""
    return not scene.book.taken.lists["around"].isdisjoint(draft.fields["subject"].lower().split())


def _is_on(draft: Draft, slot: Slot) -> bool:
    """Whether what was measured is a thing that has such a state."""
    quantity = draft.fields["quantity"]
    on, off = slot.on.get(quantity), slot.off.get(quantity)
    if on is None and off is None:
        return True
    name = draft.thing.name if draft.thing is not None else ""
    words = f"{draft.fields['subject']} {name}".lower().split()
    return (on is None or not on.isdisjoint(words)) and (off is None or off.isdisjoint(words))
