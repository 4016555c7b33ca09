"""Corrections: of `thirty, no, thirty-five` only the last is a reading."""

from __future__ import annotations

import itertools

from worklog_tui.extract.scene import Draft, Scene

REACH, FAR = 9, 22
"Words between the two numbers; more of them where it is plainly taken back."
STRONG = frozenset(
    {"no hang on", "no wait", "hang on", "scratch that", "i tell a lie", "read that wrong", "wrong", "sorry"}
)


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings without those that are taken back at once in the same sentence."""
    readings = sorted((d for d in drafts if d.kind == "reading"), key=lambda d: d.main)
    gone: set[int] = set()
    for first, second in itertools.pairwise(readings):
        between = scene.tokens[first.main + 1 : second.main]
        said = [t for t in between if t.kind != "comma"]
        strong = any(t.low in STRONG for t in said)
        if first.fields["quantity"] != second.fields["quantity"] or len(said) > (FAR if strong else REACH):
            continue
        if any(t.sense("correct") for t in between):
            gone.add(id(first))
            second.trail.append(f"takes back {scene.said(first.main, first.last)}")
            scene.dropped.append(f"{scene.said(first.main, first.last)}: corrected at once")
            if not second.fields["subject"] or "subject" in second.filled:
                second.thing, second.thing_at = first.thing, first.thing_at
                second.fields["subject"] = first.fields["subject"]
    gone |= {id(d) for d in readings if _in_place_of(d, scene)}
    return [d for d in drafts if id(d) not in gone]


INSTEAD = frozenset({"instead of", "rather than", "not the"})


def _in_place_of(draft: Draft, scene: Scene) -> bool:
    """`219 instead of 206`: what it was not."""
    before = " ".join(t.low for t in scene.tokens[max(0, draft.main - 2) : draft.main])
    return any(before.endswith(words) for words in INSTEAD)
