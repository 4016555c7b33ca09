"""What a figure is of that a work came to: of `two turns on the band nut and it's fourteen` that was nine before the
fourteen is of what the nine was of, and not of the nut.
"""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading

IT_IS = frozenset(
    "its it it is thats that now got ive im gives gave makes made reads get now its which gets comes came".split()
)
"Words with which the figure is told that came of it."
WORKED = frozenset({"adjust", "tighten", "fit", "repair", "clean", "replace", "make", "fill", "free", "lubricate"})
"What is done so that a figure comes right (common practice)."
CHANGED = frozenset({"pressure", "speed", "voltage", "current", "mass"})
"Quantities that a work on another part changes; a gap or a length is of what was worked on."
LIKE, UNLIKE = 0.3, 3.4
"How many times the figure told before of the same thing the new one may be."
NOTES = 3
"Notes back in which the figure before was told."


def come_to(scene: Scene, i: int, quantity: str) -> tuple[Thing, bool] | None:
    """The thing that the last figure of the quantity was of, where the one at token i is what a work before it in the
    sentence came to, and whether it is of two that were told together; None where no work stands there, or another
    thing behind it.
    """
    if quantity not in CHANGED or not _is_what_came(scene, i):
        return None
    old = set(scene.context.notes[:-NOTES])
    told = [
        f for f in reversed(scene.context.recent)
        if isinstance(f, Reading) and f.quantity == quantity and f.subject and f.main.note not in old
    ]  # fmt: skip
    two = len(told) > 1 and told[0].subject != told[1].subject
    order = _of_two(scene, i) if two else 0
    fact = told[1] if order == FIRST else told[0] if told else None
    if fact is None or not _alike(scene, i, fact):
        return None
    return Thing(fact.subject, fact.name, "part", quantities=(fact.quantity,)), bool(order)


FIRST, SECOND = 1, 2


def _of_two(scene: Scene, i: int) -> int:
    """`It's now 175 and 136`: whether the number is the first or the second of two, which are told in the order of the
    two before; 0 where it stands alone.
    """
    after, before = scene.tokens[i + 1 : i + 3], scene.tokens[max(0, i - 2) : i]
    if len(after) == 2 and after[0].low in AND and after[1].kind in ("number", "amount"):
        return FIRST
    return SECOND if len(before) == 2 and before[1].low in AND and before[0].kind in ("number", "amount") else 0


AND = frozenset({"and", "/"})


def _is_what_came(scene: Scene, i: int) -> bool:
    """Whether `it's`, `now` or the like stands before the number, no thing between, and a work before that."""
    led = False
    for k in range(i - 1, -1, -1):
        token = scene.tokens[k]
        if token.kind == "stop":
            return False
        if led and _worked(scene, k):
            return True
        if not led and (token.thing is not None or (token.kind in ("amount", "which") and k < i - 2)):
            return False
        led = led or token.low in IT_IS
    return False


def _worked(scene: Scene, k: int) -> bool:
    token = scene.tokens[k]
    turned = token.amount is not None and token.amount.unit == "turn"
    if token.sense("new") and k + 1 < len(scene.tokens) and scene.tokens[k + 1].thing is not None:
        return True  # `new diaphragm and now it's five`
    return turned or any(s.cls in ("did", "doing") and s.name in WORKED for s in token.senses)


def _alike(scene: Scene, i: int, fact: Reading) -> bool:
    """Whether the figure told before has the unit and about the size of the number."""
    low = fact.value[0] if isinstance(fact.value, tuple) else fact.value
    amount, value = scene.tokens[i].amount, scene.tokens[i].value or 0.0
    if isinstance(low, str) or not low or (amount is not None and amount.unit != fact.unit):
        return False
    value = amount.low if amount is not None else value
    thou = amount is None and fact.unit == "in" and low < 0.2 and value > 0.5
    return LIKE <= value * (0.001 if thou else 1.0) / low <= UNLIKE
