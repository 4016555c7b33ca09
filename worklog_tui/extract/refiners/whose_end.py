"""A figure of a mere place or of what was measured there is told with the part that has it: of `bore, inch and a
quarter` behind a bottom hose it is the bottom hose bore, of `five eighths deflection` behind a belt the belt's.
"""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.things.side_words import SIDES
from worklog_tui.extract.things.subjects import as_thing
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading

FRESH = 1
"Notes after which a thing that was named is no more what a place is on."
OWNERS = frozenset({"part", "joint", "control", "electric", "fastener", "fluid"})
"Kinds of things that have places."
CYLINDERS = frozenset({"bottom end", "cylinder head and valve gear"})
"Systems in which a bore is a cylinder's."


def refine(drafts: list[Draft], scene: Scene) -> list[Draft]:
    """Readings, those of a mere place with the part that has it in their subject."""
    for draft in drafts:
        if draft.kind != "reading" or not (named := _mere_place(draft, scene)):
            continue
        owner = next((t for t in _named_here(draft, scene) if _may_own(t, named, scene)), None)
        words = f"{owner.words} {named}" if owner is not None else _told_before(named, scene)
        if not words:
            owner = next((t for t in _talked_of(scene) if _may_own(t, named, scene)), None)
            words = f"{owner.words} {named}" if owner is not None else ""
        if words:
            draft.fields["subject"] = words
            draft.trail.append(f"of the {words}: a mere {named}")
    return drafts


def _told_before(named: str, scene: Scene) -> str:
    """The place as it was told in full with one of the last figures: `motor terminals`, then `the terminals`."""
    told = (f.subject for f in reversed(scene.context.recent) if isinstance(f, Reading))
    return next((words for words in told if words.lower().endswith(f" {named}")), "")


def _mere_place(draft: Draft, scene: Scene) -> str:
    """The subject in lower case, where it names no more than a place or a way of measuring; else empty."""
    words = str(draft.fields["subject"]).lower().split()
    bare = [w for w in words if w not in SIDES and not w.isdigit()]
    mere = _is_mere(" ".join(bare), scene)
    of_gap = bare == ["float"] and draft.fields["quantity"] == "gap"  # no float of a carburettor
    return " ".join(words) if mere or of_gap else ""


def _is_mere(words: str, scene: Scene) -> bool:
    return words in scene.book.lists["places_of_parts"] or words in scene.book.lists["ways_of_measuring"]


def _named_here(draft: Draft, scene: Scene) -> Iterator[Thing]:
    """The things before the number in its sentence, the nearest first."""
    yield from (t.thing for t in reversed(scene.tokens[: draft.main]) if t.thing is not None)


def _talked_of(scene: Scene) -> Iterator[Thing]:
    """What the sentences before were about, the newest first."""
    if scene.context.heading is not None and scene.context.heading.age <= FRESH:
        yield as_thing(scene.context.heading)
    yield from (as_thing(s) for s in scene.context.things if s.age <= FRESH)


def _may_own(thing: Thing, named: str, scene: Scene) -> bool:
    """Whether a thing may have the place: a part, none that is a place itself."""
    words = thing.words.lower().split()
    if (
        thing.kind not in OWNERS
        or not words
        or _is_mere(words[-1], scene)
        or named in thing.words.lower()
        or not thing.known
    ):
        return False
    return not ("bore" in named and thing.system in CYLINDERS)
