"""Work: what was done, to what, and with what."""

from __future__ import annotations

from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import nearest, remembered
from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook import Sense

FORMS = ("did", "doing", "does", "do")
LABELLED = frozenset(
    (
        "remove strip clean check test replace fit adjust repair drain fill flush lubricate soak bleed make order "
        "connect disconnect charge start free tighten"
    ).split()
)


def draft(match: Match, scene: Scene) -> Draft | None:
    """The work of a match; None when the verb has no action for this object."""
    gives = match.rule.gives
    at = match.slots[gives["at"].strip("<>")] if "at" in gives else match.slots.get(gives["action"].strip("<>"))
    if at is None:
        return None
    made = Draft(
        "work",
        at,
        at,
        match.rule,
        {},
        confidence=match.rule.confidence,
        first_used=match.first,
        last_used=match.last - 1,
    )
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
    made.fields = {"action": action, "used": _used(match, scene) or _put_in(made, scene, action) or _means(made, scene)}
    return made


def action_for(senses: tuple[Sense, ...], thing: Thing | None) -> Sense | None:
    """The action of a verb for an object: one meant of its kind first."""
    actions = [s for form in FORMS for s in senses if s.cls == form]
    meant = [s for s in actions if s.of and thing is not None and (thing.kind in s.of or thing.name in s.of)]
    return next(iter(meant + [s for s in actions if not s.of]), None)


def _find_object(made: Draft, scene: Scene, at: int, match: Match) -> bool:
    """The object of a verb for which the rule named none: `it` means what was named before; else what stands after or
    before.
    """
    poured = any(s.name in POURED for s in scene.tokens[at].senses)
    fits = _poured if poured else _handled if made.rule.gives.get("it") else _workable
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


POURED = frozenset({"drain", "fill", "flush", "bleed"})


def _poured(thing: Thing) -> bool:
    """What is drained or filled: a fluid, or what holds it."""
    return thing.kind in ("fluid", "part", "joint") or "volume" in thing.quantities


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
    return scene.said(at, at) if at is not None and not scene.tokens[at].sense("new") else ""


def _put_in(made: Draft, scene: Scene, action: str) -> str:
    """`fitted a new seal`: the new seal is what was put in."""
    k = made.thing_at
    if k is None or action not in ("replace", "fit"):
        return ""
    if scene.tokens[made.main].low.endswith(" new"):
        return f"new {made.thing.words}" if made.thing else ""
    first = next((n for n in (k - 1, k - 2) if n >= 0 and scene.tokens[n].sense("new")), None)
    return scene.said(first, k) if first is not None else ""


MEANS = frozenset(["with", "using"])
MEANS_WORDS = 4


def _means(made: Draft, scene: Scene) -> str:
    """`with a wire brush`, after the verb in its clause: what it was done with, in a few words."""
    span = scene.clause(made.main)
    for k in range(made.main + 1, span.stop - 1):
        if scene.tokens[k].low in MEANS:
            last = k + 1
            while (
                last + 1 < min(span.stop, k + 1 + MEANS_WORDS)
                and scene.tokens[last].kind != "thing"
                and scene.tokens[last + 1].kind not in ("comma", "stop")
            ):
                last += 1
            return scene.said(k + 1, last) if scene.tokens[k + 1].kind not in ("comma", "stop") else ""
    return ""
