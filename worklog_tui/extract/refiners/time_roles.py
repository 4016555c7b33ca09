"""What a time is for: how long something took, or how long it is still to take."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

DAYS = frozenset({"day", "week", "month"})
"In what the delivery of parts is told; what is left for an hour is something else."


def is_ordered(scene: Scene) -> bool:
    """Whether the sentence tells that something was ordered."""
    return any(s.name == "order" for t in scene.tokens for s in t.senses if s.cls in ("did", "doing"))


def _is_told_to(i: int, scene: Scene) -> bool:
    """`Leave it, ten minutes, and then I'll look`, `run it an hour`: an order at the head of the clause or before."""
    first = scene.clause(i).start
    heads = {scene.tokens[first].low.split()[0]}
    if i <= first + ABOUT and first == 0:
        heads |= {scene.context.said.lower().split(" ", 1)[0]}
    return bool(ORDERS & heads) or any(t.low in LETS for t in scene.tokens[max(first, i - 3) : i])


LETS = frozenset({"lets", "let's", "give it", "give them", "leave it", "leave them"})
ABOUT = 2
"Tokens before a time that stands at the head of its sentence: `about`, `so`."
ORDERS = frozenset("leave give run let wait soak hold keep lets let's cook heat warm".split())


def role_of_time(draft: Draft, scene: Scene) -> str:
    """What a time is for: taken, or still to come."""
    if draft.fields["subject"] == "parts" or _is_told_to(draft.main, scene) or _is_promised(draft, scene):
        return "planned"
    stances = scene.tokens[draft.main].stances
    span = scene.clause(draft.main)
    before = scene.tokens[span.start : draft.main]
    if any(t.sense("did") or t.low in ("had", "took", "been", "ran", "after", "later", "was") for t in before):
        return "measured"
    if {"again", "agn"} & {t.low for t in before[-3:]} and any(t.low in ("after", "aftr", "in") for t in before[-2:]):
        return "planned"  # `oil again after five hours`
    baths = scene.book.lists["planned_baths"]
    timed = any(scene.book.lists["timekeepers"] >= {w} for t in before for w in t.low.split())
    if is_ordered(scene) or any(
        (t.thing is not None and t.thing.kind == "tool" and not timed) or baths & set(t.low.split()) for t in before
    ):
        return "planned"
    behind = scene.tokens[draft.main + 1 : min(draft.main + 5, span.stop)]
    if not any(t.sense("copula") for t in before) and any(baths & set(t.low.split()) for t in behind):
        return "planned"  # `half an hour in the dip`
    return (
        "planned"
        if "plan" in stances or any(t.low in ("give", "leave", "let", "wait", "another") for t in before)
        else "measured"
    )


def _is_promised(draft: Draft, scene: Scene) -> bool:
    """`Ordered, three days`, `two weeks, they say`: how long something is to take in days."""
    if draft.fields["unit"] not in DAYS:
        return False
    after = [t.low for t in scene.tokens[draft.main + 1 : draft.main + 5]]
    told = any(w in TOLD_BY for w in after) and not any(w in ("ago", "old") for w in after)
    return told or (is_ordered(scene) and not any(t.low == "after" for t in scene.tokens[: draft.main]))


TOLD_BY = frozenset(
    "tell tells told quoted say says said reckon reckons reckoned delivery promised promise post postage".split()
)
