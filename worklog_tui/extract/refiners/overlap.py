"""Of several readings of the same words, the best one stays: the surer rule, the part said, the longer match."""

from __future__ import annotations

from collections import Counter

from worklog_tui.extract.scene import Draft, Scene


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """At most one draft of a kind for each main token, in the order of the text."""
    best: dict[tuple[str, int, str], Draft] = {}
    for draft in drafts:
        key = _words(draft)
        if key not in best or draft.rank > best[key].rank:
            best[key] = draft
    for draft in drafts if len(best) < len(drafts) else ():
        if draft is not (stays := best[_words(draft)]) and draft != stays:
            scene.dropped.append(f"{scene.said(draft.main, draft.last)}: {draft.rule.id} gives way to a better reading")
    kept = sorted(best.values(), key=lambda d: (d.main, d.kind))
    if len(kept) == 1:
        return kept
    of_kind: dict[str, list[Draft]] = {}
    for draft in kept:
        of_kind.setdefault(draft.kind, []).append(draft)
    outer = {kind: _outer(row) for kind, row in of_kind.items()}
    by_means = [d for d in of_kind.get("work", ()) if d.fields.get("used")]
    return [
        d for d in kept
        if not any([_inside(d, other) for other in outer[d.kind]])  # noqa: C419 (few: a list is made sooner)
        and not any(_is_means(d, other) for other in by_means)
        and not (d.kind == "work" and any(_as_found(d, other) for other in of_kind.get("finding", ())))
    ]  # fmt: skip


def _as_found(work: Draft, found: Draft) -> bool:
    """`Limit switch wired out`: how the safety device was found, and no work on it."""
    at = work.thing_at
    same = at is not None and at == found.thing_at and at < work.main and found.main <= work.main <= found.last
    return same and found.fields["state"] == "bypassed"


def _outer(drafts: list[Draft]) -> list[Draft]:
    """Those of some drafts of a kind within which others may lie: of one word only where another has the same."""
    if len(drafts) == 1:
        return []
    if drafts[0].kind == "work":
        return drafts if any(d.rule.gives.get("standing") for d in drafts) else []
    mains = Counter(d.main for d in drafts)
    return [d for d in drafts if d.last > d.main or mains[d.main] > 1]


def _words(draft: Draft) -> tuple[str, int, str]:
    """What a draft is the reading of: its kind, its words, and which of several parts."""
    return draft.kind, draft.main, str(draft.fields.get("part", ""))


def _inside(draft: Draft, other: Draft) -> bool:
    """Whether a suspect, follow-up or finding lies within a longer and surer one of its kind; or a thing and its
    particle within a deed told of it: `moved the dynamo out on its slot`.
    """
    if draft.kind == other.kind == "work" and draft is not other and draft.rule.gives.get("standing"):
        within = other.first_used <= draft.first_used and draft.last_used <= other.last_used
        return within and draft.thing_at == other.thing_at and not other.rule.gives.get("standing")
    return (
        draft is not other and draft.kind == other.kind and draft.kind in ("suspect", "follow_up", "finding")
        and other.main <= draft.main and draft.last <= other.last and other.rank > draft.rank
    )  # fmt: skip


def _is_means(draft: Draft, other: Draft) -> bool:
    """Whether a deed is said of what was used for it: of `glued leather over the joint` the joint is mended."""
    if draft is other or (draft.kind, other.kind) != ("work", "work") or draft.thing is None:
        return False
    within = other.first_used <= draft.first_used and draft.last_used < other.last_used
    return within and other.fields.get("used") == draft.thing.words
