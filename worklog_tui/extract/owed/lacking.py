"""Parts that are wanted because there are none: `they didn't have the kit`, `the feet have not come`, `no spares`."""

from __future__ import annotations

from worklog_tui.extract.owed.clause import Clause, named_after, owed, rule, says, talked_of
from worklog_tui.extract.scene import Draft, Scene
from worklog_tui.extract.tokens import Thing
from worklog_tui.rulebook.patterns import Rule

NONE_HAD, NOT_COME, NO_THING = rule("none-had", 0.58), rule("not-come", 0.6), rule("none-here", 0.58)
NEAR = 3
"Tokens between the denial and what is denied."
FAR = 6
"Tokens between having and the thing that is not had."
HAVE = frozenset({"have", "got", "have got"})
ONE = frozenset("one any none 1".split())
ANY = frozenset("spare spares more ones another one such stock new".split())
"What there is none of, when it names nothing."
WANTED = frozenset({"part", "joint", "fastener", "material", "unknown", "fluid", "control"})


def may_lack(scene: Scene) -> list[int]:
    """The tokens that deny something."""
    return [k for k, token in enumerate(scene.tokens) if "not" in token.classes] if scene.holds("not") else []


def lacking(clause: Clause, denying: list[int]) -> list[Draft]:
    """What a clause says there is none of, if any, by the tokens `denying`."""
    if clause.against() or clause.asked() or any(t.stances & {"if", "would"} for t in clause.tokens()):
        return []
    for k in denying:
        token = clause.scene.tokens[k]
        if token.sense("not") and not (k and clause.scene.tokens[k - 1].low == "need"):
            made = _not_had(clause, k) or _not_come(clause, k) or _no_thing(clause, k)
            if made is not None:
                return [made]
    return []


def _not_had(clause: Clause, k: int) -> Draft | None:
    """`I have not got any rope`, `they didn't have the kit`; not `haven't got the head off`."""
    tokens, ours = clause.scene.tokens, clause.scene.book.owed["ours"]
    before = tokens[max(clause.span.start, k - 3) : k + 1]
    if k > clause.span.start and not any(t.low in ours or t.low.startswith(("i ", "we ")) for t in before):
        return None
    for i in range(k, min(k + NEAR, clause.span.stop)):
        n = says(clause.scene, "has", i) if i > k or tokens[k].low in ("havent", "hadnt") else 0
        if not n or (k == clause.span.start and tokens[k].low in ("dont", "never") and tokens[i].low not in HAVE):
            continue
        at = _had_at(clause, i + n)
        things = [at] if at is not None else []
        after = tokens[i + n : clause.span.stop]
        if things:
            return _owed(clause, NONE_HAD, things[0])
        name = named_after(clause.scene, i + n, clause.span.stop)
        if name is not None and tokens[name[1]].thing is None and not _is_done(clause, name[1] + 1):
            said = clause.scene.said(*name)
            no_part = {t.low for t in tokens[name[0] : name[1] + 1]} & clause.scene.book.owed["no_part"]
            return None if no_part else owed(clause.scene, NONE_HAD, *name, said, None, "part needed")
        if after and after[0].low in ONE and (len(after) == 1 or after[1].kind in ("stop", "comma", "word", "term")):
            return _of_talk(clause, NONE_HAD, k)
    return None


def _had_at(clause: Clause, first: int) -> int | None:
    """The index of the thing right behind having, with only small words between."""
    for k in range(first, min(first + FAR, clause.span.stop)):
        token = clause.scene.tokens[k]
        if token.thing is not None:
            return k if _wanted(token.thing) and not token.thing.which and not _is_done(clause, k + 1) else None
        small = token.sense("objectword", "article", "degree", "side", "new")
        if not (small or token.kind in ("amount", "number", "loose")):
            return None
    return None


def _is_done(clause: Clause, k: int) -> bool:
    """Whether a deed follows: `haven't got the belt off`."""
    if k >= clause.span.stop:
        return False
    token = clause.scene.tokens[k]
    return token.low.lstrip("\u2026") in clause.scene.book.owed["particles"] or bool(token.sense("did", "good", "bad"))


def _not_come(clause: Clause, k: int) -> Draft | None:
    """`the feet have not come`, `coil isn't here yet`."""
    tokens = clause.scene.tokens
    for i in range(k, min(k + NEAR, clause.span.stop)):
        n = says(clause.scene, "comes", i) if i > k else 0
        if n and (i + n >= clause.span.stop or tokens[i + n].kind in ("stop", "comma") or _goes_on(clause, i, n)):
            things = [m for m in clause.things(clause.span.start, k) if _wanted(tokens[m].thing)]
            return _owed(clause, NOT_COME, things[-1]) if things else None
    return None


def _goes_on(clause: Clause, i: int, n: int) -> bool:
    after = clause.scene.tokens[i + n]
    return after.low in ("yet", "so", "and", "with", "till", "until", "before") or bool(after.sense("day", "sometime"))


def _no_thing(clause: Clause, k: int) -> Draft | None:
    """`no spares on van`, `no paste left`."""
    tokens = clause.scene.tokens
    if tokens[k].low not in ("no", "none", "nae"):
        return None
    for i in range(k + 1, min(k + 5, clause.span.stop)):
        if says(clause.scene, "where", i):
            things = [m for m in clause.things(k + 1, i) if _wanted(tokens[m].thing)]
            if things and tokens[things[0]].low not in ANY:
                return _owed(clause, NO_THING, things[0])
            if i == k + 2 and not things and not tokens[k + 1].senses and tokens[k + 1].low not in ANY:
                return owed(clause.scene, NO_THING, k + 1, k + 1, tokens[k + 1].low, None, "part needed")
            return _of_talk(clause, NO_THING, k)
    return None


def _wanted(thing: Thing | None) -> bool:
    return thing is not None and thing.kind in WANTED


def _owed(clause: Clause, of: Rule, at: int) -> Draft:
    thing = clause.scene.tokens[at].thing
    words = thing.words if thing is not None else ""
    return owed(clause.scene, of, at, at, words, thing, "part needed")


def _of_talk(clause: Clause, of: Rule, k: int) -> Draft | None:
    before = [m for m in clause.things(clause.span.start, k) if _wanted(clause.scene.tokens[m].thing)]
    if before:
        return _owed(clause, of, before[-1])
    thing = talked_of(clause.scene, k)
    if thing is None or not _wanted(thing):
        return None
    made = owed(clause.scene, of, k, k, thing.words, thing, "part needed")
    made.filled.add("topic")
    made.confidence -= 0.06
    return made
