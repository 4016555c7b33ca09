"""How a part does its work, or that it does not: `the starter cranks with gusto`, `the pump wasn't delivering`."""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.said import opened_by, opening, says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import by_person, made, none_of, points_back, rule, stranger, subject
from worklog_tui.extract.shown.polarity import TURNED, Said, denial
from worklog_tui.extract.shown.states import before_name

ACTS, FAILS = rule("acts", 0.6), rule("fails", 0.6)
NEAR = 6
"Tokens between what is done and how."
HOW = (("nought", "bad"), ("fullmeasure", "good"), ("ill", "bad"), ("fine", "good"))
HOW_NAMES = frozenset(name for name, _ in HOW)
ENDS = frozenset("if when till until because unless where before so but and".split())
HANDED = ("hand thread", "handed thread")
"What turns the other way by its make has no fault."
PLAIN = frozenset("is was are were be been to into".split())


def may_act(scene: Scene) -> list[int]:
    """The tokens that may say what a part does."""
    return scene.once(("may act",), lambda: sorted({*opening(scene, "acts"), *_doing(scene)}))


DOING = ("does", "moves", "function", "works_well")
DOES = frozenset(DOING)
"Classes of words that say what a part does."


def _doing(scene: Scene) -> list[int]:
    return [k for k, t in enumerate(scene.tokens) if not DOES.isdisjoint(t.classes)] if scene.holds(*DOING) else []


def acts(clause: Clause, doing: list[int]) -> list[Draft]:
    """What a clause says of how its thing works, by the tokens `doing`."""
    scene = clause.scene
    if any(token.low.endswith(HANDED) for token in scene.tokens[: clause.span.start]):
        return []  # it's a left-hand thread, so it goes the wrong way
    for k in doing:
        if scene.tokens[k].thing is not None:
            continue
        draft = _act(clause, k, k + max(says(scene, "acts", k, 3), 1)) if _does(scene, k) else None
        if draft is not None:
            return [draft]
    return []


def _does(scene: Scene, k: int) -> bool:
    return says(scene, "acts", k, 3) > 0 or scene.tokens[k].sense(*DOING) is not None


def _act(clause: Clause, k: int, after: int) -> Draft | None:
    scene = clause.scene
    holder = subject(clause, k)
    other = stranger(clause, k) if holder is None else None
    if by_person(clause, k) or scene.tokens[k - 1].low in ("to", "go"):
        return None
    if other is None and not _may_stand(clause, holder, k):
        return None
    no = _denied(clause, k, holder)
    if no is None:
        no = none_of(clause, holder)
    how = _how(clause, after)
    if no is not None:
        verdict = TURNED[how.verdict] if how and how.last > how.first and how.verdict == "bad" else "bad"
        return made(clause, FAILS, Said(verdict, no, max(after - 1, how.last if how else 0)), holder, other)
    return made(clause, ACTS, Said(how.verdict, k, how.last), holder, other) if how else None


def _may_stand(clause: Clause, holder: int | None, k: int) -> bool:
    """Whether the act is said of a thing, or of what was talked of: `it pulls`, `goes through the gears`."""
    scene, low = clause.scene, clause.scene.tokens[k].low.partition(" ")[0]
    if holder is not None:
        return _joined(scene, holder, k)
    if k == clause.span.start:
        return low.endswith("s") or low in PAST
    return points_back(scene, clause, k)


def _denied(clause: Clause, k: int, holder: int | None) -> int | None:
    """The index of the word that denies the act: `doesn't throw in`, `isn't charging`; not of `they're not pulled`."""
    scene = clause.scene
    no = denial(scene, k, (holder if holder is not None else clause.span.start - 1) + 1)
    if no is None or scene.tokens[no].low.partition(" ")[0] not in scene.book.owed["denied_acts"]:
        return None
    plain = scene.tokens[no].low == "not" and not scene.tokens[no - 1].low.startswith(DO)
    if (plain or scene.tokens[no].low in IS_NOT) and not scene.tokens[k].low.partition(" ")[0].endswith("ing"):
        return None
    if scene.tokens[no].low == "dont" and scene.tokens[k].low.partition(" ")[0] == "go":
        return None  # `don't go hitting it`
    return no if holder is not None or no > clause.span.start else None


PAST = frozenset("fired started ran lit caught turned idled".split())
IS_NOT = frozenset("isnt wasnt arent werent aint".split())
DO = ("do", "did", "will", "can", "could", "would")


def _joined(scene: Scene, holder: int, k: int) -> bool:
    """Whether what is done is said of the thing: only small words stand between."""
    between = scene.tokens[holder + 1 : k]
    return all(
        t.kind == "comma" or t.sense("degree", "all", "not", "copula", "refuses") or t.low.endswith("ly")
        for t in between
    )


SPEEDS = frozenset("slow fast low high full half".split())


def _leads_away(scene: Scene, k: int) -> bool:
    """Whether `straight` tells where to: water running straight down the cable."""
    return scene.tokens[k].low == "straight" and any(t.low in WAYS for t in scene.tokens[k + 1 : k + 2])


WAYS = frozenset("down up in into out onto off through past across over under back".split())


def _how(clause: Clause, first: int) -> Said | None:
    scene, opened = clause.scene, opened_by(clause.scene)
    for k in range(first, min(first + NEAR, clause.span.stop)):
        token = scene.tokens[k]
        if scene.tokens[k - 1].low == "on" and token.low in SPEEDS:
            continue  # `runs 1420 on slow`: how it is set
        for name, verdict in () if opened[k].isdisjoint(HOW_NAMES) else HOW:
            if (n := says(scene, name, k, 5)) and not before_name(scene, k + n - 1):
                no = denial(scene, k, first)
                turned = TURNED[verdict] if no is not None and name in ("ill", "fine") else verdict
                return Said(turned, k, k + n - 1)
        if token.low in ENDS or token.kind == "stop" or _leads_away(scene, k):
            return None
        if (plain := _plainly(scene, k)) and not before_name(scene, k):
            return Said(plain, k, k)
        if token.thing is not None and k > first:
            return None
    return None


def _plainly(scene: Scene, k: int) -> str:
    """The verdict of a word that has but one: `turns sweetly`, `runs hot` has none."""
    token = scene.tokens[k]
    if token.sense("warmth", "position") or bool(token.sense("good")) == bool(token.sense("bad")):
        return ""
    return "good" if token.sense("good") else "bad"
