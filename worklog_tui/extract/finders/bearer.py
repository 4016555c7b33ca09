"""What a state is said of when its rule names nothing: `it`, `that`, or no word at all."""

from __future__ import annotations

from collections.abc import Iterator

from worklog_tui.extract.agreement import agrees
from worklog_tui.extract.covers import taken_off, under
from worklog_tui.extract.salience import PREPOSITIONS, salience
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.subjects import Fits, as_thing
from worklog_tui.extract.tokens import Thing, Token

FRESH = 2
"Notes for which `it` still means the last thing named."
SUBJECT, OBJECT, BESIDE = 3.0, 2.0, -1.0
"What a thing weighs by its place in its clause."
PER_CLAUSE, PER_NOTE, PER_PLACE = 0.8, 0.3, 0.3
"What a clause, a note and a place in the list of what was talked of take from it."
MOST_CLAUSES = 1.6
BEFORE = 1.35
"What the first thing of earlier sentences weighs."
FLOOR = -1.5
DISAGREES = 1.2
"What a thing loses of which the pronoun cannot be said: of two nuts, `it`."


def bearer(scene: Scene, at: int, state: int, fits: Fits) -> tuple[Thing | None, int | None]:
    """The likeliest thing said before token `at` that has the state of token `state`, and its index where it stands
    in this sentence.
    """
    best: tuple[float, Thing | None, int | None] = (FLOOR, None, None)
    for weight, thing, k in scene.once(("may bear", at), lambda: list(_candidates(scene, at))):
        if agrees(thing, scene.tokens[at]) is False:
            weight -= DISAGREES
        if thing.kind == "fluid" and not _of_fluids(scene.tokens[state], thing):
            weight -= 2 if k is not None and weight < OBJECT else 0.3
        if fits(thing) and (weight > best[0] or (k is not None and weight == best[0])):
            best = (weight, thing, k)
    return best[1], best[2]


def _of_fluids(state: Token, thing: Thing) -> bool:
    """Whether a state is said of fluids by name; of grease and paraffin others are only what was used."""
    return any(thing.name in s.of or "kind:fluid" in s.of for s in state.senses)


def _candidates(scene: Scene, at: int) -> Iterator[tuple[float, Thing, int | None]]:
    """Things with how likely they are meant: those of the sentence, then those of earlier ones."""
    clause = scene.tokens[at].clause
    for k in scene.things(range(at)):
        thing = scene.tokens[k].thing
        assert thing is not None
        weight = salience(scene, k)
        place = SUBJECT if weight > 0 else OBJECT if weight == 0 else BESIDE
        place -= min(PER_CLAUSE * (clause - scene.tokens[k].clause), MOST_CLAUSES) + 2 * (weight <= -3)
        if taken_off(scene.tokens, k):
            inner = under(thing, scene.book)
            place, thing = place - 2 * (inner is None), inner or thing
        yield place, thing, k
    for n, subject in enumerate(s for s in scene.context.things if s.age <= FRESH):
        yield BEFORE - PER_PLACE * n - PER_NOTE * subject.age, as_thing(subject), None
    if scene.context.heading is not None:
        yield BEFORE - 0.5 - 0.1 * scene.context.heading.age, as_thing(scene.context.heading), None


def head(scene: Scene, k: int) -> int:
    """The thing that a name ends in: in `the seal behind the gear on the shaft`, of the shaft, the seal."""
    i = k - 1
    while i > 0 and scene.tokens[i].clause == scene.tokens[k].clause:
        while (
            i > 0
            and scene.tokens[i].sense("article", "all", "side", "objectword")
            and scene.tokens[i].low not in PREPOSITIONS
        ):
            i -= 1
        if i < 1 or scene.tokens[i].low not in PREPOSITIONS | {"between"} or scene.tokens[i - 1].kind != "thing":
            break
        thing = scene.tokens[i - 1].thing
        if thing is None or thing.kind in ("tool", "quality") or not thing.known or thing.loose:
            break
        k, i = i - 1, i - 2
    return k
