"""What a time is for: how long something took, or how long it is still to take."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene

DAYS = frozenset({"day", "week", "month"})
"In what the delivery of parts is told; what is left for an hour is something else."


def is_ordered(scene: Scene) -> bool:
    """Whether the sentence tells that something was ordered."""
    return any(s.name == "order" for t in scene.tokens for s in t.senses if s.cls in ("did", "doing"))


def _is_told_to(i: int, scene: Scene) -> bool:
    """`Leave it, ten minutes, and then I'll look`, `run it an hour`: an order at the head of the clause or before it.
    """
    first = scene.clause(i).start
    heads = [scene.tokens[first].low.split()[0]]
    stop = next((k for k in range(first - 1, -1, -1) if scene.tokens[k].kind == "stop"), None)
    if stop is not None and first - stop <= 1:
        before = next((k for k in range(stop - 1, -1, -1) if scene.tokens[k].kind == "stop"), -1) + 1
        heads.append(scene.tokens[before].low.split()[0])
    return bool(ORDERS & set(heads))


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
    baths = scene.book.lists["planned_baths"]
    if is_ordered(scene) or any(
        (t.thing is not None and t.thing.kind == "tool") or baths & set(t.low.split()) for t in before
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
