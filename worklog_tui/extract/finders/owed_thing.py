"""Which thing a follow-up is about when its words name none: said before, told to be bad, or talked of."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from worklog_tui.extract.finders.pointed import found_in_note
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.salience import salience
from worklog_tui.extract.things.subjects import Fits, as_thing, earlier, nearest, remembered
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Finding

FARTHEST = 24
"Tokens back to the words that tell a fault."


def returnable(thing: Thing) -> bool:
    """Whether it is something that can be come back to: no tool, no quality, not the machine itself."""
    return thing.kind not in ("tool", "quality", "machine", "unknown")


def thing_talked_of(match: Match, scene: Scene, made: Draft) -> Thing | None:
    """The thing before the words, in their clause or earlier, else what was talked of, else what stands after them."""
    wanted = WANTED.get(str(made.rule.gives["reason"]), (_put_right, returnable))
    for said in _said_before(match.first, wanted, scene):
        made.thing_at = said
        return scene.tokens[said].thing
    found = _worn_here(scene, match) if made.rule.gives["reason"] == "part needed" else None
    if found is not None:
        made.filled.add("topic")
        return found
    held = _held_by(match.first, scene) if made.rule.gives["reason"] == "temporary" else None
    if held is not None:
        made.thing_at = held
        return scene.tokens[held].thing
    for fits in (_found_bad(scene), *map(partial(_as_spare, scene, match), wanted)):
        if (thing := remembered(scene, fits, fresh=2)) is not None:
            made.filled.add("topic")
            return thing
    k = nearest(scene, match.first, _put_right)
    if k is not None:
        made.thing_at = k
        return scene.tokens[k].thing
    return None


def _as_spare(scene: Scene, match: Match, fits: Fits) -> Fits:
    """What fits and can be had new: no mere place of a part, as its bore is one."""
    if match.rule.gives["reason"] != "part needed":
        return fits
    places = scene.book.lists["places_of_parts"]
    return lambda thing: fits(thing) and (thing.own or thing.words).lower().split()[-1] not in places


def _worn_here(scene: Scene, match: Match) -> Thing | None:
    """What a new one is wanted of: the last thing found bad in this note, whatever it is, of as many as are meant."""
    here = found_in_note(scene)
    last = next((f for f in reversed(scene.context.recent) if isinstance(f, Finding) and f.verdict == "bad"), None)
    if last is not None and not last.name and last.main.note not in scene.context.notes:
        here = Thing(last.part, "", "part", own=last.part)
    if here is None or not returnable(here):
        return None
    heading = scene.context.heading
    if heading is not None and _one(scene, match) and _many(here) and returnable(whole := as_thing(heading)):
        return None if _many(whole) else whole
    return here


def _one(scene: Scene, match: Match) -> bool:
    """Whether one thing is meant: `a new one`."""
    return not {"one", "one's", "1"}.isdisjoint(scene.said(match.first, match.last - 1).lower().split())


def _many(thing: Thing) -> bool:
    """Whether a name is that of several: `points`."""
    words = (thing.own or thing.words).lower()
    return words.endswith("s") and not words.endswith(("ss", "us", "'s"))


def _stuff(thing: Thing) -> bool:
    return thing.kind == "material"


def _held_by(first: int, scene: Scene) -> int | None:
    """The stuff that holds for now, when its sentence names no thing: `the tape's still on, that's temporary`."""
    k = nearest(scene, first, _stuff)
    k = earlier(scene, first, _stuff) if k is None or k > first else k
    return k if k is not None and k < first and not _only_used(scene, k) else None


def _said_before(first: int, wanted: tuple[Fits, ...], scene: Scene) -> Iterator[int]:
    """The things of the sentence that may be meant, likeliest first: of the clause, told to be bad, earlier."""
    for fits in wanted:
        k = _spoken_of(scene, nearest(scene, first, fits), fits)
        if k is not None and k < first and not (fits in (_put_right, _solid) and _only_used(scene, k)):
            yield k
    bad = _told_bad(scene, first)
    if bad is not None:
        yield bad
    for fits in wanted:
        if (k := earlier(scene, first, fits)) is not None:
            yield k


def _spoken_of(scene: Scene, k: int | None, fits: Fits) -> int | None:
    """The thing at token k; where it is only the place of another, that one: `belt slips on the wheel, for now`."""
    if k is None or salience(scene, k) > BESIDE:
        return k
    subject = (n for n in scene.things(range(scene.clause(k).start, k)) if salience(scene, n) > 0)
    return next((n for n in subject if (thing := scene.tokens[n].thing) is not None and fits(thing)), k)


BESIDE = -2
"Salience of what is named only as a place, or less."


def _told_bad(scene: Scene, first: int) -> int | None:
    """The thing that was last told to be bad before token `first`: `drum off, shoes are worn, I'll order a set`."""
    for k in range(first - 1, max(-1, first - FARTHEST), -1):
        if scene.tokens[k].sense("bad") and "not" not in scene.tokens[k].stances:
            at = nearest(scene, k, _solid)
            return at if at is not None and at < k and not _only_used(scene, at) else None
    return None


def _found_bad(scene: Scene) -> Fits:
    """Things that were found bad in the last words: though their word is often none: a bolt, a washer."""
    last = scene.context.recent[-1:]
    names = {f.name for f in last if isinstance(f, Finding) and f.verdict == "bad" and f.name}
    return lambda thing: thing.loose and thing.name in names and returnable(thing)


def _only_used(scene: Scene, k: int) -> bool:
    """Whether the thing is what something was made of or held by: `cut from an inner tube`, `tied off the frame`."""
    before = [t.low for t in scene.tokens[max(0, k - 3) : k] if not t.sense("article")]
    return bool(before) and before[-1] in ("from", "with", "off", "frm", "out of")


def _put_right(thing: Thing) -> bool:
    """What is come back to: the thing, not the tape that is round it for now."""
    return returnable(thing) and thing.kind not in ("material", "fluid") and not thing.loose


def _solid(thing: Thing) -> bool:
    """A thing, though its word is often none."""
    return returnable(thing) and thing.kind not in ("material", "fluid")


WANTED: dict[str, tuple[Fits, ...]] = {"to do": (returnable,), "temporary": (_put_right, _solid)}
"What may be meant, the better guess first."
