"""A part, a word that joins, and what it is like: `the wiring, would you believe, is all original and all sound`."""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause
from worklog_tui.extract.said import opening, says
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.shown.holder import by_person, made, none_of, rule, stranger, subject
from worklog_tui.extract.shown.polarity import TURNED, Said, denial, said_at
from worklog_tui.extract.tokens import Thing

STATE = rule("state", 0.62)
NEAR = 5
"Tokens between the word that joins and what is said."
IS = ("'s", "\u2019s")


def may_be(scene: Scene) -> list[int]:
    """The tokens that may join a thing and what it is like."""
    return sorted({*opening(scene, "be"), *_contracted(scene)})


def _contracted(scene: Scene) -> list[int]:
    said = scene.text[scene.tokens[0].start : scene.tokens[-1].end]
    if "'" not in said and "\u2019" not in said:
        return []
    return [k for k, t in enumerate(scene.tokens) if t.kind in ("thing", "word") and _says_is(scene, k)]


def _says_is(scene: Scene, k: int) -> bool:
    token = scene.tokens[k]
    return token.low.endswith("s") and scene.text[token.start : token.end].lower().endswith(IS)


def states(clause: Clause, joining: list[int]) -> list[Draft]:
    """What a clause says that its thing is like, joined to it by the tokens `joining`."""
    scene = clause.scene
    for v in joining:
        n = says(scene, "be", v, 3) or int(_says_is(scene, v))
        if not n:
            continue
        if (draft := _state(clause, v, v + n)) is not None:
            return [draft]
    return []


def _state(clause: Clause, v: int, after: int) -> Draft | None:
    scene = clause.scene
    holder = subject(clause, v + (scene.tokens[v].thing is not None))
    if by_person(clause, holder if holder is not None else v):
        return None
    alone = scene.tokens[v].kind == "word" and _says_is(scene, v)
    other = stranger(clause, after if alone else v) if holder is None else None
    if holder is None and other is None:
        return None
    thing = scene.tokens[holder].thing if holder is not None else other
    said = _predicate(clause, after, thing)
    if said is None:
        return None
    first = v if scene.tokens[v].thing is None else after
    no = denial(scene, said.first, first)
    if no is None:
        no = none_of(clause, holder)
    if no is not None:
        said = Said(TURNED.get(said.verdict, said.verdict), no, said.last)
    return made(clause, STATE, said, holder, other)


def _predicate(clause: Clause, first: int, thing: Thing | None) -> Said | None:
    """The first words from token `first` on that say what the thing is like."""
    scene = clause.scene
    for k in range(first, min(first + NEAR, clause.span.stop)):
        token = scene.tokens[k]
        if token.thing is not None or token.sense("warmth", "worked"):
            return None
        if (said := said_at(scene, k, thing)) is not None:
            return said if not before_name(scene, said.last) else None
        small = token.sense("degree", "not", "all", "copula", "moves") or token.low in scene.book.owed["between"]
        if not small and not token.low.endswith("ly"):
            return None
    return None


def before_name(scene: Scene, last: int) -> bool:
    """Whether a name follows at once, of which it is said then: `is a good engine`, `was having a bad day`."""
    after = scene.tokens[last + 1] if last + 1 < len(scene.tokens) else None
    if after is None or after.kind in ("stop", "comma"):
        return False
    goes_on = after.low.partition(" ")[0] in scene.book.owed["goes_on"]
    if goes_on or after.sense("degree", "break", "not", "side", "good", "bad", "judged"):
        return False
    return not (after.low.endswith("ly") or after.sense("person", "pronoun"))
