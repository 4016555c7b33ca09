"""Findings: a state of a thing, as a look or a test showed it."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from worklog_tui.extract.finders.bearer import bearer, far_fetched, head, marked, named_for
from worklog_tui.extract.finders.fitness import mostly
from worklog_tui.extract.finders.fitness import suits as suits_best
from worklog_tui.extract.finders.of_machine import SHE, complained, machine_with, of_machine
from worklog_tui.extract.finders.senses import OUTRIGHT, REAL, VERDICTS, bidden, said_of, said_of_any, senses_for
from worklog_tui.extract.finders.which_one import tells_which, told_in_clause
from worklog_tui.extract.matching import Match
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.talk.complaints import complains
from worklog_tui.extract.talk.read_before import thing_read
from worklog_tui.extract.things.salience import salience
from worklog_tui.extract.things.subjects import Fits, which_near, with_which
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook import Sense

ITS_OWN = frozenset("it its she shes he hes they theyre theyve away off".split())  # `it fires`, `away she goes`
NO_BEARER = frozenset({"tool", "unknown", "material"})
SIDES = ("exhaust", "inlet", "intake")
"In a gap the feeler goes: `number three exhaust, can't get it in` is a valve."
MERE = -3
"Salience of a word that is often no part, where it is what is spoken of."
PASSING = -5
"Salience of a mere word in such a phrase."
ASKED = 0.45  # what is rather asked than noted
ASIDE = -2
"Salience of what stands in a prepositional phrase: `on the shaft`."


def draft(match: Match, scene: Scene) -> Draft | None:
    """The finding of a match whose `gives` names a condition slot; None when no sense of the words fits the thing."""
    gives = match.rule.gives
    at = match.slots.get(gives["condition"].strip("<>"))
    if at is None or _is_turned(scene.tokens[at]):
        return None
    start = match.slots.get(gives.get("from", "").strip("<>"), at)
    made = Draft("finding", start, at, match.rule, {}, confidence=match.rule.confidence,
                 first_used=match.first, last_used=match.last - 1)  # fmt: skip
    _name_part(made, match, scene)
    if (made.thing is None and "lies" in gives) or tells_which(match, scene):
        return None
    if "numbered" in gives and made.thing is not None and made.thing.name != "cylinder":
        return None  # a wheel cylinder that is down is none of those that were tested
    sense = _settle(made, scene, at)
    if sense is None or (gives["condition"] == "<tried>" and not scene.context.notes):
        return None  # `third go`: which visit it is, at the head of a session
    if bidden(scene, at) or (made.thing_at is None and _a_mode(match, scene.tokens[at].low, at)):
        return None
    if made.thing is not None and made.thing.kind == "tool":
        return None
    if "gap" in gives and made.thing is not None and made.thing.words.lower().endswith(SIDES):
        made.thing = replace(made.thing, words=f"{made.thing.words} valve", name="valve", own="")
    made.fields = {
        "verdict": gives.get("verdict", sense.cls),
        "state": sense.name,
        "opposite": sense.kind,
        "weak": sense.weak,
    }
    if sense.cls == "noted" and "part" in made.filled:
        made.confidence = min(made.confidence, 0.45)
    return made


def _is_turned(token: Token) -> bool:
    """`Main jet 1.5 turns out`: how a screw is set, and not how far it is off."""
    return token.amount is not None and token.amount.unit == "turn"


def _a_mode(match: Match, low: str, at: int) -> bool:
    """Whether a word with nothing named only tells how a look is taken: `Running. Both flashing`."""
    return match.first == at == match.last - 1 and " " not in low and low.endswith("ing")


def _name_part(made: Draft, match: Match, scene: Scene) -> None:
    """The part that the rule itself names, put on the draft."""
    gives = match.rule.gives
    said = gives.get("part", "")
    if said.startswith("<"):
        made.thing_at = match.slots.get(said.strip("<>"))
        if made.thing_at is not None and made.thing_at < made.last:
            made.thing_at = marked(scene, head(scene, made.thing_at), made.last)
        made.thing = scene.tokens[made.thing_at].thing if made.thing_at is not None else None
        if made.thing_at is not None and made.thing_at < made.last and _in_passing(scene, made.thing_at):
            made.thing, made.thing_at = None, None
        if "lies" in gives:
            made.thing = _lain_on(made.thing, scene.tokens[made.last].low, gives["lies"])
    elif said:
        made.thing = scene.engine() if said == "engine" else Thing(said, said, "quality")


def _in_passing(scene: Scene, k: int) -> bool:
    """Whether a mere word only tells where: `cut right under the clamp, sucking air`; not `with both clips tight`."""
    before = scene.tokens[max(0, k - NEAR) : k]
    thing = scene.tokens[k].thing
    counted = thing is not None and thing.kind in REAL and thing.words.lower().endswith(("s", "teeth", "feet"))
    if counted and any(t.low == "of" and (n.kind == "number" or n.low in SOME) for n, t in pairwise(before)):
        return False  # `one of the springs has snapped`
    return salience(scene, k) <= PASSING and not any(t.low in WITH for t in before)


SOME = frozenset("one some most half all several few couple pair each any none both another many".split())
WITH, NEAR = frozenset("with w w/".split()), 3


def _lain_on(thing: Thing | None, said: str, how: str) -> Thing | None:
    """The part that a fluid lies on: of `oil on the belt`, the belt."""
    under = thing.of if thing is not None and f" {how} " in f" {said} " else None
    return under if under is not None and under.kind in REAL and not under.loose else None


def _settle(made: Draft, scene: Scene, at: int) -> Sense | None:
    """Finds the thing where the rule named none, and the sense of the state that fits it."""
    token = scene.tokens[at]
    if "how" in token.classes and _numbers_follow(scene, at):
        return None
    told = made.rule.gives.get("verdict")
    strong = made.rule.gives.get("strong") and token.low.split()[0] not in ITS_OWN and not _points(scene, at)
    if strong and not told and not complains(scene) and all(s.weak for s in token.senses if s.cls in VERDICTS):
        return None  # whatever it is of
    if made.thing is None and made.rule.gives.get("part", "<").startswith("<"):
        _find_thing(made, scene, at)
    if made.thing is None:
        return None
    fitting = (
        senses_for(token, made.thing)
        or said_of_any(made, scene, token)
        or ([Sense(told, token.low)] if told else [])
        or _told_of_whole(made, scene, token)
    )
    if not fitting or (fitting[0].weak and strong and not _told_of_whole(made, scene, token)):
        return None
    if fitting[0].weak and "part" in made.filled and made.thing.kind not in ("machine", "quality"):
        made.confidence -= 0.1
    return fitting[0]


def _points(scene: Scene, at: int) -> bool:
    """Whether a judgement says itself of what it is: `I'd be happy with that`; not `I'll have that skimmed`."""
    after = scene.tokens[at + 1] if at + 1 < len(scene.tokens) else None
    said = scene.tokens[at].low.split()[-1] in POINTS and scene.tokens[at].sense("judged") is not None
    return said and not (after is not None and (after.sense("did") or after.low.endswith("ed")))


POINTS = frozenset("that this it them".split())


def _numbers_follow(scene: Scene, at: int) -> bool:
    """`wet, seventy-two`: under a running test, such a word says how the number was taken."""
    near = scene.tokens[at + 1 : at + 4]
    return scene.context.topic is not None and any(t.kind in ("number", "amount") for t in near)


def _find_thing(made: Draft, scene: Scene, at: int) -> None:
    """The thing of a state for which the rule named none: said before it in its clause, or what is talked of."""
    token = scene.tokens[at]

    def fits(thing: Thing) -> bool:
        return bool(senses_for(token, thing) or made.rule.gives.get("verdict")) and thing.kind not in NO_BEARER

    span = scene.clause(at)
    if made.rule.gives.get("here"):
        k = _before_it(scene, at, fits)
        if k is not None:
            made.thing_at, made.thing = k, scene.tokens[k].thing
            return
    named = next((s.per for s in token.senses if s.cls in VERDICTS and s.per), "")
    if named:  # `no spark` names its part itself
        made.thing = Thing(named, named, "quality")
        return
    made.filled.add("part")
    if of_machine(token) and (
        scene.tokens[span.start].low in SHE or all(s.of for s in token.senses if s.cls in VERDICTS)
    ):
        made.thing, made.thing_at = named_for(scene, made.first_used, at) or (machine_with(scene, at), None)
        return
    k = _led_by_a_preposition(scene, made.first_used)
    if (k := told_in_clause(scene, made.first_used) if k is None else k) is not None and fits(scene.tokens[k].thing):  # type: ignore[arg-type]
        made.thing, made.thing_at = scene.tokens[k].thing, k
        return
    made.thing, made.thing_at = bearer(scene, made.first_used, at, fits)
    if made.thing is not None and made.thing_at is None and far_fetched(scene, at, made.thing):
        made.confidence = min(made.confidence, ASKED)
    near = made.rule.gives.get("near") and token.sense("judged") is None
    if near and made.thing_at is None and not _of_this_note(made, scene):
        made.thing = None
        return
    if made.thing is None and made.rule.id in OUTRIGHT:
        made.thing, made.thing_at = bearer(scene, made.first_used, at, lambda t: bool(said_of(t, token)))
    _judged(made, scene, token)
    if made.thing is None and (of_machine(token) or complained(scene, token)):
        made.thing = machine_with(scene, at)


def _of_this_note(made: Draft, scene: Scene) -> bool:
    """Whether this note has named the thing, or the one before named it alone and this one begins with the state: amid
    other words a state is hardly said of what was told of before.
    """
    thing = made.thing
    if thing is None or thing.kind == "machine":
        return True
    near = [s for s in scene.context.things if s.age <= 1]
    alone = made.first_used == 0 and len(near) == 1
    return any(s.words == thing.words for s in near if alone or s.age == 0)


def _told_of_whole(made: Draft, scene: Scene, token: Token) -> list[Sense]:
    """What a complaint says of the machine is believed, whatever else it is said of."""
    whole_one = made.thing is not None and made.thing.kind == "machine" and "part" in made.filled
    return [s for s in token.senses if s.cls == "bad"] if whole_one and complained(scene, token) else []


def _led_by_a_preposition(scene: Scene, first: int) -> int | None:
    """The thing before a pronoun that is no subject: in `two teeth on that are chipped`, the teeth."""
    if first < 2 or not scene.tokens[first].sense("pronoun") or scene.tokens[first - 1].low not in INSIDE:
        return None
    return first - 2 if scene.tokens[first - 2].kind == "thing" else None


INSIDE = frozenset("on in of behind under inside round around at".split())


def _judged(made: Draft, scene: Scene, token: Token) -> None:
    """A judgement for which nothing was named is of what was read last."""
    if made.thing is None and token.sense("judged"):
        made.thing = thing_read(scene)


def _before_it(scene: Scene, at: int, fits: Fits) -> int | None:
    """The last thing of the clause before a state, but for what stands in a prepositional phrase."""
    before = [k for k in scene.things(scene.clause(at)) if k < at and fits(scene.tokens[k].thing)]  # type: ignore[arg-type]
    if (by := mostly(scene, scene.tokens[at])) and before:
        before = [k for k in before if (thing := scene.tokens[k].thing) is not None and suits_best(thing, by)]
    subjects = [k for k in before if salience(scene, k) > ASIDE]
    return next(iter(subjects[-1:] or [k for k in before if salience(scene, k) == MERE][-1:]), None)


def part_words(made: Draft, scene: Scene) -> str:
    """The speaker's words for the part, with which one it is."""
    assert made.thing is not None
    words = made.thing.words
    if made.thing.which:
        return words
    return with_which(words, which_near(scene, made.main) if made.thing.per or made.thing.kind == "quality" else "")
