"""What an amount of a fluid is for: what came out is measured, what went in is set, what is wanted is planned."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Token
from worklog_tui.model import FollowUp

HOLDS = frozenset("holds takes capacity capacity's".split())


def role_of_fluid(draft: Draft, scene: Scene) -> str:
    """A fluid that came out is measured, one that went in is set, one that is wanted is planned."""
    span = scene.clause(draft.main)
    before = scene.tokens[max(span.start, draft.main - 8) : draft.main]
    after = scene.tokens[draft.main + 1 : min(draft.main + 5, span.stop)]
    behind = [t.low for t in after[:2]]
    if _still_to_do(draft.main, scene):
        return "planned"
    if _given(before) or _fresh_before(draft.main, scene):
        return "set"
    if any(t.low in HOLDS for t in before) or (behind[:1] == ["it"] and behind[1:] and behind[1] in HOLDS):
        return "specified"
    out = [k for k, t in enumerate(before) if _comes_out(t)]
    went = [k for k, t in enumerate(before) if _goes_in(t)]
    if out and out[-1] >= len(before) - 2 and not went:
        return "measured"
    back = any(t.low in BACK_IN and _no_place(k, scene) for k, t in enumerate(after[:2], draft.main + 1))
    if back or any(t.low == "fresh" for t in after[:3]):
        return "set"
    if out and (not went or out[-1] >= went[-1]):
        return "measured"
    if "plan" in scene.tokens[draft.main].stances and not went:
        return "planned"
    if went or _went_in(draft.main, scene, after):
        return "set"
    return "planned" if _is_wanted(draft.main, scene) else "measured"


def _given(before: list[Token]) -> bool:
    """`It's had a pint of thirty`, `I gave it half a litre`: what somebody put in."""
    said = " ".join(t.low for t in before[-3:])
    return said.endswith(("its had", "shes had", "has had", "gave it", "given it", "gave her", "given her"))


def _fresh_before(i: int, scene: Scene) -> bool:
    """`Fresh oil in the sump. Three and a half litres of it.`: the sentence before says what went in."""
    said = scene.context.said.lower().split()
    opens = i < OPENS and not any(t.sense("copula", "did", "must", "want") for t in scene.tokens[:i])
    return opens and said[:1] == ["fresh"]


OPENS = 3


def _still_to_do(i: int, scene: Scene) -> bool:
    """`That's gotta be changed, five quarts`, `I'll put new in, that's eight gallons`: the work before it is only owed,
    and `before I put any hours on it` pours nothing.
    """
    before = scene.tokens[:i]
    if not any(t.sense("must", "want", "plan") for t in before):
        return False
    poured = [k for k, t in enumerate(before) if _goes_in(t) or _comes_out(t)]
    return all("plan" in before[k].stances or _meanwhile(before, k) for k in poured)


def _meanwhile(tokens: list[Token], k: int) -> bool:
    near = tokens[max(0, k - 2) : k]
    return any(t.sense("meanwhile") or t.low in ("before", "before i", "till", "til") for t in near)


def _went_in(i: int, scene: Scene, after: list[Token]) -> bool:
    """`Two litres in`; not `half a litre in the minute`."""
    low = [t.low for t in after[:2]]
    if low[:1] == ["it"] and low[1:] and low[1] in ("took", "needed"):
        return True
    if low[:1] == ["to"] and low[1:] and low[1] in ("bring", "fill", "top", "get"):
        return True
    if any(t.low in ("went", "goes", "gone") for t in after) and any(t.low in ("in", "into") for t in after):
        return True  # `half a litre of gear oil went into the box`
    return any(
        t.low in ("went in", "goes in", "to fill") or (t.low == "in" and _no_place(k, scene))
        for k, t in enumerate(after, i + 1)
    )


def _no_place(k: int, scene: Scene) -> bool:
    """Whether nothing follows that something could be in: `in the bowl`, `in a minute`."""
    after = scene.tokens[k + 1] if k + 1 < len(scene.tokens) else None
    if after is None:
        return True
    if after.low in ("there", "here"):
        return False
    return not (after.sense("article", "pronoun") or after.amount is not None or after.thing is not None)


def _comes_out(token: Token) -> bool:
    named = any(s.cls in ("did", "doing") and s.name in ("drain", "bleed") for s in token.senses)
    return named or bool(OUT & set(token.low.split()))


def _goes_in(token: Token) -> bool:
    named = any(s.cls in ("did", "doing", "does", "do") and s.name == "fill" for s in token.senses)
    return named or bool(token.sense("setto", "new")) or bool(IN & set(token.low.split()))


def _is_wanted(i: int, scene: Scene) -> bool:
    """`That wants changing. Six pints.`: the sentence before says what is still to be done."""
    if any(t.sense("must", "want") for t in scene.tokens[:i]):
        return True
    last = scene.context.recent[-1] if scene.context.recent else None
    return isinstance(last, FollowUp) and last.main.note not in scene.context.notes


BACK_IN = frozenset({"in", "back in", "went in", "goes in", "went back in"})
OUT = frozenset("out drained dumped caught got lost spilled came".split())
IN = frozenset("in fresh took poured filled topped added puts put squirted squirt pumped tipped syringed".split())
