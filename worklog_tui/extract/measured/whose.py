"""Whose number it is, where no part that it suits stands in its clause: every thing that was talked of is weighed."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from worklog_tui.extract.measured.nearest import is_torque, measurable, put_away
from worklog_tui.extract.measured.never import carries, never
from worklog_tui.extract.measured.quantity import suits
from worklog_tui.extract.measured.sizes import AXES
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.carry import said_just_before
from worklog_tui.extract.things.salience import PREPOSITIONS, salience
from worklog_tui.extract.things.subjects import Fits, as_thing
from worklog_tui.extract.tokens import Thing
from worklog_tui.model import Reading
from worklog_tui.rulebook.quantities import Quantity

CLOSE = 8
"How many tokens there may be within one clause."
USUAL, SUITED, OPEN, FOREIGN, NEVER = "usual", "suited", "open", "foreign", "never"
"How a thing suits: it is what is usually measured so, it may be, nothing tells, it is measured otherwise, it is never."
WEIGHTS = {
    "clause": 0.8, "sentence": 0.4, "clause far": -0.3, "opens": 1.1, "nearest": 1.0, "aside": -0.4, "put away": -1.5,
    "salience -2": -0.6, "salience 0": 0.5, "salience 1": 0.9, "salience 3": 0.6,
    "heading": -0.7, "heading 0": 0.9, "heading 2": -0.4, "heading 4": -1.2,
    "again": 0.6, "told": 0.4, "told 2": -0.2, "told 3": -0.4, "told 4": -0.6,
    "topic": -1.0, "topic 1": -0.4, "topic 3": -0.7, "topic 4": -0.4,
    "memory": -0.2, "memory 0": 1.6, "memory 1": -0.2, "memory 2": -0.7, "memory 3": -0.7, "memory 4": -0.7,
    "memory rank": -0.3, "here open": 0.3, "here suited": 0.7, "here usual": 0.7,
    "there foreign": -1.0, "there open": -0.8, "there suited": 0.6, "there usual": 0.9, "there under a test": -0.7,
    "control": 0.3, "fastener": 0.9, "fluid": -0.2, "joint": -0.6, "machine": -0.2, "material": -0.8, "quality": 0.7,
    "loose": -0.6,
}  # fmt: skip
"""What each trait of a candidate adds: a conditional logit fitted on the readings of the labelled cases that are there
to learn from; on cases left out it names the right one of the candidates in 77 of 100 readings. What `told` adds is a
judgement, between what was named in this note and what was named before it."""
ANYWHERE = frozenset({"voltage", "temperature", "length", "duration", "thread", "torque"})
"Quantities that are measured on anything."
FLUIDS = frozenset({"volume", "temperature", "pressure", "density", "mass", "ratio", "leakage", "duration"})


def owner(made: Draft, scene: Scene, wanted: tuple[str, ...], meant: Fits) -> tuple[Thing, int | None] | None:
    """The likeliest thing, and its token where it stands in the clause of the number; None when there is none."""
    best: tuple[float, Thing, int | None] | None = None
    named = _test_named(made.main, scene)
    quantities = [(q, scene.book.quantities.get(q)) for q in wanted]
    for place, traits, thing, at in _things(made.main, scene, wanted):
        if best is not None and traits + MOST < best[0]:
            continue  # however well it suits
        suit = _suit(thing, wanted, quantities, scene, meant)
        if suit == NEVER or (at is None and wanted[:1] == ("current",) and carries(thing, scene.book)):
            continue
        score = traits + WEIGHTS.get(f"{place} {suit}", 0.0) + WEIGHTS.get(thing.kind, 0.0)
        score += WEIGHTS["loose"] * thing.loose
        if named and place == "there" and suit in (OPEN, FOREIGN):
            score += WEIGHTS["there under a test"]  # `charging, fourteen three`: of what is tested
        if best is None or score > best[0]:
            best = score, thing, at
    return (best[1], best[2]) if best is not None and best[0] > LEAST else None


LEAST = -1.5
"Below this nothing that was named is meant."
MOST = WEIGHTS["there usual"] + WEIGHTS["fastener"]
"The most that anything adds to where a thing was named."


def _test_named(i: int, scene: Scene) -> bool:
    """Whether the sentence, or the one before it alone, names a test."""
    heading = scene.context.heading
    alone = heading is not None and heading.age == 0 and heading.name in scene.book.topics
    return alone or scene.topic_before(i) is not None


def _things(i: int, scene: Scene, wanted: tuple[str, ...]) -> Iterator[tuple[str, float, Thing, int | None]]:
    """Every thing that was named before: `here` in the sentence or `there`, what its place adds, the thing, its
    token.
    """
    yield from _here(i, scene)
    heading, topic = scene.context.heading, scene.context.topic
    if heading is not None:
        yield "there", _aged("heading", heading.age), as_thing(heading), None
    last = said_just_before(scene)
    if last is not None and last.quantity in wanted[:1] and last.subject and last.name:
        yield "there", WEIGHTS["again"], Thing(last.subject, last.name, "part", quantities=(last.quantity,)), None
    yield from _told(i, scene, wanted)
    if topic is not None and topic.words and topic.quantity in wanted[:1]:
        kind = "quality" if topic.quality else "part"
        thing = Thing(topic.words, topic.name, kind, quantities=(topic.quantity,))
        yield "there", _aged("topic", topic.age), thing, None
    for rank, subject in enumerate(scene.context.things):
        yield "there", _aged("memory", subject.age) + WEIGHTS["memory rank"] * min(rank, 8), as_thing(subject), None


def _told(i: int, scene: Scene, wanted: tuple[str, ...]) -> Iterator[tuple[str, float, Thing, None]]:
    """What the last value of the quantity, of an earlier note, was told of, if it has the unit and about the size of
    the number: what it should be, the limit, or what it is now.
    """
    notes = scene.context.notes
    told = (f for f in reversed(scene.context.recent) if isinstance(f, Reading) and f.quantity in wanted[:1] and f.name)
    last = next(told, None) if ONE_AFTER_ANOTHER.isdisjoint(wanted) else None
    if last is not None and last.main.note in notes and _alike(i, scene, last):
        age = len(notes) - notes.index(last.main.note)
        yield "there", _aged("told", age), Thing(last.subject, last.name, "part", quantities=(last.quantity,)), None


ONE_AFTER_ANOTHER = frozenset({"torque", "turns", "thread"})
"What is told of one fastening after another: the last value is not of the next one."


def _alike(i: int, scene: Scene, fact: Reading) -> bool:
    """Whether a value told before has the unit and about the size of the number: of one thing, as likely as not."""
    token, low = scene.tokens[i], fact.value[0] if isinstance(fact.value, tuple) else fact.value
    amount = token.amount
    if isinstance(low, str) or not low or (amount is not None and amount.unit != fact.unit):
        return False
    value = amount.low if amount is not None else token.value or 0.0
    thou = amount is None and fact.unit == "in" and low < 0.2 and value > 0.5
    return LIKE <= value * (0.001 if thou else 1.0) / low <= UNLIKE


LIKE, UNLIKE = 0.3, 3.4
"How many times a value told before of the same thing the number may be."


@lru_cache(maxsize=256)
def _aged(place: str, age: int) -> float:
    """What a place adds by its age in notes."""
    return WEIGHTS[place] + WEIGHTS.get(f"{place} {min(age, 4)}", 0.0)


def _here(i: int, scene: Scene) -> Iterator[tuple[str, float, Thing, int | None]]:
    """The things of the sentence before the number, the nearest first."""
    span, nearest = scene.clause(i), WEIGHTS["nearest"]
    for k in range(i - 1, -1, -1):
        thing = scene.tokens[k].thing
        if thing is None:
            continue
        inside = k >= span.start
        traits = nearest + WEIGHTS["clause" if inside else "sentence"] + WEIGHTS["aside"] * _aside(k, scene)
        traits += WEIGHTS["clause far"] * min(i - k, 20) * inside + WEIGHTS["opens"] * (inside and k <= span.start + 1)
        traits += WEIGHTS["put away"] * (put_away(scene, k) and not is_torque(scene, i))
        traits += WEIGHTS.get(f"salience {min(3, max(-2, salience(scene, k)))}", 0.0)
        yield "here", traits, thing, k if inside and i - k <= CLOSE else None
        nearest = 0.0


def _aside(k: int, scene: Scene) -> bool:
    """What stands behind a preposition is where it was, less often what it is of."""
    before = scene.tokens[k - 1].low if k else ""
    before = scene.tokens[k - 2].low if before in ("the", "a", "that", "this", "my") and k > 1 else before
    return before in PREPOSITIONS and before not in ("across", "at", "on", "of")


def _suit(
    thing: Thing, wanted: tuple[str, ...], quantities: list[tuple[str, Quantity | None]], scene: Scene, meant: Fits
) -> str:
    """How the thing suits the quantities that the number may be."""
    if thing.kind == "quality" and " " not in (thing.own or thing.name) and thing.name in scene.book.topics:
        return NEVER  # only names the test
    if (thing.own.lower() in AXES and not meant(thing)) or never(thing, wanted, scene.book):
        return NEVER
    if thing.kind == "fastener" and wanted[:1] == ("length",) and scene.book.lists["miked"] & set(thing.name.split()):
        return SUITED
    if not (measurable(thing) or meant(thing)) or thing.name == "name plate":
        return NEVER
    if thing.kind == "fluid" and FLUIDS.isdisjoint(wanted):
        return NEVER
    if thing.kind == "fastener":
        return USUAL
    best = max([suits(thing, q, quantity) for q, quantity in quantities], default=0.0)
    if best:
        return USUAL if best >= 2 else SUITED
    if thing.kind == "quality":
        return NEVER
    return FOREIGN if thing.quantities and ANYWHERE.isdisjoint(wanted) else OPEN
