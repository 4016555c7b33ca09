"""The reading that the talk has just left: what is judged in the next words is judged of it."""

from __future__ import annotations

from worklog_tui.extract.scene import Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading, Work


def last_read(scene: Scene) -> Reading | None:
    """The last fact before this sentence where it is a value that was measured, in this note or the one before; work
    that the value only implied does not come between.
    """
    told = (f for f in reversed(scene.context.recent) if not (isinstance(f, Work) and "action" in f.filled))
    last = next(told, None)
    if not isinstance(last, Reading) or last.role != "measured" or last.main.note in scene.context.notes[:-1]:
        return None
    return last


def thing_read(scene: Scene) -> Thing | None:
    """What was read in the sentences before, with nothing else told since."""
    last = last_read(scene)
    if last is not None and last.subject:
        return measured_thing(last.quantity, Thing(last.subject, last.name, "quality", own=last.subject))
    topic = scene.context.topic
    if topic is not None and topic.age == 0 and topic.words:
        return measured_thing(topic.quantity, Thing(topic.words, topic.name, "quality", own=topic.words))
    return None


def lately_read(scene: Scene, quantity: str = "") -> Thing | None:
    """What the last figure (of that quantity) was of: of two, the one that was measured before what it should be."""
    told = [f for f in scene.context.recent if not (isinstance(f, Work) and "action" in f.filled)][-2:]
    last = told[-1] if told else None
    if isinstance(last, Reading) and last.role == "specified":
        before = told[0]
        last = before if isinstance(before, Reading) and before.quantity == last.quantity else None
    if not isinstance(last, Reading) or last.role != "measured" or last.main.note in scene.context.notes[:-1]:
        return None
    if not last.subject or quantity not in ("", last.quantity):
        return None
    return measured_thing(last.quantity, Thing(last.subject, last.name, "quality", own=last.subject))


def part_read(scene: Scene) -> Thing | None:
    """The part that this note has just read a value of: of `the linings are four mil. There's years in them`, those."""
    last = last_read(scene)
    if last is None or not last.name or last.name in scene.book.topics or last.main.note in scene.context.notes:
        return None
    kind = next((str(s[2]) for s in scene.book.table.get(last.name, ()) if s[0] == "part"), "part")
    return Thing(last.subject, last.name, kind, own=last.subject)


def measured_thing(quantity: str, thing: Thing | None) -> Thing | None:
    """What a reading was of; a compression is judged as such."""
    return Thing("compression", "compression", "quality") if quantity == "compression" else thing
