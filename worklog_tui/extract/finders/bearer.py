"""What a state is said of when its rule names nothing: `it`, `that`, or no word at all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from worklog_tui.extract.finders.fitness import SUITS, fitness, machine_talked_of, meant_of, mostly, suits
from worklog_tui.extract.finders.put_right import put_right
from worklog_tui.extract.finders.which_one import told_by_that
from worklog_tui.extract.scene import Scene
from worklog_tui.extract.talk.named_late import named_late
from worklog_tui.extract.talk.read_before import part_read
from worklog_tui.extract.things.agreement import agrees
from worklog_tui.extract.things.covers import taken_off, under
from worklog_tui.extract.things.ones import the_one
from worklog_tui.extract.things.salience import PREPOSITIONS, salience, spoken_of
from worklog_tui.extract.things.subjects import Fits, as_thing
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.model import Finding, Work

FRESH = 2
"Notes for which `it` still means the last thing named."
SUBJECT, OBJECT, BESIDE = 3.0, 2.0, -1.0
"What a thing weighs by its place in its clause."
PER_CLAUSE, PER_NOTE, PER_PLACE = 0.8, 0.3, 0.3
"What a clause, a note and a place in the list of what was talked of take from it."
MOST_CLAUSES = 1.2
BEFORE = 1.35
"What the first thing of earlier sentences weighs."
FLOOR = -1.5
MACHINE = 0.7
"What the machine weighs, that every talk is about, for a state that is mostly said of machines."
STARTED = 1.5
"What it weighs for any state when it was started just now: `running again, throttle back. That's sweet`."
TOLD = 0.5
"What is gained by the part that was told of last, found so or worked on: `new bearing in, quiet`."
AGAIN = 1.8
"What the part of a fault weighs that is told now to be gone."
HEADED = 2.8
"What a thing weighs that heads a typed line, `bronze: dry at the top`; an unknown name is a part there."
HEADS = {"unknown": "part"}
SHOWN = frozenset({"this ones", "that ones"})
"Words for what is shown to the viewers: nothing that was named before."
LATE = 6.0
"What the thing weighs that is named behind the state as what was meant."
DISAGREES = 1.2
"What a thing loses of which the pronoun cannot be said: of two nuts, `it`."


def bearer(scene: Scene, at: int, state: int, fits: Fits) -> tuple[Thing | None, int | None]:
    """The likeliest thing said before token `at` that has the state of token `state`, and its index where it stands
    in this sentence.
    """
    best: tuple[float, Thing | None, int | None] = (FLOOR, None, None)
    token = scene.tokens[state]
    candidates = scene.once(("may bear", at), lambda: list(_candidates(scene, at)))
    late = named_late(scene, state)
    if late is None and scene.tokens[at].low in SHOWN:
        return None, None  # `this one's worn`: shown, not named
    if late is not None and (named := scene.tokens[late].thing) is not None:
        candidates = [*candidates, (LATE, named, late)]
    if "whole" in mostly(scene, token):
        candidates = [*candidates, (MACHINE, machine_talked_of(scene), None)]
    elif scene.once(("just started",), lambda: _just_started(scene)):
        candidates = [*candidates, (STARTED, machine_talked_of(scene), None)]
    if (again := put_right(scene, at, state)) is not None:
        candidates = [*candidates, (AGAIN, again, None)]
    told = scene.once(("told last",), lambda: _told_last(scene))
    for weight, thing, k in candidates:
        if weight + SUITS + TOLD < best[0]:
            continue  # whatever it gains
        weight += fitness(scene, token, thing, k is not None and weight >= OBJECT)
        if k is None and thing.words.lower() == told:
            weight += TOLD
        if agrees(thing, scene.tokens[at]) is False:
            weight -= DISAGREES
        if thing.kind == "fluid" and not _of_fluids(token, thing):
            weight -= 2 if k is not None and weight < OBJECT else 0.3
        if (weight > best[0] or (k is not None and weight == best[0])) and fits(thing):
            best = (weight, thing, k)
    return best[1], best[2]


def far_fetched(scene: Scene, state: int, thing: Thing) -> bool:
    """Whether a thing for which no word of its sentence stands is hardly what is meant: named some notes ago or seldom
    said to be so, or a gasket, a bolt or a fluid of the note before, which were only used.
    """
    token = scene.tokens[state]
    by = mostly(scene, token)
    if thing.kind == "machine" or (by and suits(thing, by)):
        return False
    age = next((s.age for s in scene.context.things if s.words == thing.words), 0)
    heading = scene.context.heading
    if heading is not None and heading.words == thing.words and thing.kind not in USED:
        return False
    return (bool(by) and age > 0) or age > 1 or (age == 1 and thing.kind in USED and not meant_of(token, thing))


USED = frozenset({"joint", "fastener", "fluid"})


def _told_last(scene: Scene) -> str:
    """The part of the last finding or work of this note or the one before."""
    older = set(scene.context.notes[:-1])
    found = (f for f in reversed(scene.context.recent) if isinstance(f, Finding | Work) and f.main.note not in older)
    last = next(found, None)
    if last is None or (isinstance(last, Work) and last.action == "remove"):
        return ""  # a guard that was taken off lay over what is looked at
    return last.part.lower()


def _just_started(scene: Scene) -> bool:
    """Whether the last work told in this note or the one before was a start, and only the machine was told of since."""
    older = set(scene.context.notes[:-1])
    whole = scene.engine().words.lower()
    for fact in reversed(scene.context.recent):
        if isinstance(fact, Work):
            return fact.action == "start" and fact.main.note not in older
        if isinstance(fact, Finding) and fact.part.lower() != whole:
            return False
    return False


def _of_fluids(state: Token, thing: Thing) -> bool:
    """Whether a state is said of fluids by name; of grease and paraffin others are only what was used."""
    return any(thing.name in s.of or "kind:fluid" in s.of for s in state.senses)


def _candidates(scene: Scene, at: int) -> Iterator[tuple[float, Thing, int | None]]:
    """Things with how likely they are meant: those of the sentence, then those of earlier ones."""
    clause = scene.tokens[at].clause
    for k in scene.things(range(at)):
        thing = scene.tokens[k].thing
        assert thing is not None
        weight = max(salience(scene, k), 1) if spoken_of(scene, k) else salience(scene, k)
        if scene.typed and scene.tokens[k + 1].low == ":" and _opens(scene, k):
            place = HEADED - 0.1 * (clause - scene.tokens[k].clause)
            yield place, replace(thing, kind=HEADS.get(thing.kind, thing.kind)), k
            continue
        if not thing.known and scene.tokens[k + 1].sense("copula"):
            weight, thing = max(weight, 1), replace(thing, kind="part")  # `the snubber is bent and it sticks`
        place = SUBJECT if weight > 0 else OBJECT if weight == 0 else BESIDE
        back = 0 if _topic(scene, k, at) else clause - scene.tokens[k].clause
        place -= min(PER_CLAUSE * back, MOST_CLAUSES) + 2 * (weight <= -3)
        if taken_off(scene.tokens, k):
            inner = under(thing, scene.book)
            place, thing = place - 2 * (inner is None), inner or thing
        yield place, thing, k
    yield from _ones(scene, at)
    if (read := part_read(scene)) is not None:
        yield READ, read, None
    for n, subject in enumerate(s for s in scene.context.things if s.age <= FRESH):
        yield BEFORE - PER_PLACE * n - PER_NOTE * subject.age, as_thing(subject), None
    if scene.context.heading is not None:
        yield BEFORE - 0.5 - 0.1 * scene.context.heading.age, as_thing(scene.context.heading), None


def _topic(scene: Scene, k: int, at: int) -> bool:
    """Whether a thing is named ahead of what is told of it, up to token `at`: `now the quill there's a knock`."""
    after = scene.tokens[k + 1]
    if after.clause != scene.tokens[k].clause + 1 or after.low not in GOES_ON or salience(scene, k) < 0:
        return False
    return all(salience(scene, n) < 0 for n in scene.things(range(k + 1, at)))


GOES_ON = frozenset("theres its i ive it if when thats theyre they you we".split())


def _ones(scene: Scene, at: int) -> Iterator[tuple[float, Thing, int | None]]:
    """Which one of several was told last, here or before it: in `number two seventeen hundred but it drips`, that."""
    last = next((t for t in reversed(scene.tokens[:at]) if t.thing is not None or t.kind == "which"), None)
    if last is not None:
        said = [t.thing for t in scene.tokens[:at] if t.thing is not None] if last.thing is None else []
        one = the_one(last.which, said, scene.context) if last.thing is None else None
        back = min(PER_CLAUSE * (scene.tokens[at].clause - last.clause), MOST_CLAUSES)
        weight = SUBJECT - back
    else:
        which, weight = scene.context.which, NUMBERED
        named = any(which in s.words.split() for s in scene.context.things if s.age == 0)
        one = the_one(which, [], scene.context) if which.isdigit() and not named else None
    if one is not None:
        yield weight, one, None


READ = NUMBERED = 1.5
"What weighs the part that this note just read a value of, and the one of several that was told by its number before."


def marked(scene: Scene, k: int, at: int) -> int:
    """The thing that bears a mark: in `the needle has a groove worn in it` the needle, not the groove."""
    after = [t.low for t in scene.tokens[at + 1 : at + 3]]
    if len(after) < 2 or after[0] not in LIES or after[1] not in BORNE:
        return k
    i = k - 1
    while i > 0 and scene.tokens[i].sense("article", "degree", "bad", "objectword"):
        i -= 1
    has = i > 0 and set(scene.tokens[i].low.split()) <= HAS
    if has and set(scene.tokens[i - 1].low.split()) <= HAS:
        i -= 1
    return i - 1 if has and scene.tokens[i - 1].kind == "thing" else k


LIES = frozenset("in on into across round along".split())
BORNE = frozenset("it them the its their both one each".split())
HAS = frozenset("has had have got with w w/".split())


def named_for(scene: Scene, at: int, state: int) -> tuple[Thing, int | None] | None:
    """The thing talked of just now that a state of machines is meant of by name too: `skipping`, of the spark."""
    for weight, thing, k in scene.once(("may bear", at), lambda: list(_candidates(scene, at))):
        if weight >= NEAR_BY and thing.kind != "machine" and meant_of(scene.tokens[state], thing):
            return thing, k
    return None


NEAR_BY = 1.0


def _opens(scene: Scene, k: int) -> bool:
    """Whether a thing stands at the head of its sentence."""
    return k == 0 or scene.tokens[k - 1].kind == "stop"


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
    return told_by_that(scene, k)
