"""A fluid where it has no business: `there's water in the float bowl`, `air in the line`, `found petrol in the oil`."""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import made, may_hold, named, rule
from worklog_tui.extract.shown.polarity import Said, denial
from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook import Rulebook

MISPLACED = rule("misplaced", 0.66)
IN = " in "
AHEAD = frozenset({"in", "inside"})
BACK = 4
"Tokens before the fluid in which it is told to be there."
THERE = frozenset("theres there found had has got is was see thats its".split())
SOME = frozenset("some bit of lots loads few drops".split())
PUT = ("did", "do", "doing", "plan", "want", "book")
ARTICLES = frozenset("the a an its this that my one each both".split())


def may_be_misplaced(scene: Scene) -> list[int]:
    """The tokens in which a fluid is named, with what it is in or before that."""
    named, tokens = scene.book.answers(_fluid_in), scene.tokens
    return [
        k
        for k, token in enumerate(tokens)
        if (found := named[token.low])
        and (found[1] or token.low.endswith(" in") or (k + 1 < len(tokens) and tokens[k + 1].low in AHEAD))
    ]


def _fluid_in(book: Rulebook, low: str) -> tuple[str, str] | None:
    """The fluid of some words, and the part that they name it in: `water in the gearbox`, `oil in`; None for others."""
    fluid, _, rest = low.removesuffix(IN.rstrip()).partition(IN)
    measure, _, first = fluid.rpartition(" ")
    if not SOME.issuperset(measure.split()) or not any(
        s[0] == "part" and s[2] == "fluid" for s in book.table.get(first, ())
    ):
        return None
    words = rest.split()
    while words and words[0] in ARTICLES:
        words = words[1:]
    return first, " ".join(words)


def misplaced(clause: Clause, fluids: list[int]) -> list[Draft]:
    """What a clause tells to be in a part, which the tokens `fluids` name, where it has no business there."""
    scene = clause.scene
    for k in fluids:
        if not _told(clause, k) or denial(scene, k, clause.span.start) is not None:
            continue
        fluid, words = scene.book.answers(_fluid_in)[scene.tokens[k].low] or ("", "")
        part = _part(clause, k, words)
        if part is None or not may_hold(part) or not _foreign(fluid, part, scene.book):
            continue
        draft = made(clause, MISPLACED, Said("bad", k, k), None, part)
        if draft is not None:
            draft.fields["same"] = f"{fluid} in it"
            return [draft]
    return []


def _told(clause: Clause, k: int) -> bool:
    """Whether it is told to be there, not put there."""
    tokens = clause.scene.tokens
    begins = next((i + 1 for i in range(k - 1, clause.span.start, -1) if tokens[i].kind == "comma"), clause.span.start)
    before = tokens[max(begins, k - BACK) : k]
    if clause.scene.typed and all(t.sense("article", "degree", "loose") or t.low in SOME for t in before):
        return True
    return any(t.low in THERE for t in before) and not any(t.sense(*PUT) and t.low not in THERE for t in before)


def _part(clause: Clause, k: int, words: str) -> Thing | None:
    """What the fluid is in: the second of two things, what stands behind `in` in one token, or in the next."""
    scene, thing = clause.scene, clause.scene.tokens[k].thing
    if thing is not None and thing.of is not None:
        return thing.of
    if words:
        sense = next((s for s in scene.book.table.get(words, ()) if s[0] == "part"), None)
        return None if sense is None else Thing(words, sense[1], sense[2], own=words, per=sense[3])
    at = named(clause, k + 1 if scene.tokens[k].low.endswith(" in") else k + 2)
    return None if at is None else scene.tokens[at].thing


def _foreign(fluid: str, part: Thing, book: Rulebook) -> bool:
    """Whether a fluid has no business in a part: water in all but what it cools or drives, the others where told."""
    said = set(f"{part.name} {part.words}".lower().split())
    if fluid in book.lists["waters"]:
        return said.isdisjoint(book.lists["holds_water"])
    if fluid == "air":
        return not said.isdisjoint(book.lists["harmed_by_air"])
    harmed = book.lists["harmed_by_oil"] if fluid in book.lists["fouling_oils"] else book.lists["harmed_by_fuel"]
    return not said.isdisjoint(harmed)
