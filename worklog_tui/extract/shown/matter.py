"""What lies where it has no business, by how much there is of it and where: `there's a film of oil on them`, `between
the blades there was a felt of dust`, `half a pint of water in the bowl`.
"""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import made, may_hold, named, rule, subject
from worklog_tui.extract.shown.polarity import Said, denial
from worklog_tui.rulebook import Rulebook

MATTER = rule("matter", 0.6)
BACK, AHEAD = 4, 4
"Tokens before the matter in which its measure stands, and behind it in which its place does."
THERE = frozenset("theres there has had have got with found see is was are were heres like".split())
PLACES = frozenset("in on under between behind inside across round around along over at".split())
POINTED = frozenset("it them there here that this those these bottom top inside middle end".split())
AWAY = frozenset({"out", "out of", "from", "off", "to", "into", "onto"})
"What was brought from somewhere, or put there, is told of nothing."
HAS = frozenset("has had have got with w".split())


def may_lie(scene: Scene) -> list[int]:
    """The tokens that name what has no business in a part, or a fluid with its measure."""
    named = scene.book.answers(_names_matter)
    return [k for k, token in enumerate(scene.tokens) if (found := named[token.low]) and _matter(scene, k, found)]


def _names_matter(book: Rulebook, low: str) -> str:
    """Whether words name what is `foreign` everywhere, or `stuff` that only a measure makes so; empty for neither."""
    words = low.split()
    if any(s[0] == "foreign" for word in words for s in book.table.get(word, ())):
        return "foreign"
    return "stuff" if words and not book.owed["stuff"].isdisjoint((low, words[-1])) else ""


def _matter(scene: Scene, k: int, named: str) -> bool:
    token = scene.tokens[k]
    if token.kind not in ("word", "term", "thing"):
        return False
    if token.thing is not None and token.thing.kind not in ("fluid", "material"):
        return False
    return named == "foreign" or _measure(scene, k) is not None


def _measure(scene: Scene, k: int) -> int | None:
    """The token with which the measure begins: `a film of`, `half a pint of`."""
    token = scene.tokens[k]
    if token.low.partition(" of ")[0] in scene.book.owed["measured_in"] and " of " in token.low:
        return k
    of = next((i for i in range(k - 1, max(-1, k - BACK), -1) if scene.tokens[i].low == "of"), None)
    if of is None or of == 0:
        return None
    before = scene.tokens[of - 1]
    measures = before.kind == "amount" or before.low.rpartition(" ")[2] in scene.book.owed["measured_in"]
    return of - 1 if measures else None


def matter(clause: Clause, named: list[int]) -> list[Draft]:
    """What a clause tells to lie in or on a part, which the tokens `named` name."""
    scene = clause.scene
    for k in named:
        if denial(scene, k, clause.span.start) is not None:
            continue
        measure = _measure(scene, k)
        first = measure if measure is not None else k
        if not _lies(clause, first, measure is not None):
            continue
        holder = _holder(clause, first, k)
        draft = made(clause, MATTER, Said("bad", first, k), holder[0]) if holder is not None else None
        if draft is not None:
            return [draft]
    return []


def _lies(clause: Clause, first: int, measured: bool) -> bool:
    """Whether it is told to be there, not put there; with a measure that may go unsaid: `a crumb of carbon in it`."""
    tokens = clause.scene.tokens
    before = tokens[clause.span.start : first]
    if any(t.sense("did", "do", "doing", "plan") and t.low not in THERE for t in before):
        return False
    if any(t.low in clause.scene.book.lists["wished_there"] for t in before[-2:]):
        return False
    there = any(set(t.low.split()) & THERE for t in before)
    return there or (measured and all(t.sense("article", "break") for t in before))


def _holder(clause: Clause, first: int, k: int) -> tuple[int | None] | None:
    """Where it lies: behind a preposition, before `there was`, or what has it; (None,) is what was talked of."""
    scene, tokens = clause.scene, clause.scene.tokens
    if PLACES & set(tokens[k].low.split()[1:]):
        return (None,)  # `sludge in the bottom`
    for i in range(k + 1, min(k + 1 + AHEAD, clause.span.stop)):
        if tokens[i].low in AWAY:
            return None
        if tokens[i].low not in PLACES:
            continue
        if (at := named(clause, i + 1)) is not None:
            return (at,)
        if any(t.low in POINTED for t in tokens[i + 1 : i + 3]):
            has = any(set(t.low.split()) & HAS for t in tokens[clause.span.start : first])
            return (subject(clause, first) if has else None,)
    lead = clause.span.start
    while lead < first and (tokens[lead].sense("break") or tokens[lead].low in ("and", "but", "so", ",")):
        lead += 1
    placed = tokens[lead].low in PLACES if lead < first else False
    things = [i for i in scene.things(range(lead, first)) if may_hold(tokens[i].thing)]
    return (things[0],) if placed and things else None
