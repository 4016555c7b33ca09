"""How a reading was taken: dry, wet, hot, at idle, under load, after ten minutes; said in its clause, in its sentence,
or still true of how the machine stands.
"""

from __future__ import annotations

from collections.abc import Mapping

from worklog_tui.extract.measured.sizes import sized
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.taken.by_log import after_work, as_found, at_rest, side_of_top, stage
from worklog_tui.extract.taken.by_words import by_words
from worklog_tui.extract.taken.limits import limit, of_new, worded
from worklog_tui.extract.taken.marks import Mark, marks, nearest
from worklog_tui.extract.taken.places import place, place_behind, way
from worklog_tui.extract.taken.standing import stood
from worklog_tui.extract.taken.stretches import stretch
from worklog_tui.extract.taken.times import is_time, when
from worklog_tui.extract.taken.told import speed_at, told
from worklog_tui.extract.taken.with_words import with_words
from worklog_tui.rulebook.taken import Slot

BOUNDS = {"under": "under", "over": "over"}
MOST = 3
"So many ways of how it was taken are told of one reading."
REACH = 14
"Tokens before a number in which a way is still told of it."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with their condition."""
    amounts = {d.main for d in drafts if d.kind == "reading"}
    if not amounts:
        return drafts
    here, numbers = told(scene, drafts), sorted(amounts)
    for draft in drafts:
        if draft.kind == "reading" and not draft.fields["condition"]:
            if size := sized(draft.main, scene):
                draft.fields["condition"] = size
                continue
            said, still = stood(draft, numbers, here, scene)
            found = _limit(draft, scene, amounts) + said + _said(draft, drafts, scene, amounts)
            if not found:
                still = still or _by_log(draft, drafts, scene)
            found = found + [s for s in still if not s.startswith("after") or not found]
            if still and found == still:
                draft.filled.add("condition")
            draft.fields["condition"] = ", ".join(dict.fromkeys((found or _bound(draft))[:MOST]))
    return drafts


def _limit(draft: Draft, scene: Scene, amounts: set[int]) -> list[str]:
    """Which limit a figure of the book is."""
    if draft.fields["role"] != "specified":
        return []
    told = of_new(draft.main, scene) or limit(draft.main, scene, amounts)
    if told or not (found := worded(draft.main, scene, draft.fields["bound"])):
        return told
    return [ONE_SIDED.get(draft.fields["quantity"], found) if found == "limit" else found]


ONE_SIDED = {"temperature": "maximum", "current": "maximum", "leakage": "maximum", "compression": "minimum"}
"Which limit it is of what can only be too high, or too low."


def _said(draft: Draft, drafts: list[Draft], scene: Scene, amounts: set[int]) -> list[str]:
    """The words of the sentence, the surest first."""
    found = stage(draft, drafts, scene) + side_of_top(draft, scene)
    found += when(draft, drafts, scene) or _at_another(draft, drafts, scene)
    found += with_words(draft, sorted(amounts), scene) + (stretch(draft, scene) or way(draft, scene))
    near = place_behind(draft, amounts, scene)
    found += _in_other_words(draft, scene, amounts, bool(near)) or near or place(draft, drafts, scene)
    return found + by_words(draft, sorted(amounts), scene) + as_found(draft, scene)


def _by_log(draft: Draft, drafts: list[Draft], scene: Scene) -> list[str]:
    """What nobody said and the order of the log tells."""
    return after_work(draft, drafts, scene) or at_rest(draft, scene)


def _in_other_words(draft: Draft, scene: Scene, amounts: set[int], placed: bool) -> list[str]:
    """Words of how it was taken that are of no slot: those of the clause, else the last before in the sentence, which
    are of another number where the place of this one is told behind it.
    """
    if not scene.holds("how"):
        return []
    slots = scene.book.taken.slots
    told = [mark for mark in marks(scene) if mark.slot not in slots or not _tells_else(mark, draft, slots)]
    known = {k for mark in told for k in range(mark.first, mark.last + 1)}
    span = scene.clause(draft.main)
    told_here = [
        Mark(k, k, "", scene.said(k, k)) for k, token in enumerate(scene.tokens)
        if k != draft.main and "how" in token.classes and k not in known and (k in span or k < draft.main)
    ]  # fmt: skip
    mark = nearest(draft.main, told_here, sorted(amounts), scene)
    if (
        mark is None
        or (placed and mark.first < draft.main)
        or (draft.fields["role"] not in ("measured", "set") and mark.first not in span)
    ):
        return []
    return [mark.value] if draft.main - REACH <= mark.first else []


def _tells_else(mark: Mark, draft: Draft, slots: Mapping[str, Slot]) -> bool:
    """Whether the words of a slot may tell something else of such a reading: `wide open by ninety`."""
    slot = slots[mark.slot]
    return slot.also and draft.fields["quantity"] not in slot.beside


def _at_another(draft: Draft, drafts: list[Draft], scene: Scene) -> list[str]:
    """`At 150 psi`, `20.8 at 150`: an amount of something else that says where it was taken."""
    tokens, i = scene.tokens, draft.main
    quantities = {d.main: d.fields["quantity"] for d in drafts if d.kind == "reading"}
    for k in scene.clause(i):
        if k in (i, 0) or tokens[k].kind not in ("amount", "number") or is_time(k, scene) or speed_at(k, scene):
            continue
        alike = quantities.get(k) == draft.fields["quantity"]
        if tokens[k - 1].low != "at" or (alike and not _is_place(i, k, scene)):
            continue
        if k > 1 and tokens[k - 2].sense("copula"):
            continue  # `the tyres were at eighteen` tells of the tyres
        if any(t.kind in ("comma", "stop") for t in tokens[min(i, k) : max(i, k)]):
            continue
        if k in quantities or (k == i + 2 and tokens[k].kind == "number"):
            return [scene.said(k - 1, k)]
    return []


def _is_place(i: int, k: int, scene: Scene) -> bool:
    """`Two thou at six inches`: a length of another size tells where."""
    one, other = scene.tokens[i].amount, scene.tokens[k].amount
    return one is not None and other is not None and one.unit == other.unit and other.low > PLACED * one.high > 0


PLACED = 20


def _bound(draft: Draft) -> list[str]:
    bound = BOUNDS.get(draft.fields["bound"])
    return [bound] if bound else []
