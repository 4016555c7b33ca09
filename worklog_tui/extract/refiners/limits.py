"""Figures that a person tells as what should be, in no word of the book: `fifteen is what these want`, `nine to twelve
is fine`, `you don't want to go over thirty`.
"""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.taken.limits import worded

WHAT = frozenset({"what", "is what", "are what", "was what", "whats"})
DENIALS = frozenset("dont never mustnt cant shouldnt not".split())
GOES = frozenset("go goes going run runs exceed take let get".split())
AFTER = frozenset({"after", "looking for", "aiming for", "hoping for"})
"`Twenty-five is what they're after`."
PAST = frozenset({"over", "past", "above", "beyond", "more than", "below", "under", "less than"})
BEHIND = 6
"Tokens behind a figure in which it is told who wants it."


def is_limit(i: int, scene: Scene) -> bool:
    """Whether the words around the number at token i make it one that should be, or should not be passed."""
    return _is_what_is_wanted(i, scene) or _is_fine(i, scene) or _is_forbidden(i, scene) or _is_worded(i, scene)


def _is_worded(i: int, scene: Scene) -> bool:
    """`I'd fret at seventy`, `want it under three`, `scrap undr 6`."""
    lists = scene.book.taken.lists
    if lists["worry"].isdisjoint(scene.words()) and lists["wish"].isdisjoint(scene.words()):
        return False
    amount = scene.tokens[i].amount
    return bool(worded(i, scene, amount.bound if amount is not None else ""))


def _is_what_is_wanted(i: int, scene: Scene) -> bool:
    """`Fifteen pounds is what these want`, `twelve's what it needs`."""
    after = scene.tokens[i + 1 : i + 1 + BEHIND]
    at = next((k for k, t in enumerate(after[:3]) if t.low in WHAT), None)
    if at is None or any(not (t.sense("copula") or t.thing is not None) for t in after[:at]):
        return False
    told = after[at + 1 : at + 4]
    return any(t.sense("want", "book", "must") for t in told) or any(t.low in AFTER for t in told[1:])


def _is_fine(i: int, scene: Scene) -> bool:
    """`Nine hundred to twelve hundred is fine`: of a whole range nothing was read."""
    token, after = scene.tokens[i], scene.tokens[i + 1 : i + 3]
    ranges = token.amount.low != token.amount.high if token.amount is not None else token.high is not None
    opens = i == 0 or scene.tokens[i - 1].kind in ("stop", "comma") or scene.tokens[i - 1].sense("about")
    if not ranges:
        return False
    if i and scene.tokens[i - 1].low in ANYWHERE and after and after[0].sense("good", "judged"):
        return True
    return bool(opens and len(after) == 2 and after[0].sense("copula") and after[1].sense("good", "judged"))


ANYWHERE = frozenset({"anywhere", "anything", "somewhere"})
"`Anywhere between two and four thou will do`."


def _is_forbidden(i: int, scene: Scene) -> bool:
    """`Don't go past forty`, `it never runs over sixty`: told of any time; `it never went above eighty` was read."""
    before = scene.tokens[max(scene.clause(i).start, i - BEHIND) : i]
    amount = scene.tokens[i].amount
    if not before or not (before[-1].low in PAST or (amount is not None and amount.bound)):
        return False
    words = [w for t in before for w in t.low.split()]
    return bool(DENIALS & set(words)) and bool(GOES & set(words))
