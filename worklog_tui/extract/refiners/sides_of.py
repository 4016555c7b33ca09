"""What is no part but a place on one is told with the part: `points out. The faces are clean` is of the points."""

from __future__ import annotations

from dataclasses import replace

from worklog_tui.extract.finders.bearer import bearer
from worklog_tui.extract.finders.senses import REAL
from worklog_tui.extract.finish import uncapped
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.salience import salience
from worklog_tui.extract.tokens import Thing


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, in place: findings of a face, a seam, an edge are of the part that was talked of."""
    for draft in drafts:
        if draft.kind != "finding" or draft.thing is None or draft.thing_at is None:
            continue
        if not _only_a_place(draft.thing, scene):
            continue
        owner = _owner(draft.thing_at, draft, scene)
        if owner is None:
            continue
        part = uncapped(owner.own or owner.words, scene)
        draft.thing = replace(draft.thing, words=f"{draft.thing.words} of the {part}", of=owner)
        draft.trail.append("of the part that was talked of")
    return drafts


def _owner(k: int, draft: Draft, scene: Scene) -> Thing | None:
    """The part that was named last before token k as what is talked of, else the likeliest of earlier sentences."""
    for i in reversed(scene.things(range(k))):
        thing = scene.tokens[i].thing
        if thing is not None and salience(scene, i) >= 0:
            whole = thing.of if _only_a_place(replace(thing, of=None), scene) else thing
            if whole is not None and _may_own(whole, scene):
                return whole
    return bearer(scene, k, draft.main, lambda t: _may_own(t, scene))[0]


def _only_a_place(thing: Thing, scene: Scene) -> bool:
    """Whether the words name nothing but a place on a part, perhaps with its side."""
    words = (thing.own or thing.words).lower().split()
    return thing.of is None and len(words) == 1 and words[0].removesuffix("'s") in scene.book.lists["places_on_parts"]


def _may_own(thing: Thing, scene: Scene) -> bool:
    real = thing.kind in REAL or thing.system == "instruments and gauges"
    return real and thing.known and not thing.loose and not _only_a_place(thing, scene)
