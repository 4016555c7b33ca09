"""A state that follows another one, with no thing named between, is said of the same thing: `the radiator is packed
solid, you can't see daylight`.
"""

from __future__ import annotations

from worklog_tui.extract.finders.senses import senses_for
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.read_before import measured_thing, thing_read


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """The drafts, in place: findings whose thing was filled in take that of the finding before them."""
    last: Draft | None = None
    reading: Draft | None = None
    for draft in drafts:
        if draft.kind == "reading":
            reading = draft
        if draft.kind != "finding":
            continue
        if "part" in draft.filled and scene.tokens[draft.main].sense("judged"):
            _judge(draft, reading, scene)
        if last is not None and _follows(last, draft, scene):
            draft.thing, draft.thing_at = last.thing, last.thing_at
            draft.trail.append("of the same thing as the state before it")
        last = draft
    return drafts


def _follows(first: Draft, second: Draft, scene: Scene) -> bool:
    if "part" not in second.filled or first.thing is None or first.thing.kind == "machine":
        return False
    between = scene.tokens[first.last + 1 : second.main]
    older = second.thing_at is None or (first.thing_at is not None and second.thing_at < first.thing_at)
    return (
        older
        and not any(t.kind in ("thing", "which") for t in between)
        and bool(senses_for(scene.tokens[second.main], first.thing))
    )


def _judge(draft: Draft, reading: Draft | None, scene: Scene) -> None:
    """A judgement right after a reading is of what was read: `fifty-eight. I'm happy with that`."""
    thing, at = None, None
    if reading is not None:
        between = scene.tokens[reading.last + 1 : draft.main]
        if not any(t.kind in ("thing", "which") for t in between):
            thing, at = measured_thing(reading.fields["quantity"], reading.thing), reading.thing_at
    elif not scene.things(range(draft.main)):
        thing = thing_read(scene)
    if thing is not None and thing.kind not in ("tool", "unknown"):
        draft.thing, draft.thing_at = thing, at
        draft.trail.append("of what was read before it")
