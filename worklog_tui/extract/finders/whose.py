"""Whose number it is, where no part that it suits stands in its clause: every thing that was talked of is weighed."""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.finders.carry import said_just_before
from worklog_tui.extract.finders.measured import measurable
from worklog_tui.extract.finders.quantity import suits
from worklog_tui.extract.finders.sizes import AXES
from worklog_tui.extract.salience import PREPOSITIONS
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.subjects import Fits, as_thing
from worklog_tui.extract.tokens import Thing

CLAUSE, SENTENCE, HEADING = 2.6, 2.0, 2.4
"How near a thing is that stands in the clause, in the sentence, or alone as what comes next."
OLD_HEADING, AGAIN = 1.6, 2.2
"The same for an older heading, and for the subject of the last reading of this note, if it is of the same quantity."
FAR, CLOSE = 0.07, 8
"What each token between takes away; how many of them there may be within one clause."
TOPIC = (2.3, 2.0, 1.5, 1.1, 0.8)
MEMORY = (1.8, 1.7, 1.1, 0.7, 0.4, 0.3)
"How near the subject of the running test and a thing of the talk are, by their age in notes."
USUAL, SUITED, OPEN, FOREIGN = 3.0, 2.5, 0.6, -0.6
"How well a thing suits: it is what is usually measured so, it may be, nothing tells, it is measured otherwise."
ANYWHERE = frozenset({"voltage", "temperature", "length", "duration", "thread", "torque"})
"Quantities that are measured on anything."
FLUIDS = frozenset({"volume", "temperature", "pressure", "density", "mass", "ratio", "leakage", "duration"})


def owner(made: Draft, scene: Scene, wanted: tuple[str, ...], meant: Fits) -> tuple[Thing, int | None] | None:
    """The likeliest thing, and its token where it stands in the clause of the number; None when there is none."""
    best: tuple[float, Thing, int | None] | None = None
    named = _test_named(made.main, scene)
    for near, thing, at in _things(made.main, scene, wanted):
        suit = _suit(thing, wanted, scene, meant)
        if suit < SUITED - 1 and at is None and named:
            continue  # `charging, fourteen three`: of what is tested, not of what was talked of before
        score = near + (max(suit, 0.0) if at is not None and suit > -5 else suit)
        if best is None or score > best[0]:
            best = score, thing, at
    return (best[1], best[2]) if best is not None and best[0] > LEAST else None


LEAST = 0.8


def _test_named(i: int, scene: Scene) -> bool:
    """Whether the sentence, or the one before it alone, names a test."""
    heading = scene.context.heading
    alone = heading is not None and heading.age == 0 and heading.name in scene.book.topics
    return alone or scene.topic_before(i) is not None


def _things(i: int, scene: Scene, wanted: tuple[str, ...]) -> Iterator[tuple[float, Thing, int | None]]:
    """Every thing that was named before, with how near it is."""
    span = scene.clause(i)
    for k in range(i - 1, -1, -1):
        thing = scene.tokens[k].thing
        if thing is not None:
            inside = k >= span.start
            near = (CLAUSE if inside else SENTENCE) - FAR * min(i - k, 20) - _aside(k, scene)
            yield near, thing, k if inside and i - k <= CLOSE else None
    heading, topic = scene.context.heading, scene.context.topic
    if heading is not None:
        yield (HEADING if heading.age == 0 else OLD_HEADING - 0.08 * heading.age), as_thing(heading), None
    last = said_just_before(scene)
    if last is not None and last.quantity in wanted[:1] and last.subject and last.name:
        yield AGAIN, Thing(last.subject, last.name, "part", quantities=(last.quantity,)), None
    if topic is not None and topic.words and topic.quantity in wanted[:1]:
        kind = "quality" if topic.quality else "part"
        yield TOPIC[min(topic.age, 4)], Thing(topic.words, topic.name, kind, quantities=(topic.quantity,)), None
    for rank, subject in enumerate(scene.context.things):
        yield MEMORY[min(subject.age, 5)] - 0.08 * rank, as_thing(subject), None


def _aside(k: int, scene: Scene) -> float:
    """What stands behind a preposition is where it was, less often what it is of."""
    before = scene.tokens[k - 1].low if k else ""
    before = scene.tokens[k - 2].low if before in ("the", "a", "that", "this", "my") and k > 1 else before
    return 0.5 if before in PREPOSITIONS and before not in ("across", "at", "on", "of") else 0.0


def _suit(thing: Thing, wanted: tuple[str, ...], scene: Scene, meant: Fits) -> float:
    if thing.kind == "quality" and " " not in (thing.own or thing.name) and thing.name in scene.book.topics:
        return -9.0  # only names the test
    if thing.own.lower() in AXES and not meant(thing):
        return -9.0
    if not (measurable(thing) or meant(thing)) or thing.name == "name plate":
        return -9.0
    if thing.kind == "fluid" and FLUIDS.isdisjoint(wanted):
        return -9.0
    if thing.kind == "fastener":
        return USUAL
    best = max((suits(thing, q, scene.book.quantities.get(q)) for q in wanted), default=0.0)
    loose = 0.2 * thing.loose + 0.5 * (thing.kind == "machine")
    if best >= 2:
        return USUAL - loose
    if best:
        return SUITED - loose
    if thing.kind == "quality":
        return -9.0
    if thing.quantities and ANYWHERE.isdisjoint(wanted):
        return FOREIGN - loose
    return (1.4 if "voltage" in wanted[:1] else OPEN) - loose
