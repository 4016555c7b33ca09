"""A second number of the same quantity in a sentence is of the same thing, unless another one is said."""

from __future__ import annotations

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.subjects import which_at


def _alike(before: Draft, draft: Draft) -> bool:
    """Revolutions and cycles are not of one thing."""
    return bool(draft.fields["quantity"] != "speed" or before.fields["unit"] == draft.fields["unit"])


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings without a subject of their own, with that of the reading before."""
    last: dict[str, Draft] = {}
    for draft in drafts:
        if draft.kind != "reading":
            continue
        quantity = draft.fields["quantity"]
        before = last.get(quantity)
        if (
            before is not None
            and _alike(before, draft)
            and "subject" in draft.filled
            and before.fields["subject"]
            and which_at(scene, draft.main)[1] <= before.main
        ):
            draft.fields["subject"], draft.thing = before.fields["subject"], before.thing
        last[quantity] = draft
    return drafts
