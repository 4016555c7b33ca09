"""Which thing a follow-up is about when its words name none: said before, told to be bad, or talked of."""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.finders.pointed import found_in_note
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.subjects import Fits, earlier, nearest, remembered
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
    found = found_in_note(scene) if made.rule.gives["reason"] == "part needed" else None
    if found is not None and returnable(found):
        made.filled.add("topic")
        return found
    for fits in (_found_bad(scene), *wanted):
        if (thing := remembered(scene, fits, fresh=2)) is not None:
            made.filled.add("topic")
            return thing
    k = nearest(scene, match.first, _put_right)
    if k is not None:
        made.thing_at = k
        return scene.tokens[k].thing
    return None


def _said_before(first: int, wanted: tuple[Fits, ...], scene: Scene) -> Iterator[int]:
    """The things of the sentence that may be meant, likeliest first: of the clause, told to be bad, earlier."""
    for fits in wanted:
        k = nearest(scene, first, fits)
        if k is not None and k < first and not (fits in (_put_right, _solid) and _only_used(scene, k)):
            yield k
    bad = _told_bad(scene, first)
    if bad is not None:
        yield bad
    for fits in wanted:
        if (k := earlier(scene, first, fits)) is not None:
            yield k


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
