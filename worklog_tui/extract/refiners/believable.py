"""Values outside what their quantity can be are kept and marked doubtful; so is what the speaker doubts."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with `doubtful` set."""
    doubted = scene.holds("doubt", "disown") or "maybe" in scene.lows()
    for draft in drafts:
        if draft.kind != "reading":
            continue
        doubtful = (
            doubted
            and draft.fields["role"] != "specified"
            and (_doubted_before(draft.main, scene) or _taken_with_salt(draft.main, scene))
        )
        quantity = scene.book.quantities.get(draft.fields["quantity"])
        span = quantity.plausible.get(draft.fields["unit"]) if quantity else None
        value = draft.fields["value"]
        if span and not isinstance(value, str):
            low, high = value if isinstance(value, tuple) else (value, value)
            doubtful = doubtful or low < span[0] or high > span[1]
        draft.fields["doubtful"] = doubtful
    return drafts


BEFORE, AFTER = 7, 20


def _doubted_before(i: int, scene: Scene) -> bool:
    """`at a guess thirty`, `maybe two thou`: doubt said right before the number."""
    for k in range(i - 1, max(i - 1 - BEFORE, -1), -1):
        token = scene.tokens[k]
        if token.kind in ("stop", "amount", "number"):
            return False
        if token.sense("doubt") or (token.low == "maybe" and k >= i - 2):
            return True
    return False


def _taken_with_salt(i: int, scene: Scene) -> bool:
    """`13.9 but it is on the charger so means nothing`, `thirty thou or so`: doubt said after the number."""
    for k in range(i + 1, min(i + 1 + AFTER, len(scene.tokens))):
        token = scene.tokens[k]
        if token.kind in ("stop", "amount", "number"):
            return False
        if token.sense("doubt", "disown") or (k == i + 1 and token.low == "maybe"):
            return True
    return False
