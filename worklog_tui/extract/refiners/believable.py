"""Values outside what their quantity can be are kept and marked doubtful; so is what the speaker doubts."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings with `doubtful` set."""
    for draft in drafts:
        if draft.kind != "reading":
            continue
        stances = scene.tokens[draft.main].stances
        doubtful = bool(stances & {"doubt", "asked"})
        quantity = scene.book.quantities.get(draft.fields["quantity"])
        span = quantity.plausible.get(draft.fields["unit"]) if quantity else None
        value = draft.fields["value"]
        if span and not isinstance(value, str):
            low, high = value if isinstance(value, tuple) else (value, value)
            doubtful = doubtful or low < span[0] or high > span[1]
        draft.fields["doubtful"] = doubtful
    return drafts
