"""A figure that is put right a sentence or some minutes later: `Four amps. Correction, five`, `I said two ton, it's
three`.
"""

from __future__ import annotations

from collections.abc import Sequence

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Fact, Reading

APART = 8.0
"How many times larger or smaller what was meant may be than what was said (judgement)."


def put_right(scene: Scene, drafts: Sequence[Draft], before: Sequence[Fact]) -> tuple[Fact, ...]:
    """The readings before this sentence that it puts right: of one quantity, the last, or that of the figure that it
    says again.
    """
    now = [d for d in drafts if d.kind == "reading" and d.fields["role"] != "specified"]
    told = [f for f in before if isinstance(f, Reading) and f.role != "specified"]
    if not now or not told:
        return ()
    if said := scene.again:
        return tuple(f for f in told if any(_is(f, *figure) for figure in said))[-1:]
    last = told[-1]
    return (last,) if _opens(scene) and any(_of_one(d, last) for d in now) else ()


def _opens(scene: Scene) -> bool:
    """Whether the sentence begins by taking back, or the one before did nothing else: `7 m? No. 5 m`."""
    first = next((t for t in scene.tokens if t.kind != "comma"), None)
    if first is not None and first.sense("correct", "disown"):
        return True
    said = scene.context.said.lower().strip(" .,!?").replace("'", "")
    return any(sense[0] in ("correct", "disown") for sense in scene.book.table.get(said, ()))


def _of_one(draft: Draft, last: Reading) -> bool:
    """Whether both are of one quantity and one thing, and not worlds apart."""
    value, before = draft.fields["value"], last.value
    if draft.fields["quantity"] != last.quantity or draft.fields["unit"] != last.unit or isinstance(before, str):
        return False
    one, other = (v[0] if isinstance(v, tuple) else v for v in (value, before))
    subject = draft.fields["subject"].casefold()
    same = not subject or not last.subject or subject == last.subject.casefold()
    return same and bool(other) and 1 / APART <= abs(one / other) <= APART


def _is(fact: Reading, quantity: str, value: object, unit: str) -> bool:
    return (fact.quantity, fact.value, fact.unit) == (quantity, value, unit)
