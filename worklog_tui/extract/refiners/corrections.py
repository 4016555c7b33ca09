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
    for draft in readings:
        others = (d for d in readings if d is not draft and id(d) not in gone)
        if _said_before(draft, scene) and any(d.fields["quantity"] == draft.fields["quantity"] for d in others):
            gone |= {id(draft), *(id(d) for d in readings if d.main < draft.main and _same(d, draft))}
            scene.again.append((draft.fields["quantity"], draft.fields["value"], draft.fields["unit"]))
            scene.dropped.append(f"{scene.said(draft.main, draft.last)}: said again to be put right")
    return [d for d in drafts if id(d) not in gone]


INSTEAD = frozenset({"instead of", "rather than", "not the"})


def _in_place_of(draft: Draft, scene: Scene) -> bool:
    """`219 instead of 206`: what it was not."""
    before = " ".join(t.low for t in scene.tokens[max(0, draft.main - 2) : draft.main])
    return any(before.endswith(words) for words in INSTEAD)


def _same(one: Draft, other: Draft) -> bool:
    return all(one.fields[key] == other.fields[key] for key in ("quantity", "value", "unit"))


def _said_before(draft: Draft, scene: Scene) -> bool:
    """`I said two ton, it's three`, `that's not 400, it's 500`: the figure of before, told again to be put right."""
    before = [w for t in scene.tokens[max(0, draft.main - 4) : draft.main] for w in t.low.split()]
    if before[-1:] == ["not"]:
        return True
    said = scene.book.lists["said_before"]
    return any(" ".join(before[-n:]) in said for n in (2, 3, 4)) or any(
        " ".join(before[-n - 1 : -1]) in said for n in (2, 3)
    )
