"""A suspect that is found good is ruled out, one that is found bad is confirmed, though nobody says the word."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.model import Suspect
from worklog_tui.rulebook.patterns import Rule

CLEARED = Rule("suspect.found-good", "", {}, (), (), 0.6)
PROVED = Rule("suspect.found-bad", "", {}, (), (), 0.48)


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, with a suspect of its new standing for each finding of something that is suspected."""
    if not any(map(_tells, drafts)):
        return drafts
    before = set(scene.context.suspects)
    told = _told(scene, before)
    here = {d.fields["name"] for d in drafts if d.kind == "suspect" and d.fields["standing"] == "suspected"}
    said = {d.fields["name"] for d in drafts if d.kind == "suspect" and d.fields["standing"] != "suspected"}
    found: list[Draft] = []
    for draft in drafts:
        if not _tells(draft):
            continue
        assert draft.thing is not None
        good, name = draft.fields["verdict"] == "good", draft.thing.name
        if not good and draft.fields.get("denied"):
            continue
        suspected = before | here if good else before - here
        named = any(name == other or name in other for other in suspected) or (good and _head(draft) in told)
        if name and name not in said and named:
            said.add(name)
            found.append(_of(draft, scene, good, name))
    return drafts + found


def _told(scene: Scene, open_yet: set[str]) -> set[str]:
    """The words of what was lately suspected and nobody cleared: `the lift cylinders` of `past the lift cylinders`."""
    causes = [f.cause.lower() for f in scene.context.recent if isinstance(f, Suspect) and f.standing == "suspected"
              and (f.name or f.cause.lower()) in open_yet]  # fmt: skip
    return {word for cause in causes for word in cause.split() if len(word) > 3}


def _head(draft: Draft) -> str:
    """The last word of the name that was said."""
    assert draft.thing is not None
    return ((draft.thing.own or draft.thing.words).lower().split() or [""])[-1]


def _tells(draft: Draft) -> bool:
    """Whether it is a finding, good or bad, of a part that was named."""
    return (
        draft.kind == "finding"
        and draft.fields["verdict"] in ("good", "bad")
        and draft.thing is not None
        and draft.confidence >= 0.5
        and draft.thing.kind != "quality"
        and "part" not in draft.filled
    )


def _of(draft: Draft, scene: Scene, good: bool, name: str) -> Draft:
    assert draft.thing is not None
    rule = CLEARED if good else PROVED
    cause = f"{draft.thing.words} {_denied(draft, scene) if good else ''}".strip()
    fields = {"cause": cause, "standing": "ruled out" if good else "confirmed", "name": name}
    return replace(
        draft,
        kind="suspect",
        rule=rule,
        fields=fields,
        confidence=rule.confidence,
        trail=["found good" if good else "found bad"],
    )


def _denied(draft: Draft, scene: Scene) -> str:
    """The state that it turned out not to be in: of `not cracked`, `cracked`; else nothing."""
    words = scene.said(draft.main, draft.last)
    if draft.fields.get("denied"):
        return words
    first, _, rest = words.partition(" ")
    return rest if first.lower() == "not" else ""
