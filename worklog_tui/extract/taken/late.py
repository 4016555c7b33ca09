"""How figures were taken, told behind them: `One point nine. One point eight. No load, that is.`"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.taken.marks import marks
from worklog_tui.model import Fact, Reading
from worklog_tui.rulebook.taken import Slot

MOST = 9
"Tokens of a sentence that only tells how."
THAT = frozenset({"that", "those", "these"})
MEANT = frozenset({"not", "if", "would", "asked", "plan"})


def told_late(scene: Scene, drafts: Sequence[Draft], facts: list[Fact]) -> None:
    """Completes, in place, the readings just told of which a sentence tells more: without a figure of its own it points
    at them and says how the machine stood.
    """
    lists, slots = scene.book.taken.lists, scene.book.taken.slots
    if not facts or len(scene.tokens) > MOST or any(d.kind == "reading" for d in drafts):
        return
    if lists["that"].isdisjoint(scene.lows()) and not THAT & scene.words():
        return
    told = [m for m in marks(scene) if m.slot in slots and m.value and not MEANT & scene.tokens[m.first].stances]
    if len(told) != 1:
        return
    slot = slots[told[0].slot]
    for k, fact in enumerate(facts):
        if isinstance(fact, Reading) and _may_be_of(fact, slot):
            said = "" if "condition" in fact.filled else fact.condition
            filled = tuple(name for name in fact.filled if name != "condition")
            facts[k] = replace(fact, condition=", ".join(filter(None, (said, told[0].value))), filled=filled)


def _may_be_of(fact: Reading, slot: Slot) -> bool:
    known = fact.condition and "condition" not in fact.filled
    return fact.role == "measured" and fact.quantity in slot.beside and not known
