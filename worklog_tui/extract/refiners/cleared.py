"""A suspect that is found good is ruled out, though nobody says the word."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.rulebook.patterns import Rule

CLEARED = Rule("suspect.found-good", "", {}, (), (), 0.6)


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, with a ruled out suspect for each good finding of something that is suspected."""
    suspected = set(scene.context.suspects) | {
        d.fields["name"] for d in drafts if d.kind == "suspect" and d.fields["standing"] == "suspected"
    }
    said = {d.fields["name"] for d in drafts if d.kind == "suspect" and d.fields["standing"] != "suspected"}
    found: list[Draft] = []
    for draft in drafts:
        if (
            draft.kind != "finding"
            or draft.fields["verdict"] != "good"
            or draft.thing is None
            or draft.confidence < 0.5
            or draft.thing.kind == "quality"
            or "part" in draft.filled
        ):
            continue
        name = draft.thing.name
        if name and name not in said and any(name == other or name in other for other in suspected):
            said.add(name)
            cause = f"{draft.thing.words} {_denied(draft, scene)}".strip()
            fields = {"cause": cause, "standing": "ruled out", "name": name}
            found.append(
                replace(
                    draft,
                    kind="suspect",
                    rule=CLEARED,
                    fields=fields,
                    confidence=CLEARED.confidence,
                    trail=["found good"],
                )
            )
    return drafts + found


def _denied(draft: Draft, scene: Scene) -> str:
    """The state that it turned out not to be in: of `not cracked`, `cracked`; else nothing."""
    words = scene.said(draft.main, draft.last)
    if draft.fields.get("denied"):
        return words
    first, _, rest = words.partition(" ")
    return rest if first.lower() == "not" else ""
