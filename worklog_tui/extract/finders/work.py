"""Work: what was done, to what, and with what."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import nearest, remembered
from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook import Sense

FORMS = ("did", "doing", "does", "do")
LABELLED = frozenset(
    "remove strip clean check test replace fit adjust repair drain fill flush lubricate soak bleed make order connect "
    "disconnect charge start free tighten".split()
)


def draft(match: Match, scene: Scene) -> Draft | None:
    """The work of a match; None when the verb has no action for this object."""
    gives = match.rule.gives
    at = match.slots[gives["at"].strip("<>")] if "at" in gives else match.slots.get(gives["action"].strip("<>"))
    if at is None:
        return None
    made = Draft("work", at, at, match.rule, {}, confidence=match.rule.confidence, first_used=match.first, last_used=match.last - 1)
    part = gives.get("part", "")
    if part.startswith("<"):
        made.thing_at = match.slots.get(part.strip("<>"))
        made.thing = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
    elif part:
        made.thing = scene.engine() if part == "engine" else Thing(part, part, "part")
    if made.thing is None and not _find_object(made, scene, at, match):
        return None
    action = gives["action"]
    if action.startswith("<"):
        sense = action_for(scene.tokens[at].senses, made.thing)
        if sense is None:
            return None
        action = sense.name
    if action == "start" and made.thing is not None and made.thing.kind != "machine":
        if not made.rule.gives.get("it"):
            return None
        made.thing, made.thing_at = scene.engine(), None
    if action not in LABELLED or action in gives.get("never", ()):
        return None
    made.fields = {"action": action, "used": _used(match, scene)}
    return made


def action_for(senses: tuple[Sense, ...], thing: Thing | None) -> Sense | None:
    """The action of a verb for an object: one meant of its kind first."""
    actions = [s for form in FORMS for s in senses if s.cls == form]
    meant = [s for s in actions if s.of and thing is not None and (thing.kind in s.of or thing.name in s.of)]
    return next(iter(meant + [s for s in actions if not s.of]), None)


def _find_object(made: Draft, scene: Scene, at: int, match: Match) -> bool:
    """The object of a verb for which the rule named none: `it` means what was named before; else what stands after or before."""
    fits = _handled if made.rule.gives.get("it") else _workable
    used = match.slots.get("used")
    if not made.rule.gives.get("it"):
        k = nearest(scene, at, fits, before_first=bool(made.rule.gives.get("behind")))
        if k is not None:
            made.thing, made.thing_at = scene.tokens[k].thing, k
            return True
    made.filled.add("part")
    things = [k for k in scene.things(range(at)) if k != used and scene.tokens[k].clause >= scene.tokens[at].clause - 1]
    before = [k for k in things if fits(scene.tokens[k].thing)]  # type: ignore[arg-type]
    if before:
        made.thing_at, made.thing = before[-1], scene.tokens[before[-1]].thing
        return True
    made.thing = remembered(scene, fits)
    return made.thing is not None


def _workable(thing: Thing) -> bool:
    return thing.kind not in ("quality", "machine", "tool", "unknown")


def _handled(thing: Thing) -> bool:
    """What `cleaned it` can mean: a thing that is taken in the hand."""
    return thing.kind not in ("quality", "machine", "tool", "unknown", "fluid", "material")


def _used(match: Match, scene: Scene) -> str:
    used = match.rule.gives.get("used", "")
    if not used.startswith("<"):
        return str(used)
    at = match.slots.get(used.strip("<>"))
    return scene.said(at, at) if at is not None else ""
