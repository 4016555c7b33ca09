"""What raises nothing after all: what others need, how a thing is meant to work, what was found to be good.

And of two in a clause the one whose thing is only guessed, where the other names its own.
"""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.model import Finding

NEAR = 3
"Tokens before the need in which the one stands who needs."
MEANT = frozenset({"ought to", "oughta", "supposed to", "should"})
"How it is meant to work, when a thing does it."
SUBJECTS = frozenset("that which it they there".split())
APART = frozenset({"question", "fallback"})


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts without follow-ups of which the sentence says that they are none of the machine's."""
    owed = [d for d in drafts if d.kind == "follow_up" and d.fields["reason"] not in APART]
    gone = {id(d): why for d in owed if (why := _why_not(d, owed, scene))}
    for draft in owed:
        if id(draft) in gone:
            scene.dropped.append(f"{draft.fields['topic']}: {draft.rule.id} let go, {gone[id(draft)]}")
    return [_of_a_trade(d, scene) for d in drafts if id(d) not in gone]


def _of_a_trade(draft: Draft, scene: Scene) -> Draft:
    """Who is wanted, where a thing only says of which trade: `I want the gas fitter to look at it`."""
    if draft.kind != "follow_up" or draft.fields["reason"] != "part needed" or draft.thing is None:
        return draft
    after = scene.tokens[draft.last + 1 : draft.last + 2]
    if "topic" in draft.filled or not after or after[0].low not in scene.book.lists["trades"]:
        return draft
    topic = f"{draft.fields['topic']} {after[0].low}"
    return replace(draft, fields={**draft.fields, "topic": topic, "reason": "to do", "name": ""})


def _why_not(draft: Draft, owed: list[Draft], scene: Scene) -> str:
    """Why a follow-up is none; empty where it stands."""
    ours = any(t.low in ("me", "us") for t in _used(draft, scene))
    if draft.fields["reason"] == "part needed" and not ours and _anothers(draft.first_used, scene):
        return "another's need"
    if draft.fields["reason"] == "to do" and _as_it_works(draft, scene):
        return "how it is meant to work"
    if draft.fields["reason"] == "fault" and _is_fine(draft, scene):
        return "it was found good"
    return "told of another thing" if "topic" in draft.filled and _named_beside(draft, owed, scene) else ""


def _anothers(first: int, scene: Scene) -> bool:
    """Whether another person is who needs it: `he wants a bush for his gate`, `the wife's car needs a battery`."""
    span, others = scene.clause(first), scene.book.lists["other_people"]
    before = scene.tokens[max(span.start, first - NEAR) : first]
    return any(t.low in others or t.sense("outsider") or t.low.removesuffix("s") in others for t in before)


def _as_it_works(draft: Draft, scene: Scene) -> bool:
    """Whether a thing is told to be meant for a deed: `a ring that ought to carry the oil`."""
    first = draft.first_used
    if scene.tokens[first].low not in MEANT or not first or any(t.low == "be" for t in _used(draft, scene)):
        return False
    before = scene.tokens[first - 1]
    copula = before.sense("copula") and first > 1
    before = scene.tokens[first - 2] if copula else before
    return before.thing is not None or before.low in SUBJECTS


def _used(draft: Draft, scene: Scene) -> list[Token]:
    return scene.tokens[draft.first_used : draft.last_used + 1]


def _is_fine(draft: Draft, scene: Scene) -> bool:
    """Whether the thing was last found good."""
    name = draft.fields["name"]
    found = (f for f in reversed(scene.context.recent) if isinstance(f, Finding) and f.name == name)
    last = next(found, None) if name and "topic" in draft.filled else None
    return last is not None and last.verdict == "good"


def _named_beside(draft: Draft, owed: list[Draft], scene: Scene) -> bool:
    """Whether another follow-up of the clause names its own thing, and another."""
    span, name = scene.clause(draft.main), draft.fields["name"]
    others = (d for d in owed if d is not draft and "topic" not in d.filled and d.main in span)
    return any(d.thing is not None and d.fields["name"] != name for d in others)
