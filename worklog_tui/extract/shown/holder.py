"""Of what it is said: the subject of the words before, what stands behind a preposition, or what was talked of."""

from __future__ import annotations

from worklog_tui.extract.finders.bearer import bearer, far_fetched, head
from worklog_tui.extract.owed.clause import Clause, named_before
from worklog_tui.extract.said import says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.polarity import Said
from worklog_tui.extract.things.named_as import spoken
from worklog_tui.extract.things.salience import salience
from worklog_tui.extract.tokens import Thing, Token
from worklog_tui.rulebook.patterns import Rule

NO_HOLDER = frozenset({"tool", "material"})
ASIDE = -2
"Salience of what stands in a prepositional phrase."


def may_hold(thing: Thing | None) -> bool:
    """Whether something may be found of a thing."""
    return thing is not None and thing.kind not in NO_HOLDER and not (thing.loose and thing.kind == "unknown")


def subject(clause: Clause, upto: int) -> int | None:
    """The index of the thing that the words before token `upto` are about: what is no mere place of it."""
    scene = clause.scene
    before = [k for k in scene.things(range(clause.span.start, upto)) if may_hold(scene.tokens[k].thing)]
    if not before:
        return None
    firm = [k for k in before if salience(scene, k) > ASIDE]
    last = (firm or before)[-1]
    return None if _goes_on(scene, last, upto) else head(scene, last)


def _goes_on(scene: Scene, k: int, upto: int) -> bool:
    """Whether a word that no vocabulary knows ends the name: of `the tension scale`, the tension is no subject."""
    after = scene.tokens[k + 1] if k + 1 < upto else None
    if after is None or after.kind != "word" or after.senses:
        return False
    return after.low.isalpha() and not after.low.endswith("ly")


def behind(clause: Clause, k: int, words: int = 4) -> int | None:
    """The thing behind a preposition near token k: in `no wear in the bush`, of the wear, the bush."""
    tokens = clause.scene.tokens
    for i in range(k, min(k + words, clause.span.stop)):
        if tokens[i].low.rpartition(" ")[2] in clause.scene.book.owed["holding"]:
            return named(clause, i + 1)
        if tokens[i].thing is not None or tokens[i].kind in ("stop", "comma"):
            return None
    return None


def named(clause: Clause, k: int) -> int | None:
    """The thing that a name beginning at token k ends in; None where no thing follows its articles."""
    tokens = clause.scene.tokens
    for i in range(k, min(k + 5, clause.span.stop)):
        if tokens[i].thing is not None:
            return i if may_hold(tokens[i].thing) else None
        small = tokens[i].sense("article", "all", "side", "objectword", "degree", "which")
        if not small and tokens[i].kind != "number" and tokens[i].low not in ("of", "any"):
            return None
    return None


def none_of(clause: Clause, holder: int | None) -> int | None:
    """The index of what denies all that is said of a thing: `none of the plugs`."""
    if holder is None:
        return None
    first = max(clause.span.start, holder - 4)
    return next((k for k in range(first, holder) if says(clause.scene, "none_of", k, 3)), None)


def by_person(clause: Clause, upto: int) -> bool:
    """Whether a person or something outside the workshop is the subject: `I feel fine`, `my wife was happy`."""
    tokens = clause.scene.tokens[clause.span.start : upto]
    persons = clause.scene.book.owed["persons"]
    return any("outsider" in t.classes or t.low in persons for t in tokens)


def stranger(clause: Clause, upto: int) -> Thing | None:
    """A part that no vocabulary knows, named at the head of the clause: `thimble has plenty of life in it`."""
    scene, first = clause.scene, clause.span.start
    while first < upto and (scene.tokens[first].sense("break", "degree", "loose") or scene.tokens[first].low in JOINS):
        first += 1
    name = named_before(scene, upto, first)
    if name is None or any(_talk(scene, scene.tokens[k]) for k in range(name[0], name[1] + 1)):
        return None
    before = scene.tokens[first : name[0]]
    if not all(t.sense("article", "objectword", "side", "all") or t.kind == "number" for t in before):
        return None
    words = spoken(scene.said(*name))
    return Thing(words, "", "unknown", "", words, known=False)


def _talk(scene: Scene, token: Token) -> bool:
    """Whether a word is of people, weather and days, or only stands for something, alone or with its 's."""
    if token.low in scene.book.owed["no_names"] or token.sense("outsider", "degree", "filler"):
        return True
    senses = scene.book.table.get(token.low.removesuffix("s"), ())
    return any(s[0] in ("outsider", "filler", "day", "person") for s in senses)


SHE = frozenset("she shes he hes".split())


def made(clause: Clause, rule: Rule, said: Said, holder: int | None, other: Thing | None = None) -> Draft | None:
    """The finding of what is said, of the thing at `holder`, of another, or of what the talk is about."""
    scene = clause.scene
    thing = scene.tokens[holder].thing if holder is not None else other
    found = Draft("finding", said.first, said.last, rule, {}, confidence=rule.confidence,
                  first_used=said.first, last_used=said.last)  # fmt: skip
    if thing is None and any(t.low in SHE for t in scene.tokens[clause.span.start : said.first]):
        if scene.machine.fuel == "none":
            return None  # the whole of a machine, for which nothing stands
        thing = scene.engine()
    if thing is None:
        thing, holder = bearer(scene, said.first, said.first, lambda t: may_hold(t) and t.kind != "unknown")
        found.filled.add("part")
        found.confidence -= 0.08
        if thing is not None and holder is None and far_fetched(scene, said.first, thing):
            return None
    if thing is None:
        return None
    found.thing, found.thing_at = thing, holder
    found.fields = {"verdict": said.verdict, "state": "", "opposite": "", "weak": False}
    return found


def points_back(scene: Scene, clause: Clause, upto: int) -> bool:
    """Whether the clause begins with a word that stands for what was talked of, or with nothing at all."""
    first = max((k + 1 for k in range(clause.span.start, upto) if scene.tokens[k].low in ("and", ",")), default=0)
    first = max(first, clause.span.start)
    tokens = [t for t in scene.tokens[first:upto] if not t.sense("break") and t.low not in JOINS]
    if tokens and (tokens[0].kind == "number" or tokens[0].low in COUNTS):
        return True
    return not tokens or tokens[0].low in scene.book.owed["points"] or all(t.sense("degree", "filler") for t in tokens)


COUNTS = frozenset("both all some most none half one every each neither".split())
JOINS = frozenset("and or yeah yep oh well right okay ok ah".split())


def rule(name: str, confidence: float) -> Rule:
    """The name under which a reading of this room is explained."""
    return Rule(f"shown.{name}", "", {"kind": "finding", "even": ["not"]}, (), (), confidence)
