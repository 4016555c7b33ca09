"""What is told in one breath is of one thing: of `ten pounds held seven minutes` both are of what holds them."""

from __future__ import annotations

from worklog_tui.extract.refiners.settled import POINTS
from worklog_tui.extract.scene import Draft, Scene

CHANGES = frozenset({"pressure", "length", "leakage", "volume", "compression"})
"Quantities that change while one waits: the time is of what they are of."
APART = 5
"Tokens between a value and its time."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Times without a thing of their own, with that of the value that they are told with."""
    readings = sorted((d for d in drafts if d.kind == "reading"), key=lambda d: d.main)
    for n, draft in enumerate(readings):
        if draft.fields["quantity"] == "duration" and not _own(draft, scene):
            beside = [d for d in readings[max(0, n - 1) : n + 2] if d is not draft and _with_it(d, draft, scene)]
            if beside:
                _give(draft, beside[0])
    return drafts


def _own(draft: Draft, scene: Scene) -> bool:
    """Whether a thing of its own stands before the time in its clause."""
    span = scene.clause(draft.main)
    return draft.thing_at is not None and span.start <= draft.thing_at < draft.main


def _with_it(value: Draft, time: Draft, scene: Scene) -> bool:
    """Whether a value stands right before or behind a time, with small words between."""
    if value.fields["quantity"] not in CHANGES or value.fields["subject"] in ("", *POINTS):
        return False
    first, second = sorted((value, time), key=lambda d: d.main)
    between = scene.tokens[first.last + 1 : second.main]
    apart = any(t.kind == "stop" or t.low == "at" for t in between)  # `sixty at a minute and a half` tells when it was
    named = any(t.thing is not None and t.thing.kind != "quality" for t in between)
    return len(between) <= APART and not (apart or named)


def _give(draft: Draft, other: Draft) -> None:
    draft.fields["subject"], draft.thing = other.fields["subject"], other.thing
    draft.trail.append(f"of {other.fields['subject']}: told with it")
