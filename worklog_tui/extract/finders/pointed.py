"""What `there's your problem`, `so that's the growl`, `so it's not that` point at."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from worklog_tui.extract.finders import blamed
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.things.subjects import as_thing, earlier, nearest, remembered
from worklog_tui.extract.things.whole import machine_word
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Finding, Suspect, Work

FROM_AFAR = 0.35
"Nothing was found bad in the last words: what is meant is a guess."
POINTS_AHEAD = 0.15
"`There's the culprit.` with nothing named before it in its sentence shows what comes."
LATELY = 6
"Notes back in which what is cleared or cured was suspected."
FRESH = 3
"Notes back in which the only suspect was named, for work on another part to have cured it."
ASIDE = 4
"Tokens from the pointing words to the colon behind which what they show is named."
NO_CAUSE = frozenset({"tool", "machine", "material", "fluid", "quality"})


@dataclass(frozen=True, slots=True)
class Shown:
    """What is pointed at, and how sure that is."""

    words: str
    thing: Thing | None
    at: int | None
    filled: bool
    "Whether it was said before this sentence."
    doubt: float


def pointed_at(match: Match, scene: Scene) -> Shown | None:
    """The cause that pointing words mean: named behind a colon, or before them in the sentence, the note, the talk."""
    gives, first = match.rule.gives, match.first
    if gives.get("cure"):
        return _cured(scene)
    clears = gives["standing"] == "ruled out"
    if gives.get("answer"):
        return _asked_just_now(scene, clears)
    if not clears and (named := _behind(match, scene)) is not None:
        return named
    k = None if clears else _found_here(scene, first)
    if (gives.get("told") and k is None) or (gives.get("found") and k is None and found_in_note(scene) is None):
        return None
    k = earlier(scene, first, can_fail) if k is None else k
    if k is not None and not clears and _told_fine(scene, k):
        k = None
    if k is not None and gives.get("blamed") and not _is_suspect(scene.tokens[k].thing, scene):
        k = None
    if k is None:
        k = nearest(scene, first, can_fail)
        back = clears or gives.get("before")
        k = None if back and k is not None and k > first else k
    if k is not None and first <= k < match.last:
        k = None  # what was lost is not the cause
    if k is not None:
        thing = scene.tokens[k].thing
        return Shown(thing.words, thing, k, False, 0.0) if thing is not None else None
    if clears and (suspect := _suspect_meant(scene)) is not None:
        return suspect
    thing, doubt = _said_before(match, scene, clears)
    if gives.get("blamed"):
        return None
    return Shown(thing.words, thing, None, True, doubt) if thing is not None else None


def _behind(match: Match, scene: Scene) -> Shown | None:
    """`So there's my breaker, I suspect: the shaft bearings`, `there's your answer, three vanes gone`."""
    for k in range(match.last, min(match.last + ASIDE, len(scene.tokens))):
        token = scene.tokens[k]
        if token.kind == "stop":
            break
        if token.kind != "comma" or (token.low != ":" and k != match.last):
            continue
        named = blamed.after(scene, k + 1)
        if named is not None and named.known and (token.low == ":" or _bad_at(scene, named.first, named.last)):
            return Shown(named.words, named.thing, named.first, False, 0.0)
    return None


def _is_suspect(thing: Thing | None, scene: Scene) -> bool:
    return thing is not None and (thing.name or thing.words.lower()) in scene.context.suspects


def _suspect_meant(scene: Scene) -> Shown | None:
    """The suspect that `so it's not that` clears: the one that was named last, else the newest."""
    named = next((t for s in scene.context.things if s.age <= 1 and _is_suspect(t := as_thing(s), scene)), None)
    if named is not None:
        return Shown(named.words, named, None, True, 0.0)
    return next(_open_suspects(scene), None)


def _open_suspects(scene: Scene) -> Iterator[Shown]:
    """What the last notes suspected and nobody cleared since, newest first."""
    late = set(scene.context.notes[:-LATELY])
    for fact in reversed(scene.context.recent):
        if not isinstance(fact, Suspect) or fact.standing != "suspected" or fact.main.note in late:
            continue
        if (fact.name or fact.cause.lower()) in scene.context.suspects:
            yield Shown(fact.cause, Thing(fact.cause, fact.name, "part", own=fact.cause), None, True, 0.0)


def _asked_just_now(scene: Scene, clears: bool) -> Shown | None:
    """What `no.` and `yes.` answer: the newest suspect, of this note for a no, of the last ones for a yes."""
    lately = set(scene.context.notes[:-FRESH])
    for fact in reversed(scene.context.recent):
        if isinstance(fact, Suspect) and fact.main.note not in (scene.context.notes if clears else lately):
            if fact.standing != "suspected":
                return None
            return Shown(fact.cause, Thing(fact.cause, fact.name, "part", own=fact.cause), None, True, 0.0)
    return None


def _cured(scene: Scene) -> Shown | None:
    """The suspect that was worked on before the trouble went: of several the one that the work was on."""
    works = [f for f in scene.context.recent if isinstance(f, Work)]
    suspects = list(_open_suspects(scene))
    if not works or not suspects:
        return None
    order = list(scene.context.recent)
    for work in reversed(works):
        for shown in suspects:
            name = shown.thing.name if shown.thing else ""
            if work.name and name and (name in work.name or work.name in name):
                return shown
    if len(suspects) > 1 or _settled_here(scene):
        return None
    first = next(f for f in reversed(order) if isinstance(f, Suspect) and f.cause == suspects[0].words)
    fresh = first.main.note not in scene.context.notes[:-FRESH]
    return suspects[0] if fresh and order.index(works[-1]) > order.index(first) else None


def _settled_here(scene: Scene) -> bool:
    """Whether this note told already what it was."""
    return any(
        isinstance(f, Suspect) and f.standing == "confirmed" and f.main.note not in scene.context.notes
        for f in scene.context.recent
    )


def _bad_at(scene: Scene, first: int, last: int) -> bool:
    return any(t.sense("bad") for t in scene.tokens[first : last + 1])


def _found_here(scene: Scene, upto: int) -> int | None:
    """The last thing before token `upto` of which something bad is said in its clause."""
    rows = [k for k in scene.things(range(upto)) if _thing_fails(scene, k)]
    told = [k for k in rows if any(scene.tokens[n].sense("bad") for n in scene.clause(k) if n < upto)]
    subjects = [k for k in told if not _beside(scene, k)]
    return (subjects or told)[-1] if told else None


def _told_fine(scene: Scene, k: int) -> bool:
    """Whether the clause of a thing says that it is good."""
    said = [scene.tokens[n] for n in scene.clause(k)]
    return any(t.sense("good") for t in said) and not any(t.sense("bad") for t in said)


def _beside(scene: Scene, k: int) -> bool:
    """Whether a thing stands behind another one of its clause: where it is, not what it is."""
    return any(n < k and _thing_fails(scene, n) for n in scene.things(scene.clause(k)))


def _thing_fails(scene: Scene, k: int) -> bool:
    thing = scene.tokens[k].thing
    return thing is not None and can_fail(thing)


def _said_before(match: Match, scene: Scene, clears: bool) -> tuple[Thing | None, float]:
    """What was shown or cleared before this sentence, and the doubt in that."""
    if clears:
        return remembered(scene, can_fail, fresh=2), 0.0
    ahead = POINTS_AHEAD if _points_ahead(match, scene) else 0.0
    found = found_in_note(scene)
    if found is not None:
        return found, 0.0
    fine = {f.part for f in scene.context.recent if isinstance(f, Finding) and f.verdict == "good"}
    here = remembered(scene, lambda thing: can_fail(thing) and thing.words not in fine, fresh=0)
    if here is not None:
        return here, 0.0
    found = last_found(scene)
    return found or remembered(scene, can_fail, fresh=1), ahead + (FROM_AFAR if found is None else 0.0)


def _points_ahead(match: Match, scene: Scene) -> bool:
    """Whether the words show what is told next."""
    said = scene.tokens[match.first].low
    return said.startswith("here") or (
        said.startswith("there") and (match.last >= len(scene.tokens) or scene.tokens[match.last].kind == "stop")
    )


def can_fail(thing: Thing) -> bool:
    """Whether a thing can be to blame: no tool, no stuff, no quality, and not the machine as a whole."""
    return thing.kind not in NO_CAUSE


def found_in_note(scene: Scene) -> Thing | None:
    """The part that was last found bad in this note, or in the one whose last sentence goes on here."""
    tail = scene.context.tail
    return _last_bad(scene, lambda note: note not in scene.context.notes or (tail is not None and note == tail.note))


def last_found(scene: Scene) -> Thing | None:
    """The part that was last found bad, in this note or the two before."""
    near = scene.context.notes[-2:]
    return _last_bad(scene, lambda note: note in near or note not in scene.context.notes)


def _last_bad(scene: Scene, near: Callable[[str], bool]) -> Thing | None:
    for fact in reversed(scene.context.recent):
        if isinstance(fact, Finding) and fact.verdict == "bad" and near(fact.main.note) and fact.name:
            subject = next((s for s in scene.context.things if s.name == fact.name), None)
            thing = as_thing(subject) if subject is not None else Thing(fact.part, fact.name, "part", own=fact.part)
            if can_fail(thing) and fact.name not in (scene.engine().name, machine_word(scene.machine.kind)):
                return thing
    return None
