"""States said in one breath of one thing are one finding: `cracked and perished`, `clean, no scoring`; so is what the
next words of the sentence only say again: `it's green all through so that's junk`.
"""

from __future__ import annotations

from worklog_tui.extract.finders.findings import part_words
from worklog_tui.extract.finish import tidy
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.complaints import complains
from worklog_tui.model import Finding, Work

REACH = 4
START, TRIED = "start", "shown.tried"
STILL = frozenset("still again stil agn".split())
NOTES = 2
"Notes back in which a state is told once."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Findings with neighbours of the same thing and verdict taken in."""
    kept: list[Draft] = []
    found: list[Draft] = []
    for draft in drafts:
        if draft.kind != "finding":
            kept.append(draft)
            continue
        if _symptom(draft, scene) and all(d.fields["state"] != draft.fields["state"] for d in found):
            kept.append(draft)
            found.append(draft)
            continue
        last = found[-1] if found else None
        if last is not None and _one_breath(last, draft, scene):
            last.last = draft.last
            last.last_used = max(last.last_used, draft.last_used)
            last.trail.append(f"with {scene.said(draft.main, draft.last)}")
            continue
        told = next((d for d in found if _same(d, draft, scene)), None)
        if told is not None and told.fields["weak"] and not draft.fields["weak"]:
            kept.remove(told)
            found.remove(told)
            told = None
        if told is not None or _just_told(draft, scene, kept):
            scene.dropped.append(f"{scene.said(draft.main, draft.last)}: says again what was found")
            continue
        kept.append(draft)
        found.append(draft)
    return kept


def _symptom(draft: Draft, scene: Scene) -> bool:
    """Whether it is one of the troubles of a complaint about the whole machine: each is a finding of its own."""
    whole_one = draft.thing is not None and draft.thing.kind == "machine" and draft.fields["verdict"] == "bad"
    return whole_one and complains(scene)


def _same(first: Draft, second: Draft, scene: Scene) -> bool:
    """Whether two findings of a sentence are of the same thing, and as good or bad."""
    return (
        first.fields["verdict"] == second.fields["verdict"]
        and first.thing is not None and second.thing is not None
        and part_words(first, scene).lower() == part_words(second, scene).lower()
        and "part" in second.filled
    )  # fmt: skip


def _just_told(draft: Draft, scene: Scene, before: list[Draft]) -> bool:
    """Whether the same was found of this thing a moment ago: `it's gone hard. Perished, that is.` A state of another
    name counts only where the thing is named with it. After work on the thing `it still leaks` is new, and how it went
    after another try.
    """
    if draft.thing is None:
        return False
    words = tidy(part_words(draft, scene)).lower()
    older = set(scene.context.notes[: None if draft.rule.id == TRIED else -NOTES])
    still = any(t.low in STILL for t in scene.tokens[max(draft.main - REACH, 0) : draft.last + REACH])
    if still and any(d.kind == "work" and d.thing and tidy(d.thing.words).lower() == words for d in before):
        return False
    told = False
    for fact in scene.context.recent:
        if isinstance(fact, Work) and fact.part.lower() == words and (still or fact.action == START):
            told = False
        elif isinstance(fact, Finding) and fact.main.note not in older and fact.part.lower() == words:
            named = "part" in draft.filled or fact.state == draft.fields["state"]
            told = told or (fact.verdict == draft.fields["verdict"] and named)
    return told


def _one_breath(first: Draft, second: Draft, scene: Scene) -> bool:
    between = scene.tokens[first.last + 1 : second.main]
    return (
        first.fields["verdict"] == second.fields["verdict"]
        and first.thing is not None and second.thing is not None and first.thing.words == second.thing.words
        and scene.tokens[first.last].clause == scene.tokens[second.main].clause
        and len(between) <= REACH
        and not any(t.kind in ("stop", "thing", "amount", "number") or t.sense("did") for t in between)
    )  # fmt: skip
