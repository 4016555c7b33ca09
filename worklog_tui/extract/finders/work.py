"""Work: what was done, to what, and with what."""

from __future__ import annotations

from worklog_tui.extract.finders.means import used
from worklog_tui.extract.matching import Match
from worklog_tui.extract.salience import salience
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
    if at is None or _is_noun(scene, at):
        return None
    made = Draft(
        "work",
        at,
        at,
        match.rule,
        {},
        confidence=match.rule.confidence - (TYPED_DOUBT if gives.get("spoken") and scene.typed else 0),
        first_used=match.first,
        last_used=match.last - 1,
    )
    if not _object(made, match, scene) or (gives.get("standing") and _only_stands(made, scene)):
        return None
    action, sense = gives["action"], None
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
    if action == "bleed" and "part" in made.filled:
        made.thing = _bled(made.thing, scene)
    made.fields = {"action": action, "used": made.fields.get("used") or used(made, match, scene, sense, action)}
    return made


def _object(made: Draft, match: Match, scene: Scene) -> bool:
    """Finds what it was done to, as the rule says; False when there is nothing."""
    part = match.rule.gives.get("part", "")
    if part.startswith("<"):
        made.thing_at = match.slots.get(part.strip("<>"))
        made.thing = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
        if match.rule.gives.get("onto") and not _put_onto(made):
            return False
    elif part:
        made.thing = scene.engine() if part == "engine" else Thing(part, part, "part")
    return made.thing is not None or _find_object(made, scene, made.main, match)


def _put_onto(made: Draft) -> bool:
    """`oil on the chain` is one thing for the reader: the chain is what was oiled. False when it lies on nothing."""
    whole = made.thing
    if whole is None or whole.of is None or (" on " not in f" {whole.words} " and " in " not in f" {whole.words} "):
        return False
    made.thing = whole.of
    made.fields["used"] = whole.own
    return True


def _is_noun(scene: Scene, at: int) -> bool:
    """`a set of brushes`, `a light hone`: a verb's word that is none here."""
    after = scene.tokens[at + 1].low if at + 1 < len(scene.tokens) else ""
    before = scene.tokens[at - 1].low if at else ""
    return after == "of" and " " not in scene.tokens[at].low and before in NOUN_AFTER


def _only_stands(made: Draft, scene: Scene) -> bool:
    """Whether `X off` tells how X stands and not that it was taken off: a switch, `with the cap off`."""
    k = made.thing_at
    if k is None or made.thing is None:
        return False
    words = (made.thing.own or made.thing.words).lower().split()
    named = {" ".join(words[n:]) for n in range(len(words))} | {made.thing.name}
    if made.thing.kind == "tool" or any(s[0] == "switched" for w in named for s in scene.book.table.get(w, ())):
        return True
    n = k - 1
    while n > 0 and scene.tokens[n].sense("article", "side"):
        n -= 1
    after = scene.tokens[made.main + 1] if made.main + 1 < len(scene.tokens) else None
    return (n >= 0 and scene.tokens[n].low in WHILE) or (after is not None and bool(after.sense("plan", "later")))


NOUN_AFTER = frozenset("a the new this that my one".split())
WHILE = frozenset("with while when before until till without".split())
TYPED_DOUBT = 0.1
"A bare verb in a typed line is rather a plan; said while filming, it is what is being done."


def _bled(thing: Thing | None, scene: Scene) -> Thing | None:
    """What `bled it` means: the brakes where they were talked of, the fuel system of a diesel."""
    about = f"{thing.system} {thing.name}" if thing is not None else ""
    if any(word in about for word in ("clutch", "cool", "hydraulic", "radiator")):
        return thing
    if "brake" in scene.context.system or "brake" in about:
        return Thing("brakes", "brakes", "part")
    return Thing("fuel system", "fuel system", "part") if scene.machine.fuel == "diesel" else thing


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
    if not made.rule.gives.get("it"):
        k = nearest(scene, at, fits, before_first=bool(made.rule.gives.get("behind")))
        if k is not None:
            made.thing, made.thing_at = scene.tokens[k].thing, k
            return True
    made.filled.add("part")
    near = scene.tokens[at].clause - 1
    things = [k for k in scene.things(range(at)) if not match.first <= k < at and scene.tokens[k].clause >= near]
    for better in (_fluid, fits) if poured else (fits,):
        before = [k for k in things if better(scene.tokens[k].thing)]  # type: ignore[arg-type]
        best = max(before, key=lambda k: (salience(scene, k) > ASIDE, salience(scene, k) > 0, k), default=None)
        if best is not None and (salience(scene, best) > ASIDE or remembered(scene, better) is None):
            made.thing_at, made.thing = best, scene.tokens[best].thing
            return True
        if (thing := remembered(scene, better)) is not None:
            made.thing = thing
            return True
    return False


ASIDE = -3
"Salience of what is only mentioned beside."


POURED = frozenset({"drain", "fill", "flush", "bleed"})


def _poured(thing: Thing) -> bool:
    """What is drained or filled: a fluid, or what holds it."""
    return thing.kind in ("fluid", "part", "joint") or "volume" in thing.quantities


def _fluid(thing: Thing) -> bool:
    """What is drained first of all: a fluid, or what is known to hold some."""
    return thing.kind == "fluid" or "volume" in thing.quantities


def _workable(thing: Thing) -> bool:
    return thing.kind not in ("quality", "machine", "tool", "unknown")


def _handled(thing: Thing) -> bool:
    """What `cleaned it` can mean: a thing that is taken in the hand."""
    return thing.kind not in ("quality", "machine", "tool", "unknown", "fluid", "material")
